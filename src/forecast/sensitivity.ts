import { type CalendarDay, DAYS_PER_YEAR, dayFromNumber, dayNumber } from '../units/calendar-day.ts';
import { rounded } from './band.ts';
import { BELIEF_DIMENSIONS, type BeliefDimension, singlePoint } from './belief-points.ts';
import { designGust } from './design-gust.ts';
import type { FenceFacts, ForecastSettings, InstallDate } from './fence-facts.ts';
import { fenceStates, stateOn } from './fence-state.ts';
import { hazardCurve } from './hazard-curve.ts';
import { normalCdf } from './normal-distribution.ts';
import { groupValue, postGroups } from './post-group.ts';
import { openingDay, seasonLabel } from './season-calendar.ts';
import { middleDay, seasonDays } from './season-days.ts';
import { type InputChange, recordedChanges, type SensitivityCase, type ValueText } from './sensitivity-changes.ts';
import { classValues, stateModel } from './state-model.ts';
import { groundIsKnown } from './unknown-priors.ts';

/** Score of the 90th percentile of a standard normal variable [-]. */
const P90_SCORE = 1.2815515655446004;
/** Years after season 1 beyond which a fence counts as not going short [a]. */
export const SENSITIVITY_YEARS_AHEAD = 60;
/** A swing under this is none: three and a half days [a]. */
const LEAST_SWING_YEARS = 0.01;

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

/** When a fence goes short with its inputs at given values. */
export interface ShortTime {
  /** Years from the opening of season 1, negative before it [a]; null where not within 60. */
  readonly yearsAhead: number | null;
  /** True where sound wood was already short: the time is that of the build. */
  readonly fromNew: boolean;
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
  /** The input at its lower value; at the recorded one where there is none lower. */
  readonly low: SensitivityEnd;
  readonly high: SensitivityEnd;
  /** Latest less earliest, an end beyond 60 years counted as 60 [a]. */
  readonly swingYears: number;
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
}

interface Unknown {
  readonly dimension: BeliefDimension;
  readonly input: string;
  readonly low: string;
  readonly high: string;
}

const UNKNOWNS: Readonly<Record<BeliefDimension, Omit<Unknown, 'dimension'>>> = {
  pace: { input: 'rot pace', low: 'slow, 1 in 10', high: 'fast, 1 in 10' },
  'fibre strength': { input: 'fibre strength', low: 'weak, 1 in 10', high: 'strong, 1 in 10' },
  footing: { input: 'footing strength', low: 'weak, 1 in 10', high: 'strong, 1 in 10' },
  'permanent load': { input: 'shelter and shape', low: 'light load, 1 in 10', high: 'heavy load, 1 in 10' },
  'install date': { input: 'install date', low: 'early, 1 in 10', high: 'late, 1 in 10' },
  embedment: { input: 'embedment', low: 'shallow, 1 in 10', high: 'deep, 1 in 10' },
  'footing diameter': { input: 'footing diameter', low: 'narrow, 1 in 10', high: 'wide, 1 in 10' },
};

const isRange = (date: InstallDate): boolean => date.earliest !== date.latest;

/** The unknowns that a fence has: the footing's measures and the install date only where they are not recorded. */
function unknownsOf(at: SensitivityCase): readonly Unknown[] {
  const { posts, built } = at.state;
  const guessed = posts.some((post) => !groundIsKnown(post.ground));
  const asked: Partial<Record<BeliefDimension, boolean>> = {
    'install date': isRange(built) || posts.some((post) => isRange(post.installed)),
    embedment: posts.some((post) => post.ground.embedmentM === null),
    'footing diameter': guessed && posts.some((post) => post.ground.footingDiameterM === null),
  };
  return BELIEF_DIMENSIONS.filter((dimension) => asked[dimension] ?? true).map((dimension) => ({
    dimension,
    ...UNKNOWNS[dimension],
  }));
}

/** Snap speed of the posts the fence is judged by, over time, with every unknown at one score [m/s]. */
function snapOverTime(
  at: SensitivityCase,
  scores: Partial<Record<BeliefDimension, number>>,
  belief: SensitivityBelief,
) {
  const model = stateModel(at.site, at.state, singlePoint(scores, normalCdf, belief.base));
  const { line, ends } = postGroups(model.classes.classes);
  const group = (line ?? ends)!;
  return (dayNumbered: number, sound: boolean): number =>
    groupValue(group, classValues(model, dayFromNumber(dayNumbered), sound).snapMps, 'lowest')[0]!;
}

