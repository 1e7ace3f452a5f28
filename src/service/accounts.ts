import {
  type Account,
  type AccountRefusal,
  addAccount,
  type NewAccount,
  setAccountPassword,
} from '../register/account-store.ts';
import type { Register } from '../register/database.ts';
import { readRecord } from '../register/record-store.ts';
import { foldedName, isAccountName, passwordFault } from './account-rules.ts';
import { passwordReason } from './account-words.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import { hashPassword } from './password-hash.ts';

/** An account as somebody asks for it. */
export type AccountForm = Omit<NewAccount, 'passwordHash'> & { readonly password: string };

/** One thing wrong with what was asked for. */
export interface AccountFault {
  readonly field: 'name' | 'displayName' | 'role' | 'crewRef' | 'siteRefs' | 'password';
  readonly reason: string;
}

/** Why the register did not do it, in words. */
export const REFUSALS: Readonly<Record<AccountRefusal, AccountFault>> = {
  'name taken': { field: 'name', reason: 'somebody has this name already, perhaps disabled; choose another' },
  'first must be office': { field: 'role', reason: 'the first account is one of the office: it lets the others in' },
  'not the first': { field: 'name', reason: 'there is an account by now: sign in with it' },
  'last office': {
    field: 'name',
    reason: 'this is the last account of the office; make another one first, so that somebody can let people in',
  },
};

async function faultsOf(register: Register, form: AccountForm): Promise<readonly AccountFault[]> {
  const { db } = register;
  const faults: AccountFault[] = [];
  const refuse = (field: AccountFault['field'], reason: string): void => void faults.push({ field, reason });
  if (!isAccountName(form.name)) {
    refuse('name', 'write 2 to 80 letters or digits without blanks, as ann or ann@example.org; . _ @ + - may be in it');
  }
  if (form.displayName === '' || form.displayName.length > 200)
    refuse('displayName', 'write a name of 1 to 200 letters');
  const fault = passwordFault(form.password, [form.name, form.displayName]);
  if (fault) refuse('password', passwordReason(fault, 'en'));
  if (form.role === 'crew' && form.crewRef === null) refuse('crewRef', 'missing: name the crew whose work it does');
  if (form.role !== 'crew' && form.crewRef !== null) refuse('crewRef', 'only an account of a crew names one');
  if (form.crewRef !== null && !(await readRecord(db, 'crews', form.crewRef))) {
    refuse('crewRef', `the register has no crew ${JSON.stringify(form.crewRef)}`);
  }
  if (form.role === 'board' && form.siteRefs.length === 0)
    refuse('siteRefs', 'missing: name a site that the board sees');
  if (form.role !== 'board' && form.siteRefs.length > 0) refuse('siteRefs', 'only an account of a board names sites');
  return [...faults, ...(await siteFaults(register, form.siteRefs))];
}

/** Sites that the register does not hold. */
export async function siteFaults(register: Register, siteRefs: readonly string[]): Promise<readonly AccountFault[]> {
  const faults: AccountFault[] = [];
  for (const ref of siteRefs) {
    if (await readRecord(register.db, 'sites', ref)) continue;
    faults.push({ field: 'siteRefs', reason: `the register has no site ${JSON.stringify(ref)}` });
  }
  return faults;
}

/**
 * Makes an account with its password. Everything wrong with it is told at once, and nothing is stored then.
 * @param options.onlyAsFirst refuse where somebody has an account already, as on the page of the first run
 */
export async function createAccount(
  register: Register,
  asked: AccountForm,
  options: { readonly clock: Clock; readonly onlyAsFirst?: boolean },
): Promise<{ readonly account: Account } | { readonly faults: readonly AccountFault[] }> {
  const form = { ...asked, name: foldedName(asked.name), displayName: asked.displayName.trim() };
  const faults = await faultsOf(register, form);
  if (faults.length > 0) return { faults };
  const { password, ...rest } = form;
  const made = await addAccount(
    register,
    { ...rest, passwordHash: await hashPassword(password) },
    { now: isoUtc(options.clock()), onlyAsFirst: options.onlyAsFirst ?? false },
  );
  return 'account' in made ? made : { faults: [REFUSALS[made.refused]] };
}

/**
 * Gives an account another password; its sessions end. Returns what is wrong with the password, in the account's
 * language, and changes nothing then.
 */
export async function changePassword(register: Register, account: Account, password: string): Promise<string | null> {
  const fault = passwordFault(password, [account.name, account.displayName]);
  if (fault) return passwordReason(fault, account.language);
  await setAccountPassword(register, account.id, await hashPassword(password));
  return null;
}
