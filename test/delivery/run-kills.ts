/** Kills a service that sweeps, writes and sends 200 times at random moments; counts what is lost and repeated. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { packagePath } from '../../src/register/package-path.ts';
import { killRun } from './kill-run.ts';
import { writeResult } from './write-result.ts';

const KILLS = Number(process.argv[2] ?? '200');
const SEED = Number(process.argv[3] ?? '1');
const folder = mkdtempSync(join(tmpdir(), 'stormpale-kills-'));
try {
  const count = await killRun({
    kills: KILLS,
    seed: SEED,
    folder,
    program: [packagePath('dist', 'cli', 'main.js')],
    fencesALife: 6,
    latestKillMs: 2200,
    onKill: (done) => {
      if (done % 10 === 0) process.stderr.write(`${done} of ${KILLS} kills\n`);
    },
  });
  writeResult('kills', [
    `The built program, \`serve\`, killed ${KILLS} times with SIGKILL; seed ${SEED}.`,
    '',
    '| | |',
    '| --- | ---: |',
    ...Object.entries(count.moments).map(
      ([moment, times]) => `| killed ${moment === 'at rest' ? moment : `while ${moment}`} | ${times} |`,
    ),
    `| fences swept | ${count.fences} |`,
    `| notices, the same as of a sweep that nobody killed | ${count.notices} |`,
    `| messages sent | ${count.messages} |`,
    `| copies that the mail server got | ${count.copies} |`,
    `| messages that it had at a kill and the register did not know of | ${count.answersLost} |`,
    `| lost, repeated without that reason, or changed | ${count.faults.length} |`,
  ]);
  if (count.answersLost === 0) process.stdout.write('No kill met an answer on its way: run it with another seed.\n');
  for (const fault of count.faults) process.stdout.write(`${fault}\n`);
  process.exitCode = count.faults.length > 0 ? 1 : 0;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
