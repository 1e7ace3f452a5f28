import type { CalendarDay } from '../../units/calendar-day.ts';
import type { CatalogueKind } from '../catalogue-entry.ts';
import type { MustRank } from '../plan/plan-problem.ts';

/**
 * Where a visit stands: `proposed` by a plan that was accepted, `confirmed` on a promised day, `done`, `missed` (its fences go
 * back to the plan) or `cancelled`.
 */
export const VISIT_STATES = ['proposed', 'confirmed', 'done', 'missed', 'cancelled'] as const;
export type VisitState = (typeof VISIT_STATES)[number];

/** One kind of thing to do at a fence, and at which posts. */
export interface VisitWorks {
  readonly kind: CatalogueKind;
  /** Numbers of the posts, ascending; of added posts those between which one is set: the lower number of each bay. */
  readonly posts: readonly number[];
  /** Posts that it touches or sets; what catalogue quantities are counted by. */
  readonly postCount: number;
}

/** What a visit does at one fence. */
export interface VisitItem {
  readonly fenceRef: string;
  /** Key of the option that the plan chose, as `post-swap:4,5+footing-reset:4`. */
  readonly optionKey: string;
  /** In the order in which they are done. */
  readonly works: readonly VisitWorks[];
  /** Hours of the crew's people at the fence, without the way [h]. */
  readonly personHours: number;
  /** What the owner is asked for, before tax, in the register's currency. */
  readonly price: number;
  readonly mustRank: MustRank;
}

/** One crew at one site on a day, or on several days in a row. */
export interface Visit {
  /** Never given twice; the same through every change. */
  readonly uid: string;
  readonly siteRef: string;
  readonly crewRef: string;
  readonly firstDay: CalendarDay;
  /** The same as the first for a visit of one day. */
  readonly lastDay: CalendarDay;
  /** Local time at the site at which the crew comes, as `08:30`; null: some time that day. */
  readonly startsAt: string | null;
  readonly state: VisitState;
  /** Grows by one with every change that whoever has it in a calendar must see; from 0. */
  readonly sequence: number;
  /** Hours of the crew's people on the road, there and back [h]. */
  readonly travelPersonHours: number;
  /** In the order of the fences' refs; at least one. */
  readonly items: readonly VisitItem[];
  /** The season plan it came from; null for one that the office laid itself: while it stands no plan moves it. */
  readonly planId: number | null;
  /** Words of the office for the crew; may be empty. */
  readonly note: string;
  /** When it was last changed (ISO 8601, UTC). */
  readonly changedAt: string;
}
