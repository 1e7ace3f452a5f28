import { readFileSync } from 'node:fs';
import {
  type Account,
  accountNamed,
  listAccounts,
  setAccountDisabled,
  setAccountSites,
  sitesOfAccount,
} from '../register/account-store.ts';
import type { AccountRole } from '../register/account-tables.ts';
import { nearestName } from '../register/csv/nearest-name.ts';
import type { Register } from '../register/database.ts';
import { foldedName, spokenCode } from '../service/account-rules.ts';
import { type AccountFault, changePassword, createAccount, REFUSALS, siteFaults } from '../service/accounts.ts';
import { isoUtc } from '../service/clock.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister, withRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';

/** Options of the `account` commands. */
export interface AccountOptions extends GlobalOptions {
  readonly json?: boolean;
}

/** Options of `account add`. */
export interface AccountAddOptions extends AccountOptions {
  readonly role: AccountRole;
  readonly called?: string;
  readonly crew?: string;
  readonly site?: readonly string[];
  readonly language: 'en' | 'es';
  readonly passwordFile?: string;
}

/** Options of `account password`. */
export interface AccountPasswordOptions extends AccountOptions {
  readonly passwordFile?: string;
}

/** Signs in four groups: 79 bits. */
const GROUPS_OF_PASSWORD = 4;

/** The password of a file's first line (standard input for -), or one made up, which is then shown. */
function wantedPassword(file: string | undefined): { readonly password: string; readonly madeUp: boolean } {
  if (file === undefined) return { password: spokenCode(GROUPS_OF_PASSWORD), madeUp: true };
  const text = readFileSync(file === '-' ? 0 : file, 'utf8');
  return { password: text.split(/\r?\n/)[0] ?? '', madeUp: false };
}

const refusal = (faults: readonly AccountFault[]): CliError =>
  new CliError(
    EXIT.refused,
    faults.map(({ field, reason }) => `${field}: ${reason}`).join('\n'),
    'nothing was changed; "stormpale account --help" shows what to write',
  );

async function knownAccount({ db }: Register, name: string): Promise<Account> {
  const found = await accountNamed(db, foldedName(name));
  if (found && !found.account.demo) return found.account;
  const nearest = nearestName(
    name,
    (await listAccounts(db)).map((account) => account.name),
  );
  throw new CliError(
    EXIT.notFound,
    `no account ${JSON.stringify(name)}${nearest === null ? '' : `; did you mean ${nearest}?`}`,
    '"stormpale account list" shows those there are',
  );
}

function tellPassword({ terminal }: CliContext, password: string): void {
  terminal.out(`${password}\n`);
  terminal.err('That is the password, shown this once. Whoever gets it can change it on the page of their account.\n');
}

/** Makes an account; the first one is of the office. */
export async function runAccountAdd(context: CliContext, name: string, options: AccountAddOptions): Promise<void> {
  const { password, madeUp } = wantedPassword(options.passwordFile);
  const form = {
    name,
    displayName: options.called ?? name,
    role: options.role,
    crewRef: options.crew ?? null,
    language: options.language,
    siteRefs: options.site ?? [],
    password,
  };
  const made = await withRegister(configOf(context, options), (register) =>
    createAccount(register, form, { clock: context.clock }),
  );
  if ('faults' in made) throw refusal(made.faults);
  const { terminal } = context;
  if (options.json) {
    terminal.out(jsonText({ ...made.account, ...(madeUp ? { password } : {}) }));
    return;
  }
  terminal.err(`${made.account.name} can sign in now (${made.account.role}).\n`);
  if (madeUp) tellPassword(context, password);
}

/** Lists the accounts. */
export async function runAccountList(context: CliContext, options: AccountOptions): Promise<void> {
  const accounts = await withExistingRegister(configOf(context, options), async ({ db }) =>
    Promise.all(
      (await listAccounts(db)).map(async (account) => ({ ...account, siteRefs: await sitesOfAccount(db, account.id) })),
    ),
  );
  const { terminal } = context;
  if (options.json) terminal.out(jsonText(accounts));
  else if (accounts.length === 0) {
    terminal.out('Nobody has an account. "stormpale account add NAME --role office" makes the first.\n');
  } else {
    const rows = accounts.map(({ name, displayName, role, crewRef, siteRefs, disabledAt }) => [
      name,
      displayName,
      role,
      crewRef ?? siteRefs.join(' '),
      disabledAt === null ? 'signs in' : `disabled ${disabledAt.slice(0, 10)}`,
    ]);
    terminal.out(plainTable(['Name', 'Called', 'Role', 'Crew or sites', 'State'], rows));
  }
}

/** Disables an account and ends its sessions, or lets it sign in again. */
export async function runAccountDisable(
  context: CliContext,
  name: string,
  options: AccountOptions & { readonly undo?: boolean },
): Promise<void> {
  const disabledAt = options.undo ? null : isoUtc(context.clock());
  await withExistingRegister(configOf(context, options), async (register) => {
    const account = await knownAccount(register, name);
    const refused = await setAccountDisabled(register, account.id, disabledAt);
    if (refused) throw refusal([REFUSALS[refused]]);
  });
  context.terminal.out(
    disabledAt === null ? `${name} can sign in again.\n` : `${name} is disabled, and signed out wherever it was.\n`,
  );
}

/** Gives an account another password and ends its sessions. */
export async function runAccountPassword(
  context: CliContext,
  name: string,
  options: AccountPasswordOptions,
): Promise<void> {
  const { password, madeUp } = wantedPassword(options.passwordFile);
  await withExistingRegister(configOf(context, options), async (register) => {
    const account = await knownAccount(register, name);
    const reason = await changePassword(register, account, password);
    if (reason) throw refusal([{ field: 'password', reason }]);
  });
  context.terminal.err(`${name} has another password, and is signed out wherever it was.\n`);
  if (madeUp) tellPassword(context, password);
}

/** Sets the sites whose fences a board sees. */
export async function runAccountSites(
  context: CliContext,
  name: string,
  sites: readonly string[],
  options: AccountOptions,
): Promise<void> {
  await withExistingRegister(configOf(context, options), async (register) => {
    const account = await knownAccount(register, name);
    const faults: readonly AccountFault[] =
      account.role === 'board'
        ? await siteFaults(register, sites)
        : [{ field: 'siteRefs', reason: `${account.name} is no board: only a board sees some sites alone` }];
    if (faults.length > 0) throw refusal(faults);
    await setAccountSites(register, account.id, sites);
  });
  context.terminal.out(`${name} sees the fences of ${sites.join(', ')}.\n`);
}
