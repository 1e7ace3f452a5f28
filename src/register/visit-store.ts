import type { MustRank } from '../season/plan/plan-problem.ts';
import type { Visit, VisitItem, VisitState, VisitWorks } from '../season/visit/visit.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { RegisterDb } from './record-store.ts';

/** Which visits are meant; all where nothing is said. */
export interface VisitFilter {
  readonly uids?: readonly string[] | undefined;
  /** Visits that serve one of these fences. */
  readonly fenceRefs?: readonly string[] | undefined;
  readonly crewRef?: string | undefined;
  readonly siteRef?: string | undefined;
  /** First and last day: visits any day of which lies between them. */
  readonly from?: CalendarDay | undefined;
  readonly to?: CalendarDay | undefined;
  readonly states?: readonly VisitState[] | undefined;
}

/** Who changed a visit and why; both may be empty. */
export interface VisitAct {
  readonly by: string;
  readonly because: string;
}

/** What became of a visit with one change. */
export interface VisitChange extends VisitAct, Pick<Visit, 'state' | 'firstDay' | 'lastDay' | 'crewRef' | 'sequence'> {
  readonly at: string;
}

type VisitRow = Awaited<ReturnType<typeof visitRows>>[number];
type ItemRow = Awaited<ReturnType<typeof itemRows>>[number];

const visitRows = (db: RegisterDb, filter: VisitFilter) => {
  const { uids, fenceRefs, crewRef, siteRef, from, to, states } = filter;
  let query = db.selectFrom('visits').selectAll();
  if (uids !== undefined) query = query.where('uid', 'in', uids);
  if (fenceRefs !== undefined) {
    const serving = db.selectFrom('visit_items').select('uid').where('fence_ref', 'in', fenceRefs);
    query = query.where('uid', 'in', serving);
  }
  if (crewRef !== undefined) query = query.where('crew_ref', '=', crewRef);
  if (siteRef !== undefined) query = query.where('site_ref', '=', siteRef);
  if (from !== undefined) query = query.where('last_day', '>=', from);
  if (to !== undefined) query = query.where('first_day', '<=', to);
  if (states !== undefined) query = query.where('state', 'in', states);
  return query.orderBy('first_day').orderBy('crew_ref').orderBy('uid').execute();
};

const itemRows = (db: RegisterDb, uids: readonly string[]) =>
  db.selectFrom('visit_items').selectAll().where('uid', 'in', uids).orderBy('uid').orderBy('fence_ref').execute();

const itemOf = (row: ItemRow): VisitItem => ({
  fenceRef: row.fence_ref,
  optionKey: row.option_key,
  works: JSON.parse(row.works) as readonly VisitWorks[],
  personHours: row.person_hours,
  price: row.price,
  mustRank: row.must_rank as MustRank,
});

const visitOf = (row: VisitRow, items: readonly VisitItem[]): Visit => ({
  uid: row.uid,
  siteRef: row.site_ref,
  crewRef: row.crew_ref,
  firstDay: row.first_day,
  lastDay: row.last_day,
  startsAt: row.starts_at,
  state: row.state,
  sequence: row.sequence,
  travelPersonHours: row.travel_person_hours,
  items,
  planId: row.plan_number,
  note: row.note,
  changedAt: row.changed_at,
});

/** Most visits whose items are asked for in one statement. */
const CHUNK_SIZE = 10_000;

/**
 * The visits that fit a filter, by first day, crew and uid. A visit that was done lists what was done of it: what went back
 * to the plan is no longer among its items.
 */
export async function listVisits(db: RegisterDb, filter: VisitFilter): Promise<readonly Visit[]> {
  const rows = await visitRows(db, filter);
  const items = new Map<string, VisitItem[]>();
  for (let start = 0; start < rows.length; start += CHUNK_SIZE) {
    const uids = rows.slice(start, start + CHUNK_SIZE).map(({ uid }) => uid);
    for (const row of await itemRows(db, uids)) {
      if (row.state === 'returned') continue;
      const ofVisit = items.get(row.uid);
      if (ofVisit) ofVisit.push(itemOf(row));
      else items.set(row.uid, [itemOf(row)]);
    }
  }
  return rows.map((row) => visitOf(row, items.get(row.uid) ?? []));
}

