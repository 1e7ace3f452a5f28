import type { CalendarDay } from '../../units/calendar-day.ts';

/** Why works cannot be done in a week, before any crew is asked. */
export const WEEK_BARS = ['locate-notice', 'cure-time', 'frozen-ground', 'closed'] as const;
export type WeekBar = (typeof WEEK_BARS)[number];

/** What the caller knows of works that do not pay this season. */
type OptionNote = 'cheaper-to-replace-next-year';

/** How strongly a fence must be served: 1 a promised date or danger, 2 high consequence, 3 short; 0 only where it pays. */
export type MustRank = 0 | 1 | 2 | 3;

/** The way of a crew to one site and back, once a visit. */
interface CrewTravel {
  readonly siteRef: string;
  /** Hours of all its people on the road, a visit [h]. */
  readonly personHours: number;
  /** What the way costs, a visit, in the register's currency. */
  readonly cost: number;
}

/** A crew, as the plan sees it. */
export interface PlanCrew {
  readonly ref: string;
  /** Hours of its people it can work and travel in each week, net of days off and weather reserve [h]. */
  readonly personHoursByWeek: readonly number[];
  readonly skills: readonly string[];
  readonly languages: readonly string[];
  /** One way a site; the crew is never sent to a site that is not among them. */
  readonly travel: readonly CrewTravel[];
}

/** One thing that could be done at a fence: works, or a combination of works, done in one visit. */
export interface PlanOption {
  readonly key: string;
  /** Hours of the crew's people at the fence, without the way [h]. */
  readonly personHours: number;
  /** What it costs the office, in the register's currency; carried to the plan, already within the benefit. */
  readonly cost: number;
  /** Drop in expected loss less the cost, done in each week, in the register's currency; may be negative. */
  readonly benefitByWeek: readonly number[];
  /** What bars each week; a week with an empty list is allowed. */
  readonly barsByWeek: readonly (readonly WeekBar[])[];
  readonly skill: string | null;
  /** True where doing it serves the fence's must; an inspection may or may not. */
  readonly satisfiesMust: boolean;
  readonly note: OptionNote | null;
}

/** A date that was promised to the owner: it is kept, or reported as one that cannot be. */
export interface PlanPromise {
  readonly week: CalendarDay;
  readonly crewRef: string | null;
  readonly optionKey: string | null;
}

/** What the plan before said of a fence. */
export interface PlanAssignment {
  readonly week: CalendarDay;
  readonly crewRef: string;
  readonly optionKey: string;
}

/** One fence with all that could be done at it; at most one option is chosen. */
export interface PlanJob {
  readonly ref: string;
  readonly siteRef: string;
  /** The site's own label; carried along, the plan does not depend on it. */
  readonly region: string;
  readonly mustRank: MustRank;
  readonly promised: PlanPromise | null;
  readonly previous: PlanAssignment | null;
  readonly options: readonly PlanOption[];
}

/** Everything a season plan is made from. */
export interface PlanProblem {
  /** The Mondays the weeks begin with, one after another. */
  readonly weeks: readonly CalendarDay[];
  readonly crews: readonly PlanCrew[];
  readonly jobs: readonly PlanJob[];
  /** What it costs to do otherwise than the plan before said, a fence, in the register's currency; 0 or more. */
  readonly changePenalty: number;
}
