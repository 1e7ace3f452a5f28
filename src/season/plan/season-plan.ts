import type { CalendarDay } from '../../units/calendar-day.ts';
import type { MustRank, WeekBar } from './plan-problem.ts';

/** Why something is not in the plan; the words are made elsewhere. */
export type LeftOutReason =
  // no crew could be asked
  | 'locate-notice-too-late'
  | 'cure-time-too-late'
  | 'ground-frozen'
  | 'weeks-closed'
  | 'no-crew-with-skill'
  | 'no-crew-goes-to-site'
  | 'too-far-for-any-crew'
  | 'longer-than-any-crew-week'
  // it does not pay
  | 'costs-more-than-it-saves'
  | 'cheaper-to-replace-next-year'
  | 'travel-costs-more-than-it-saves'
  // something else has the place
  | 'no-crew-hours'
  | 'another-option-is-better'
  | 'kept-as-planned-before'
  | 'promised-otherwise'
  // it does not do what must be done
  | 'does-not-serve-the-must'
  | 'nothing-to-do';

/** Why a promise cannot be kept. */
export type BrokenPromiseReason =
  | 'week-outside-plan'
  | 'crew-unknown'
  | 'option-unknown'
  | 'week-barred'
  | 'no-crew-with-skill'
  | 'no-crew-goes-to-site'
  | 'longer-than-the-crew-week'
  | 'hours-go-to-other-promises';

/** What a visit does at one fence. */
export interface VisitItem {
  readonly jobRef: string;
  readonly optionKey: string;
  readonly personHours: number;
  readonly cost: number;
  readonly benefit: number;
  readonly mustRank: MustRank;
  readonly promised: boolean;
}

/** One crew at one site in one week. */
export interface PlannedVisit {
  readonly week: CalendarDay;
  readonly crewRef: string;
  readonly siteRef: string;
  readonly travelPersonHours: number;
  readonly travelCost: number;
  /** In the order of the fences' refs; at least one. */
  readonly items: readonly VisitItem[];
}

/** How far one stage got, and how far any plan could that gets as far in the stages before it. */
export interface StageResult {
  readonly stage: 'promised' | 'must-1' | 'must-2' | 'must-3' | 'benefit';
  /** Fences, or in the last stage money: benefit less ways less change penalties. */
  readonly value: number;
  readonly bound: number;
  /** (bound - value) / |bound|; 0 where they are equal. */
  readonly gap: number;
}

/** A fence without works in the plan, or an option that was not the one chosen, with what stands in its way. */
interface LeftOut {
  readonly jobRef: string;
  readonly optionKey: string;
  readonly reason: LeftOutReason;
}

/** A week of a crew that could do something, hours aside [h]. */
export interface CrewWeek {
  readonly week: CalendarDay;
  readonly crewRef: string;
  /** At the fence, and on the way where the crew is not at the site anyway. */
  readonly neededHours: number;
  /** How much of that is the way. */
  readonly wayHours: number;
  /** What the plan leaves of the week. */
  readonly leftHours: number;
  readonly thereAreHours: number;
  /** What it would be worth there, its price and its way taken off, in the register's currency. */
  readonly worth: number;
}

/** The numbers behind the reason for which nothing is done at a fence: of the works that came nearest. */
export interface NearestOption {
  readonly optionKey: string;
  /** Weeks of the plan, and those in which no rule bars the works. */
  readonly weeks: number;
  readonly openWeeks: number;
  /** Of each rule how many weeks it bars, the first and the last of them; a week may be barred by several. */
  readonly bars: readonly {
    readonly bar: WeekBar;
    readonly weeks: number;
    readonly firstWeek: CalendarDay;
    readonly lastWeek: CalendarDay;
  }[];
  /** The week of an able crew in which the fewest hours are missing; null where no crew could do it in an open week. */
  readonly best: CrewWeek | null;
  /** Works at the fence that would do, and how many of them rules bar in every week. */
  readonly options: number;
  readonly barredOptions: number;
}

/** A fence for which the plan does nothing. */
export interface UnservedJob {
  readonly jobRef: string;
  readonly mustRank: MustRank;
  readonly reason: LeftOutReason;
  /** Null where there are no works to speak of. */
  readonly nearest: NearestOption | null;
}

/** The weeks of the crews, how good they are at least, and what is not in them. */
export interface SeasonPlan {
  /** By week, crew and site. */
  readonly visits: readonly PlannedVisit[];
  readonly stages: readonly StageResult[];
  /** Whether one problem held the whole plan, or it was searched in parts against a relaxation. */
  readonly method: 'whole' | 'in-parts';
  readonly counts: {
    readonly solves: number;
    readonly nodes: number;
    readonly iterations: number;
    readonly steps: number;
  };
  /** True where time ran out before the counts did: the plan is sound, but another run may give another one. */
  readonly safetyTimeStruck: boolean;
  /** Fences that had an assignment before and now have another or none. */
  readonly changedJobRefs: readonly string[];
  readonly brokenPromises: readonly { readonly jobRef: string; readonly reason: BrokenPromiseReason }[];
  /** Every fence without works. */
  readonly unserved: readonly UnservedJob[];
  /** Every option that was not chosen. */
  readonly leftOut: readonly LeftOut[];
}
