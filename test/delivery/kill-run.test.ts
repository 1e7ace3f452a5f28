import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { packagePath } from '../../src/register/package-path.ts';
import { temporaryFolder } from '../service/fence-register.ts';
import { killRun } from './kill-run.ts';

const newest = (folder: string): number =>
  Math.max(
    ...readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => statSync(join(folder, name)).mtimeMs),
  );

/** The built program where it is of these sources (it starts faster), else the sources themselves. */
function program(): readonly string[] {
  const built = packagePath('dist', 'cli', 'main.js');
  const isFresh = existsSync(built) && statSync(built).mtimeMs > newest(packagePath('src'));
  return isFresh ? [built] : ['--import', 'tsx', packagePath('src', 'cli', 'main.ts')];
}

it('loses nothing and repeats only what has its reason when the service is killed again and again', {
  timeout: 240_000,
}, async () => {
  const count = await killRun({
    kills: 2,
    seed: 7,
    folder: temporaryFolder(),
    program: program(),
    fencesALife: 4,
    latestKillMs: 1500,
  });
  expect(count.faults).toEqual([]);
  expect(count.fences).toBe(8);
  expect(count.messages).toBe(8);
  expect(count.copies).toBe(count.messages + count.answersLost);
});
