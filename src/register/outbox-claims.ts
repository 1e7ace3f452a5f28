import type { ExpressionBuilder } from 'kysely';
import { sql } from 'kysely';
import type { Register } from './database.ts';
import type { TryEnd } from './delivery-tables.ts';
import type { RegisterTables } from './tables.ts';

/** A message leased for one try. Its bytes are the same on every try. */
export interface LeasedMessage {
  readonly id: number;
  readonly messageId: string;
  readonly envelopeFrom: string;
  readonly envelopeTo: string;
  /** Domain of the recipient, in lower case. */
  readonly domain: string;
  readonly raw: Uint8Array;
  /** Goes out at any hour and at any rate, ahead of the others. */
  readonly urgent: boolean;
  /** Zone of the site it tells of; null where it tells of none. */
  readonly timeZone: string | null;
  /** Tries that were made before this one. */
  readonly attempts: number;
  /** When the first try failed for now, ISO text in UTC; null where none did. */
  readonly firstFailedAt: string | null;
}

/** The terms of a lease. Times are ISO text in UTC. */
export interface LeaseTerms {
  readonly token: string;
  readonly at: string;
  readonly until: string;
  /** The latest moment for which any message is ever made to wait; one due later was written under a clock put back since. */
  readonly latestDue: string;
  /** As `latestDue`, for messages that wait for an hour or for their turn. */
  readonly latestHeld: string;
  readonly limit: number;
}

/**
 * Leases the messages that are due, the urgent first, then oldest first, in one statement; messages whose lease ran out (the
 * process that held it died) are due again. A due time or a lease further ahead than any that is ever given counts as due:
 * the clock was put back since. Nothing to an address that is stopped.
 */
export async function leaseDueMessages(register: Register, terms: LeaseTerms): Promise<readonly LeasedMessage[]> {
  const rows = await register.db
    .updateTable('outbox')
    .set({ state: 'leased', lease_token: terms.token, lease_until: terms.until })
    .where('id', 'in', dueIds(terms))
    .returning([
      'id',
      'message_id',
      'envelope_from',
      'envelope_to',
      'domain',
      'raw',
      'attempts',
      'first_failed_at',
      'urgent',
    ])
    .execute();
  const zones = await zonesOf(
    register,
    rows.map(({ id }) => id),
  );
  return rows
    .map((row) => ({
      id: row.id,
      messageId: row.message_id,
      envelopeFrom: row.envelope_from ?? '',
      envelopeTo: row.envelope_to ?? '',
      domain: row.domain ?? '',
      raw: row.raw,
      urgent: row.urgent === 1,
      timeZone: zones.get(row.id) ?? null,
      attempts: row.attempts,
      firstFailedAt: row.first_failed_at,
    }))
    .sort((a, b) => Number(b.urgent) - Number(a.urgent) || a.id - b.id);
}

/** Numbers of the next messages. The index holds all that is asked; without it every message that waits would be read. */
const dueIds = ({ at, until, latestDue, latestHeld, limit }: LeaseTerms) =>
  sql<number>`(
    select id from outbox indexed by outbox_queue
    where state in ('queued', 'leased') and channel = 'mail'
      and case state
        when 'queued' then due_at <= ${at} or due_at > ${latestHeld} or (waits_for is null and due_at > ${latestDue})
        else lease_until <= ${at} or lease_until > ${until}
      end
      and not exists (
        select 1 from stopped_addresses where resumed_at is null and address = lower(outbox.envelope_to)
      )
    order by urgent desc, id
    limit ${limit}
  )`;

/** The zone of the site that each message tells of, by its first notice where it tells of several. */
async function zonesOf(register: Register, ids: readonly number[]): Promise<ReadonlyMap<number, string>> {
  if (ids.length === 0) return new Map();
  const rows = await register.db
    .selectFrom('notices')
    .innerJoin('fences', 'fences.ref', 'notices.fence_ref')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .select(['notices.outbox_id as id', 'sites.time_zone as timeZone'])
    .where('notices.outbox_id', 'in', ids)
    .orderBy('notices.id', 'desc')
    .execute();
  return new Map(rows.map(({ id, timeZone }) => [id ?? 0, timeZone]));
}

/** How one try ended. Times are ISO text in UTC. */
export type TryOutcome = {
  readonly at: string;
  readonly reply: string;
  /** True where the server may have taken the message and its answer never came. */
  readonly mayHaveArrived?: boolean;
} & ({ readonly kind: 'sent' } | { readonly kind: 'again'; readonly dueAt: string } | { readonly kind: 'parked' });

/**
 * Records how a try ended, under the lease it was made with, and in the message's history. Returns false where the lease was
 * lost meanwhile: then the history alone knows of the try.
 */
