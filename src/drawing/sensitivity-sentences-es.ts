import type { UnknownInput } from '../forecast/fence-forecast.ts';
import type { Sensitivity } from '../forecast/sensitivity.ts';
import type { NarrowedBy } from '../forecast/sensitivity-unknowns.ts';
import type { ChartLanguage } from './chart-words.ts';
import { type SensitivityRow, sensitivityRows } from './sensitivity-rows.ts';
import { knownText, weighsMostSentences } from './sensitivity-sentences.ts';
import { inputInSpanish } from './spanish/sensitivity-inputs.ts';
import { type DisplayUnits, speedText } from './speed-text.ts';
import { unknownSentence, wayToKnowSentence } from './unknown-sentence.ts';

/** What weighs most on a fence's forecast, in words. */
interface SensitivitySentences {
  readonly weighsMost: typeof weighsMostSentences;
  readonly known: typeof knownText;
}

/** What can make an unknown better known, as the end of a sentence about it. */
const NARROWING: Readonly<Record<NarrowedBy, string>> = {
  'rot readings': 'una inspección lo aclara midiendo la pudrición',
  digging: 'una inspección lo mide cavando junto a un poste',
  papers: 'lo aclaran los papeles de la obra',
  'storms only': 'ninguna inspección lo aclara, solo lo que las tormentas le hacen a la cerca',
};

const inspected = (narrowedBy: NarrowedBy | null): boolean => narrowedBy !== null && narrowedBy !== 'storms only';
const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);
const AFTER_RECORD = 'si lo anotado está tan lejos como es creíble';

const known = ({ narrowedBy }: Pick<SensitivityRow, 'narrowedBy'>): string =>
  narrowedBy === null ? 'consta' : `no se sabe; ${NARROWING[narrowedBy]}`;

const list = (rows: readonly SensitivityRow[]): string =>
  rows.map(({ input, swing }) => `${lower(input)} (${swing})`).join(', ');

function furtherUnknowns(rows: readonly SensitivityRow[]): readonly string[] {
  const [open, closed] = [true, false].map((can) => rows.filter(({ narrowedBy }) => inspected(narrowedBy) === can));
  return [
    ...(open!.length > 0 ? [`Tampoco se sabe, y lo aclaran una inspección o papeles: ${list(open!)}.`] : []),
    ...(closed!.length > 0 ? [`Tampoco se sabe, y solo lo aclaran las tormentas: ${list(closed!)}.`] : []),
  ];
}

function shortSeason(rows: readonly SensitivityRow[]): readonly string[] {
  const [unknown, ...others] = rows.filter(({ kind }) => kind === 'unknown');
  const recorded = rows.find(({ kind }) => kind === 'recorded');
  const first = rows[0]!;
  const narrowing = unknown?.narrowedBy ? NARROWING[unknown.narrowedBy] : '';
  const most = `Lo que más pesa en cuándo esta cerca deja de aguantar es: ${lower(first.input)}.`;
  if (first === unknown) {
    return [
      `${most} Lo mueve ${first.swing} y no se sabe; ${narrowing}.`,
      ...furtherUnknowns(others),
      ...(recorded
        ? [`De lo que consta, lo que más pesa es ${lower(recorded.input)}: ${recorded.swing} ${AFTER_RECORD}.`]
        : []),
    ];
  }
  return [
    `${most} Consta, pero lo mueve ${first.swing} ${AFTER_RECORD}.`,
    ...(unknown
      ? [`De lo que no se sabe, lo que más pesa es ${lower(unknown.input)}: ${unknown.swing}; ${narrowing}.`]
      : ['Nada de lo que no se sabe lo mueve.']),
    ...furtherUnknowns(others),
  ];
}

function weighsMost(
  sensitivity: Sensitivity,
  unknowns: readonly UnknownInput[],
  units: DisplayUnits,
): readonly string[] {
  const { rows, words } = sensitivityRows(sensitivity, units, 'es');
  const [lean] = sensitivity.leanSwings;
  const [missing] = unknowns;
  return [
    ...(rows.length === 0 ? [words.none] : shortSeason(rows)),
    ...(lean
      ? [
          `En la velocidad de inclinación, de lo que no se sabe pesa más ${inputInSpanish(lean.input)}: ${speedText(lean.swingMps, units)} entre sus extremos probables; ${NARROWING[lean.narrowedBy]}.`,
        ]
      : []),
    missing
      ? `${unknowns.length === 1 ? 'Un dato se podría anotar y no consta.' : `De ${unknowns.length} datos que se podrían anotar y no constan, uno pesa más.`} ${unknownSentence(missing, units, 'es')} ${wayToKnowSentence(missing, 'es')}`
      : 'Consta todo lo que se puede anotar.',
  ];
}

/** What weighs most on a fence's forecast, in words, by language. */
export const SENSITIVITY_SENTENCES: Readonly<Record<ChartLanguage, SensitivitySentences>> = {
  en: { weighsMost: weighsMostSentences, known: knownText },
  es: { weighsMost, known },
};
