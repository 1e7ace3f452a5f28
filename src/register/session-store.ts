import { type Account, accountOf } from './account-store.ts';
import type { RegisterDb } from './record-store.ts';

/** Somebody signed in. Moments are ISO 8601, UTC. */
export interface StoredSession {
  readonly account: Account;
  readonly lastSeenAt: string;
  readonly expiresAt: string;
}

/**
 * Stores a session.
 * @param session.tokenSha256 SHA-256 of its token, in hexadecimal
 */
export async function addSession(
  db: RegisterDb,
  session: {
    readonly tokenSha256: string;
    readonly accountId: number;
    readonly now: string;
    readonly expiresAt: string;
  },
): Promise<void> {
  await db
    .insertInto('sessions')
    .values({
      token_sha256: session.tokenSha256,
      account_id: session.accountId,
      created_at: session.now,
      last_seen_at: session.now,
      expires_at: session.expiresAt,
    })
    .execute();
}

/** The session of a token whose account may still sign in; null where there is none, or its last day is over. */
export async function sessionOf(db: RegisterDb, tokenSha256: string, now: string): Promise<StoredSession | null> {
  const row = await db
    .selectFrom('sessions')
    .innerJoin('accounts', 'accounts.id', 'sessions.account_id')
    .selectAll('accounts')
    .select(['sessions.last_seen_at', 'sessions.expires_at'])
    .where('sessions.token_sha256', '=', tokenSha256)
    .where('sessions.expires_at', '>', now)
    .where('accounts.disabled_at', 'is', null)
    .executeTakeFirst();
  return row ? { account: accountOf(row), lastSeenAt: row.last_seen_at, expiresAt: row.expires_at } : null;
}

/** Notes that a session was used. */
export async function touchSession(db: RegisterDb, tokenSha256: string, now: string): Promise<void> {
  await db.updateTable('sessions').set({ last_seen_at: now }).where('token_sha256', '=', tokenSha256).execute();
}

/** Ends a session; nothing where there is none. */
export async function endSession(db: RegisterDb, tokenSha256: string): Promise<void> {
  await db.deleteFrom('sessions').where('token_sha256', '=', tokenSha256).execute();
}

/** Clears away the sessions whose last day is over. */
export async function clearEndedSessions(db: RegisterDb, now: string): Promise<void> {
  await db.deleteFrom('sessions').where('expires_at', '<=', now).execute();
}
