import type { CalendarDay } from '../units/calendar-day.ts';
import type { RegisterDb } from './record-store.ts';

/** Which days offered for a visit to the fences of several owners suit one of them. */
export interface DayWish {
  readonly visitUid: string;
  readonly ownerRef: string;
  readonly linkId: number;
  /** Monday of the week that was offered. */
  readonly week: CalendarDay;
  readonly offered: readonly CalendarDay[];
  /** Of those offered; empty where none suits. */
  readonly suits: readonly CalendarDay[];
  /** ISO 8601, UTC. */
  readonly at: string;
}

/** Stores what an owner marked; what the owner marked before stays, and counts no longer. */
export async function addDayWish(db: RegisterDb, wish: DayWish): Promise<void> {
  await db
    .insertInto('day_wishes')
    .values({
      visit_uid: wish.visitUid,
      owner_ref: wish.ownerRef,
      link_id: wish.linkId,
      week: wish.week,
      offered: JSON.stringify(wish.offered),
      suits: JSON.stringify(wish.suits),
      at: wish.at,
    })
    .execute();
}

/** The visits, proposed and not over, whose days some owner has marked. */
export async function proposedWithWishes(db: RegisterDb, today: CalendarDay): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('visits')
    .select('uid')
    .where('state', '=', 'proposed')
    .where('last_day', '>=', today)
    .where('uid', 'in', db.selectFrom('day_wishes').select('visit_uid'))
    .execute();
  return rows.map(({ uid }) => uid);
}

/** What counts of the marks for some visits: the newest of each owner for each visit and week, oldest first. */
export async function listDayWishes(db: RegisterDb, visitUids: readonly string[]): Promise<readonly DayWish[]> {
  if (visitUids.length === 0) return [];
  const newest = db
    .selectFrom('day_wishes')
    .select((eb) => eb.fn.max('id').as('id'))
    .where('visit_uid', 'in', visitUids)
    .groupBy(['visit_uid', 'owner_ref', 'week']);
  const rows = await db.selectFrom('day_wishes').selectAll().where('id', 'in', newest).orderBy('id').execute();
  return rows.map((row) => ({
    visitUid: row.visit_uid,
    ownerRef: row.owner_ref,
    linkId: row.link_id,
    week: row.week,
    offered: JSON.parse(row.offered) as readonly CalendarDay[],
    suits: JSON.parse(row.suits) as readonly CalendarDay[],
    at: row.at,
  }));
}