/**
 * When the present posts first hold less than the design gust: scanned by years from their build, straight between them.
 * @param fromDay day number from which years are counted
 */
function shortTime(at: SensitivityCase, fromDay: number, snapMps: (day: number, sound: boolean) => number): ShortTime {
  const dayOf = (years: number): number => fromDay + years * DAYS_PER_YEAR;
  const builtYears = (dayNumber(middleDay(at.state.built)) - fromDay) / DAYS_PER_YEAR;
  let years = builtYears;
  let speed = snapMps(dayOf(years), true);
  if (speed < at.gustMps) return { yearsAhead: rounded(builtYears, 3), fromNew: true };
  while (years < SENSITIVITY_YEARS_AHEAD) {
    const next = Math.min(SENSITIVITY_YEARS_AHEAD, Math.floor(years + 1));
    const nextSpeed = snapMps(dayOf(next), false);
    if (nextSpeed < at.gustMps) {
      const part = (speed - at.gustMps) / (speed - nextSpeed);
      return { yearsAhead: rounded(years + part * (next - years), 3), fromNew: false };
    }
    [years, speed] = [next, nextSpeed];
  }
  return { yearsAhead: null, fromNew: false };
}

const yearsOrMost = ({ yearsAhead }: ShortTime): number => yearsAhead ?? SENSITIVITY_YEARS_AHEAD;

const bar = (
  named: Pick<SensitivityBar, 'input' | 'kind'>,
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
  const timeOf = (at: SensitivityCase, moved: Partial<Record<BeliefDimension, number>> = {}): ShortTime =>
    shortTime(at, dayNumber(fromDay), snapOverTime(at, { ...medians, ...moved }, belief));
  const baseline = timeOf(recorded);

  const bars = unknownsOf(recorded).map(({ dimension, ...unknown }): SensitivityBar => {
    const end = (word: string, score: number): SensitivityEnd => {
      const text = dimension === 'install date' ? dayAtScore(recorded.state.built, score, word) : word;
      return { label: { us: text, metric: text }, ...timeOf(recorded, { [dimension]: score }) };
    };
    const { p10, p90 } = bandOf(dimension);
    return bar({ input: unknown.input, kind: 'unknown' }, end(unknown.low, p10), end(unknown.high, p90));
  });
  const asRecorded: SensitivityEnd = { ...baseline, label: { us: 'as recorded', metric: 'as recorded' } };
  const ends = (change: InputChange['low']): SensitivityEnd =>
    change ? { label: change.label, ...timeOf(change.at) } : asRecorded;
  for (const { input, low, high } of recordedChanges(recorded)) {
    bars.push(bar({ input, kind: 'recorded' }, ends(low), ends(high)));
  }
  const moves = (each: SensitivityBar): boolean => each.swingYears >= LEAST_SWING_YEARS;
  return {
    fenceRef: facts.ref,
    fromDay,
    seasonOneLabel: seasonOneDay.label,
    baseline: { ...baseline, label: baselineLabel(facts, seasonOneYear, baseline) },
    bars: bars.filter(moves).sort((a, b) => b.swingYears - a.swingYears || (a.input < b.input ? -1 : 1)),
    without: bars.filter((each) => !moves(each)).map(({ input }) => input),
  };
}

/** The day that a score stands for within a range of install dates; the word where the build's date is known. */
const dayAtScore = (date: InstallDate, score: number, word: string): string => {
  const [from, to] = [dayNumber(date.earliest), dayNumber(date.latest)];
  return isRange(date) ? dayFromNumber(from + (to - from) * normalCdf(score)) : word;
};

function baselineLabel(facts: FenceFacts, seasonOneYear: number, { yearsAhead, fromNew }: ShortTime): string {
  if (yearsAhead === null) return `not short within ${SENSITIVITY_YEARS_AHEAD} years`;
  if (fromNew) return 'short from new';
  const label = seasonLabel(facts.site.seasonWindow, seasonOneYear + Math.ceil(yearsAhead));
  return yearsAhead < 0 ? `short since ${label}` : `short from ${label}`;
}
