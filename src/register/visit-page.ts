import { sql } from 'kysely';
import type { VisitState } from '../season/visit/visit.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { RegisterDb } from './record-store.ts';

/** Which visits a page lists. Days are both included; null: no limit. */
export interface VisitQuery {
  readonly states: readonly VisitState[];
  readonly crewRef: string | null;
  readonly siteRef: string | null;
  /** Visits with a day from this one on, and up to that one. */
  readonly from: CalendarDay | null;
  readonly to: CalendarDay | null;
  /** Visits whose last day is before this one. */
  readonly endedBefore: CalendarDay | null;
  /** 1 for the first page; one past the end is taken as the last. */
  readonly page: number;
}

/** One visit of the list. */
export interface VisitRow {
  readonly uid: string;
  readonly siteRef: string;
  readonly siteName: string;
  readonly crewRef: string;
  readonly firstDay: CalendarDay;
  readonly lastDay: CalendarDay;
  readonly startsAt: string | null;
  readonly state: VisitState;
  /** True where the office proposed it itself: no plan moves it. */
  readonly isOffices: boolean;
  readonly fences: number;
  /** Hours of the crew's people with the way [h]. */
  readonly personHours: number;
}

/** One page of visits. */
export interface VisitPage {
  readonly rows: readonly VisitRow[];
  readonly found: number;
  readonly page: number;
  readonly pages: number;
}

const PAGE_ROWS = 50;

function narrowed(db: RegisterDb, query: VisitQuery) {
  const { states, crewRef, siteRef, from, to, endedBefore } = query;
  let result = db.selectFrom('visits').where('state', 'in', states);
  if (crewRef !== null) result = result.where('crew_ref', '=', crewRef);
  if (siteRef !== null) result = result.where('site_ref', '=', siteRef);
  if (from !== null) result = result.where('last_day', '>=', from);
  if (to !== null) result = result.where('first_day', '<=', to);
  if (endedBefore !== null) result = result.where('last_day', '<', endedBefore);
  return result;
}

/** One page of the visits that fit, by first day, crew and uid. */
export async function listVisitPage(db: RegisterDb, query: VisitQuery): Promise<VisitPage> {
  const { found } = await narrowed(db, query)
    .select((eb) => eb.fn.countAll<number>().as('found'))
    .executeTakeFirstOrThrow();
  const pages = Math.max(1, Math.ceil(found / PAGE_ROWS));
  const page = Math.min(Math.max(1, query.page), pages);
  // the rows first and what hangs on them after: else it would be added up for every visit that fits
  const uids = await narrowed(db, query)
    .select('uid')
    .orderBy('first_day')
    .orderBy('crew_ref')
    .orderBy('uid')
    .limit(PAGE_ROWS)
    .offset((page - 1) * PAGE_ROWS)
    .execute();
  const rows = await db
    .selectFrom('visits')
    .innerJoin('sites', 'sites.ref', 'visits.site_ref')
    .where(
      'visits.uid',
      'in',
      uids.map(({ uid }) => uid),
    )
    .select((eb) => [
      'visits.uid as uid',
      'visits.site_ref as siteRef',
      'sites.name as siteName',
      'crew_ref as crewRef',
      'first_day as firstDay',
      'last_day as lastDay',
      'starts_at as startsAt',
      'state',
      'plan_number as planNumber',
      'travel_person_hours as travel',
      eb
        .selectFrom('visit_items')
        .select(sql<number>`count(*)`.as('fences'))
        .whereRef('visit_items.uid', '=', 'visits.uid')
        .where('visit_items.state', '<>', 'returned')
        .as('fences'),
      eb
        .selectFrom('visit_items')
        .select(sql<number>`coalesce(sum(person_hours), 0)`.as('work'))
        .whereRef('visit_items.uid', '=', 'visits.uid')
        .where('visit_items.state', '<>', 'returned')
        .as('work'),
    ])
    .orderBy('first_day')
    .orderBy('crew_ref')
    .orderBy('visits.uid')
    .execute();
  return {
    rows: rows.map(({ planNumber, travel, work, fences, ...row }) => ({
      ...row,
      isOffices: planNumber === null && row.state === 'proposed',
      fences: fences ?? 0,
      personHours: travel + (work ?? 0),
    })),
    found,
    page,
    pages,
  };
}
