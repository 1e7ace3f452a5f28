import type { Command } from 'commander';
import { Argument, InvalidArgumentError, Option } from 'commander';
import { type CalendarDay, isCalendarDay } from '../units/calendar-day.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { type FeedOptions, runFeedList, runFeedNew, runFeedRevoke } from './command-feed.ts';
import { type MaterialsOptions, runMaterials } from './command-materials.ts';
import { runSheet, type SheetOptions } from './command-sheet.ts';

function dayArgument(text: string): CalendarDay {
  if (isCalendarDay(text)) return text;
  throw new InvalidArgumentError('write a day of the calendar as 2027-01-11.');
}

function linkNumber(text: string): number {
  const id = Number(text);
  if (Number.isSafeInteger(id) && id >= 1) return id;
  throw new InvalidArgumentError('write the number of the link; "stormpale feed list" shows them.');
}

const jsonOption = (): Option => new Option('--json', 'print JSON instead of text');

/** Adds the commands that hand visits to those who make them: day sheets, materials, calendar links. */
export function addSheetCommands(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  root
    .command('sheet')
    .description("print a crew's day: its sites, what to do and to check at every post, what to load")
    .argument('<crew>', 'ref of the crew')
    .option('--day <day>', 'day of the sheet, as 2027-01-11 (else today)', dayArgument)
    .option('--week <day>', 'a sheet for each day of the week in which this day lies', dayArgument)
    .option('--html <file>', 'write a page to print, A4 or Letter, instead of text')
    .addOption(jsonOption())
    .action((crew: string, options: SheetOptions) => runSheet(context, crew, { ...globals(), ...options }));
  root
    .command('materials')
    .description('print what to order for the visits that are proposed or confirmed')
    .option('--from <day>', 'first day on which a visit begins, as 2027-01-11 (else today)', dayArgument)
    .option('--to <day>', 'last day on which a visit begins (else all that are planned)', dayArgument)
    .option('--csv', 'print CSV instead of text')
    .addOption(jsonOption())
    .action((options: MaterialsOptions) => runMaterials(context, { ...globals(), ...options }));
  addFeed(root, context, globals);
}

function addFeed(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  const feed = root.command('feed').description('make, list and end secret links to calendars of visits');
  feed
    .command('new')
    .description('make a link to the calendar of a crew or a site, and show it this once')
    .addArgument(new Argument('<kind>', 'whose visits').choices(['crew', 'site']))
    .argument('<ref>', 'ref of the crew or of the site')
    .addOption(jsonOption())
    .action((kind: 'crew' | 'site', ref: string, options: FeedOptions) =>
      runFeedNew(context, { kind, ref }, { ...globals(), ...options }),
    );
  feed
    .command('list')
    .description('links that were made, without their secrets')
    .addOption(jsonOption())
    .action((options: FeedOptions) => runFeedList(context, { ...globals(), ...options }));
  feed
    .command('revoke')
    .description('end a link for good')
    .argument('<link>', 'number of the link', linkNumber)
    .addOption(jsonOption())
    .action((id: number, options: FeedOptions) => runFeedRevoke(context, id, { ...globals(), ...options }));
}
