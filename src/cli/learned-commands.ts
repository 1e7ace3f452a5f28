import type { Command } from 'commander';
import { Option } from 'commander';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import {
  type LearnedAcceptOptions,
  type LearnedOptions,
  type LearnedRevertOptions,
  runLearned,
  runLearnedAccept,
  runLearnedHistory,
  runLearnedRevert,
} from './command-learned.ts';

const jsonOption = (): Option => new Option('--json', 'print JSON instead of text');

/** Adds `learned` and what can be done with it. */
export function addLearnedCommands(root: Command, context: CliContext, globals: () => GlobalOptions): void {
  const learned = root
    .command('learned')
    .description('show what the readings and storm outcomes of the register say of rot paces and footings')
    .addOption(jsonOption())
    .action((options: LearnedOptions) => runLearned(context, { ...globals(), ...options }));
  // "learned" takes --json before its own commands see it
  const shared = (): LearnedOptions => ({ ...globals(), ...learned.opts<LearnedOptions>() });
  learned
    .command('accept')
    .description('let forecasts use what was learned, as a new version; nothing is used before')
    .requiredOption('--by <name>', 'who accepts it')
    .option('--only <names>', 'some of it, as ground-contact/4,footing/sand (else all of which enough was seen)')
    .option('--note <text>', 'why')
    .option('--dry-run', 'only say which standings would change and who would get a notice')
    .addOption(jsonOption())
    .action((options: LearnedAcceptOptions) => runLearnedAccept(context, { ...shared(), ...options }));
  learned
    .command('revert')
    .description('take the version in force back: the one before it holds again, or the published values')
    .requiredOption('--by <name>', 'who takes it back')
    .option('--note <text>', 'why')
    .option('--dry-run', 'only say which standings would change and who would get a notice')
    .addOption(jsonOption())
    .action((options: LearnedRevertOptions) => runLearnedRevert(context, { ...shared(), ...options }));
  learned
    .command('history')
    .description('everything that was accepted and taken back')
    .addOption(jsonOption())
    .action((options: LearnedOptions) => runLearnedHistory(context, { ...shared(), ...options }));
}
