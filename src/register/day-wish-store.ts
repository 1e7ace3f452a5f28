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

interface WishRow {
  readonly visit_uid: string;
  readonly owner_ref: string;
  readonly link_id: number;
  readonly week: string;
  readonly offered: string;
  readonly suits: string;
  readonly at: string;
}

const wishOf = (row: WishRow): DayWish => ({
  visitUid: row.visit_uid,
  ownerRef: row.owner_ref,
  linkId: row.link_id,
  week: row.week,
  offered: JSON.parse(row.offered) as readonly CalendarDay[],
  suits: JSON.parse(row.suits) as readonly CalendarDay[],
  at: row.at,
});

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

/** A mark with what its owner is called. */
export interface NamedDayWish extends DayWish {
  /** Null where the register has no such owner any more. */
  readonly ownerName: string | null;
  readonly siteRef: string;
}

/** The newest mark of each owner for each visit and week, the newest first, at most so many. */
export async function newestDayWishes(db: RegisterDb, limit: number): Promise<readonly NamedDayWish[]> {
  const newest = db
    .selectFrom('day_wishes')
    .select((eb) => eb.fn.max('id').as('id'))
    .groupBy(['visit_uid', 'owner_ref', 'week']);
  const rows = await db
    .selectFrom('day_wishes')
    .innerJoin('visits', 'visits.uid', 'day_wishes.visit_uid')
    .leftJoin('owners', 'owners.ref', 'day_wishes.owner_ref')
    .selectAll('day_wishes')
    .select(['owners.name as owner_name', 'visits.site_ref as site_ref'])
    .where('day_wishes.id', 'in', newest)
    .orderBy('day_wishes.id', 'desc')
    .limit(limit)
    .execute();
  return rows.map((row) => ({ ...wishOf(row), ownerName: row.owner_name, siteRef: row.site_ref }));
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
  return rows.map(wishOf);
}