export async function recordTry(register: Register, id: number, token: string, outcome: TryOutcome): Promise<boolean> {
  const ends = { lease_token: null, lease_until: null, last_reply: outcome.reply, waits_for: null };
  const failed = { first_failed_at: sql<string>`coalesce(first_failed_at, ${outcome.at})` };
  const states = {
    sent: { state: 'sent', sent_at: outcome.at, due_at: null },
    again: { state: 'queued', due_at: outcome.kind === 'again' ? outcome.dueAt : null, ...failed },
    parked: { state: 'parked', due_at: null, ...failed },
  } as const;
  return register.db.transaction().execute(async (tx) => {
    const result = await tx
      .updateTable('outbox')
      .set({ ...ends, ...states[outcome.kind], attempts: sql<number>`attempts + 1` })
      .where('id', '=', id)
      .where('lease_token', '=', token)
      .executeTakeFirst();
    await tx
      .insertInto('mail_tries')
      .columns(TRY_COLUMNS)
      .expression((eb) => tryRow(eb, outcome.kind, outcome).where('id', '=', id))
      .execute();
    return result.numUpdatedRows === 1n;
  });
}

const TRY_COLUMNS = [
  'outbox_id',
  'at',
  'outcome',
  'may_have_arrived',
  'envelope_from',
  'envelope_to',
  'domain',
  'reply',
] as const;

const tryRow = (
  eb: ExpressionBuilder<RegisterTables, 'mail_tries'>,
  end: TryEnd,
  { at, mayHaveArrived, reply }: Pick<TryOutcome, 'at' | 'mayHaveArrived' | 'reply'>,
) =>
  eb
    .selectFrom('outbox')
    .select([
      'id',
      sql<string>`${at}`.as('at'),
      sql<TryEnd>`${end}`.as('outcome'),
      sql<number>`${mayHaveArrived ? 1 : 0}`.as('may_have_arrived'),
      sql<string>`coalesce(envelope_from, '')`.as('envelope_from'),
      sql<string>`coalesce(envelope_to, '')`.as('envelope_to'),
      sql<string>`coalesce(domain, '')`.as('domain'),
      sql<string>`${reply}`.as('reply'),
    ]);

/**
 * Puts back into the queue what a process that is gone held: leases that ran out by `at`, or all of them where
 * no other process can be at work. Each is noted in its message's history, since it may have been on its way.
 * @param terms.until the latest moment to which any lease is ever given; null ends all leases
 */
export async function endLostLeases(
  register: Register,
  terms: { readonly at: string; readonly until: string | null },
): Promise<number> {
  const { at, until } = terms;
  return register.db.transaction().execute(async (tx) => {
    const lost = await tx
      .selectFrom('outbox')
      .select('id')
      .where('state', '=', 'leased')
      .where((or) => (until === null ? or.val(1) : or.or([or('lease_until', '<=', at), or('lease_until', '>', until)])))
      .execute();
    if (lost.length === 0) return 0;
    const ids = lost.map(({ id }) => id);
    const end = { at, mayHaveArrived: true, reply: 'the service ended before it knew what came of this try' };
    await tx
      .insertInto('mail_tries')
      .columns(TRY_COLUMNS)
      .expression((eb) => tryRow(eb, 'lost', end).where('id', 'in', ids))
      .execute();
    await tx
      .updateTable('outbox')
      .set({ state: 'queued', lease_token: null, lease_until: null })
      .where('id', 'in', ids)
      .execute();
    return ids.length;
  });
}

/** Gives back what is still leased under the token, without counting a try. */
export async function releaseLeases(register: Register, token: string): Promise<void> {
  await register.db
    .updateTable('outbox')
    .set({ state: 'queued', lease_token: null, lease_until: null })
    .where('lease_token', '=', token)
    .where('state', '=', 'leased')
    .execute();
}

/** The mail server as a whole: how often in a row it could not be reached, and when to try again. */
export interface MailServerTrouble {
  readonly failures: number;
  readonly retryAt: string;
  readonly lastReply: string;
}

/** What stands against the mail server, or null where it answered last. */
export async function mailServerTrouble(register: Register): Promise<MailServerTrouble | null> {
  const row = await register.db.selectFrom('mail_server').selectAll().executeTakeFirst();
  return row ? { failures: row.failures, retryAt: row.retry_at, lastReply: row.last_reply } : null;
}

/** Notes that the mail server could not be reached, or (null) that it answered. */
export async function noteMailServer(register: Register, trouble: MailServerTrouble | null): Promise<void> {
  if (!trouble) {
    await register.db.deleteFrom('mail_server').execute();
    return;
  }
  const values = { failures: trouble.failures, retry_at: trouble.retryAt, last_reply: trouble.lastReply };
  await register.db
    .insertInto('mail_server')
    .values({ id: 1, ...values })
    .onConflict((conflict) => conflict.column('id').doUpdateSet(values))
    .execute();
}
