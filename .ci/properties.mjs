// Holds every property of the suite over examples of fresh seeds: npm run properties [ROUNDS, default 5] [FIRST SEED].
// Prints the seed of each round, so that what fails can be run again: PROPERTIES_SEED=N npx vitest run FILE.
import { execFileSync, spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { join } from 'node:path';

process.chdir(join(import.meta.dirname, '..'));
const rounds = Number(process.argv[2] ?? 5);
const first = process.argv[3] === undefined ? null : Number(process.argv[3]);
if (!Number.isInteger(rounds) || rounds < 1) {
  console.error(`${process.argv[2]} rounds: give a whole number from 1, as in npm run properties 5`);
  process.exit(2);
}
const files = execFileSync('git', ['grep', '-l', 'fast-check', '--', 'test/**/*.test.ts', 'test/**/*.test.tsx'], {
  encoding: 'utf8',
})
  .trim()
  .split('\n');
let failed = 0;
for (let round = 0; round < rounds; round += 1) {
  const seed = first === null ? randomInt(1_000_000_000) : first + round;
  console.log(`round ${round + 1} of ${rounds}: PROPERTIES_SEED=${seed}, ${files.length} files`);
  const { status } = spawnSync('npx', ['vitest', 'run', '--reporter=dot', ...files], {
    stdio: 'inherit',
    env: { ...process.env, PROPERTIES_SEED: String(seed) },
  });
  if (status !== 0) failed += 1;
}
console.log(`properties: ${rounds - failed} of ${rounds} rounds held`);
process.exit(failed === 0 ? 0 : 1);
