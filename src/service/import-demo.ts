import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseCsv } from '../register/csv/csv-text.ts';
import { importCsv } from '../register/csv/import-csv.ts';
import { remarkText } from '../register/csv/import-report.ts';
import type { Register } from '../register/database.ts';
import { packagePath } from '../register/package-path.ts';
import { listRecords } from '../register/record-store.ts';
import { readSettings, writeSettings } from '../register/settings-store.ts';
import type { Clock } from './clock.ts';
import { dayInZone, isoUtc } from './clock.ts';

/** True where the register holds every owner of the demo: it was loaded, and nobody has cleared it away. */
export async function holdsDemo(register: Register): Promise<boolean> {
  const table = parseCsv(readFileSync(join(packagePath('seeds-demo'), 'owners.csv'), 'utf8'));
  if (!('header' in table)) throw new Error(`owners.csv of the demo, line ${table.line}: ${table.reason}`);
  const at = table.header.cells.indexOf('ref');
  const known = new Set((await listRecords(register.db, 'owners')).map(({ ref }) => ref));
  return table.rows.every(({ cells }) => known.has(cells[at] ?? ''));
}

/**
 * Imports the demo that ships with the program; a register that was empty then holds none of its first notices. Throws where the register refuses any of it, naming every fault.
 */
export async function importDemo(
  register: Register,
  parts: { readonly now: Clock; readonly onProgress: (doneRows: number, totalRows: number) => void },
): Promise<void> {
  const folder = packagePath('seeds-demo');
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.csv'))
    .map((name) => ({ name, text: readFileSync(join(folder, name), 'utf8') }));
  const isEmpty = (await listRecords(register.db, 'owners')).length === 0;
  const { timeZone } = await readSettings(register.db);
  const report = await importCsv(register, files, {
    acceptValid: false,
    dryRun: false,
    today: dayInZone(parts.now(), timeZone),
    now: isoUtc(parts.now()),
    onProgress: parts.onProgress,
  });
  // its owners are invented, and what it would send them is there to be read
  if (report.applied && isEmpty) await writeSettings(register.db, { holdFirstSweep: 'no' }, isoUtc(parts.now()));
  if (!report.applied) throw new Error(`the demo was refused: ${report.faults.map(remarkText).join('; ')}`);
}
