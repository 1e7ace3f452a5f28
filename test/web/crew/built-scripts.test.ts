import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { packagePath } from '../../../src/register/package-path.ts';

const scriptsIn = (folder: string): readonly string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.js'))
    .sort();

it('are in the build as they were written: a worker that a compiler made a module of does not start', {
  timeout: 240_000,
}, () => {
  execFileSync(process.execPath, [packagePath('.ci', 'ready.mjs'), '--build'], { stdio: 'pipe' });
  const [written, built] = [packagePath('src', 'web', 'crew', 'phone'), packagePath('dist', 'web', 'crew', 'phone')];
  expect(scriptsIn(written)).toContain('crew-worker.js');
  expect(scriptsIn(built)).toEqual(scriptsIn(written));
  for (const name of scriptsIn(written)) {
    expect(readFileSync(join(built, name), 'utf8'), name).toBe(readFileSync(join(written, name), 'utf8'));
  }
});
