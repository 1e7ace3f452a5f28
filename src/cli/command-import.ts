import { accessSync, constants, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { importCsv } from '../register/csv/import-csv.ts';
import type { ImportReport } from '../register/csv/import-report.ts';
import { remarkText } from '../register/csv/import-report.ts';
import { RECORD_KINDS } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { dayInZone, isoUtc } from '../service/clock.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { counter, jsonText } from './terminal.ts';

/** Options of `import`. */
export interface ImportCommandOptions extends GlobalOptions {
  readonly acceptValid?: boolean;
  readonly rejected?: string;
  readonly dryRun?: boolean;
  readonly json?: boolean;
}

/** Imports CSV files into the register. */
export async function runImport(
  context: CliContext,
  paths: readonly string[],
  options: ImportCommandOptions,
): Promise<void> {
  if (options.rejected !== undefined && !options.acceptValid) {
    throw new CliError(
      EXIT.usage,
      '--rejected is given without --accept-valid: without it no row is kept and none handed back',
      'add --accept-valid to keep the good rows, or leave --rejected out',
    );
  }
  if (options.acceptValid) checkRejectedPlaces(paths, options.rejected);
  const files = paths.map((path) => ({ name: basename(path), text: readText(path) }));
  const { terminal, clock } = context;
  const progress = counter(terminal, 'Importing:');
  const report = await withRegister(configOf(context, options), async (register) => {
    const { timeZone } = await readSettings(register.db);
    return importCsv(register, files, {
      acceptValid: options.acceptValid === true,
      dryRun: options.dryRun === true,
      today: dayInZone(clock(), timeZone),
      now: isoUtc(clock()),
      onProgress: (done, total) => progress.show(`${done} of ${total} rows`),
    });
  }).finally(() => progress.end());
  const written = report.applied ? writeRejected(context, report, paths, options.rejected) : [];
  if (options.json) {
    const { applied, dryRun, counts, changes, faults, warnings } = report;
    terminal.out(jsonText({ applied, dryRun, counts, changes, faults, warnings, rejectedFiles: written }));
  } else tell(context, report, written);
  if (report.faults.length > 0) context.end(report.applied ? EXIT.partly : EXIT.refused);
}

function readText(path: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(readFileSync(path));
  } catch (error) {
    const unreadable =
      error instanceof TypeError ? 'is not UTF-8 text' : `cannot be read (${(error as Error).message})`;
    throw new CliError(
      EXIT.refused,
      `${path} ${unreadable}; nothing was imported`,
      error instanceof TypeError ? 'save it as CSV with the encoding UTF-8' : 'check the path and that it is a file',
    );
  }
}

/** Where the refused rows of one file go: as asked, with the file's name put in where there are several. */
function rejectedPath(name: string, several: boolean, sources: readonly string[], asked: string | undefined): string {
  const stem = basename(name, extname(name));
  if (asked === undefined) {
    const source = sources.find((path) => basename(path) === name) ?? name;
    return join(dirname(source), `${stem}.rejected.csv`);
  }
  if (!several) return asked;
  const extension = extname(asked);
  return join(dirname(asked), `${basename(asked, extension)}-${stem}${extension}`);
}

/** Refused rows must not be lost: where they would go is tried before any row is kept. */
function checkRejectedPlaces(sources: readonly string[], asked: string | undefined): void {
  for (const source of sources) {
    const path = rejectedPath(basename(source), sources.length > 1, sources, asked);
    try {
      accessSync(existsSync(path) ? path : dirname(path), constants.W_OK);
    } catch (error) {
      throw new CliError(
        EXIT.refused,
        `refused rows could not be written to ${path} (${(error as Error).message}); nothing was imported`,
        'name a file in a folder you may write to: --rejected FILE',
      );
    }
  }
}

function writeRejected(
  { terminal }: CliContext,
  report: ImportReport,
  sources: readonly string[],
  asked: string | undefined,
): readonly string[] {
  return report.rejected.flatMap(({ name, text }) => {
    const path = rejectedPath(name, report.rejected.length > 1, sources, asked);
    try {
      writeFileSync(path, text);
      return [path];
    } catch (error) {
      // The good rows are kept already: the refused ones are handed back here instead.
      terminal.err(`${path} could not be written (${(error as Error).message}); the refused rows are:\n${text}`);
      return [];
    }
  });
}

/** What was created and changed of all kinds that a forecast depends on. */
function sumOf({ counts }: ImportReport): { readonly created: number; readonly changed: number } {
  const kinds = RECORD_KINDS.filter((kind) => kind !== 'owners').map((kind) => counts[kind]);
  return {
    created: kinds.reduce((sum, each) => sum + each.created, 0),
    changed: kinds.reduce((sum, each) => sum + each.changed, 0),
  };
}

function tell({ terminal }: CliContext, report: ImportReport, written: readonly string[]): void {
  for (const warning of report.warnings) terminal.err(`Doubtful: ${remarkText(warning)}\n`);
  for (const fault of report.faults) terminal.err(`${remarkText(fault)}\n`);
  const would = report.dryRun ? 'would be ' : '';
  for (const kind of RECORD_KINDS) {
    const { created, changed, unchanged, refused } = report.counts[kind];
    if (created + changed + unchanged + refused === 0) continue;
    const refusedText = refused > 0 ? `, ${refused} refused` : '';
    const verb = report.applied || report.dryRun ? would : 'would have been ';
    terminal.out(`${kind}: ${verb}${created} created, ${changed} changed, ${unchanged} unchanged${refusedText}\n`);
  }
  for (const path of written)
    terminal.out(`The refused rows with their reasons are in ${path}; correct them and import that file.\n`);
  const faults = report.faults.length === 1 ? '1 fault' : `${report.faults.length} faults`;
  const { created, changed } = sumOf(report);
  if (report.applied && created + changed > 0) {
    terminal.out('Forecasts follow with the next sweep; to have them now: stormpale sweep\n');
  }
  if (report.fencesHeld > 0) {
    terminal.out(
      `The first notices of ${report.fencesHeld} new fences wait until you release them (setting large-import-fences): stormpale mail held\n`,
    );
  }
  if (report.dryRun)
    terminal.out(`Nothing was changed: this was a dry run${report.faults.length > 0 ? ` (${faults})` : ''}.\n`);
  else if (!report.applied) {
    terminal.err(
      `Nothing was changed: ${faults}.\nCorrect the rows named above, or keep the good ones with --accept-valid.\n`,
    );
  }
}
