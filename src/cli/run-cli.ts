import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { RECORD_KINDS } from '../register/record-store.ts';
import { ConfigError } from '../service/config.ts';
import { addAccessCommands } from './access-commands.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import type { ExportCommandOptions } from './command-export.ts';
import { runExport } from './command-export.ts';
import type { ForecastOptions } from './command-forecast.ts';
import { runForecast } from './command-forecast.ts';
import type { ImportCommandOptions } from './command-import.ts';
import { runImport } from './command-import.ts';
import type { ReasonsOptions } from './command-reasons.ts';
import { runReasons } from './command-reasons.ts';
import type { ServeOptions } from './command-serve.ts';
import { runServe } from './command-serve.ts';
import type { SettingsOptions } from './command-settings.ts';
import { runSettings } from './command-settings.ts';
import type { SweepCommandOptions } from './command-sweep.ts';
import { runSweepCommand } from './command-sweep.ts';
import { addEvidenceCommands } from './evidence-commands.ts';
import type { ExitCode } from './exit-codes.ts';
import { EXIT, EXIT_CODES_TEXT } from './exit-codes.ts';
import { addLearnedCommands } from './learned-commands.ts';
import { addMailCommands } from './mail-commands.ts';
import { addMoneyCommands } from './money-commands.ts';
import { addReportCommands } from './report-commands.ts';
import { addSeasonCommands } from './season-commands.ts';
import { addSheetCommands } from './sheet-commands.ts';
import { addVisitCommands } from './visit-commands.ts';

const SEASONS_AHEAD = 30;

function seasonCount(text: string): number {
  const count = Number(text);
  if (Number.isInteger(count) && count >= 1 && count <= SEASONS_AHEAD) return count;
  throw new InvalidArgumentError(`write a whole number from 1 to ${SEASONS_AHEAD}.`);
}

const jsonOption = (): Option => new Option('--json', 'print JSON instead of text');

function program(context: CliContext): Command {
  const { terminal } = context;
  const root = new Command('stormpale')
    .description('Forecasts how much wind installed wood fences still hold, and tells their owners in time.')
    .option('--data <folder>', 'folder of the register and of caught mail (STORMPALE_DATA, else ./data)')
    .option('--config <file>', 'configuration file in JSON (STORMPALE_CONFIG)')
    .addHelpText('after', EXIT_CODES_TEXT)
    .configureOutput({ writeOut: terminal.out, writeErr: terminal.err })
    .showHelpAfterError('(stormpale --help shows every command)')
    .exitOverride();
  const globals = (): GlobalOptions => root.opts<GlobalOptions>();

  root
    .command('serve')
    .description('run the service: nightly sweep, notices, pages')
    .option('--demo-if-empty', 'load the invented demo where the register holds no fences')
    .option('--empty', 'begin with an empty register: never load the demo')
    .action((options: ServeOptions) => runServe(context, { ...globals(), ...options }));
  root
    .command('import')
    .description('read CSV files into the register: whole files or nothing, unless told otherwise')
    .argument('<files...>', `CSV files of any of these kinds: ${RECORD_KINDS.join(', ')}`)
    .option('--accept-valid', 'keep the good rows and hand the bad ones back in a file')
    .option('--rejected <file>', 'where to put the bad rows (else NAME.rejected.csv beside each file)')
    .option('--dry-run', 'only say what would change')
    .addOption(jsonOption())
    .action((files: string[], options: ImportCommandOptions) =>
      runImport(context, files, { ...globals(), ...options }),
    );
  root
    .command('export')
    .description('write records as CSV that import reads back')
    .argument('<kind>', `${RECORD_KINDS.join(', ')} or all`)
    .option('--out <folder>', 'folder to write into, or - for standard output')
    .addOption(new Option('--units <units>', 'units of the columns').choices(['site', 'us', 'metric']).default('site'))
    .action((kind: string, options: ExportCommandOptions) => runExport(context, kind, { ...globals(), ...options }));
  root
    .command('sweep')
    .description('recompute every fence whose inputs changed, and write the notices that come of it')
    .addOption(jsonOption())
    .action((options: SweepCommandOptions) => runSweepCommand(context, { ...globals(), ...options }));
  root
    .command('forecast')
    .description('show one fence season by season, with a chart')
    .argument('<ref>', 'ref of the fence')
    .option('--seasons <count>', 'seasons ahead to list', seasonCount, 10)
    .addOption(jsonOption())
    .action((ref: string, options: ForecastOptions) => runForecast(context, ref, { ...globals(), ...options }));
  root
    .command('reasons')
    .description('show each step from the inputs to the speeds, with equation, source and how sure we are of it')
    .argument('<ref>', 'ref of the fence')
    .option('--season <label>', 'season to explain, as 2027 or new (else the season at hand)')
    .option('--ends', 'explain the posts that decide the ends')
    .addOption(jsonOption())
    .action((ref: string, options: ReasonsOptions) => runReasons(context, ref, { ...globals(), ...options }));
  root
    .command('settings')
    .description('show what holds for the whole register, or change it')
    .argument('[changes...]', 'key=value, as time-zone=America/Chicago; all settings are shown where left out')
    .addOption(jsonOption())
    .action((changes: string[], options: SettingsOptions) =>
      runSettings(context, changes, { ...globals(), ...options }),
    );
  addEvidenceCommands(root, context, globals);
  addLearnedCommands(root, context, globals);
  addSeasonCommands(root, context, globals);
  addVisitCommands(root, context, globals);
  addMoneyCommands(root, context, globals);
  addSheetCommands(root, context, globals);
  addReportCommands(root, context, globals);
  addAccessCommands(root, context, globals);
  addMailCommands(root, context, globals);
  return root;
}

/** Runs one command line and returns the code to end with. Never throws: what goes wrong is told on standard error. */
export async function runCli(args: readonly string[], parts: Omit<CliContext, 'end'>): Promise<ExitCode> {
  let code: ExitCode = EXIT.done;
  const context: CliContext = {
    ...parts,
    end: (wanted) => {
      code = wanted;
    },
  };
  try {
    await program(context).parseAsync([...args], { from: 'user' });
    return code;
  } catch (error) {
    return explain(error, context);
  }
}

function explain(error: unknown, context: CliContext): ExitCode {
  const { terminal } = context;
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.usage;
  if (error instanceof CliError) {
    terminal.err(`${error.message}\n${error.wayOut}\n`);
    return error.code;
  }
  if (error instanceof ConfigError) {
    terminal.err(`${error.message}\nCorrect that in the environment or in the configuration file, and start again.\n`);
    return EXIT.usage;
  }
  const message = error instanceof Error ? error.message : String(error);
  terminal.err(
    `${message}\nIf that is no help, run the same again with STORMPALE_LOG_LEVEL=debug to see where it happened.\n`,
  );
  if (context.env.STORMPALE_LOG_LEVEL === 'debug' && error instanceof Error) terminal.err(`${error.stack ?? ''}\n`);
  return EXIT.unexpected;
}
