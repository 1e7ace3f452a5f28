import { type CalendarDay, dayFromNumber, dayNumber } from '../units/calendar-day.ts';
import { rounded } from './band.ts';
import { BELIEF_DIMENSIONS, type BeliefDimension, type BeliefPoints, singlePoint } from './belief-points.ts';
import { designGust } from './design-gust.ts';
import type { FenceFacts, ForecastSettings, InstallDate } from './fence-facts.ts';
import { fenceStates, stateOn } from './fence-state.ts';
import { hazardCurve } from './hazard-curve.ts';
import { type ChangeEnd, sameText, type ValueText } from './input-change.ts';
import { normalCdf } from './normal-distribution.ts';
import { groupValue, postGroups } from './post-group.ts';
import { openingDay, seasonLabel } from './season-calendar.ts';
import { seasonDays } from './season-days.ts';
import type { SensitivityCase } from './sensitivity-case.ts';
import { recordedChanges } from './sensitivity-changes.ts';
import { isDateRange, type NarrowedBy, sensitivityUnknowns } from './sensitivity-unknowns.ts';
import { SENSITIVITY_YEARS_AHEAD, type ShortTime, shortTime } from './short-time.ts';
import { stateModel } from './state-model.ts';

/** Score of the 90th percentile of a standard normal variable [-]. */
const P90_SCORE = 1.2815515655446004;
/** A swing under this is none: three and a half days [a]. */
const LEAST_SWING_YEARS = 0.01;
/** A swing of a speed under this is none [m/s]. */
const LEAST_SWING_MPS = 0.01;

/** Scores of one unknown at its 10th, 50th and 90th percentile [-]. */
interface ScoreBand {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}
const PRIOR_SCORES: ScoreBand = { p10: -P90_SCORE, p50: 0, p90: P90_SCORE };

/** What is known of a fence's unknowns beyond their priors. */
export interface SensitivityBelief {
  /** Scores of the unknowns that evidence has moved; the prior's for the others. */
  readonly scores?: Partial<Record<BeliefDimension, ScoreBand>>;
  /** Whose read posts and learned values hold. */
  readonly base?: Parameters<typeof singlePoint>[2];
}

/** One end of a bar. */
export interface SensitivityEnd extends ShortTime {
  readonly label: ValueText;
}

/** How far one input moves the time at which a fence goes short. */
export interface SensitivityBar {
  readonly input: string;
  /** `unknown`: from the 10th to the 90th percentile of the belief. `recorded`: by a plausible error of the record. */
  readonly kind: 'unknown' | 'recorded';
  /** What can make an unknown better known; null for what is recorded. */
  readonly narrowedBy: NarrowedBy | null;
  /** The input at its lower value; at the recorded one where there is none lower. */
  readonly low: SensitivityEnd;
  readonly high: SensitivityEnd;
  /** Latest less earliest, an end beyond 60 years counted as 60 [a]. */
  readonly swingYears: number;
}

/** How far one unknown moves the speed at which a fence leans. */
interface LeanSwing {
  readonly input: string;
  readonly narrowedBy: NarrowedBy;
  /** Change of the lean speed as the unknown runs from its 10th to its 90th percentile [m/s]. */
  readonly swingMps: number;
}

/** What moves the short season of a fence, the input that moves it most first. */
export interface Sensitivity {
  readonly fenceRef: string;
  /** Day from which years are counted: the opening of season 1. */
  readonly fromDay: CalendarDay;
  readonly seasonOneLabel: string;
  /** Every unknown at its median, everything else as recorded; `label` in words. */
  readonly baseline: ShortTime & { readonly label: string };
  readonly bars: readonly SensitivityBar[];
  /** Inputs that do not move it. */
  readonly without: readonly string[];
  /** The unknowns that move the lean speed in season 1, the one that moves it most first. */
  readonly leanSwings: readonly LeanSwing[];
}

/** Lean speed of the posts the fence is judged by, with every unknown at one value [m/s]. */
function leanSpeed({ site, state }: SensitivityCase, point: BeliefPoints): number {
  const model = stateModel(site, state, point);
  const { line, ends } = postGroups(model.classes.classes);
  return groupValue((line ?? ends)!, model.leanMps, 'lowest')[0]!;
}

const yearsOrMost = ({ yearsAhead }: ShortTime): number => yearsAhead ?? SENSITIVITY_YEARS_AHEAD;

const bar = (
  named: Pick<SensitivityBar, 'input' | 'kind' | 'narrowedBy'>,
  low: SensitivityEnd,
  high: SensitivityEnd,
): SensitivityBar => ({ ...named, low, high, swingYears: rounded(Math.abs(yearsOrMost(high) - yearsOrMost(low)), 3) });

