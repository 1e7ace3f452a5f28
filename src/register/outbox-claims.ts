import { sql } from 'kysely';
import type { Register } from './database.ts';

/** A message leased for one try. Its bytes are the same on every try. */
export interface LeasedMessage {
  readonly id: number;
  readonly messageId: string;
  readonly envelopeFrom: string;
  readonly envelopeTo: string;
  readonly raw: Uint8Array;
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
  readonly limit: number;
}

/**
 * Leases the messages that are due, oldest first, in one statement; messages whose lease ran out (the process that held
 * it died) are due again. A due time or a lease further ahead than any that is ever given counts as due: the clock was put
 * back since.
 */
export async function leaseDueMessages(register: Register, terms: LeaseTerms): Promise<readonly LeasedMessage[]> {
  const rows = await register.db
    .updateTable('outbox')
    .set({ state: 'leased', lease_token: terms.token, lease_until: terms.until })
    .where('id', 'in', (eb) =>
      eb
        .selectFrom('outbox')
        .select('id')
        .where('channel', '=', 'mail')
        .where((or) =>
          or.or([
            or.and([
              or('state', '=', 'queued'),
              or.or([or('due_at', '<=', terms.at), or('due_at', '>', terms.latestDue)]),
            ]),
            or.and([
              or('state', '=', 'leased'),
              or.or([or('lease_until', '<=', terms.at), or('lease_until', '>', terms.until)]),
            ]),
          ]),
        )
        .orderBy('id')
        .limit(terms.limit),
    )
    .returning(['id', 'message_id', 'envelope_from', 'envelope_to', 'raw', 'attempts', 'first_failed_at'])
    .execute();
  return rows
    .map((row) => ({
      id: row.id,
      messageId: row.message_id,
      envelopeFrom: row.envelope_from ?? '',
      envelopeTo: row.envelope_to ?? '',
      raw: row.raw,
      attempts: row.attempts,
      firstFailedAt: row.first_failed_at,
    }))
    .sort((a, b) => a.id - b.id);
}

/** How one try ended. Times are ISO text in UTC. */
export type TryOutcome =
  | { readonly kind: 'sent'; readonly at: string; readonly reply: string }
  | { readonly kind: 'again'; readonly at: string; readonly dueAt: string; readonly reply: string }
  | { readonly kind: 'parked'; readonly at: string; readonly reply: string };

/** Records how a try ended, under the lease it was made with. Returns false where the lease was lost meanwhile. */
export async function recordTry(register: Register, id: number, token: string, outcome: TryOutcome): Promise<boolean> {
  const ends = { lease_token: null, lease_until: null, last_reply: outcome.reply };
  const failed = { first_failed_at: sql<string>`coalesce(first_failed_at, ${outcome.at})` };
  const states = {
    sent: { state: 'sent', sent_at: outcome.at, due_at: null },
    again: { state: 'queued', due_at: outcome.kind === 'again' ? outcome.dueAt : null, ...failed },
    parked: { state: 'parked', due_at: null, ...failed },
  } as const;
  const result = await register.db
    .updateTable('outbox')
    .set({ ...ends, ...states[outcome.kind], attempts: sql<number>`attempts + 1` })
    .where('id', '=', id)
    .where('lease_token', '=', token)
    .executeTakeFirst();
  return result.numUpdatedRows === 1n;
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
