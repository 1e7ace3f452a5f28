import { sql } from 'kysely';
import type { VisitState } from '../season/visit/visit.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { Register } from './database.ts';
import type { RegisterDb } from './record-store.ts';

/** How many notices wait until the office releases them, to how many owners. */
export interface HeldCount {
  readonly notices: number;
  readonly owners: number;
}

/** Counts the notices that wait for the office. */
export async function countHeldNotices({ db }: Register): Promise<HeldCount> {
  // left to itself the database reads every notice that has no message
  const { rows } = await sql<HeldCount>`
    select coalesce(sum(notices), 0) as notices, count(*) as owners from (
      select count(*) as notices from notices indexed by notices_waiting
      where held is not null and released_at is null and outbox_id is null and void_reason is null
      group by owner_ref
    )`.execute(db);
  return rows[0]!;
}

/** How many of the office's own notices are not dealt with yet. */
export async function countOfficeNotices({ db }: Register): Promise<number> {
  const row = await db
    .selectFrom('office_notices')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('settled_at', 'is', null)
    .executeTakeFirstOrThrow();
  return row.count;
}

/** How many visits in some states have a day between two days; null: no limit on that side. */
export async function countVisits(
  db: RegisterDb,
  filter: {
    readonly states: readonly VisitState[];
    readonly from: CalendarDay | null;
    readonly to: CalendarDay | null;
    /** Counts those only whose last day is not after `to`. */
    readonly ended?: boolean;
  },
): Promise<number> {
  let query = db
    .selectFrom('visits')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('state', 'in', filter.states);
  if (filter.from !== null) query = query.where('last_day', '>=', filter.from);
  if (filter.to !== null) query = query.where(filter.ended === true ? 'last_day' : 'first_day', '<=', filter.to);
  return (await query.executeTakeFirstOrThrow()).count;
}
