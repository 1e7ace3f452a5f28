import { sql } from 'kysely';
import type { Register } from './database.ts';
import type { OutboxState, WaitsFor } from './sweep-tables.ts';

/** A message of the outbox, without its bytes. Times are ISO text in UTC. */
export interface OutboxEntry {
  readonly id: number;
  readonly messageId: string;
  /** Null for a mail to the office itself. */
  readonly ownerRef: string | null;
  /** `the office` for a mail to itself. */
  readonly ownerName: string;
  readonly channel: 'mail' | 'letter';
  readonly envelopeTo: string | null;
  readonly subject: string;
  readonly sha256: string;
  readonly state: OutboxState;
  readonly attempts: number;
  readonly dueAt: string | null;
  readonly lastReply: string | null;
  readonly sentAt: string | null;
  readonly createdAt: string;
  readonly envelopeFrom: string | null;
  /** What keeps a queued message back; null where nothing does. */
  readonly heldBy: WaitsFor | 'stopped address' | null;
  /** Who posted a letter, empty where nobody said, and on which day; null where it was not posted. */
  readonly postedBy: string;
  readonly postedOn: string | null;
}

/** What is read of each message. */
export const entryColumns = [
  'outbox.id as id',
  'message_id as messageId',
  'outbox.owner_ref as ownerRef',
  sql<string>`coalesce(owners.name, 'the office')`.as('ownerName'),
  'outbox.channel as channel',
  'envelope_to as envelopeTo',
  'subject',
  'sha256',
  'state',
  'attempts',
  'due_at as dueAt',
  'last_reply as lastReply',
  'sent_at as sentAt',
  'outbox.created_at as createdAt',
  'envelope_from as envelopeFrom',
  'posted_by as postedBy',
  'posted_on as postedOn',
  sql<OutboxEntry['heldBy']>`case when state <> 'queued' then null when exists (
      select 1 from stopped_addresses where resumed_at is null and address = lower(envelope_to)
    ) then 'stopped address' else waits_for end`.as('heldBy'),
] as const;

/** Messages of the outbox, newest first, in one state or (undefined) in all. */
export async function listOutbox(
  register: Register,
  filter: { readonly state?: OutboxState; readonly beforeId?: number; readonly limit: number },
): Promise<readonly OutboxEntry[]> {
  let query = register.db
    .selectFrom('outbox')
    .leftJoin('owners', 'owners.ref', 'outbox.owner_ref')
    .select(entryColumns)
    .orderBy('outbox.id', 'desc')
    .limit(filter.limit);
  if (filter.state) query = query.where('state', '=', filter.state);
  if (filter.beforeId !== undefined) query = query.where('outbox.id', '<', filter.beforeId);
  return query.execute();
}

/** The messages to an owner that left, the newest first. */
export async function sentMessagesOf(
  { db }: Register,
  ownerRef: string,
): Promise<readonly Pick<OutboxEntry, 'subject' | 'channel' | 'sentAt'>[]> {
  return db
    .selectFrom('outbox')
    .select(['subject', 'channel', 'sent_at as sentAt'])
    .where('owner_ref', '=', ownerRef)
    .where('state', '=', 'sent')
    .orderBy('id', 'desc')
    .execute();
}

/** The bytes of one message (a mail's RFC 5322 bytes, a letter's HTML), or null where there is no such message. */
export async function loadOutboxBytes(
  register: Register,
  id: number,
): Promise<{ readonly channel: 'mail' | 'letter'; readonly raw: Uint8Array } | null> {
  const row = await register.db.selectFrom('outbox').select(['channel', 'raw']).where('id', '=', id).executeTakeFirst();
  return row ?? null;
}

/** How many messages are in each state. */
export async function countOutbox(register: Register): Promise<Readonly<Record<OutboxState, number>>> {
  const counts: Record<OutboxState, number> = {
    queued: 0,
    leased: 0,
    sent: 0,
    parked: 0,
    cancelled: 0,
    'to print': 0,
  };
  const rows = await register.db
    .selectFrom('outbox')
    .select((eb) => ['state', eb.fn.countAll<number>().as('count')])
    .groupBy('state')
    .execute();
  for (const row of rows) counts[row.state] = row.count;
  return counts;
}

/**
 * Queues parked or waiting messages for an immediate try: one by its id, or all. A parked one gets its five days anew, and
 * a mail server that was left alone is tried again at once. Returns how many were queued.
 */
export async function retryMessages(register: Register, which: number | 'all', at: string): Promise<number> {
  return register.db.transaction().execute(async (tx) => {
    let query = tx
      .updateTable('outbox')
      .set({ state: 'queued', due_at: at, first_failed_at: null, attempts: 0, waits_for: null })
      .where('channel', '=', 'mail')
      .where('state', 'in', ['parked', 'queued']);
    if (which !== 'all') query = query.where('id', '=', which);
    const queued = Number((await query.executeTakeFirst()).numUpdatedRows);
    if (queued > 0) await tx.deleteFrom('mail_server').execute();
    return queued;
  });
}

/** Takes a message that has not left out of the queue. Returns false where it is sent, under way or unknown. */
export async function cancelMessage(register: Register, id: number): Promise<boolean> {
  const result = await register.db
    .updateTable('outbox')
    .set({ state: 'cancelled', due_at: null })
    .where('id', '=', id)
    .where('state', 'in', ['queued', 'parked', 'to print'])
    .executeTakeFirst();
  return result.numUpdatedRows === 1n;
}

/** Who posted a letter and on which day, and when that was noted (ISO text in UTC). */
export interface Posting {
  readonly by: string;
  readonly on: string;
  readonly at: string;
}

/** Marks a letter as posted, with who posted it and on which day. Returns false where there is no such letter to print. */
export async function markLetterPosted(register: Register, id: number, posting: Posting): Promise<boolean> {
  const result = await register.db
    .updateTable('outbox')
    .set({ state: 'sent', sent_at: posting.at, posted_by: posting.by, posted_on: posting.on })
    .where('id', '=', id)
    .where('channel', '=', 'letter')
    .where('state', '=', 'to print')
    .executeTakeFirst();
  return result.numUpdatedRows === 1n;
}
