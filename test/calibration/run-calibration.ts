import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { build } from 'esbuild';
import { type Mistake, type RankCounts, UNKNOWNS } from './calibration-ranks.ts';

const run = promisify(execFile);

/** Fixed before the first run: the day the check was written. */
export const SEED = 20_261_125;
export const FENCES = 1_000;
/** Fences on which a mistake made on purpose has to show. */
export const FENCES_WITH_MISTAKE = 500;
const SHARES = 2;

/** One task of a calibration. */
export interface CalibrationTask {
  readonly seed: number;
  readonly fences: number;
  readonly mistake: Mistake;
}

/** The task whose result is committed, and those that have to fail. */
export const RIGHT: CalibrationTask = { seed: SEED, fences: FENCES, mistake: 'none' };
export const WRONG: readonly CalibrationTask[] = [
  { seed: SEED + 1_000_000, fences: FENCES_WITH_MISTAKE, mistake: 'width taken for depth' },
  { seed: SEED + 2_000_000, fences: FENCES_WITH_MISTAKE, mistake: 'what stood left out' },
];

const added = (a: RankCounts, b: RankCounts): RankCounts =>
  Object.fromEntries(
    UNKNOWNS.map((unknown) => [unknown, a[unknown].map((count, i) => count + b[unknown][i]!)]),
  ) as unknown as RankCounts;

/** Runs calibrations shared out over child processes, bundled so that they run as fast as the built program. */
export async function runCalibrations(tasks: readonly CalibrationTask[]): Promise<readonly RankCounts[]> {
  const folder = mkdtempSync(join(tmpdir(), 'stormpale-calibration-'));
  try {
    const outfile = join(folder, 'child.mjs');
    const entry = join(import.meta.dirname, 'calibration-child.ts');
    await build({ entryPoints: [entry], bundle: true, platform: 'node', format: 'esm', outfile, logLevel: 'error' });
    const share = async ({ seed, fences, mistake }: CalibrationTask, index: number): Promise<RankCounts> => {
      const from = Math.floor((index * fences) / SHARES);
      const to = Math.floor(((index + 1) * fences) / SHARES);
      const { stdout } = await run(process.execPath, [outfile, `${seed}`, `${from}`, `${to}`, mistake]);
      return JSON.parse(stdout) as RankCounts;
    };
    const results: RankCounts[] = [];
    for (const task of tasks) {
      const shares = await Promise.all(Array.from({ length: SHARES }, (_, index) => share(task, index)));
      results.push(shares.reduce(added));
    }
    return results;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
