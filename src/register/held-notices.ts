import { type RawBuilder, sql } from 'kysely';
import type { Register } from './database.ts';
import type { RegisterDb } from './record-store.ts';
import type { HeldBy } from './sweep-tables.ts';

/** A notice that waits for the office. Times are ISO text in UTC. */
export interface HeldNotice {
  readonly id: number;
  readonly matter: string;
  readonly occasion: string;
  readonly fenceRef: string;
  readonly siteName: string;
  readonly ownerRef: string;
  readonly ownerName: string;
  readonly held: HeldBy;
  readonly createdAt: string;
}

/** Most rows named in one statement. */
const MOST_NAMED = 10_000;

/** Which held notices are meant; all of them where nothing is said. */
export interface HeldFilter {
  readonly matter?: string;
  readonly ownerRef?: string;
  readonly ids?: readonly number[];
  /** Only those whose number is not above it: what came after somebody looked. */
  readonly upTo?: number;
}

/** Numbers as a list that a statement takes as one value, however many they are. */
const listed = (ids: readonly number[]) => sql<number>`(select value from json_each(${JSON.stringify(ids)}))`;

/** Notices that were held and have no message. */
const notices = (db: RegisterDb) =>
  db
    .selectFrom('notices')
    .innerJoin('owners', 'owners.ref', 'notices.owner_ref')
    .innerJoin('fences', 'fences.ref', 'notices.fence_ref')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .select([
      'notices.id as id',
      'matter',
      'occasion',
      'fences.ref as fenceRef',
      'sites.name as siteName',
      'owners.ref as ownerRef',
      'owners.name as ownerName',
      sql<HeldBy>`held`.as('held'),
      'notices.created_at as createdAt',
    ])
    .where('held', 'is not', null)
    .where('outbox_id', 'is', null)
    .where('void_reason', 'is', null);

const waiting = (db: RegisterDb, filter: HeldFilter) => {
  let query = notices(db).where('released_at', 'is', null);
  if (filter.matter !== undefined) query = query.where('matter', '=', filter.matter);
  if (filter.ownerRef !== undefined) query = query.where('owners.ref', '=', filter.ownerRef);
  if (filter.ids !== undefined) query = query.where('notices.id', 'in', listed(filter.ids));
  if (filter.upTo !== undefined) query = query.where('notices.id', '<=', filter.upTo);
  return query;
};

/** How many notices of how many owners would be released. */
export async function countHeld({ db }: Register, filter: HeldFilter): Promise<Release> {
  const counts = await waiting(db, filter)
    .clearSelect()
    .select([sql<number>`count(*)`.as('notices'), sql<number>`count(distinct owners.ref)`.as('owners')])
    .executeTakeFirstOrThrow();
  return counts;
}

/** The notices that wait for the office, by owner, fence and number. */
export async function listHeldNotices({ db }: Register, filter: HeldFilter = {}): Promise<readonly HeldNotice[]> {
  return waiting(db, filter).orderBy('owners.ref').orderBy('fences.ref').orderBy('notices.id').execute();
}

/** Where a page of notices begins behind. */
export type NoticePlace = Pick<HeldNotice, 'ownerRef' | 'fenceRef' | 'id'>;

/** A page of the notices that wait for the office (`released` false), or of those that were released and have no message yet. */
export async function noticesAfter(
  { db }: Register,
  { matter, ownerRef, released }: Pick<HeldFilter, 'matter' | 'ownerRef'> & { readonly released: boolean },
  { after, limit }: { readonly after: NoticePlace | null; readonly limit: number },
): Promise<readonly HeldNotice[]> {
  // the page is cut by the index alone, before anything is joined to it
  const page = sql<number>`(
    select id from notices ${released ? sql`` : sql`indexed by notices_waiting`}
    where held is not null and released_at is ${released ? sql`not null` : sql`null`}
      and outbox_id is null and void_reason is null
      ${ownerRef === undefined ? sql`` : sql`and owner_ref = ${ownerRef}`}
      ${matter === undefined ? sql`` : sql`and matter = ${matter}`}
      ${after === null ? sql`` : sql`and (owner_ref, fence_ref, id) > (${after.ownerRef}, ${after.fenceRef}, ${after.id})`}
    order by owner_ref, fence_ref, id limit ${limit})`;
  return notices(db)
    .where('notices.id', 'in', page)
    .orderBy('notices.owner_ref')
    .orderBy('notices.fence_ref')
    .orderBy('notices.id')
    .execute();
}

/** Notices that were released and have no message yet: whatever keeps it from being written, they can be held again. */
export async function listReleasedUnwritten({ db }: Register): Promise<readonly HeldNotice[]> {
  return notices(db)
    .where('released_at', 'is not', null)
    .orderBy('owners.ref')
    .orderBy('fences.ref')
    .orderBy('notices.id')
    .execute();
}

/** Holds released notices again that have no message yet. Returns how many. */
export async function holdNoticesAgain({ db }: Register, ids: readonly number[]): Promise<number> {
  let held = 0;
  for (let from = 0; from < ids.length; from += MOST_NAMED) {
    const result = await db
      .updateTable('notices')
      .set({ released_at: null, covering: null })
      .where('id', 'in', ids.slice(from, from + MOST_NAMED))
      .where('held', 'is not', null)
      .where('released_at', 'is not', null)
      .where('outbox_id', 'is', null)
      .where('void_reason', 'is', null)
      .executeTakeFirst();
    held += Number(result.numUpdatedRows);
  }
  return held;
}

