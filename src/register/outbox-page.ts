import type { Register } from './database.ts';
import { entryColumns, type OutboxEntry } from './outbox.ts';
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

/**
 * Messages of the outbox, newest first, a page at a time: each page begins where the one before ended, so that the thousandth costs as
 * little as the first.
 */
export async function listOutboxPage({ db }: Register, query: OutboxPageQuery): Promise<OutboxPage> {
  const { state, ownerRef, matter, before, limit } = query;
  let wanted = db
    .selectFrom('outbox')
    .select('id')
    .orderBy('id', 'desc')
    .limit(limit + 1);
  if (state !== undefined) wanted = wanted.where('state', '=', state);
  if (ownerRef !== undefined) wanted = wanted.where('owner_ref', '=', ownerRef);
  if (before !== undefined) wanted = wanted.where('id', '<', before);
  if (matter !== undefined) {
    wanted = wanted.where('id', 'in', (eb) =>
      eb
        .selectFrom('notices')
        .select('outbox_id')
        .where('notices.matter', '=', matter)
        .where('outbox_id', 'is not', null),
    );
  }
  const ids = (await wanted.execute()).map(({ id }) => id);
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
