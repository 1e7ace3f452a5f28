import type { Command } from 'commander';
import { InvalidArgumentError, Option } from 'commander';
import { VISIT_STATES } from '../season/visit/visit.ts';
import { isCalendarDay } from '../units/calendar-day.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import {
  runVisitCancel,
  runVisitConfirm,
  runVisitList,
  runVisitMiss,
  runVisitShow,
  type VisitConfirmOptions,
  type VisitEndOptions,
  type VisitListOptions,
  type VisitOptions,
} from './command-visit.ts';
import { runVisitDone, type VisitDoneOptions } from './command-visit-done.ts';

const jsonOption = (): Option => new Option('--json', 'print JSON instead of text');
const collect = (text: string, earlier: readonly string[] = []): readonly string[] => [...earlier, text];

function dayArgument(text: string): string {
  if (isCalendarDay(text)) return text;
  throw new InvalidArgumentError('write a day as 2027-01-05.');
}

function timeArgument(text: string): string {
  if (/^([01]\d|2[0-3]):[0-5]\d$/.test(text)) return text;
  throw new InvalidArgumentError('write the local time at the site as 08:30.');
}

const DONE_HELP = `
What was done enters the register as works, built as the works catalogue says, at the posts that the visit names. Where that is not what was done:
  --except OAK-2                     nothing was done there; it goes back to the plan
  --did "OAK-1=post-swap:4,5+liner:4,5"   this was done there instead, in that order
A fence that was to be inspected needs its inspection first: stormpale inspect OAK-3 …, then --inspection OAK-3=REF here.
Hours are those of all people together at the fences, without the way; they correct the hours of the catalogue.`;

/** Adds `visit` and what can be done with visits. */
export function addVisitCommands(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  const visit = root
    .command('visit')
    .description("see the crews' visits, promise their days, and enter what became of them");
  visit
    .command('list')
    .description('visits by day, crew and uid')
    .option('--crew <ref>', 'of one crew')
    .option('--site <ref>', 'at one site')
    .option('--from <day>', 'from this day on', dayArgument)
    .option('--to <day>', 'up to this day', dayArgument)
    .addOption(
      new Option('--state <states...>', 'in these states (else proposed and confirmed)').choices([
        ...VISIT_STATES,
        'all',
      ]),
    )
    .addOption(jsonOption())
    .action((options: VisitListOptions) => runVisitList(context, { ...globals(), ...options }));
  const ofOne = (name: string, what: string): Command =>
    visit
      .command(name)
      .description(what)
      .argument('<uid>', 'uid of the visit, or enough of its beginning')
      .addOption(jsonOption());
  ofOne('show', 'one visit: what is done where, what was entered, and what became of it').action(
    (uid: string, options: VisitOptions) => runVisitShow(context, uid, { ...globals(), ...options }),
  );
  ofOne('confirm', 'promise a visit on a day: no plan moves it from then on')
    .requiredOption('--day <day>', 'day, as 2027-01-05', dayArgument)
    .option('--at <time>', 'local time at the site, as 08:30 (else some time that day)', timeArgument)
    .option('--crew <ref>', 'another crew than the plan chose')
    .option('--by <name>', 'who promised it')
    .option('--because <text>', 'why')
    .option('--sure', 'take it though hours or rules speak against that day')
    .action((uid: string, options: VisitConfirmOptions) => runVisitConfirm(context, uid, { ...globals(), ...options }));
  const end = (name: string, what: string, run: typeof runVisitMiss): Command =>
    ofOne(name, what)
      .requiredOption('--because <text>', 'why')
      .option('--by <name>', 'who says so')
      .action((uid: string, options: VisitEndOptions) => run(context, uid, { ...globals(), ...options }));
  end('miss', 'note that a visit did not take place: its fences go back to the plan', runVisitMiss);
  end('cancel', 'call a visit off: its fences go back to the plan', runVisitCancel);
  ofOne('done', 'enter what was done: works enter the register, the rest goes back to the plan')
    .requiredOption('--day <day>', 'day on which it was done', dayArgument)
    .addOption(
      new Option(
        '--hours <hours>',
        'hours used: of the visit, as 6.5, or of a fence, as OAK-1=4.5; once for each',
      ).argParser(collect),
    )
    .option('--only <fences...>', 'only these fences were done')
    .option('--except <fences...>', 'these fences were not done')
    .addOption(
      new Option('--did <works>', 'what was done at a fence instead of the plan, once for each').argParser(collect),
    )
    .addOption(
      new Option('--inspection <ref>', 'inspection that was made at a fence, as OAK-3=REF, once for each').argParser(
        collect,
      ),
    )
    .option('--by <name>', 'who says so')
    .option('--because <text>', 'anything to remember of it')
    .option('--sure', 'take hours that are far off those planned')
    .addHelpText('after', DONE_HELP)
    .action((uid: string, options: VisitDoneOptions) => runVisitDone(context, uid, { ...globals(), ...options }));
}
