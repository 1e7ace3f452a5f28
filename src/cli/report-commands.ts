import type { Command } from 'commander';
import { InvalidArgumentError, Option } from 'commander';
import { USUAL_TERMS } from '../service/usual-terms.ts';
import { type CalendarDay, isCalendarDay } from '../units/calendar-day.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import {
  type EvidenceReportOptions,
  type PlanReportOptions,
  type QuoteReportOptions,
  type ReportOptions,
  runReportEvidence,
  runReportFence,
  runReportLetter,
  runReportPlan,
  runReportQuote,
  runReportSheet,
  type SheetReportOptions,
} from './command-report.ts';
import { currencyArgument, numberArgument, postsArgument } from './money-argument.ts';

function dayArgument(text: string): CalendarDay {
  if (isCalendarDay(text)) return text;
  throw new InvalidArgumentError('write a day of the calendar as 2027-01-11.');
}

const currencyOption = (): Option =>
  new Option('--currency <code>', "currency of the amounts (else the register's)").argParser(currencyArgument);

/** Adds the commands that write reports as PDF or as pages to print. */
export function addReportCommands(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  const report = root
    .command('report')
    .description('write a report as PDF or as a page: Letter for US units, A4 for metric');
  const one = (name: string, description: string): Command =>
    report
      .command(name)
      .description(description)
      .option('--pdf <file>', 'write a PDF')
      .option('--html <file>', 'write a page to read and print');
  const inLanguage = (command: Command, whose = "the owner's"): Command =>
    command.addOption(new Option('--language <code>', `language (else ${whose})`).choices(['en', 'es']));

  inLanguage(one('fence', 'what one fence holds, until when, and on what that rests'))
    .argument('<fence>', 'ref of the fence')
    .action((ref: string, options: ReportOptions) => runReportFence(context, ref, { ...globals(), ...options }));
  inLanguage(one('evidence', 'for whoever insures a fence: what it holds on which basis, and the care it had'))
    .argument('<fence>', 'ref of the fence')
    .option('--on <day>', 'as believed on that day, as 2027-01-11 (else today)', dayArgument)
    .addOption(currencyOption())
    .action((ref: string, options: EvidenceReportOptions) =>
      runReportEvidence(context, ref, { ...globals(), ...options }),
    );
  inLanguage(one('plan', 'replacement plan of an owner: money per year and what to set aside'))
    .argument('<owner>', 'ref of the owner; of the site with --site')
    .option('--site', 'plan what is kept in common at a site')
    .option('--years <count>', 'years to plan, 10 to 30', numberArgument(10, 30, 'whole number'), USUAL_TERMS.years)
    .addOption(currencyOption())
    .action((ref: string, options: PlanReportOptions) => runReportPlan(context, ref, { ...globals(), ...options }));
  inLanguage(one('quote', 'a quote for works at one fence'))
    .argument('<fence>', 'ref of the fence')
    .argument('<works...>', 'inspect or kinds of works, with posts of their own where wanted: post-swap:3,4,7')
    .option('--posts <numbers>', 'posts of works that name none, as 3,4,7 or 3-5,7', postsArgument)
    .option('--tax <percent>', 'tax on the sum', numberArgument(0, 100, 'number'), 0)
    .option('--valid-days <days>', 'days for which it may be accepted', numberArgument(0, 365, 'whole number'), 30)
    .addOption(currencyOption())
    .action((ref: string, works: string[], options: QuoteReportOptions) =>
      runReportQuote(context, ref, works, { ...globals(), ...options }),
    );
  one('letter', 'a letter of the outbox, as it was written')
    .argument('<number>', 'number of the letter, as "stormpale mail queue" shows it')
    .action((id: string, options: ReportOptions) => runReportLetter(context, id, { ...globals(), ...options }));
  inLanguage(
    one('sheet', "a crew's day: its sites, what to do and to check at every post, what to load"),
    'the one that all of the crew read',
  )
    .argument('<crew>', 'ref of the crew')
    .requiredOption('--day <day>', 'day of the sheet, as 2027-01-11', dayArgument)
    .action((crew: string, options: SheetReportOptions) => runReportSheet(context, crew, { ...globals(), ...options }));
}
