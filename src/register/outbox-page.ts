import type { Register } from './database.ts';
import { entryColumns, type OutboxEntry } from './outbox.ts';
import type { RegisterDb } from './record-store.ts';
import type { OutboxState } from './sweep-tables.ts';

/** Which messages of the outbox are meant, and how many of them. */
export interface OutboxPageQuery {
  readonly state?: OutboxState;
  readonly ownerRef?: string;
  /** A matter that one of the message's notices is about. */
  readonly matter?: string;
  /** Only messages older than the one of this number. */
  readonly before?: number;
  readonly limit: number;
}

/** A page of messages, newest first. */
export interface OutboxPage {
  readonly entries: readonly OutboxEntry[];
  /** Number of the message before which the next page begins; null where there is none. */
  readonly next: number | null;
}

/** Numbers of the messages asked for, and one more. */
async function idsOf(db: RegisterDb, { state, ownerRef, before, limit }: OutboxPageQuery): Promise<readonly number[]> {
  let query = db
    .selectFrom('outbox')
    .select('id')
    .orderBy('id', 'desc')
    .limit(limit + 1);
  if (state !== undefined) query = query.where('state', '=', state);
  if (ownerRef !== undefined) query = query.where('owner_ref', '=', ownerRef);
  if (before !== undefined) query = query.where('id', '<', before);
  return (await query.execute()).map(({ id }) => id);
}

/** The same of messages about a matter: found by their notices, which are ordered by it. */
async function idsAbout(
  db: RegisterDb,
  { state, ownerRef, before, limit }: OutboxPageQuery,
  matter: string,
): Promise<readonly number[]> {
  let query = db
    .selectFrom('notices')
    .innerJoin('outbox', 'outbox.id', 'notices.outbox_id')
    .select('notices.outbox_id as id')
    .distinct()
    .where('matter', '=', matter)
    .where('notices.outbox_id', 'is not', null)
    .orderBy('notices.outbox_id', 'desc')
    .limit(limit + 1);
  if (state !== undefined) query = query.where('state', '=', state);
  if (ownerRef !== undefined) query = query.where('outbox.owner_ref', '=', ownerRef);
  if (before !== undefined) query = query.where('notices.outbox_id', '<', before);
  return (await query.execute()).flatMap(({ id }) => (id === null ? [] : [id]));
}

/**
 * Messages of the outbox, newest first, a page at a time: each page begins where the one before ended, so that the thousandth costs as
 * little as the first.
 */
export async function listOutboxPage({ db }: Register, query: OutboxPageQuery): Promise<OutboxPage> {
  const { limit } = query;
  const ids = await (query.matter === undefined ? idsOf(db, query) : idsAbout(db, query, query.matter));
  const shown = ids.slice(0, limit);
  if (shown.length === 0) return { entries: [], next: null };
  const entries = await db
    .selectFrom('outbox')
    .leftJoin('owners', 'owners.ref', 'outbox.owner_ref')
    .select(entryColumns)
    .where('outbox.id', 'in', shown)
    .orderBy('outbox.id', 'desc')
    .execute();
  return { entries, next: ids.length > limit ? (shown.at(-1) ?? null) : null };
}

/** The letters that were written last, newest first. */
export async function newestLetters(
  db: RegisterDb,
  limit: number,
): Promise<readonly { readonly id: number; readonly ownerName: string; readonly subject: string }[]> {
  return db
    .selectFrom('outbox')
    .leftJoin('owners', 'owners.ref', 'outbox.owner_ref')
    .select((eb) => ['outbox.id as id', eb.fn.coalesce('owners.name', eb.val('')).as('ownerName'), 'subject'])
    .where('outbox.channel', '=', 'letter')
    .orderBy('outbox.id', 'desc')
    .limit(limit)
    .execute();
}

/** A message with what it carries and how far it came. */
export interface OutboxDetail extends OutboxEntry {
  /** When the first try failed for now; null where none did. */
  readonly firstFailedAt: string | null;
  readonly notices: readonly {
    readonly id: number;
    readonly fenceRef: string;
    readonly matter: string;
    readonly createdAt: string;
    readonly releasedAt: string | null;
  }[];
}

/** One message with its notices; null where there is none of that number. */
export async function readOutboxDetail({ db }: Register, id: number): Promise<OutboxDetail | null> {
  const entry = await db
    .selectFrom('outbox')
    .leftJoin('owners', 'owners.ref', 'outbox.owner_ref')
    .select(entryColumns)
    .select('first_failed_at as firstFailedAt')
    .where('outbox.id', '=', id)
    .executeTakeFirst();
  if (!entry) return null;
  const notices = await db
    .selectFrom('notices')
    .select(['id', 'fence_ref as fenceRef', 'matter', 'created_at as createdAt', 'released_at as releasedAt'])
    .where('outbox_id', '=', id)
    .orderBy('fence_ref')
    .orderBy('id')
    .execute();
  return { ...entry, notices };
}
