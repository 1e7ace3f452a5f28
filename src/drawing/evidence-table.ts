import type { BeliefDimension } from '../forecast/belief-points.ts';
import type { EvidenceSummary, ReadPost, UnknownBelief } from '../forecast/evidence/evidence-summary.ts';
import { inchesFromMm } from '../units/length.ts';
import type { ChartLanguage } from './chart-words.ts';
import { depthFigure, depthUnit, figureText } from './quantity-text.ts';
import { methodName } from './report/record-names.ts';
import type { DisplayUnits } from './speed-text.ts';

/** The ends and the middle of what is believed of an unknown, as figures without their unit. */
export interface BeliefFigures {
  readonly p10: string;
  readonly p50: string;
  readonly p90: string;
}

/** One unknown as a row: what was believed before, after the readings, after the storms too. */
export interface BeliefRow {
  readonly unknown: string;
  /** `in/a` or `mm/a` for pace; `×` for the rest, factors on what the tables give. */
  readonly unit: 'mm/a' | 'in/a' | '×';
  readonly before: BeliefFigures;
  readonly afterReadings: BeliefFigures;
  readonly afterStorms: BeliefFigures;
  /** `readings`, `storms`, `readings and storms`, `nothing`. */
  readonly movedBy: string;
}

/** A post that was read, as a row. */
export interface ReadPostRow {
  readonly post: string;
  readonly day: string;
  readonly how: string;
  /** `0.24 in`, `at most 0.12 in`, `at least 0.50 in`. */
  readonly seen: string;
  /** `0.014 in/a`, `at most 0.3 mm/a`; a dash where the post was too young to tell. */
  readonly rate: string;
  /** What is believed on that day, its likely range in brackets. */
  readonly believed: string;
}

const NAMES_EN: Readonly<Record<BeliefDimension, string>> = {
  pace: 'Rot pace',
  'fibre strength': 'Strength of the posts',
  footing: 'Strength of the footings',
  'permanent load': 'Wind load for its shape and shelter',
  'install date': 'Install date',
  embedment: 'Embedment',
  'footing diameter': 'Footing diameter',
};

const NAMES_ES: Readonly<Record<BeliefDimension, string>> = {
  pace: 'Ritmo de pudrición',
  'fibre strength': 'Fuerza de los postes',
  footing: 'Fuerza de los cimientos',
  'permanent load': 'Carga del viento por su forma y resguardo',
  'install date': 'Fecha de construcción',
  embedment: 'Profundidad enterrada',
  'footing diameter': 'Diámetro del cimiento',
};

const MOVERS_ES: Readonly<Record<UnknownBelief['movedBy'], string>> = {
  readings: 'mediciones',
  storms: 'tormentas',
  'readings and storms': 'mediciones y tormentas',
  nothing: 'nada',
};

const SEEN_ES: Readonly<Record<ReadPost['seen'], string>> = {
  measured: '',
  'at most': 'como mucho ',
  'at least': 'por lo menos ',
};

function rate(mmPerYear: number, units: DisplayUnits): string {
  const value = units === 'us' ? inchesFromMm(mmPerYear) : mmPerYear;
  return value < 10 ? value.toPrecision(2) : figureText(value, 2);
}

const rateUnit = (units: DisplayUnits): 'in/a' | 'mm/a' => (units === 'us' ? 'in/a' : 'mm/a');

/** A rate of rot [mm/a] in the display units with its unit, two figures: `0.014 in/a`, `0.36 mm/a`. */
export const rateText = (mmPerYear: number, units: DisplayUnits): string =>
  `${rate(mmPerYear, units)} ${rateUnit(units)}`;

/** What is believed of each unknown before and after what was seen, in the display units. */
export function beliefRows(
  evidence: EvidenceSummary,
  units: DisplayUnits,
  language: ChartLanguage = 'en',
): readonly BeliefRow[] {
  const es = language === 'es';
  return evidence.unknowns.map(({ unknown, unit, prior, afterReadings, posterior, movedBy }): BeliefRow => {
    const isPace = unit === 'mm/a';
    const figure = (value: number): string => (isPace ? rate(value, units) : value.toFixed(2));
    const figures = (band: UnknownBelief['prior']): BeliefFigures => ({
      p10: figure(band.p10),
      p50: figure(band.p50),
      p90: figure(band.p90),
    });
    return {
      unknown: (es ? NAMES_ES : NAMES_EN)[unknown],
      unit: isPace ? rateUnit(units) : '×',
      before: figures(prior),
      afterReadings: figures(afterReadings),
      afterStorms: figures(posterior),
      movedBy: es ? MOVERS_ES[movedBy] : movedBy,
    };
  });
}

function readPostRow(read: ReadPost, units: DisplayUnits, language: ChartLanguage): ReadPostRow {
  const es = language === 'es';
  const bound = es ? SEEN_ES[read.seen] : read.seen === 'measured' ? '' : `${read.seen} `;
  const depth = (mm: number): string => depthFigure(mm, units);
  const { p10, p50, p90 } = read.depthMm;
  const unit = depthUnit(units);
  const last = es ? `, la última de ${read.readings} mediciones` : `, the last of ${read.readings} readings`;
  return {
    post: String(read.post),
    day: read.day,
    how: `${methodName(read.method, language)}${read.readings > 1 ? last : ''}`,
    seen: `${bound}${depth(read.seenMm)} ${unit}`,
    rate: read.impliedRate === 0 ? '–' : `${bound}${rateText(read.impliedRate, units)}`,
    believed: `${depth(p50)} ${unit} (${depth(p10)}–${depth(p90)})`,
  };
}

/** The posts that were read, in ascending order, in the display units. */
export function readPostRows(
  { readPosts }: EvidenceSummary,
  units: DisplayUnits,
  language: ChartLanguage = 'en',
): readonly ReadPostRow[] {
  return readPosts
    .toSorted((a, b) => a.post - b.post || (a.day < b.day ? -1 : 1))
    .map((read) => readPostRow(read, units, language));
}
