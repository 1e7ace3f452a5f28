import type { UnknownInput } from '../forecast/fence-forecast.ts';
import type { Sensitivity } from '../forecast/sensitivity.ts';
import type { NarrowedBy } from '../forecast/sensitivity-unknowns.ts';
import { type SensitivityRow, sensitivityRows } from './sensitivity-rows.ts';
import { type DisplayUnits, speedText } from './speed-text.ts';
import { unknownSentence, wayToKnowSentence } from './unknown-sentence.ts';

/** What can make an unknown better known, as the end of a sentence about it. */
const NARROWING: Readonly<Record<NarrowedBy, string>> = {
  'rot readings': 'an inspection narrows it by readings of rot depth',
  digging: 'an inspection measures it by digging at a post',
  papers: 'papers of the build settle it',
  'storms only': 'no inspection narrows it, only what storms do to the fence',
};

const inspected = (narrowedBy: NarrowedBy | null): boolean => narrowedBy !== null && narrowedBy !== 'storms only';
const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);
const AFTER_RECORD = 'if its record is as far off as is plausible';

/** What can make an input better known, in a few words: for a table. */
export const knownText = ({ narrowedBy }: Pick<SensitivityRow, 'narrowedBy'>): string =>
  narrowedBy === null ? 'recorded' : `not known; ${NARROWING[narrowedBy]}`;

/** The rows with those not known first, within each kind the one that moves most first. */
export const unknownFirst = (rows: readonly SensitivityRow[]): readonly SensitivityRow[] => [
  ...rows.filter(({ kind }) => kind === 'unknown'),
  ...rows.filter(({ kind }) => kind === 'recorded'),
];

const list = (rows: readonly SensitivityRow[]): string =>
  rows.map(({ input, swing }) => `${lower(input)} (${swing})`).join(', ');

function furtherUnknowns(rows: readonly SensitivityRow[]): readonly string[] {
  const [open, closed] = [true, false].map((can) => rows.filter(({ narrowedBy }) => inspected(narrowedBy) === can));
  return [
    ...(open!.length > 0 ? [`Not known too, and to be narrowed by an inspection or papers: ${list(open!)}.`] : []),
    ...(closed!.length > 0 ? [`Not known too, and narrowed by no inspection, only by storms: ${list(closed!)}.`] : []),
  ];
}

function shortSeasonSentences(rows: readonly SensitivityRow[]): readonly string[] {
  const [unknown, ...others] = rows.filter(({ kind }) => kind === 'unknown');
  const recorded = rows.find(({ kind }) => kind === 'recorded');
  const first = rows[0]!;
  const narrowing = unknown?.narrowedBy ? NARROWING[unknown.narrowedBy] : '';
  if (first === unknown) {
    return [
      `${first.input} weighs most of all on when this fence goes short: it moves it by ${first.swing} and is not known; ${narrowing}.`,
      ...furtherUnknowns(others),
      ...(recorded
        ? [`Of what is recorded, ${lower(recorded.input)} weighs most: ${recorded.swing} ${AFTER_RECORD}.`]
        : []),
    ];
  }
  return [
    `${first.input} weighs most of all on when this fence goes short: it is recorded, but moves it by ${first.swing} ${AFTER_RECORD}.`,
    ...(unknown
      ? [`Of what is not known, ${lower(unknown.input)} weighs most: ${unknown.swing}; ${narrowing}.`]
      : ['Nothing that is not known moves it.']),
    ...furtherUnknowns(others),
  ];
}

/**
 * What weighs most on a fence's forecast, in whole sentences: of all inputs on when it goes short, of all that is not known
 * on the lean speed, what an inspection can narrow and what none can, and what the register could be told.
 */
export function weighsMostSentences(
  sensitivity: Sensitivity,
  unknowns: readonly UnknownInput[],
  units: DisplayUnits,
): readonly string[] {
  const { rows, words } = sensitivityRows(sensitivity, units);
  const [lean] = sensitivity.leanSwings;
  const [missing] = unknowns;
  return [
    ...(rows.length === 0 ? [words.none] : shortSeasonSentences(rows)),
    ...(lean
      ? [
          `On the lean speed ${lean.input} weighs most of what is not known: ${speedText(lean.swingMps, units)} between its likely ends; ${NARROWING[lean.narrowedBy]}.`,
        ]
      : []),
    missing
      ? `${unknowns.length === 1 ? 'One input could be recorded and is not.' : `Of ${unknowns.length} inputs that could be recorded and are not, one weighs most.`} ${unknownSentence(missing, units)} ${wayToKnowSentence(missing)}`
      : 'Every input that can be recorded is.',
  ];
}
