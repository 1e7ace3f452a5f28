import { type Account, hasAccounts, sitesOfAccount } from '../register/account-store.ts';
import type { AccountRole } from '../register/account-tables.ts';
import type { Register } from '../register/database.ts';
import { addSession, clearEndedSessions, endSession, sessionOf, touchSession } from '../register/session-store.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import { storedSecret } from './feed-links.ts';
import { newSecret } from './secret-token.ts';

/** How long a session lasts unused, and at most. A crew's phone is in one pocket all season; an office screen is not. */
const LIMITS: Readonly<Record<AccountRole, { readonly idleHours: number; readonly longestDays: number }>> = {
  office: { idleHours: 12, longestDays: 7 },
  board: { idleHours: 12, longestDays: 7 },
  crew: { idleHours: 14 * 24, longestDays: 60 },
};
/** Use is noted so seldom [min]: not every page is a write. */
const NOTED_EVERY_MIN = 5;

/** Somebody signed in. */
export interface SignedIn {
  readonly account: Account;
  /** The sites whose fences the account sees; null for all of them. */
  readonly siteRefs: readonly string[] | null;
  /** The secret of the session, which its cookie holds. */
  readonly token: string;
}

/**
 * Signs an account in with a new secret; the session that the browser had before ends.
 * @param before the secret that the browser showed, if any
 */
export async function startSession(
  register: Register,
  account: Account,
  before: string | null,
  clock: Clock,
): Promise<{ readonly token: string; readonly longestSeconds: number }> {
  const now = clock();
  const { longestDays } = LIMITS[account.role];
  const token = newSecret();
  await register.db.transaction().execute(async (tx) => {
    await clearEndedSessions(tx, isoUtc(now));
    const old = before === null ? null : storedSecret(before);
    if (old !== null) await endSession(tx, old);
    await addSession(tx, {
      tokenSha256: storedSecret(token) ?? '',
      accountId: account.id,
      now: isoUtc(now),
      expiresAt: isoUtc(now.plus({ days: longestDays })),
    });
  });
  return { token, longestSeconds: longestDays * 86_400 };
}

/**
 * Who shows a session's secret; null where it is none, was left unused for too long, or belongs to the demo and the pages are
 * not for this machine only or somebody has an account of their own by now.
 */
export async function resumeSession(
  register: Register,
  token: string,
  options: { readonly clock: Clock; readonly isLocal: boolean },
): Promise<SignedIn | null> {
  const digest = storedSecret(token);
  if (digest === null) return null;
  const now = options.clock();
  const session = await sessionOf(register.db, digest, isoUtc(now));
  if (!session) return null;
  const { account, lastSeenAt } = session;
  if (lastSeenAt <= isoUtc(now.minus({ hours: LIMITS[account.role].idleHours }))) {
    await endSession(register.db, digest);
    return null;
  }
  if (account.demo && (!options.isLocal || (await hasAccounts(register.db)))) return null;
  if (lastSeenAt <= isoUtc(now.minus({ minutes: NOTED_EVERY_MIN }))) {
    await touchSession(register.db, digest, isoUtc(now));
  }
  const siteRefs = account.role === 'board' ? await sitesOfAccount(register.db, account.id) : null;
  return { account, siteRefs, token };
}

/** Ends the session of a secret. */
export async function signOut(register: Register, token: string): Promise<void> {
  const digest = storedSecret(token);
  if (digest !== null) await endSession(register.db, digest);
}
