import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { importCsv } from '../../src/register/csv/import-csv.ts';
import { remarkText } from '../../src/register/csv/import-report.ts';
import { openRegister } from '../../src/register/database.ts';
import { loadFenceFacts } from '../../src/register/fence-facts-store.ts';
import { packagePath } from '../../src/register/package-path.ts';

/** Facts of some demo fences, as a register gives them that has loaded the demo on a day. */
export async function demoFacts(refs: readonly string[], day: string): Promise<ReadonlyMap<string, FenceFacts>> {
  const folder = packagePath('seeds-demo');
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.csv'))
    .map((name) => ({ name, text: readFileSync(join(folder, name), 'utf8') }));
  const register = await openRegister(':memory:');
  try {
    const options = { acceptValid: false, dryRun: false, today: day, now: `${day}T00:00:00.000Z` };
    const report = await importCsv(register, files, options);
    if (!report.applied) throw new Error(`the demo was refused: ${report.faults.map(remarkText).join('; ')}`);
    return await loadFenceFacts(register, refs);
  } finally {
    await register.close();
  }
}
