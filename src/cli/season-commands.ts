import type { Command } from 'commander';
import { InvalidArgumentError, Option } from 'commander';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import {
  type PlanAcceptOptions,
  type PlanOptions,
  runPlan,
  runPlanAccept,
  runPlanList,
  runPlanShow,
} from './command-plan.ts';
import type { WhatIfOptions } from './command-what-if.ts';
import { runWhatIf } from './command-what-if.ts';

const MOST_WEEKS = 52;

function weekCount(text: string): number {
  const count = Number(text);
  if (Number.isInteger(count) && count >= 1 && count <= MOST_WEEKS) return count;
  throw new InvalidArgumentError(`write a whole number from 1 to ${MOST_WEEKS}.`);
}

/** Adds the commands that ask what to do before the season. */
export function addSeasonCommands(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  root
    .command('what-if')
    .description('show what each works, and each sensible combination, would make of one fence')
    .argument('<ref>', 'ref of the fence')
    .option('--day <day>', 'day on which it would be done, as 2026-11-24 (else today)')
    .addOption(new Option('--json', 'print JSON instead of text'))
    .action((ref: string, options: WhatIfOptions) => runWhatIf(context, ref, { ...globals(), ...options }));
  addPlan(root, context, globals);
}

function planNumber(text: string): number {
  const number = Number(text);
  if (Number.isInteger(number) && number >= 1) return number;
  throw new InvalidArgumentError('write the number of a plan, as 3; "stormpale plan list" shows them.');
}

const jsonOption = (): Option => new Option('--json', 'print JSON instead of text');

function addPlan(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  const plan = root
    .command('plan')
    .description("fill the crews' weeks before the storm season, see the plans that were made, and accept one");
  const make = plan
    .command('make', { isDefault: true })
    .description("fill the crews' weeks before the storm season: what is done where, when and by whom")
    .option('--weeks <count>', 'weeks to plan (else until the last season has opened, 8 to 30)', weekCount)
    .option('--dry-run', 'only show it: store nothing')
    .addOption(jsonOption())
    .action((options: PlanOptions) => runPlan(context, { ...globals(), ...options }));
  plan
    .command('list')
    .description('the plans that were made, and which one is in force')
    .addOption(jsonOption())
    .action((options: PlanOptions) => runPlanList(context, { ...globals(), ...options }));
  plan
    .command('show')
    .description('a plan as it was made')
    .argument('[number]', 'number of the plan (else the newest)', planNumber)
    .addOption(jsonOption())
    .action((number: number | undefined, options: PlanOptions) =>
      runPlanShow(context, number, { ...globals(), ...options }),
    );
  plan
    .command('accept')
    .description(
      'propose the visits of a plan: those that it has again stay, those that it has no longer are cancelled',
    )
    .argument('<number>', 'number of the plan', planNumber)
    .option('--by <name>', 'who accepts it')
    .option('--because <text>', 'why')
    .addOption(jsonOption())
    .action((number: number, options: PlanAcceptOptions) =>
      runPlanAccept(context, number, { ...globals(), ...options }),
    );
  plan.addHelpText('after', () => `\nWithout one of these, it makes a plan:\n${make.helpInformation()}`);
}