/** How much waits for the office, and the first of it. */
export interface HeldOverview {
  readonly notices: number;
  readonly owners: number;
  readonly dangerous: number;
  /** The highest of their numbers; 0 where nothing waits. */
  readonly newest: number;
  /** Those of danger first, then by owner, fence and number. */
  readonly first: readonly HeldNotice[];
}

/** How much waits for the office and the first of it, without reading all: after a first sweep that may be most of a register. */
export async function overviewOfHeld(
  register: Register,
  most: number,
  { matter, ownerRef }: Pick<HeldFilter, 'matter' | 'ownerRef'> = {},
): Promise<HeldOverview> {
  const { db } = register;
  const waiting = sql`notices indexed by notices_waiting
    where held is not null and released_at is null and outbox_id is null and void_reason is null
    ${ownerRef === undefined ? sql`` : sql`and owner_ref = ${ownerRef}`}
    ${matter === undefined ? sql`` : sql`and matter = ${matter}`}`;
  const counts = (
    await sql<Omit<HeldOverview, 'first'>>`
      select coalesce(sum(notices), 0) as notices, count(*) as owners, coalesce(sum(dangerous), 0) as dangerous,
        coalesce(max(newest), 0) as newest
      from (
        select count(*) as notices, count(case when matter = 'dangerous' then 1 end) as dangerous, max(id) as newest
        from ${waiting} group by owner_ref
      )`.execute(db)
  ).rows[0]!;
  const pick = async (which: RawBuilder<unknown>, count: number): Promise<readonly HeldNotice[]> => {
    if (count <= 0) return [];
    const found = await sql<{ id: number }>`
      select id from ${waiting} and ${which} order by owner_ref, fence_ref, id limit ${count}`.execute(db);
    const ids = found.rows.map(({ id }) => id);
    return ids.length === 0 ? [] : listHeldNotices(register, { ids });
  };
  const dangerous = counts.dangerous > 0 ? await pick(sql`matter = 'dangerous'`, most) : [];
  return { ...counts, first: [...dangerous, ...(await pick(sql`matter <> 'dangerous'`, most - dangerous.length))] };
}

/** An owner for whom notices wait, and how many things they are about. */
export interface HeldForOwner {
  readonly ownerRef: string;
  readonly ownerName: string;
  readonly channel: 'mail' | 'letter';
  readonly enrolled: boolean;
  readonly language: 'en' | 'es';
  readonly notices: number;
  /** Fences told of, and those of them that are dangerous. */
  readonly fences: number;
  readonly dangerous: number;
  /** Notices of visits. */
  readonly visits: number;
}

/**
 * The owners for whom notices wait, those of danger first, then by ref.
 * @param ofVisits the matters that visits cause
 */
export async function heldByOwner(
  { db }: Register,
  { matter, ownerRef, upTo }: Omit<HeldFilter, 'ids'>,
  ofVisits: readonly string[],
): Promise<readonly HeldForOwner[]> {
  const visits = sql`matter in (${sql.join(ofVisits)})`;
  const { rows } = await sql<Omit<HeldForOwner, 'enrolled'> & { readonly enrolled: number }>`
    select owners.ref as ownerRef, owners.name as ownerName, owners.channel as channel, owners.enrolled as enrolled,
      owners.language as language,
      count(*) as notices,
      count(distinct case when not ${visits} then fence_ref end) as fences,
      count(distinct case when matter = 'dangerous' then fence_ref end) as dangerous,
      count(case when ${visits} then 1 end) as visits
    from notices indexed by notices_waiting join owners on owners.ref = owner_ref
    where held is not null and released_at is null and outbox_id is null and void_reason is null
      ${ownerRef === undefined ? sql`` : sql`and owner_ref = ${ownerRef}`}
      ${matter === undefined ? sql`` : sql`and matter = ${matter}`}
      ${upTo === undefined ? sql`` : sql`and notices.id <= ${upTo}`}
    group by owner_ref order by dangerous > 0 desc, owner_ref`.execute(db);
  return rows.map((row) => ({ ...row, enrolled: row.enrolled === 1 }));
}

/** What was released. */
export interface Release {
  readonly notices: number;
  readonly owners: number;
}

/**
 * Releases held notices: they are written and sent with the next messages, by what the register says then. Once one
 * of an owner's first notices is released, later news of that owner comes through; first notices not named here stay held.
 * @param covering the office's sentence after the greeting; null for the usual one
 */
export async function releaseHeldNotices(
  register: Register,
  filter: HeldFilter,
  release: { readonly at: string; readonly covering: string | null },
): Promise<Release> {
  return register.db.transaction().execute(async (tx) => {
    const found = await listHeldNotices({ ...register, db: tx }, filter);
    const ids = found.map(({ id }) => id);
    const owners = [...new Set(found.map(({ ownerRef }) => ownerRef))];
    for (let from = 0; from < ids.length; from += MOST_NAMED) {
      await tx
        .updateTable('notices')
        .set({ released_at: release.at, covering: release.covering })
        .where('id', 'in', ids.slice(from, from + MOST_NAMED))
        .execute();
    }
    for (let from = 0; from < owners.length; from += MOST_NAMED) {
      await tx
        .updateTable('notices')
        .set({ held: 'kept back' })
        .where('owner_ref', 'in', owners.slice(from, from + MOST_NAMED))
        .where('held', '=', 'first sweep')
        .where('released_at', 'is', null)
        .execute();
    }
    return { notices: found.length, owners: owners.length };
  });
}
