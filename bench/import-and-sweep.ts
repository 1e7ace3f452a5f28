import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DateTime } from 'luxon';
import { importCsv } from '../src/register/csv/import-csv.ts';
import { remarkText } from '../src/register/csv/import-report.ts';
import { openRegister } from '../src/register/database.ts';
import { listFences } from '../src/register/fence-list.ts';
import { EVERY_FENCE } from '../src/register/fence-query.ts';
import { runSweep } from '../src/service/run-sweep.ts';
import { fencesCsv, surroundings } from './made-up-fences.ts';

/** Measures import, first sweep and a sweep in which nothing changed, one after the other on one register. */
const count = Number(process.argv[2] ?? 10_000);
const folder = mkdtempSync(join(tmpdir(), 'stormpale-bench-'));
const path = join(folder, 'register.sqlite');
const now = (): DateTime => DateTime.fromISO('2026-11-25T12:00:00Z', { zone: 'utc' });

async function timed<T>(what: string, work: () => Promise<T>): Promise<number> {
  const from = performance.now();
  await work();
  const seconds = (performance.now() - from) / 1000;
  console.log(
    `${what.padEnd(34)} ${seconds.toFixed(1).padStart(7)} s ${Math.round(count / seconds)
      .toString()
      .padStart(8)} fences/s`,
  );
  return seconds;
}

const counter =
  (what: string) =>
  (done: number): void => {
    if (process.stderr.isTTY) process.stderr.write(`\r${what} ${done} of ${count} `);
  };

async function importAll(
  files: readonly { readonly name: string; readonly text: string }[],
  onProgress?: (done: number) => void,
) {
  const report = await importCsv(register, files, {
    acceptValid: false,
    dryRun: false,
    today: '2026-11-25',
    now: '2026-11-25T12:00:00Z',
    ...(onProgress && { onProgress }),
  });
  if (!report.applied && report.faults.length > 0)
    throw new Error(report.faults.slice(0, 3).map(remarkText).join('\n'));
}

const register = await openRegister(path);
try {
  await importAll(surroundings());
  console.log(`${count} fences, Node ${process.version}`);
  const files = [{ name: 'fences.csv', text: fencesCsv(count) }];
  const imported = await timed('import from CSV', () => importAll(files, counter('import')));
  const again = await timed('import of the same file again', () => importAll(files));
  const first = await timed('first sweep, every fence forecast', () =>
    runSweep(register, { now, onProgress: ({ done }) => counter('sweep')(done) }),
  );
  const second = await timed('second sweep, nothing changed', () => runSweep(register, { now }));
  const pages = 40;
  const from = performance.now();
  for (let page = 1; page <= pages; page += 1) {
    await listFences(register, { ...EVERY_FENCE, page });
  }
  console.log(`one page of the list of fences        ${((performance.now() - from) / pages).toFixed(1)} ms`);
  console.log(`register on disk ${(statSync(path).size / 1e6).toFixed(0)} MB`);
  console.log(
    `ratios: same file again / import ${(again / imported).toFixed(2)}, unchanged / first sweep ${(second / first).toFixed(3)}`,
  );
} finally {
  await register.close();
  rmSync(folder, { recursive: true, force: true });
}
