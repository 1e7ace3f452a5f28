// Writes docs/mutation.md from the reports of the mutation run, so that no number on it is typed by hand.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Why a change that no test noticed is no fault, by the change: file, the words changed and what they were changed into. */
const REASONS = JSON.parse(readFileSync(join(import.meta.dirname, 'mutation-survivors.json'), 'utf8'));
const NOTICED = ['Killed', 'Timeout'];
const UNNOTICED = ['Survived', 'NoCoverage'];

const count = (mutants, ...statuses) => mutants.filter(({ status }) => statuses.includes(status)).length;
const mutantsOf = ({ files }) => Object.values(files).flatMap(({ mutants }) => mutants);
const share = (mutants) => {
  const noticed = count(mutants, ...NOTICED);
  return (100 * noticed) / Math.max(1, noticed + count(mutants, ...UNNOTICED));
};

/** Share of the mutants of all rooms that a test noticed [%]. */
export const scoreOf = (reports) => share(reports.flatMap(mutantsOf));

/** The words of the source that a mutant replaces, on one line. */
function original(source, { start, end }) {
  const lines = source.split('\n').slice(start.line - 1, end.line);
  lines[lines.length - 1] = lines.at(-1).slice(0, end.column - 1);
  lines[0] = lines[0].slice(start.column - 1);
  return lines.join(' ').replace(/\s+/g, ' ').trim();
}

/** Every change that no test noticed, with its place and its words. */
function survivors(reports) {
  return reports.flatMap(({ files }) =>
    Object.entries(files).flatMap(([file, { source, mutants }]) =>
      mutants
        .filter(({ status }) => UNNOTICED.includes(status))
        .map(({ location, replacement }) => ({
          file: file.replace(/^src\//, ''),
          from: original(source, location),
          to: (replacement ?? '').replace(/\s+/g, ' ').trim(),
        })),
    ),
  );
}

const isSame = (a, b) => a.file === b.file && a.from === b.from && a.to === b.to;

const row = (name, mutants) =>
  `| ${name} | ${count(mutants, ...NOTICED, ...UNNOTICED)} | ${count(mutants, 'Killed')} | ${count(mutants, 'Timeout')} | ${count(mutants, 'Survived')} | ${count(mutants, 'NoCoverage')} | ${share(mutants).toFixed(1)} % |`;

/** The page, from the reports of the parts, each with its room and the files it mutated. */
export function mutationPage(reports) {
  const left = survivors(reports);
  const groups = REASONS.map(({ reason, changes }) => ({
    reason,
    found: left.filter((survivor) => changes.some((change) => isSame(change, survivor))),
  })).filter(({ found }) => found.length > 0);
  const open = left.filter((survivor) => !groups.some(({ found }) => found.includes(survivor)));
  const openFiles = [...new Set(open.map(({ file }) => file))].sort();
  const all = reports.flatMap(mutantsOf);
  const rooms = [...new Set(reports.map(({ room }) => room))];
  const cell = (text) => `\`${text.replaceAll('|', '\\|')}\``;
  return `# Mutation testing

\`npm run mutation\` changes the source in one place at a time (a \`<\` into a \`<=\`, a \`+\` into a \`-\`, a condition into \`true\`, a body
into nothing) and runs the tests. A change that no test notices shows what the tests do not hold down. This page is written by the
command; it fails under 85 % over all rooms. \`npm run mutation -- decay\` takes one part
(decay, capacity, forecast, composed, reasons, evidence, belief, storms, register).

Mutated are the rooms that compute: \`src/decay\`, \`src/capacity\` and \`src/forecast\`. Each is judged by its own tests alone
(\`test/decay\` for \`src/decay\`; in the forecast, what does not put whole forecasts together also without the tests of these), not by the published checks, the pages or the sweep, which notice some of the same changes again.
Left out are the words (${count(all, 'Ignored')} strings of equations, sources, names and explanations): they are no logic. Numbers inside formulas are
not changed by the tool; the checks in [validation.md](validation.md) hold those. Constants worked out when a file is loaded are mutated like all else.

| room | changes | noticed by a test | by running on and on | unnoticed | in code no test runs | score |
| --- | --: | --: | --: | --: | --: | --: |
${rooms.map((room) => row(`\`src/${room}\``, reports.filter((report) => report.room === room).flatMap(mutantsOf))).join('\n')}
${row('**all**', all)}

## Unnoticed, and no fault

${groups
  .map(
    ({ reason, found }) =>
      `${reason} (${found.length}):\n\n${found.map(({ file, from, to }) => `- ${cell(file)}: ${cell(from)} into ${cell(to)}`).join('\n')}`,
  )
  .join('\n\n')}

## Unnoticed, not yet looked into

${open.length === 0 ? 'None.' : `| file | changes |\n| --- | --: |\n${openFiles.map((file) => `| ${cell(file)} | ${open.filter((each) => each.file === file).length} |`).join('\n')}`}
`;
}
