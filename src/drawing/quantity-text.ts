import type { Band } from '../forecast/fence-forecast.ts';
import { feetFromMetres, inchesFromMm } from '../units/length.ts';
import type { DisplayUnits } from './speed-text.ts';

/** A share [-] as a percentage that never claims certainty: `under 1 %`, `34 %`, `over 99 %`. */
export function shareText(share: number): string {
  if (share < 0.005) return 'under 1 %';
  if (share > 0.995) return 'over 99 %';
  return `${Math.round(share * 100)} %`;
}

/** A return period [a] as plain words, two figures at most: `once in 24 years`, `rarer than once in 1,000 years`. */
export function onceInYearsText(years: number): string {
  if (years > 1000) return 'rarer than once in 1,000 years';
  if (years < 1.5) return 'about every year';
  const rounded = years < 10 ? Math.round(years) : Number(years.toPrecision(2));
  return `once in ${rounded} years`;
}

/** A return period [a] for a table cell: `24`, `over 1,000`, `1`. */
export function onceInYearsCell(years: number | null): string {
  if (years === null) return '–';
  if (years > 1000) return 'over 1,000';
  if (years < 1.5) return '1';
  return String(years < 10 ? Math.round(years) : Number(years.toPrecision(2)));
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

/** An age [a] in words of years: `new`, `under a year old`, `17 years old`. */
export function ageText(ageYears: number): string {
  if (ageYears <= 0) return 'new';
  if (ageYears < 1) return 'under a year old';
  const years = Math.floor(ageYears);
  return years === 1 ? '1 year old' : `${years} years old`;
}
