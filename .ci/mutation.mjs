// Mutation testing: changes the source of a pure room in one place at a time and asks its tests to notice.
// Part after part, each judged by tests of its own room; then the page of what was and was not noticed.
//   npm run mutation                   all parts, docs/mutation.md written anew
//   npm run mutation -- decay          one part; the page is written where the others have a report from before
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { mutationPage, scoreOf } from './mutation-page.mjs';

const LOWEST_SCORE = 85;
/** What puts whole forecasts together, and what explains them: each judged by quick tests of its own, so that a run ends in minutes. */
const COMPOSED = ['forecast-fence', 'group-forecast', 'fence-state', 'unknown-inputs', 'sensitivity*'];
const COMPOSED_TESTS = [
  'fence-state',
  'fence-events',
  'group-forecast',
  'unknown-inputs',
  'sensitivity-changes',
  'sensitivity-unknowns',
  'short-time',
  'forecast-composed',
  'forecast-fence',
];
const REASONS = ['reasons*', 'reason-*'];
/** Tests that forecast so many fences that no mutant of a single question needs them. */
const OF_WHOLE_FORECASTS = [
  'forecast-fence',
  'forecast-composed',
  'snap-speed-properties',
  'reasons*',
  'sensitivity',
  'properties',
  'forecast-codec',
  'point-risks',
];

const sources = (names) => names.map((name) => `src/forecast/${name}.ts`);
const tests = (names) => names.map((name) => `test/forecast/${name}.test.ts`);
const allBut = (patterns) => patterns.map((pattern) => `!${pattern}`);
/** Subjects of the evidence that are judged by tests of their own. */
const [BELIEF, STORMS, REGISTER] = [['evidence/*-belief*'], ['evidence/storm-*'], ['evidence/register-*']];
const OF_EVIDENCE = [BELIEF, STORMS, REGISTER];
const evidencePart = (names) => ({ room: 'forecast', mutate: sources(names), tests: tests(names) });
const PARTS = {
  decay: { room: 'decay', mutate: ['src/decay/*.ts'], tests: ['test/decay/*.test.ts'] },
  capacity: { room: 'capacity', mutate: ['src/capacity/*.ts'], tests: ['test/capacity/*.test.ts'] },
  forecast: {
    room: 'forecast',
    mutate: ['src/forecast/*.ts', ...allBut(sources([...COMPOSED, ...REASONS, 'point-risks']))],
    tests: ['test/forecast/*.test.ts', ...allBut(tests(OF_WHOLE_FORECASTS))],
  },
  composed: {
    room: 'forecast',
    mutate: sources([...COMPOSED, 'point-risks']),
    tests: tests([...COMPOSED_TESTS, 'point-risks']),
  },
  reasons: {
    room: 'forecast',
    mutate: sources(REASONS),
    tests: [...tests(['reasons-*', 'reason-*']), ...allBut(tests(['reasons']))],
  },
  evidence: {
    room: 'forecast',
    mutate: ['src/forecast/evidence/*.ts', ...allBut(sources(OF_EVIDENCE.flat()))],
    tests: ['test/forecast/evidence/*.test.ts', ...allBut(tests(OF_EVIDENCE.flat()))],
  },
  belief: evidencePart(BELIEF),
  storms: evidencePart(STORMS),
  register: evidencePart(REGISTER),
};

process.chdir(join(import.meta.dirname, '..'));
const names = Object.keys(PARTS);
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !names.includes(name));
if (unknown.length > 0) {
  console.error(`mutation: no part ${unknown.join(', ')}; there are ${names.join(', ')}`);
  process.exit(2);
}

const reportOf = (name) => `reports/mutation/${name}.json`;
for (const name of asked.length > 0 ? asked : names) {
  const { mutate, tests } = PARTS[name];
  console.log(`mutation: ${name}`);
  process.env.MUTATION_TESTS = tests.join(' ');
  await new Stryker({ mutate, jsonReporter: { fileName: reportOf(name) } }).runMutationTest();
}

const missing = names.filter((name) => !existsSync(reportOf(name)));
if (missing.length > 0) {
  console.log(`mutation: docs/mutation.md left as it is, no report yet of ${missing.join(', ')}`);
  process.exit(0);
}
const reports = names.map((name) => ({
  room: PARTS[name].room,
  files: JSON.parse(readFileSync(reportOf(name), 'utf8')).files,
}));
writeFileSync('docs/mutation.md', mutationPage(reports));
const score = scoreOf(reports);
console.log(`mutation: ${score.toFixed(1)} % of the changes were noticed; docs/mutation.md written`);
process.exit(score < LOWEST_SCORE ? 1 : 0);
