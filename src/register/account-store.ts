import type { Selectable } from 'kysely';
import type { AccountRole, AccountTables } from './account-tables.ts';
import type { Register } from './database.ts';
import type { RegisterDb } from './record-store.ts';

/** Somebody who may sign in. Moments are ISO 8601, UTC. */
export interface Account {
  readonly id: number;
  /** What is typed to sign in, in small letters. */
  readonly name: string;
  readonly displayName: string;
  readonly role: AccountRole;
  /** The crew whose work it does; null where it is no crew's. */
  readonly crewRef: string | null;
  readonly language: 'en' | 'es';
  /** True for an account of the demo: it has no password and is entered by one click, on this machine only. */
  readonly demo: boolean;
  readonly createdAt: string;
  readonly disabledAt: string | null;
}

/** An account that is to be made; without a password hash it is one of the demo. */
export type NewAccount = Omit<Account, 'id' | 'demo' | 'createdAt' | 'disabledAt'> & {
  readonly passwordHash: string | null;
  /** The sites whose fences a board sees. */
  readonly siteRefs: readonly string[];
};

/** The account of a row. */
export const accountOf = (row: Selectable<AccountTables['accounts']>): Account => ({
  id: row.id,
  name: row.name,
  displayName: row.display_name,
  role: row.role,
  crewRef: row.crew_ref,
  language: row.language,
  demo: row.demo === 1,
  createdAt: row.created_at,
  disabledAt: row.disabled_at,
});

/** True where somebody has an account of their own; those of the demo do not count. */
export async function hasAccounts(db: RegisterDb): Promise<boolean> {
  const row = await db.selectFrom('accounts').select('id').where('demo', '=', 0).limit(1).executeTakeFirst();
  return row !== undefined;
}

/** Every account but those of the demo, by name. */
export async function listAccounts(db: RegisterDb): Promise<readonly Account[]> {
  const rows = await db.selectFrom('accounts').selectAll().where('demo', '=', 0).orderBy('name').execute();
  return rows.map(accountOf);
}

/** The account of a name, with its password hash; null where there is none. */
export async function accountNamed(
  db: RegisterDb,
  name: string,
): Promise<{ readonly account: Account; readonly passwordHash: string | null } | null> {
  const row = await db.selectFrom('accounts').selectAll().where('name', '=', name).executeTakeFirst();
  return row ? { account: accountOf(row), passwordHash: row.password_hash } : null;
}

/** The account of a number; null where there is none. */
export async function accountNumbered(db: RegisterDb, id: number): Promise<Account | null> {
  const row = await db.selectFrom('accounts').selectAll().where('id', '=', id).executeTakeFirst();
  return row ? accountOf(row) : null;
}

/** The refs of the sites that an account of a board sees, in order. */
export async function sitesOfAccount(db: RegisterDb, accountId: number): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('account_sites')
    .select('site_ref')
    .where('account_id', '=', accountId)
    .orderBy('site_ref')
    .execute();
  return rows.map((row) => row.site_ref);
}

/** Why an account cannot be made or disabled. */
export type AccountRefusal = 'name taken' | 'first must be office' | 'not the first' | 'last office';

async function insertAccount(db: RegisterDb, account: NewAccount, now: string): Promise<Account> {
  const row = await db
    .insertInto('accounts')
    .values({
      name: account.name,
      display_name: account.displayName,
      role: account.role,
      crew_ref: account.crewRef,
      language: account.language,
      password_hash: account.passwordHash,
      demo: account.passwordHash === null ? 1 : 0,
      created_at: now,
      disabled_at: null,
    })
    .returningAll()
    .executeTakeFirstOrThrow();
  await replaceSites(db, row.id, account.siteRefs);
  return accountOf(row);
}

async function replaceSites(db: RegisterDb, accountId: number, siteRefs: readonly string[]): Promise<void> {
  await db.deleteFrom('account_sites').where('account_id', '=', accountId).execute();
  const rows = [...new Set(siteRefs)].map((site_ref) => ({ account_id: accountId, site_ref }));
  if (rows.length > 0) await db.insertInto('account_sites').values(rows).execute();
}

/**
 * Makes an account, in one transaction. Refused where the name is taken, where the first one is none of the office, or
 * where it has to be the first and is not. Throws where it names a crew or a site that the register does not hold.
 * @param now moment of writing, ISO 8601
 */
export async function addAccount(
  register: Register,
  account: NewAccount,
  options: { readonly now: string; readonly onlyAsFirst: boolean },
): Promise<{ readonly account: Account } | { readonly refused: AccountRefusal }> {
  return register.db.transaction().execute(async (tx) => {
    const known = await tx.selectFrom('accounts').select('id').where('name', '=', account.name).executeTakeFirst();
    if (known) return { refused: 'name taken' };
    const some = await hasAccounts(tx);
    if (some && options.onlyAsFirst) return { refused: 'not the first' };
    if (!some && account.passwordHash !== null && account.role !== 'office') return { refused: 'first must be office' };
    return { account: await insertAccount(tx, account, options.now) };
  });
}

/** Sets the sites that a board sees. Throws where the register does not hold one of them. */
export async function setAccountSites(
  register: Register,
  accountId: number,
  siteRefs: readonly string[],
): Promise<void> {
  await register.db.transaction().execute((tx) => replaceSites(tx, accountId, siteRefs));
}

/** Sets another password and ends the account's sessions. */
export async function setAccountPassword(register: Register, accountId: number, passwordHash: string): Promise<void> {
  await register.db.transaction().execute(async (tx) => {
    await tx.updateTable('accounts').set({ password_hash: passwordHash }).where('id', '=', accountId).execute();
    await tx.deleteFrom('sessions').where('account_id', '=', accountId).execute();
  });
}

/** Sets the language of an account's pages. */
export async function setAccountLanguage(db: RegisterDb, accountId: number, language: 'en' | 'es'): Promise<void> {
  await db.updateTable('accounts').set({ language }).where('id', '=', accountId).execute();
}

/**
 * Disables an account and ends its sessions, or lets it sign in again. The last account of the office is never disabled.
 * @param disabledAt moment from which it is disabled, ISO 8601; null to let it sign in again
 */
export async function setAccountDisabled(
  register: Register,
  accountId: number,
  disabledAt: string | null,
): Promise<AccountRefusal | null> {
  return register.db.transaction().execute(async (tx) => {
    if (disabledAt !== null) {
      const others = await tx
        .selectFrom('accounts')
        .select('id')
        .where('role', '=', 'office')
        .where('demo', '=', 0)
        .where('disabled_at', 'is', null)
        .where('id', '<>', accountId)
        .limit(1)
        .executeTakeFirst();
      if (!others) return 'last office';
      await tx.deleteFrom('sessions').where('account_id', '=', accountId).execute();
    }
    await tx.updateTable('accounts').set({ disabled_at: disabledAt }).where('id', '=', accountId).execute();
    return null;
  });
}
