import type { Command } from 'commander';
import { InvalidArgumentError, Option } from 'commander';
import { isMatter, OWNER_MATTERS, type OwnerMatter } from '../notify/matter-rules.ts';
import { type CalendarDay, isCalendarDay } from '../units/calendar-day.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import type { MailOptions, PostedOptions } from './command-mail.ts';
import { runMailCancel, runMailList, runMailPosted, runMailRetry, runMailShow } from './command-mail.ts';
import type { HeldOptions, HoldOptions, OfficeOptions, ReleaseOptions } from './command-mail-held.ts';
import { runMailHeld, runMailHold, runMailOffice, runMailRelease } from './command-mail-held.ts';
import { addDeliveryCommands } from './delivery-commands.ts';

const jsonOption = (): Option => new Option('--json', 'print JSON instead of text');

function matterArgument(text: string): OwnerMatter {
  if (isMatter(text)) return text;
  throw new InvalidArgumentError(`matters are ${OWNER_MATTERS.join(', ')}.`);
}

function dayArgument(text: string): CalendarDay {
  if (isCalendarDay(text)) return text;
  throw new InvalidArgumentError('write a day as 2027-03-01.');
}

/** Adds `mail`: the outbox, and what waits for the office. */
export function addMailCommands(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  const mail = root.command('mail').description('see and move the messages of the outbox');
  mail
    .command('queue')
    .description('messages that have not left')
    .addOption(jsonOption())
    .action((options: MailOptions) => runMailList(context, 'queue', { ...globals(), ...options }));
  mail
    .command('parked')
    .description("messages refused for good, with the server's words")
    .addOption(jsonOption())
    .action((options: MailOptions) => runMailList(context, 'parked', { ...globals(), ...options }));
  mail
    .command('retry')
    .description('try waiting and parked messages again at once')
    .argument('[number]', 'one message; all of them where left out')
    .addOption(jsonOption())
    .action((id: string | undefined, options: MailOptions) => runMailRetry(context, id, { ...globals(), ...options }));
  mail
    .command('show')
    .description('one message: where it stands and what it says')
    .argument('<number>', 'number of the message')
    .addOption(jsonOption())
    .action((id: string, options: MailOptions) => runMailShow(context, id, { ...globals(), ...options }));
  mail
    .command('posted')
    .description('note that a printed letter was posted')
    .argument('<number>', 'number of the letter')
    .option('--by <name>', 'who posted it')
    .option('--on <day>', 'the day on which it was posted, as 2027-03-01; today where left out', dayArgument)
    .addOption(jsonOption())
    .action((id: string, options: PostedOptions) => runMailPosted(context, id, { ...globals(), ...options }));
  mail
    .command('cancel')
    .description('take a message that has not left out of the outbox')
    .argument('<number>', 'number of the message')
    .addOption(jsonOption())
    .action((id: string, options: MailOptions) => runMailCancel(context, id, { ...globals(), ...options }));
  mail
    .command('held')
    .description('notices that wait until the office releases them')
    .option('--matter <matter>', 'of one matter', matterArgument)
    .option('--owner <ref>', 'of one owner')
    .addOption(jsonOption())
    .action((options: HeldOptions) => runMailHeld(context, { ...globals(), ...options }));
  mail
    .command('release')
    .description('release held notices: they are written by what the register says now, and sent')
    .argument('[numbers...]', 'numbers of notices as "mail held" shows them')
    .option('--all', 'everything that is held')
    .option('--matter <matter>', 'everything of one matter', matterArgument)
    .option('--owner <ref>', 'everything of one owner')
    .option('--sentence <text>', 'the sentence after the greeting, in place of the usual one')
    .addOption(jsonOption())
    .action((numbers: readonly string[], options: ReleaseOptions) =>
      runMailRelease(context, numbers, { ...globals(), ...options }),
    );
  mail
    .command('hold')
    .description('matters whose notices wait for the office; with a matter, has it wait from now on, or no longer')
    .argument('[on-or-off]', 'on or off')
    .option('--matter <matter>', 'which matter', matterArgument)
    .addOption(jsonOption())
    .action((turn: string | undefined, options: HoldOptions) =>
      runMailHold(context, turn, { ...globals(), ...options }),
    );
  mail
    .command('office')
    .description('what the sweep found for the office itself: danger, and readings that disagree')
    .option('--settle <number>', 'note one as settled')
    .option('--by <name>', 'who settled it')
    .addOption(jsonOption())
    .action((options: OfficeOptions) => runMailOffice(context, { ...globals(), ...options }));
  addDeliveryCommands(mail, context, globals);
}
