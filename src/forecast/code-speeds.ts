import { solidHeight } from '../capacity/post-load.ts';
import { speedAtResistance } from '../capacity/post-resistance.ts';
import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import { paFromPsf } from '../units/pressure.ts';
import { allowableFootingForce, groundAfter } from './lean-resistance.ts';
import type { PostClass } from './post-classes.ts';
import { soundPost } from './post-state.ts';
import { allowableSnapResistance } from './snap-resistance.ts';
import { type StateModel, sectionLossOn } from './state-model.ts';
import { windLoadFactor } from './three-second-gust.ts';
import { groundAt } from './unknown-priors.ts';

/** Least wind pressure on other structures, strength level [psf]. Source: ASCE 7-16 29.7 (memory; applied so in a read calculation). */
const MINIMUM_PRESSURE_PSF = 16;
/** Share of it in allowable stress design [-]: 0.6 W. */
const MINIMUM_PRESSURE_ASD = 0.6;

/** One class of posts as a plan checker would compute it. */
export interface CodeSpeeds {
  /** Speed by allowable stress, on the basis the design wind was entered in [m/s]. */
  readonly snapMps: number;
  readonly leanMps: number;
  readonly postMeetsMinimum: boolean;
  readonly footingMeetsMinimum: boolean;
}

/**
 * Speeds of one class on basis `code`: allowable stress, 15 ft floor on Kz, p50 depth, 0.6 W for ultimate and 1.0 W for
 * nominal speeds, and whether post and footing carry the least pressure over one full bay.
 * @param model a state at its medians (one belief point)
 * Source: NDS 2018 (memory), IBC 1807.3.2.1 (read), ASCE 7-16 29.3 and 29.7.
 */
export function codeSpeeds(model: StateModel, postClass: PostClass, day: CalendarDay, sound: boolean): CodeSpeeds {
  const { post, demands } = postClass.sample;
  const loss = sectionLossOn(model, { kind: postClass.kind, point: 0, dayNumber: dayNumber(day), sound });
  const allowable = allowableSnapResistance(sound ? soundPost(post) : post, loss);
  const known = groundAt(post.ground, model.points, 0);
  const ground = sound ? known : groundAfter(post.condition, known);
  const factor = windLoadFactor(model.site.wind.basis);
  const { run } = model.state;
  const leastForce = MINIMUM_PRESSURE_ASD * paFromPsf(MINIMUM_PRESSURE_PSF) * run.postSpacingM * solidHeight(run);
  const each = demands.map((demand) => {
    const postForce = Math.min(allowable.momentNm / demand.armM, allowable.shearN, allowable.railN);
    const footing = allowableFootingForce(model.site, ground, { section: post.wood.section, armM: demand.armM });
    return {
      snapMps: speedAtResistance(postForce / factor, demand.codeForcePerV2),
      leanMps: speedAtResistance(footing / factor, demand.codeForcePerV2),
      postMeetsMinimum: postForce >= leastForce,
      footingMeetsMinimum: footing >= leastForce,
    };
  });
  return {
    snapMps: Math.min(...each.map((one) => one.snapMps)),
    leanMps: Math.min(...each.map((one) => one.leanMps)),
    postMeetsMinimum: each.every((one) => one.postMeetsMinimum),
    footingMeetsMinimum: each.every((one) => one.footingMeetsMinimum),
  };
}
