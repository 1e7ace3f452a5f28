import { sql } from 'kysely';
import type { VisitState } from '../season/visit/visit.ts';
import type { VisitSpan } from '../season/visit/visits-that-stand.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { RegisterDb } from './record-store.ts';

/** Days and hours of a visit with what a list names it by. */
export interface ListedSpan extends VisitSpan {
  readonly uid: string;
  readonly siteRef: string;
  readonly state: VisitState;
}

/** Days and hours of the visits in some states that have a day between two days, both included; their works are not read. */
export async function listVisitSpans(
  db: RegisterDb,
  filter: { readonly from: CalendarDay; readonly to: CalendarDay; readonly states: readonly VisitState[] },
): Promise<readonly ListedSpan[]> {
  const { rows } = await sql<Omit<ListedSpan, 'items'> & { readonly work: number }>`
    select visits.uid as uid, site_ref as siteRef, crew_ref as crewRef, first_day as firstDay, last_day as lastDay,
      visits.state as state, travel_person_hours as travelPersonHours,
      coalesce(sum(case when visit_items.state <> 'returned' then person_hours end), 0) as work
    from visits left join visit_items on visit_items.uid = visits.uid
    where visits.state in (${sql.join(filter.states)}) and last_day >= ${filter.from} and first_day <= ${filter.to}
    group by visits.uid`.execute(db);
  return rows.map(({ work, ...span }) => ({ ...span, items: [{ personHours: work }] }));
}
