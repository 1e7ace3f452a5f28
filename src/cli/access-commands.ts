import type { Command } from 'commander';
import { Argument, InvalidArgumentError, Option } from 'commander';
import { ACCOUNT_ROLES } from '../register/account-tables.ts';
import { API_SCOPES, type ApiScope } from '../service/api-tokens.ts';
import { OWNER_SCOPES, type OwnerScope } from '../service/owner-links.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import {
  type AccountAddOptions,
  type AccountOptions,
  type AccountPasswordOptions,
  runAccountAdd,
  runAccountDisable,
  runAccountList,
  runAccountPassword,
  runAccountSites,
} from './command-account.ts';
import { type AnswersOptions, runAnswers } from './command-answers.ts';
import {
  type OwnerLinkNewOptions,
  type OwnerLinkOptions,
  runOwnerLinkList,
  runOwnerLinkNew,
  runOwnerLinkRevoke,
} from './command-owner-link.ts';
import { runTokenList, runTokenNew, runTokenRevoke, type TokenOptions } from './command-token.ts';

const LONGEST_DAYS = 3650;

function dayCount(text: string): number {
  const days = Number(text);
  if (Number.isInteger(days) && days >= 1 && days <= LONGEST_DAYS) return days;
  throw new InvalidArgumentError(`write a whole number of days from 1 to ${LONGEST_DAYS}.`);
}

function linkNumber(text: string): number {
  const id = Number(text);
  if (Number.isSafeInteger(id) && id >= 1) return id;
  throw new InvalidArgumentError('write its number; the list shows it.');
}

const jsonOption = (): Option => new Option('--json', 'print JSON instead of text');
const passwordFile = (): Option =>
  new Option(
    '--password-file <file>',
    'take the password from the first line of a file, - for standard input (else one is made up and shown)',
  );

/** Adds the commands about who may use the pages: accounts, tokens of programs, links of owners. */
export function addAccessCommands(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  addAccount(root, context, globals);
  const token = root.command('token').description('make, list and end tokens with which programs read');
  token
    .command('new')
    .description('make a token, and show it this once')
    .argument('<name>', 'what it is for')
    .addOption(new Option('--scope <scope...>', 'what it may read').choices(API_SCOPES).makeOptionMandatory())
    .option('--days <count>', 'days for which it answers', dayCount, 365)
    .addOption(jsonOption())
    .action((name: string, options: TokenOptions & { readonly scope: readonly ApiScope[]; readonly days: number }) =>
      runTokenNew(context, name, { ...globals(), ...options }),
    );
  token
    .command('list')
    .description('tokens that were made, without their secrets')
    .addOption(jsonOption())
    .action((options: TokenOptions) => runTokenList(context, { ...globals(), ...options }));
  token
    .command('revoke')
    .description('end a token for good')
    .argument('<token>', 'number of the token', linkNumber)
    .addOption(jsonOption())
    .action((id: number, options: TokenOptions) => runTokenRevoke(context, id, { ...globals(), ...options }));
  addOwnerLink(root, context, globals);
  root
    .command('answers')
    .description('what owners answered by their links: read, days chosen, quotes accepted, calls wanted, preferences')
    .option('--open', 'only those who wait for a call')
    .option('--called <number>', 'note a call as made', linkNumber)
    .option('--by <name>', 'who called')
    .addOption(jsonOption())
    .action((options: AnswersOptions) => runAnswers(context, { ...globals(), ...options }));
}

function addAccount(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  const account = root.command('account').description('who signs in to the pages: make, list and disable accounts');
  account
    .command('add')
    .description('make an account; the first one is of the office')
    .argument('<name>', 'name to sign in with')
    .addOption(new Option('--role <role>', 'what it may do').choices(ACCOUNT_ROLES).makeOptionMandatory())
    .option('--called <name>', 'what the person is called (else the name)')
    .option('--crew <ref>', 'crew whose work it does; for the role crew')
    .option('--site <ref...>', 'site whose fences it sees; for the role board, may be repeated')
    .addOption(new Option('--language <language>', 'language of its own pages').choices(['en', 'es']).default('en'))
    .addOption(passwordFile())
    .addOption(jsonOption())
    .action((name: string, options: AccountAddOptions) => runAccountAdd(context, name, { ...globals(), ...options }));
  account
    .command('list')
    .description('every account, and whether it can sign in')
    .addOption(jsonOption())
    .action((options: AccountOptions) => runAccountList(context, { ...globals(), ...options }));
  account
    .command('disable')
    .description('let an account sign in no more, and end its sessions')
    .argument('<name>', 'name of the account')
    .option('--undo', 'let it sign in again')
    .action((name: string, options: AccountOptions & { readonly undo?: boolean }) =>
      runAccountDisable(context, name, { ...globals(), ...options }),
    );
  account
    .command('password')
    .description('give an account another password, and end its sessions')
    .argument('<name>', 'name of the account')
    .addOption(passwordFile())
    .action((name: string, options: AccountPasswordOptions) =>
      runAccountPassword(context, name, { ...globals(), ...options }),
    );
  account
    .command('sites')
    .description('set the sites whose fences a board sees')
    .argument('<name>', 'name of the account')
    .addArgument(new Argument('<sites...>', 'refs of the sites'))
    .action((name: string, sites: string[], options: AccountOptions) =>
      runAccountSites(context, name, sites, { ...globals(), ...options }),
    );
}

function addOwnerLink(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  const link = root
    .command('owner-link')
    .description('make, list and end signed links with which owners see their fences and answer');
  link
    .command('new')
    .description("make a link to an owner's fences, and show it this once")
    .argument('<owner>', 'ref of the owner')
    .addOption(
      new Option('--may <what...>', 'what its holder may do')
        .choices(OWNER_SCOPES)
        .default(['see'] satisfies OwnerScope[]),
    )
    .option('--days <count>', 'days for which it opens', dayCount, 90)
    .addOption(jsonOption())
    .action((owner: string, options: OwnerLinkNewOptions) =>
      runOwnerLinkNew(context, owner, { ...globals(), ...options }),
    );
  link
    .command('list')
    .description('links that were made, without their signatures')
    .addOption(jsonOption())
    .action((options: OwnerLinkOptions) => runOwnerLinkList(context, { ...globals(), ...options }));
  link
    .command('revoke')
    .description('end a link for good')
    .argument('<link>', 'number of the link', linkNumber)
    .addOption(jsonOption())
    .action((id: number, options: OwnerLinkOptions) => runOwnerLinkRevoke(context, id, { ...globals(), ...options }));
}
