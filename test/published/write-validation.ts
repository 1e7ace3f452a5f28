import { writeFileSync } from 'node:fs';
import { demoFacts } from './demo-facts.ts';
import { moveNumbers } from './move-numbers.ts';
import { EFFECTS_DAY, REPRESENTATIVE_FENCES } from './number-effects.ts';
import { effectsDigest, NUMBERS_FILE, storedEffects } from './numbers-file.ts';
import { PICTURES } from './pictures.ts';
import { VALIDATION_FILE } from './validation-file.ts';
import { validationPage } from './validation-page.ts';

/**
 * Writes docs/validation.md, its pictures and its data: `npm run validation`. The numbers are moved anew where the program,
 * the demo or the rows have changed since; `-- --anew` moves them in any case.
 */
const digest = effectsDigest();
if (process.argv.includes('--anew') || storedEffects()?.digest !== digest) {
  const facts = await demoFacts(REPRESENTATIVE_FENCES, EFFECTS_DAY);
  const began = performance.now();
  const effects = await moveNumbers(facts);
  writeFileSync(NUMBERS_FILE, `${JSON.stringify({ digest, effects }, null, 1)}\n`);
  console.log(
    `docs/validation-numbers.json: ${effects.length} numbers in ${((performance.now() - began) / 1000).toFixed(0)} s`,
  );
}
for (const picture of PICTURES) writeFileSync(picture.url, picture.bytes());
writeFileSync(VALIDATION_FILE, validationPage());
console.log(`docs/validation.md and ${PICTURES.length} pictures`);
