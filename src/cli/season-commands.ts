import type { Command } from 'commander';
import { InvalidArgumentError, Option } from 'commander';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import type { PlanOptions } from './command-plan.ts';
import { runPlan } from './command-plan.ts';
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
  root
    .command('plan')
    .description("fill the crews' weeks before the storm season: what is done where, when and by whom")
    .option('--weeks <count>', 'weeks to plan (else until the last season has opened, 8 to 30)', weekCount)
    .addOption(new Option('--json', 'print JSON instead of text'))
    .action((options: PlanOptions) => runPlan(context, { ...globals(), ...options }));
}
