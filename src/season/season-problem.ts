import { addDays, type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import type { FenceCandidate, FenceCandidates } from './candidates.ts';
import { discountFactor } from './expected-loss.ts';
import type {
  MustRank,
  PlanAssignment,
  PlanCrew,
  PlanJob,
  PlanOption,
  PlanProblem,
  PlanPromise,
  WeekBar,
} from './plan/plan-problem.ts';
import type { FenceConsequence } from './snap-consequence.ts';
import type { WorksCatalogue } from './works-catalogue.ts';
import { barsOn, strictestRules, type WorksCalendar } from './works-window.ts';

/** The storm season whose risk the works of a plan are weighed by at one site: the one running, or next to open. */
export interface PlannedSeason {
  readonly opensOn: CalendarDay;
  readonly closesOn: CalendarDay;
  /** True where the site has no storm season: works are never late, only later. */
  readonly allYear: boolean;
}

/** A fence as the season plan sees it. */
export interface PlannedFence {
  readonly candidates: FenceCandidates;
  readonly siteRef: string;
  readonly region: string;
  readonly consequence: FenceConsequence;
  readonly calendar: WorksCalendar;
  readonly season: PlannedSeason;
  /** Posts that make it dangerous: broken, leaning or closed off, and not mended. */
  readonly dangerPosts: readonly number[];
  /** Its age when season 1 opens, where its rails and boards count as worn out then [a]; null where they do not. */
  readonly wornOutYears: number | null;
  readonly promised: PlanPromise | null;
  readonly previous: PlanAssignment | null;
}

/** What the plan of a season is made from. */
export interface SeasonInputs {
  /** Mondays, one after another; the first not before today. */
  readonly weeks: readonly CalendarDay[];
  readonly crews: readonly PlanCrew[];
  readonly fences: readonly PlannedFence[];
  readonly catalogue: WorksCatalogue;
  /** What it costs to do otherwise than the plan before said, a fence, in the register's currency; 0 or more. */
  readonly changePenalty: number;
}

/** Skill that treatment may ask for by law. */
const APPLICATOR = 'licensed-applicator';
/** Last day of a week on which crews go out, after its Monday. */
const LAST_WORK_DAY = 4;
const WORK_DAYS = [0, 1, 2, 3, LAST_WORK_DAY];

/** Part of what works are worth that each week of waiting takes off [-]. Source: judgement. */
const WAIT_SHARE = 0.001;
/** What a week with a dangerous post counts, in the register's currency. Source: judgement. */
const DANGER_WAIT = 100;

type Standings = Pick<FenceCandidates, 'standing' | 'endsStanding'>;

const isShort = ({ standing, endsStanding }: Standings): boolean =>
  [standing, endsStanding].some((each) => each?.startsWith('short'));
const isClosing = ({ standing, endsStanding }: Standings): boolean =>
  [standing, endsStanding].some((each) => each === 'closing');

/**
 * How strongly a fence must be served: 1 where a date was promised or posts are dangerous, 2 where it or its ends are short or
 * closing and much hangs on it (a pool barrier, a footpath), 3 where it or its ends are short, else 0.
 */
function mustRankOf({ candidates, consequence, dangerPosts, promised }: PlannedFence): MustRank {
  if (promised || dangerPosts.length > 0) return 1;
  const short = isShort(candidates);
  if (consequence !== 'ordinary' && (short || isClosing(candidates))) return 2;
  return short ? 3 : 0;
}

/** True where doing it leaves nothing dangerous, else nothing short; nor closing, where that alone is why it must be served. */
export function serves(candidate: FenceCandidate, fence: PlannedFence): boolean {
  if (candidate.kind === 'inspect') return false;
  const mended = new Set(candidate.mends);
  if (!fence.dangerPosts.every((post) => mended.has(post))) return false;
  if (fence.dangerPosts.length > 0) return true;
  if (isShort(candidate)) return false;
  return fence.consequence === 'ordinary' || isShort(fence.candidates) || !isClosing(candidate);
}

/** Share of the season still to come at the end of a day [-]: all of it before the opening, nothing after the close. */
function shareLeft({ opensOn, closesOn }: PlannedSeason, day: CalendarDay): number {
  const length = dayNumber(closesOn) - dayNumber(opensOn) + 1;
  const left = dayNumber(closesOn) - dayNumber(day);
  return Math.min(1, Math.max(0, left / length));
}

/**
 * What it is worth to do something in a week less its price: in full before the season opens; once it runs, its part of
 * this season's drop shrinks evenly with the days that are left (model choice). Each week of waiting takes a little off,
 * for gusts come outside the season too, and more where posts are dangerous.
 */
function benefitIn(candidate: FenceCandidate, fence: PlannedFence, at: { friday: CalendarDay; week: number }): number {
  const share = shareLeft(fence.season, at.friday);
  const worth = ((): number => {
    if (candidate.kind === 'inspect') return (candidate.evsi ?? 0) * share;
    if (!candidate.drop) return 0;
    const { toHorizon, ifLate } = candidate.drop;
    return ifLate + (toHorizon - ifLate) * share;
  })();
  const waits = fence.dangerPosts.length > 0 && serves(candidate, fence) ? DANGER_WAIT : 0;
  return worth - at.week * (WAIT_SHARE * Math.max(0, worth) + waits) - candidate.cost.price;
}

const REPLACES: readonly string[] = ['post-swap', 'rebuild'];

/**
 * What the same replacement is worth a season later, where it is worth more then: what it still saves, less its price put
 * off by a year. 0 where it is not, for what replaces nothing, and where the fence has to be served now.
 */
function worthOfWaiting(candidate: FenceCandidate, fence: PlannedFence): number {
  if (candidate.kind === 'inspect' || !candidate.drop || mustRankOf(fence) > 0) return 0;
  if (!candidate.option.parts.some(({ kind }) => REPLACES.includes(kind))) return 0;
  const { drop, cost } = candidate;
  const { terms } = fence.candidates;
  const later = drop.ifLate - cost.price * discountFactor(terms.yearlyDiscountRate, 1);
  return later > Math.max(0, drop.toHorizon - cost.price) ? later : 0;
}

function optionOf(candidate: FenceCandidate, fence: PlannedFence, { weeks, catalogue }: SeasonInputs): PlanOption {
  const kinds = candidate.kind === 'inspect' ? (['inspect'] as const) : candidate.option.parts.map(({ kind }) => kind);
  const rules = strictestRules(kinds, catalogue);
  const { calendar, season } = fence;
  const barsIn = (monday: CalendarDay): readonly WeekBar[] => {
    const friday = addDays(monday, LAST_WORK_DAY);
    // between the two only frost can come and go
    const days = rules.notOnFrozenGround && calendar.frozen ? WORK_DAYS : [0, LAST_WORK_DAY];
    const bars = new Set(days.flatMap((day) => barsOn(rules, calendar, addDays(monday, day))));
    if (season.allYear) bars.delete('cure-time');
    else if (friday >= calendar.opensOn) bars.add('closed');
    return [...bars];
  };
  const waiting = worthOfWaiting(candidate, fence);
  return {
    key: candidate.key,
    personHours: candidate.cost.personHours,
    cost: candidate.cost.price,
    benefitByWeek: weeks.map(
      (monday, week) => benefitIn(candidate, fence, { friday: addDays(monday, LAST_WORK_DAY), week }) - waiting,
    ),
    barsByWeek: weeks.map(barsIn),
    skill: rules.licensedApplicator ? APPLICATOR : null,
    satisfiesMust: serves(candidate, fence),
    note: waiting > 0 ? 'cheaper-to-replace-next-year' : null,
  };
}

/** One fence as a job of the plan: everything that could be done at it, week by week. */
const jobOf = (fence: PlannedFence, inputs: SeasonInputs): PlanJob => ({
  ref: fence.candidates.fenceRef,
  siteRef: fence.siteRef,
  region: fence.region,
  mustRank: mustRankOf(fence),
  promised: fence.promised,
  previous: fence.previous,
  options: fence.candidates.candidates.map((candidate) => optionOf(candidate, fence, inputs)),
});

/** The problem that the season plan solves, its jobs in the order of the fences. */
export const seasonProblem = (inputs: SeasonInputs): PlanProblem => ({
  weeks: inputs.weeks,
  crews: inputs.crews,
  jobs: inputs.fences.map((fence) => jobOf(fence, inputs)),
  changePenalty: inputs.changePenalty,
});
