import type { Band } from '../forecast/band.ts';
import { feetFromMetres, inchesFromMm } from '../units/length.ts';
import type { ChartLanguage } from './chart-words.ts';
import type { DisplayUnits } from './speed-text.ts';

/**
 * A number at that many significant figures, thousands apart by commas: `1,234.5`, `0.0821`.
 * @param figures 1 to 15 [-]
 */
export function figureText(value: number, figures: number): string {
  const [whole = '', part] = String(Number(value.toPrecision(figures))).split('.');
  const grouped = whole.replace(/\B(?=(?:\d{3})+$)/g, ',');
  return part === undefined ? grouped : `${grouped}.${part}`;
}

const PERCENT_ENDS: Readonly<Record<ChartLanguage, { readonly under: string; readonly over: string }>> = {
  en: { under: 'under 1 %', over: 'over 99 %' },
  es: { under: 'menos del 1 %', over: 'más del 99 %' },
};

/** A share or probability [-], 0 to 1, as a percentage that never claims certainty: `under 1 %`, `34 %`, `over 99 %`. */
export function percentText(share: number, language: ChartLanguage): string {
  if (share < 0.01) return PERCENT_ENDS[language].under;
  if (share > 0.99) return PERCENT_ENDS[language].over;
  return `${Math.round(share * 100)} %`;
}

/** A return period [a] to two figures, whole years under ten. */
const roundedYears = (years: number): number => (years < 10 ? Math.round(years) : Number(years.toPrecision(2)));

/**
 * How often a gust of that return period [a] comes, in words that follow "comes": `about once in 24 years`, `in most years`,
 * `less than once in 1,000 years`. Two figures at most.
 */
export function onceInWords(years: number, language: ChartLanguage): string {
  if (years > 1000) return language === 'en' ? 'less than once in 1,000 years' : 'menos de una vez en 1,000 años';
  if (years < 1.5) return language === 'en' ? 'in most years' : 'casi todos los años';
  const rounded = roundedYears(years);
  return language === 'en'
    ? `about once in ${figureText(rounded, 4)} years`
    : `más o menos una vez en ${figureText(rounded, 4)} años`;
}

/** A return period [a] for a table cell: `24`, `over 1,000`, `1`; a dash where there is none. */
export function onceInYearsCell(years: number | null, language: ChartLanguage = 'en'): string {
  if (years === null) return '–';
  if (years > 1000) return language === 'es' ? 'más de 1,000' : 'over 1,000';
  return years < 1.5 ? '1' : figureText(roundedYears(years), 4);
}

/** Unit of small lengths (rot depths, sections) in the display units. */
export const depthUnit = (units: DisplayUnits): 'in' | 'mm' => (units === 'us' ? 'in' : 'mm');

/** A small length [mm] in the display units, without its name: inches to two places or millimetres to one. */
export const depthFigure = (depthMm: number, units: DisplayUnits): string =>
  units === 'us' ? inchesFromMm(depthMm).toFixed(2) : depthMm.toFixed(1);

/** A length [m] in the display units with its name: `6.0 ft`, `1.83 m`. */
export const lengthText = (lengthM: number, units: DisplayUnits): string =>
  units === 'us' ? `${Number(feetFromMetres(lengthM).toFixed(2))} ft` : `${Number(lengthM.toFixed(2))} m`;

/** A band as its middle and its two ends through one formatter: `84 (71–96)`. */
export const bandText = (band: Band, format: (value: number) => string): string =>
  `${format(band.p50)} (${format(band.p10)}–${format(band.p90)})`;

/** An age [a] to a tenth, without its name, the same wherever one is told: `24.5`. */
export const ageFigure = (ageYears: number): string => ageYears.toFixed(1);

/** The age of a fence [a], whose posts may be younger: `fence age 17.3 years`. */
export const fenceAgeText = (ageYears: number, language: ChartLanguage = 'en'): string =>
  language === 'es' ? `edad de la cerca ${ageFigure(ageYears)} años` : `fence age ${ageFigure(ageYears)} years`;
