import { ALL_CHECKS } from './all-checks.ts';
import { checkSection } from './check-section.ts';
import { disagreementSection, gapsSection } from './gaps-section.ts';
import { hindcastSection, hindcastSummary } from './hindcast-section.ts';
import { numbersSection, numbersSummary } from './numbers-section.ts';
import { distinct, table } from './page-table.ts';
import { type CheckTag, checkOutcome, OUTSIDE_TAGS } from './published-check.ts';

const TAGS: Readonly<Record<CheckTag, string>> = {
  read: 'the number was read in the source, or in a page that quotes it',
  'read at second hand': "read, but in somebody else's coding or account of the source",
  'common practice, no source': 'what the trade says; held as a check of plain sense',
  memory: 'recalled; nobody has opened the source. Not to be cited until somebody does',
  derived:
    'worked out by us: by a second, separately written implementation, by the anchors of the model, or by algebra. It checks the code, not nature',
  judgement: 'a choice, with its reason',
};

function summary(): string {
  const rows = (Object.keys(TAGS) as readonly CheckTag[]).map((tag) => {
    const tagged = ALL_CHECKS.filter((check) => check.tag === tag);
    return [tag, String(tagged.length), String(distinct(tagged.map((check) => check.source))), TAGS[tag]];
  });
  return table(['tag', 'checks', 'sources', 'meaning'], rows);
}

/** The text of docs/validation.md, from the checks, the field rows and the stored effects of the numbers. Deterministic. */
export function validationPage(): string {
  const missed = ALL_CHECKS.filter((check) => !checkOutcome(check).meets).length;
  const outside = ALL_CHECKS.filter((check) => OUTSIDE_TAGS.has(check.tag));
  return `# What the numbers are checked against

**${outside.length} checks from ${distinct(outside.map((check) => check.source))} outside sources whose numbers were read** (in the source, in a page that quotes it, or at second hand; the trade's common practice counted as one source). A further ${ALL_CHECKS.length - outside.length} checks rest on memory,
on our own second implementation or on algebra, and are not counted as evidence. ${missed === 0 ? `All ${ALL_CHECKS.length} are met` : `**${missed} of ${ALL_CHECKS.length} are missed**`}: every row is a test that has to pass.

${hindcastSummary()}

${numbersSummary()}

<picture>
  <source media="(max-width: 600px)" srcset="pictures/validation-hindcast-phone.png">
  <img alt="Forecast lives of posts and stakes in the ground with their 50 % and 90 % bands, and what was seen: rows used for nothing, rows from memory, and calibration rows apart. The tables below give every number." src="pictures/validation-hindcast.png">
</picture>

The picture as [SVG](pictures/validation-hindcast.svg). On this page: [field data](#field-data-forecast-and-seen) · [numbers from memory or judgement](#numbers-from-memory-or-judgement) · [what has no published check](#what-has-no-published-check) · [known disagreements](#known-disagreements) · [every check](#checks).

These are planning estimates, not a structural certification. Local codes and the authority having jurisdiction decide.

## How to read it

This page is written by \`npm run validation\` from \`test/published\`; do not edit it by hand. The program's own functions compute every number, and a test fails where one strays further from the published one than the tolerance says. A test also
moves every published number and sees its check fail. The **tag** says how sure we are of the *published* number. A check tagged *derived* shows that the code does what its equations say, not that the equations are right; a check tagged *memory* shows that the program
agrees with what is remembered of a source. The second implementation is a pair of short scripts in plain arithmetic, written before this program and apart from it; its results are copied into the checks. The reference fence is checked on its own inputs
(15 ft floor on Kz, 5,000 psi, sand of phi 32 and 115 pcf), not on the basis \`expected\`. A difference of 0 means less than a billionth.

${summary()}

## Field data: forecast and seen

${hindcastSection()}

## Numbers from memory or judgement

${numbersSection()}

## What has no published check

${gapsSection()}

## Known disagreements

${disagreementSection()}

## Checks

${checkSection()}`;
}
