import { type Account, accountNamed, addAccount, hasAccounts, type NewAccount } from '../register/account-store.ts';
import type { Register } from '../register/database.ts';
import { readRecord } from '../register/record-store.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import { holdsDemo } from './import-demo.ts';
import { newOwnerLink, OWNER_SCOPES } from './owner-links.ts';

/** Accounts of the demo, by role. Their names hold a blank, which no name of anybody else does. */
const DEMO_ACCOUNTS = {
  office: { name: 'demo office', displayName: 'Demo office', role: 'office', crewRef: null, siteRefs: [] },
  crew: { name: 'demo crew', displayName: 'Demo crew', role: 'crew', crewRef: 'gulf', siteRefs: [] },
  board: { name: 'demo board', displayName: 'Demo board', role: 'board', crewRef: null, siteRefs: ['cloverline'] },
} as const satisfies Record<string, Omit<NewAccount, 'language' | 'passwordHash'>>;

/** Owners of the demo whose pages can be opened: one reads English, one Spanish. */
const DEMO_OWNERS = { owner: 'orrowby', 'owner-es': 'tordesol' } as const;

/** Whom one can be in the demo. */
export const DEMO_ROLES = ['office', 'crew', 'board', 'owner', 'owner-es'] as const;
export type DemoRole = (typeof DEMO_ROLES)[number];

/**
 * True where the demo can be entered by one click: the pages are for this machine only, the register holds the demo, and
 * nobody has an account of their own.
 */
export const demoIsOpen = async (register: Register, isLocal: boolean): Promise<boolean> =>
  isLocal && !(await hasAccounts(register.db)) && (await holdsDemo(register));

async function demoAccount(register: Register, role: keyof typeof DEMO_ACCOUNTS, now: string): Promise<Account> {
  const account = DEMO_ACCOUNTS[role];
  const known = await accountNamed(register.db, account.name);
  if (known) return known.account;
  const crewRef =
    account.crewRef !== null && (await readRecord(register.db, 'crews', account.crewRef)) ? account.crewRef : null;
  const made = await addAccount(
    register,
    { ...account, crewRef, language: 'en', passwordHash: null },
    { now, onlyAsFirst: false },
  );
  if ('account' in made) return made.account;
  // another click was faster
  return demoAccount(register, role, now);
}

/** Enters the demo: the account of a role, or the token of an owner's link that answers for a day. */
export async function enterDemo(
  register: Register,
  role: DemoRole,
  options: { readonly publicUrl: string; readonly now: Clock },
): Promise<{ readonly account: Account } | { readonly ownerToken: string }> {
  if (role === 'owner' || role === 'owner-es') {
    const wanted = { ownerRef: DEMO_OWNERS[role], scopes: OWNER_SCOPES, days: 1 } as const;
    return { ownerToken: (await newOwnerLink(register.db, wanted, options)).token };
  }
  return { account: await demoAccount(register, role, isoUtc(options.now())) };
}
