import type { CalendarDay } from '../units/calendar-day.ts';
import { dayNumber } from '../units/calendar-day.ts';
import { bandOf, rounded } from './band.ts';
import { codeSpeeds } from './code-speeds.ts';
import type { GroupSpeeds, HazardCurve, SnapState } from './fence-forecast.ts';
import { returnPeriodOf } from './hazard-curve.ts';
import { collarBurstForce, footingForce, groundAfter } from './lean-resistance.ts';
import type { PostClass } from './post-classes.ts';
import { groupValue, medianByCount, type PostGroup } from './post-group.ts';
import { soundPost } from './post-state.ts';
import { snapResistance } from './snap-resistance.ts';
import { type ClassValues, type StateModel, sectionLossOn } from './state-model.ts';
import { groundAt } from './unknown-priors.ts';

/** Posts whose speed is as near to the group's as this share of it decide with it [-]. */
const DECIDES_WITHIN = 0.005;

/** The same state of a fence twice: over all belief points, and at the medians of every unknown. */
export interface ModelPair {
  readonly full: StateModel;
  readonly median: StateModel;
}

/** Class values of both models on one day. */
export interface ValuesPair {
  readonly full: ClassValues;
  readonly median: ClassValues;
}

/** What breaks a class of posts first, at its medians. */
function snapStateOf(
  model: StateModel,
  postClass: PostClass,
  at: { readonly day: CalendarDay; readonly sound: boolean },
): SnapState {
  const loss = sectionLossOn(model, { kind: postClass.kind, point: 0, dayNumber: dayNumber(at.day), sound: at.sound });
  const { post } = postClass.sample;
  const { momentNm, shearN, railN } = snapResistance(at.sound ? soundPost(post) : post, loss, 1);
  const byMoment = momentNm / postClass.momentPerV2;
  const byForce = Math.min(shearN, railN) / postClass.forcePerV2;
  if (byMoment <= byForce) return 'bending';
  return railN < shearN ? 'rail connection' : 'shear';
}

/** Whether footing or collar gives first, at the medians. */
function leanStateOf(model: StateModel, postClass: PostClass): 'footing' | 'collar' {
  const { post, demands } = postClass.sample;
  const ground = groundAfter(post.condition, groundAt(post.ground, model.points, 0));
  const at = { section: post.wood.section, armM: demands[0]!.armM };
  return collarBurstForce(ground, at) < footingForce(model.site, model.state.soilSaturated, ground, at)
    ? 'collar'
    : 'footing';
}

/**
 * Snap and lean speeds of a group of posts on one day, `expected` with bands and `code` as single values [m/s], the limit
 * states that govern and the posts that decide.
 * Source: composed of the functions of capacity/ and decay/; how a group is spoken for see `groupValue`.
 */
export function groupForecast(
  models: ModelPair,
  group: PostGroup,
  values: ValuesPair,
  at: { readonly day: CalendarDay; readonly sound: boolean; readonly hazard: HazardCurve },
): GroupSpeeds {
  const { classes } = models.median.classes;
  const medianSpeeds = group.members.map((index) => values.median.snapMps[index]![0]!);
  const spoken = group.name === 'line' ? medianByCount(medianSpeeds, group.counts) : Math.min(...medianSpeeds);
  const off = (index: number): number => Math.abs(values.median.snapMps[index]![0]! - spoken);
  const nearest = group.members.reduce((a, b) => (off(b) < off(a) ? b : a));
  const deciding = group.members.filter((index) => index === nearest || off(index) <= spoken * DECIDES_WITHIN);
  const sample = classes[nearest]!;
  const code = group.members.map((index) => codeSpeeds(models.median, classes[index]!, at.day, at.sound));
  const codeValue = (speeds: readonly number[]): number =>
    rounded(group.name === 'line' ? medianByCount(speeds, group.counts) : Math.min(...speeds), 3);
  const { weights } = models.full.points;
  const snapMps = bandOf(groupValue(group, values.full.snapMps, 'lowest'), 3, weights);
  return {
    snapMps,
    leanMps: bandOf(groupValue(group, models.full.leanMps, 'lowest'), 3, weights),
    snapState: snapStateOf(models.median, sample, at),
    leanState: leanStateOf(models.median, sample),
    decidingPosts: deciding.flatMap((index) => classes[index]!.numbers).sort((a, b) => a - b),
    codeSnapMps: codeValue(code.map((one) => one.snapMps)),
    codeLeanMps: codeValue(code.map((one) => one.leanMps)),
    onceInYears: at.hazard.kind === 'gumbel' ? rounded(returnPeriodOf(at.hazard, snapMps.p50), 1) : null,
  };
}
