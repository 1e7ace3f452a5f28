// The dependency rule of the house. Asserts that something was looked at: a checker that sees no modules finds no faults.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { cruise } from 'dependency-cruiser';
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config';

const root = join(import.meta.dirname, '..');
process.chdir(root);
const config = createRequire(import.meta.url)(join(root, '.dependency-cruiser.cjs'));
const { output } = await cruise(['src'], { ruleSet: config, validate: true, ...config.options }, undefined, {
  tsConfig: extractTSConfig('tsconfig.json'),
});
const modules = output.modules.filter((module) => module.source.startsWith('src/'));
const rooms = new Set(modules.map((module) => module.source.split('/')[1]));
for (const { rule, from, to } of output.summary.violations) console.error(`${rule.name}: ${from} imports ${to}`);
if (modules.length === 0 || rooms.size < 8) {
  console.error(
    `the house check saw ${modules.length} modules in ${rooms.size} rooms: it is not looking at the source`,
  );
  process.exit(1);
}
const long = modules
  .map(({ source }) => [source, readFileSync(source, 'utf8').split('\n').length])
  .filter(([, lines]) => lines > 320);
for (const [source, lines] of long) console.error(`${source} has ${lines} lines: is it one thing?`);
console.log(
  `house: ${modules.length} modules in ${rooms.size} rooms, ${output.summary.violations.length} arrows pointing up`,
);
process.exit(output.summary.violations.length + long.length > 0 ? 1 : 0);