/**
 * How far each input moves the time at which a fence goes short, one at a time with all else at its median or as recorded
 * [a]: the unknowns of the belief from their 10th to their 90th percentile, recorded inputs by a plausible error of the
 * record. It looks at the present posts as they stand in season 1; evidence is not weighed anew for a moved input.
 * @param seasonOneYear calendar year in which season 1 opens
 * @param belief what evidence has made of the unknowns; their priors where left out
 * Source: one-at-a-time sensitivity (common practice); the errors of recorded inputs are judgement, see `PLAUSIBLE_ERRORS`.
 */
export function sensitivityOf(
  facts: FenceFacts,
  seasonOneYear: number,
  settings: ForecastSettings,
  belief: SensitivityBelief = {},
): Sensitivity {
  const { site } = facts;
  const seasonOneDay = seasonDays(facts, seasonOneYear).find(({ season }) => season === 1)!;
  const recorded: SensitivityCase = {
    site,
    state: stateOn(fenceStates(facts), seasonOneDay.day),
    gustMps: designGust(site.wind, hazardCurve(site.wind), settings.standingReturnPeriodYears).gustMps,
  };
  const fromDay = openingDay(site.seasonWindow, seasonOneYear);
  const bandOf = (dimension: BeliefDimension): ScoreBand => belief.scores?.[dimension] ?? PRIOR_SCORES;
  const medians: Partial<Record<BeliefDimension, number>> = Object.fromEntries(
    BELIEF_DIMENSIONS.map((dimension) => [dimension, bandOf(dimension).p50]),
  );
  const pointAt = (moved: Partial<Record<BeliefDimension, number>>): BeliefPoints =>
    singlePoint({ ...medians, ...moved }, normalCdf, belief.base);
  const timeOf = (at: SensitivityCase, moved: Partial<Record<BeliefDimension, number>> = {}): ShortTime =>
    shortTime(at, dayNumber(fromDay), pointAt(moved));
  const baseline = timeOf(recorded);

  const unknowns = sensitivityUnknowns(recorded);
  const bars = unknowns.map(({ dimension, input, narrowedBy, ...words }): SensitivityBar => {
    const end = (word: string, score: number): SensitivityEnd => {
      const text = dimension === 'install date' ? dayAtScore(recorded.state.built, score, word) : word;
      return { label: sameText(text), ...timeOf(recorded, { [dimension]: score }) };
    };
    const { p10, p90 } = bandOf(dimension);
    return bar({ input, kind: 'unknown', narrowedBy }, end(words.low, p10), end(words.high, p90));
  });
  const asRecorded: SensitivityEnd = { ...baseline, label: sameText('as recorded') };
  const ends = (change: ChangeEnd | null): SensitivityEnd =>
    change ? { label: change.label, ...timeOf(change.at) } : asRecorded;
  for (const { input, low, high } of recordedChanges(recorded)) {
    bars.push(bar({ input, kind: 'recorded', narrowedBy: null }, ends(low), ends(high)));
  }
  const moves = (each: SensitivityBar): boolean => each.swingYears >= LEAST_SWING_YEARS;
  const leanSwings = unknowns.map(({ dimension, input, narrowedBy }): LeanSwing => {
    const at = (score: number): number => leanSpeed(recorded, pointAt({ [dimension]: score }));
    const { p10, p90 } = bandOf(dimension);
    return { input, narrowedBy, swingMps: rounded(Math.abs(at(p90) - at(p10)), 3) };
  });
  return {
    fenceRef: facts.ref,
    fromDay,
    seasonOneLabel: seasonOneDay.label,
    baseline: { ...baseline, label: baselineLabel(facts, seasonOneYear, baseline) },
    bars: bars.filter(moves).sort((a, b) => b.swingYears - a.swingYears || (a.input < b.input ? -1 : 1)),
    without: bars.filter((each) => !moves(each)).map(({ input }) => input),
    leanSwings: leanSwings
      .filter(({ swingMps }) => swingMps >= LEAST_SWING_MPS)
      .sort((a, b) => b.swingMps - a.swingMps),
  };
}

/** The day that a score stands for within a range of install dates; the word where the build's date is known. */
const dayAtScore = (date: InstallDate, score: number, word: string): string => {
  const [from, to] = [dayNumber(date.earliest), dayNumber(date.latest)];
  return isDateRange(date) ? dayFromNumber(from + (to - from) * normalCdf(score)) : word;
};

function baselineLabel(facts: FenceFacts, seasonOneYear: number, { yearsAhead, fromNew }: ShortTime): string {
  if (yearsAhead === null) return `not short within ${SENSITIVITY_YEARS_AHEAD} years`;
  if (fromNew) return 'short from new';
  const label = seasonLabel(facts.site.seasonWindow, seasonOneYear + Math.ceil(yearsAhead));
  return yearsAhead < 0 ? `short since ${label}` : `short from ${label}`;
}
