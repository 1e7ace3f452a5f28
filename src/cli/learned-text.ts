import { TREATMENT_CLASSES } from '../decay/treatment-class.ts';
import { LEAST_LEANED, LEAST_TRIED } from '../forecast/evidence/register-footing.ts';
import { LEAST_FENCES, LEAST_READINGS } from '../forecast/evidence/register-pace.ts';
import type { LearnedEntry } from '../register/learned-store.ts';
import type { LearnedCell } from '../service/learn-register.ts';
import { count, factor, interval, valueText } from '../service/learned-words.ts';
import { plainTable } from './plain-table.ts';

/** Fences named one by one; of more only the number is told. */
const MOST_NAMED = 12;

/** The state of a quantity with what it rests on. */
const stateText = (cell: LearnedCell): string => {
  if (cell.state === 'too few') {
    return cell.kind === 'pace'
      ? `too few: ${cell.fences} of ${count(LEAST_FENCES, 'fence')}, ${cell.readings} of ${count(LEAST_READINGS, 'reading')}`
      : `too few: ${cell.tried} of ${count(LEAST_TRIED, 'post')} tried, ${cell.leaned} of ${LEAST_LEANED} leaned`;
  }
  const seen =
    cell.kind === 'pace'
      ? `${count(cell.fences, 'fence')}, ${count(cell.readings, 'reading')}`
      : `${count(cell.fences, 'fence')}, ${count(cell.tried, 'post')} tried, ${cell.leaned} leaned`;
  return `${cell.state}: ${seen}`;
};

const valueCells = (cell: LearnedCell): readonly string[] => [
  `1.00 (${interval(cell.published.low, cell.published.high)})`,
  `${factor(cell.logShift)} (${interval(cell.low, cell.high)})`,
  cell.published.spread.toFixed(2),
  cell.spread.toFixed(2),
  cell.held ? `${factor(cell.held.logShift)} (version ${cell.held.since})` : 'published',
  stateText(cell),
  cell.key,
];

const VALUE_HEADINGS = [
  'Published',
  'This register',
  'Spread\npublished',
  'Spread\nhere',
  'In force',
  'State',
  'Name for\n--only',
];

/** What the columns of spreads mean, with an example. */
export const SPREAD_LEGEND = `Spread: how far single fences lie from the middle, as the standard deviation of the natural logarithm; at 0.40 two of three lie between ${factor(-0.4)} and ${factor(0.4)} times it.`;

/** What was learned of rot paces, as lines; none where nothing was read. */
export function paceTable(cells: readonly LearnedCell[]): readonly string[] {
  const rows = cells.flatMap((cell) =>
    cell.kind === 'pace'
      ? [[TREATMENT_CLASSES[cell.treatmentClass].name, `${cell.climateBand}`, ...valueCells(cell)]]
      : [],
  );
  if (rows.length === 0) return [];
  const headings = ['Posts', 'Climate\nband', ...VALUE_HEADINGS];
  return [
    'Rot pace over the published one: what the fences of this register share, in brackets the range that holds in 9 cases of 10.',
    plainTable(headings, rows, [1, 2, 3, 4, 5]),
    `A pace can be accepted from ${LEAST_FENCES} fences and ${LEAST_READINGS} readings on.`,
    '',
  ];
}

/** What was learned of footings, as lines; none where no footing was tried. */
export function footingTable(cells: readonly LearnedCell[]): readonly string[] {
  const rows = cells.flatMap((cell) => (cell.kind === 'footing' ? [[cell.soilKind, ...valueCells(cell)]] : []));
  if (rows.length === 0) return [];
  const headings = ['Footings in', ...VALUE_HEADINGS];
  return [
    'What footings hold over the published value, from posts that storms were reported to have leaned or left standing.',
    plainTable(headings, rows, [1, 2, 3, 4]),
    `It can be accepted from ${LEAST_TRIED} posts tried on, ${LEAST_LEANED} of them leaned.`,
    '',
  ];
}

const named = (refs: readonly string[]): string =>
  refs.length <= MOST_NAMED
    ? refs.join(', ')
    : `${refs.slice(0, MOST_NAMED).join(', ')} and ${refs.length - MOST_NAMED} more`;

/** Which fences the next sweep forecasts anew. */
export const nextSweep = (refs: readonly string[]): string =>
  refs.length === 0
    ? 'No fence is concerned: the next sweep changes nothing.\n'
    : `The next sweep forecasts ${count(refs.length, 'fence')} anew: ${named(refs)}.\n`;

/** One entry of the history, as lines. */
export function entryLines(entry: LearnedEntry): readonly string[] {
  const note = entry.note === '' ? '' : `: ${entry.note}`;
  const who = `${entry.at.slice(0, 16).replace('T', ' ')} UTC, ${entry.by}`;
  if (entry.act === 'reverted') return [`${entry.number}  ${who} took version ${entry.reverted} back${note}`];
  const state = entry.inForce ? ' (in force)' : entry.revertedBy === null ? '' : ` (taken back by ${entry.revertedBy})`;
  return [
    `${entry.number}  ${who} accepted${state}${note}`,
    ...entry.values.map((value) => `     ${valueText(value, entry.number)}`),
  ];
}
