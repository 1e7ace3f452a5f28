import { readFileSync, writeFileSync } from 'node:fs';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { numberEffects } from './number-effects.ts';
import { NUMBER_ROWS } from './number-rows.ts';

/** Moves every n-th number: one of the processes that share the work. Arguments: facts, where to write, which, of how many. */
const [factsFile, outFile, which, of] = process.argv.slice(2) as [string, string, string, string];
const facts = new Map(JSON.parse(readFileSync(factsFile, 'utf8')) as [string, FenceFacts][]);
const rows = NUMBER_ROWS.filter((_, index) => index % Number(of) === Number(which));
const effects = await numberEffects(facts, rows, (done) => {
  if (done % 10 === 0) console.log(`${done} of ${rows.length} numbers moved (part ${Number(which) + 1} of ${of})`);
});
writeFileSync(outFile, JSON.stringify(effects));
