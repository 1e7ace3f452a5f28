import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { exportCsv } from '../register/csv/export-csv.ts';
import type { RecordKind } from '../register/record-store.ts';
import { RECORD_KINDS } from '../register/record-store.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';

/** Options of `export`. */
export interface ExportCommandOptions extends GlobalOptions {
  /** A folder, or `-` for standard output. */
  readonly out?: string;
  readonly units: 'site' | 'us' | 'metric';
}

/** Writes one kind of records, or all of them, as CSV that `import` reads back. */
export async function runExport(context: CliContext, asked: string, options: ExportCommandOptions): Promise<void> {
  const kinds = asked === 'all' ? RECORD_KINDS : RECORD_KINDS.filter((kind) => kind === asked);
  if (kinds.length === 0) {
    throw new CliError(
      EXIT.usage,
      `there is no kind of record called ${JSON.stringify(asked)}`,
      `write one of ${RECORD_KINDS.join(', ')}, or all`,
    );
  }
  const out = options.out ?? '-';
  if (out === '-' && kinds.length > 1) {
    throw new CliError(
      EXIT.usage,
      'all kinds make several files, which one stream cannot hold',
      'name a folder with --out, or one kind',
    );
  }
  const { terminal } = context;
  const texts = await withRegister(configOf(context, options), async (register) => {
    const written: (readonly [RecordKind, string])[] = [];
    for (const kind of kinds) written.push([kind, await exportCsv(register, kind, { units: options.units })]);
    return written;
  });
  if (out !== '-') mkdirSync(out, { recursive: true });
  for (const [kind, text] of texts) {
    if (out === '-') terminal.out(text);
    else {
      const path = join(out, `${kind}.csv`);
      writeFileSync(path, text);
      terminal.out(`${path}\n`);
    }
  }
}