/** The visit of that uid; null where there is none. */
export async function readVisit(db: RegisterDb, uid: string): Promise<Visit | null> {
  const row = await db.selectFrom('visits').selectAll().where('uid', '=', uid).executeTakeFirst();
  if (!row) return null;
  const items = await itemRows(db, [uid]);
  return visitOf(row, items.filter(({ state }) => state !== 'returned').map(itemOf));
}

/** The uids that begin with a text, in order: one where somebody typed enough of it. */
export async function visitUidsFrom(db: RegisterDb, beginning: string): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('visits')
    .select('uid')
    .where((eb) => eb.fn('substr', ['uid', eb.val(1), eb.val(beginning.length)]), '=', beginning)
    .orderBy('uid')
    .execute();
  return rows.map(({ uid }) => uid);
}

/** What became of a visit, oldest first. */
export async function visitHistory(db: RegisterDb, uid: string): Promise<readonly VisitChange[]> {
  const rows = await db.selectFrom('visit_changes').selectAll().where('uid', '=', uid).orderBy('id').execute();
  return rows.map(({ at, state, first_day, last_day, crew_ref, sequence, by, because }) => ({
    at,
    state,
    firstDay: first_day,
    lastDay: last_day,
    crewRef: crew_ref,
    sequence,
    by,
    because,
  }));
}

/** First day of the latest visit in some states; null where there is none. */
export async function lastVisitDay(db: RegisterDb, states: readonly VisitState[]): Promise<CalendarDay | null> {
  const { last } = await db
    .selectFrom('visits')
    .select((eb) => eb.fn.max('first_day').as('last'))
    .where('state', 'in', states)
    .executeTakeFirstOrThrow();
  return last;
}

/** Number of the newest change of any visit, 0 before the first: as long as it stays, all visits are as they were. */
export async function newestVisitChange(db: RegisterDb): Promise<number> {
  const { newest } = await db
    .selectFrom('visit_changes')
    .select((eb) => eb.fn.max('id').as('newest'))
    .executeTakeFirstOrThrow();
  return newest ?? 0;
}

const itemRow = (uid: string, item: VisitItem) => ({
  uid,
  fence_ref: item.fenceRef,
  option_key: item.optionKey,
  works: JSON.stringify(item.works),
  person_hours: item.personHours,
  price: item.price,
  must_rank: item.mustRank,
  state: 'planned' as const,
});

/**
 * Creates a visit or replaces what changes of it, its items too unless it is done, and notes the change. Works within a
 * transaction of the caller. Throws (SQLite) where its site, its crew or a fence is not in the register.
 */
export async function storeVisit(tx: RegisterDb, visit: Visit, act: VisitAct): Promise<void> {
  const changing = {
    crew_ref: visit.crewRef,
    first_day: visit.firstDay,
    last_day: visit.lastDay,
    starts_at: visit.startsAt,
    state: visit.state,
    sequence: visit.sequence,
    travel_person_hours: visit.travelPersonHours,
    plan_number: visit.planId,
    note: visit.note,
    changed_at: visit.changedAt,
  };
  await tx
    .insertInto('visits')
    .values({ uid: visit.uid, site_ref: visit.siteRef, created_at: visit.changedAt, ...changing })
    .onConflict((conflict) => conflict.column('uid').doUpdateSet(changing))
    .execute();
  if (visit.state !== 'done') await tx.deleteFrom('visit_items').where('uid', '=', visit.uid).execute();
  if (visit.items.length > 0) {
    await tx
      .insertInto('visit_items')
      .values(visit.items.map((item) => itemRow(visit.uid, item)))
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
  await tx
    .insertInto('visit_changes')
    .values({
      uid: visit.uid,
      at: visit.changedAt,
      state: visit.state,
      first_day: visit.firstDay,
      last_day: visit.lastDay,
      crew_ref: visit.crewRef,
      sequence: visit.sequence,
      by: act.by,
      because: act.because,
    })
    .execute();
}
