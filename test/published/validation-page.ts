import { ALL_CHECKS } from './all-checks.ts';
import { ANCHOR_YEARS } from './anchor-years.ts';
import { FIELD_TRIALS, predictedLife } from './field-lives.ts';
import { WEAK_NUMBERS } from './number-standing.ts';
import { type CheckTag, checkOutcome, type PublishedCheck } from './published-check.ts';
import { OWN_SOURCES } from './sources.ts';

const TAGS: Readonly<Record<CheckTag, string>> = {
  read: 'the number was read in the source, or in a page that quotes it',
  'read at second hand': "read, but in somebody else's coding or account of the source",
  memory: 'recalled; nobody has opened the source. Not to be cited until somebody does',
  derived:
    'worked out by us: by a second, separately written implementation, by the anchors of the model, or by algebra. It checks the code, not nature',
  judgement: 'a choice, with its reason',
  'common practice, no source': 'what the trade says; held as a check of plain sense',
};
const TAG_ORDER = Object.keys(TAGS) as readonly CheckTag[];

const NO_CHECK: readonly string[] = [
  'Rail connections. The published table of limit states has a row for them; they enter with the connection states that an inspection reports.',
  'Lean speeds as such. The formulas reproduce published footing examples, but nobody has measured the gust at which a fence leans; expected lean speeds are the weakest part of the model.',
  'The gust that breaks a fence. No survey gives one, and no bending test of a 4x4 in concrete or soil was found.',
  'Force coefficients of a full-size wood fence. The figure is for walls; shadowbox and board-on-board count as solid for want of a measurement.',
  'The bursting of a concrete collar: a formula of our own, re-computed but never tested.',
  'Rot of modern copper treatments beyond 10 to 12 years; heavy-duty and extreme-duty stock; all treatment factors were set by the trials listed here, so those rows are calibration.',
  'Groundline treatment, liners, drainage, trimmer cuts and guards: what is published is short tests and trade experience.',
  'The bands (10th to 90th percentile), the chance of being short, the expected posts short and the chance of snapping in a season: tested for consistency, not against outside numbers. Storm seasons and their shares of the yearly hazard are data.',
  'Continuity of boards over posts (factor 1.0), hills (the factor Kzt is taken as entered), steel sleeves, round posts in wind, bending that peaks below ground in direct-buried posts.',
  'Design wind speeds of places: none is shipped; each is entered with its source.',
];

const significant = (value: number): number => String(value).replace(/^-?0?\.?0*|\.|e.*$/g, '').length;
const digits = (value: number, count: number): string => String(Number(value.toPrecision(count)));
const publishedText = (value: number | string): string => (typeof value === 'number' ? digits(value, 9) : value);

function computedText(check: PublishedCheck): string {
  const { computed } = checkOutcome(check);
  if (typeof computed === 'string') return check.detail ? `${computed} (${check.detail()})` : computed;
  const published = typeof check.published === 'number' ? significant(Number(digits(check.published, 9))) : 4;
  const size = Math.max(Math.abs(computed), typeof check.published === 'number' ? Math.abs(check.published) : 0);
  if (Math.abs(computed) < 1e-9 * Math.max(1, size)) return '0';
  return digits(computed, Math.min(10, Math.max(4, published + 1)));
}

function differenceText(check: PublishedCheck): string {
  const { difference } = checkOutcome(check);
  if (difference === null || typeof check.published !== 'number') return '';
  const { published } = check;
  if (Math.abs(difference) < 1e-9 * Math.max(1, Math.abs(published))) return '0';
  if (check.tolerance.kind === 'relative') return `${digits(Number(((100 * difference) / published).toFixed(3)), 2)} %`;
  return digits(difference, 2);
}

const toleranceText = ({ tolerance, published }: PublishedCheck): string => {
  if (typeof published === 'string') return 'equal';
  return tolerance.kind === 'relative' ? `${digits(100 * tolerance.value, 3)} %` : digits(tolerance.value, 3);
};

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');

const distinct = (values: readonly string[]): number => new Set(values).size;

function topicSection(topic: string, checks: readonly PublishedCheck[]): string {
  const notes = [...new Set(checks.flatMap((check) => (check.note ? [check.note] : [])))];
  const mark = (check: PublishedCheck): string => (check.note ? ` [${notes.indexOf(check.note) + 1}]` : '');
  const rows = checks.map((check) => [
    check.quantity + mark(check),
    computedText(check),
    publishedText(check.published),
    differenceText(check),
    toleranceText(check),
    check.unit,
    check.tag,
    check.source,
  ]);
  const head = ['quantity', 'computed', 'published', 'difference', 'tolerance', 'unit', 'tag', 'source'];
  const list = notes.map((note, index) => `[${index + 1}] ${note}`).join('\n\n');
  return `### ${topic}\n\n${table(head, rows)}\n${list ? `\n${list}\n` : ''}`;
}

function summary(): string {
  const rows = TAG_ORDER.map((tag) => {
    const tagged = ALL_CHECKS.filter((check) => check.tag === tag);
    return [tag, String(tagged.length), String(distinct(tagged.map((check) => check.source))), TAGS[tag]];
  });
  const sources = new Set(ALL_CHECKS.map((check) => check.source));
  const own = [...sources].filter((source) => OWN_SOURCES.has(source)).length;
  return `${ALL_CHECKS.length} checks against ${sources.size} sources, ${sources.size - own} of them outside works (the trade counted as one) and ${own} our own.

${table(['tag', 'checks', 'sources', 'meaning'], rows)}`;
}

