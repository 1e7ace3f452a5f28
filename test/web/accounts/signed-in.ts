import { type Account, addAccount, type NewAccount } from '../../../src/register/account-store.ts';
import type { Register } from '../../../src/register/database.ts';
import type { Clock } from '../../../src/service/clock.ts';
import { isoUtc } from '../../../src/service/clock.ts';
import { startSession } from '../../../src/service/sessions.ts';
import { cookieName } from '../../../src/web/access/cookies.ts';

/** A hash of the right shape that no password has: these accounts are signed in without one. */
const NO_PASSWORD = `scrypt$15$8$3$${'A'.repeat(22)}$${'A'.repeat(43)}`;

/** Stores an account with a role, the office's unless told otherwise. */
export async function storeAccount(register: Register, now: Clock, some: Partial<NewAccount> = {}): Promise<Account> {
  const account: NewAccount = {
    name: some.name ?? some.role ?? 'office',
    displayName: 'Nell Fox',
    role: 'office',
    crewRef: null,
    language: 'en',
    passwordHash: NO_PASSWORD,
    siteRefs: [],
    ...some,
  };
  const made = await addAccount(register, account, { now: isoUtc(now()), onlyAsFirst: false });
  if ('refused' in made) throw new Error(made.refused);
  return made.account;
}

/** Signs an account in and returns what its browser sends from then on. */
export async function cookieOf(
  register: Register,
  account: Account,
  options: { readonly now: Clock; readonly isLocal: boolean },
): Promise<string> {
  const { token } = await startSession(register, account, null, options.now);
  return `${cookieName('session', options.isLocal)}=${token}`;
}