function disagreements(): string {
  const anchors = ANCHOR_YEARS.map(({ quantity, published, years }) => [
    quantity,
    String(published),
    years('at the medians').toFixed(1),
    years('over the belief').toFixed(1),
  ]);
  const trials = FIELD_TRIALS.map((trial) => {
    const predicted = predictedLife(trial);
    return [
      trial.name,
      predicted.toFixed(1),
      String(trial.observedYears),
      (trial.observedYears / predicted).toFixed(2),
      trial.source,
    ];
  });
  return `**Median of the belief, and value at the medians.** The anchors are worked out with every unknown (pace, fibre strength, footing, load) at its
median. A forecast shows the p50 over the whole belief, all 128 points. A new fence gives the same by both: its speed is a product of factors, each even about its
median. Once it rots, speed is a product of such a factor and of what rot has left, and that is skewed: a fast pace takes more than a slow one spares. The median over a skewed
belief is not the value at the medians; it lies lower, so the p50 goes short a little earlier. The difference is largest just below the new speed, where strength and pace both
decide, and nearly gone where pace alone does. Depth and strength left follow pace in order, so they agree by both.

${table(['line posts, exposure B, Gulf-like climate [a]', 'anchor', 'at the medians', 'p50 of the belief'], anchors)}

**Field trials.** Untreated wood in the ground lives 0.6 to 2.2 times as long as predicted; on average the prediction is close (1.12), and the scatter (0.45 in ln) is
carried as the model's own spread. Cold sites are predicted too short-lived, posts in southern Mississippi (termites) too long-lived. The line taken for failure (a twentieth of
the modulus), two sizes and the climates are ours.

${table(['trial', 'predicted [a]', 'observed [a]', 'observed over predicted', 'source'], trials)}

**Broms and pivot statics.** Broms' formula for sand lets the post turn about its toe and is unconservative for posts this short: true statics with the same earth pressure gives
0.65 to 0.70 of it (139 against 212 lbf at 24 in). The program takes 0.8 of Broms for \`expected\`, by judgement. True statics gives 0.58 to 0.79 of Broms over all lengths of arm, so the choice is on the hopeful side of it.

**ASD and LRFD.** For wind on wood in bending, allowable stress (1.6 Fb / 0.6) is 23 % stronger in force than LRFD (2.16 Fb), 11 % in speed. The \`code\` verdict is ASD, the lenient
one, and says so.

**One cell of the force coefficients.** Three public codings of ASCE 7-16 Figure 29.3-1 have Cf = 1.60 at s/h 0.7, B/s 4; a fourth has 1.55. The program has 1.60. The figure itself was not opened.

**Southern pine No.1 4x4.** The published row (104 / 86 mph) leaves out the wet service factor that the same table's note asks for above 1,150 psi. The program
applies it: 96 / 79 mph. The check is run dry.

**Heart rot.** By the formula a 4x4 with a 3 in cavity keeps 68 % of its modulus. The program counts a shell thinner than an eighth of the width as failed, on the safe side.

**Lateral bearing of dense sand.** The table gives 200 psf/ft to gravel and 150 to every sand. The class "dense sand or gravel" has 200, which is the lenient reading for sand without gravel.

**A wall by a consultant.** Its author takes Cf from the column B/s = 1; interpolated to B/s = 20/18 the pressure is 0.4 % lower.

**SI and customary constants.** 0.613 in SI against 0.00256 in customary units differ by 0.05 % in pressure; every speed here is 0.03 % above the customary one.

**The five-year gust.** The formula gives 0.77 of the 50-year gust where the commentary of ASCE 7-05 prints 0.78.

**One anchor.** Above-ground stock goes short of 105 mph in year 8.02 against the anchor's 8.1 (1.01 %).`;
}

/** The text of docs/validation.md, from the checks themselves. Deterministic. */
export function validationPage(): string {
  const topics = [...new Set(ALL_CHECKS.map((check) => check.topic))];
  const sections = topics.map((topic) =>
    topicSection(
      topic,
      ALL_CHECKS.filter((check) => check.topic === topic),
    ),
  );
  return `# What the numbers are checked against

This page is written by \`npm run validation\` from the checks under \`test/published\`; do not edit it by hand. Every row is a test: the program's own functions
compute the number, and the test fails where it strays further from the published one than the tolerance says. A test also moves every published number and sees its check fail.

These are planning estimates, not a structural certification. Local codes and the authority having jurisdiction decide.

## How to read it

The **tag** says how sure we are of the *published* number. A check tagged *derived* shows that the code does what its equations say, not that the equations are right; a check
tagged *memory* shows that the program agrees with what is remembered of a source. Only *read* rows are outside evidence. The second implementation
is a pair of short scripts in plain arithmetic, written before this program and apart from it; its results are copied into the checks. The reference fence is checked on its own inputs
(15 ft floor on Kz, 5,000 psi, sand of phi 32 and 115 pcf), not on the basis \`expected\`. A difference of 0 means less than a billionth.

${summary()}

## Checks

${sections.join('\n')}
## What has no published check

${NO_CHECK.map((line) => `- ${line}`).join('\n')}

## Known disagreements

${disagreements()}

## Numbers from memory or judgement

Taken from the program's own constants. \`stormpale reasons\` shows the source and tag of every step of a forecast.

${table(
  ['what', 'value', 'tag', 'source or reason'],
  WEAK_NUMBERS.map(({ what, value, tag, source }) => [what, value, tag, source]),
)}
`;
}
