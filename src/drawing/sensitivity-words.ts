import type { ChartLanguage } from './chart-words.ts';
import { inputInSpanish } from './spanish/sensitivity-inputs.ts';

/** The words of what moves a fence's short season. */
interface SensitivityWords {
  readonly title: (ref: string) => string;
  readonly axis: string;
  readonly swing: string;
  readonly season: (label: string) => string;
  readonly asItStands: (when: string) => string;
  readonly unknown: string;
  readonly recorded: string;
  readonly none: (when: string) => string;
  readonly beyond: (years: number) => string;
  readonly idleBeyond: (years: number) => string;
  readonly idleFromNew: string;
  readonly idle: string;
  readonly fromNew: string;
  readonly whenNew: string;
  readonly shortFromNew: string;
  readonly asRecorded: string;
  readonly over: string;
  /** Between a value and the year in which the fence goes short with it. */
  readonly in: string;
  /** Between the two ends of an input. */
  readonly to: string;
  readonly years: (years: number) => string;
  /** The name of an input. */
  readonly input: (input: string) => string;
  /** A value of an input. */
  readonly value: (label: string) => string;
}

const figure = (years: number): string => (years >= 9.95 ? String(Math.round(years)) : years.toFixed(1));

const EN: SensitivityWords = {
  title: (ref) => `What moves the short season of fence ${ref}`,
  axis: 'Goes short in',
  swing: 'Moves it by',
  season: (label) => `Season ${label}`,
  asItStands: (when) => `As it stands: ${when}`,
  unknown: 'Not known: from its 10th to its 90th percentile',
  recorded: 'Recorded: moved by a plausible error of the record',
  none: (when) => `No input, moved by itself, changes when this fence goes short (${when}).`,
  beyond: (years) => `not in ${years} years`,
  idleBeyond: (years) => `Do not bring it within ${years} years`,
  idleFromNew: 'Leave it short from new',
  idle: 'Without effect on it',
  fromNew: 'from new',
  whenNew: 'new',
  shortFromNew: 'short from new',
  asRecorded: 'as recorded',
  over: 'over',
  in: 'in',
  to: 'to',
  years: (years) => `${figure(years)} ${figure(years) === '1.0' ? 'year' : 'years'}`,
  input: (input) => input,
  value: (label) => label,
};

const ES: SensitivityWords = {
  title: (ref) => `Qué mueve la temporada en que la cerca ${ref} deja de aguantar`,
  axis: 'Deja de aguantar en',
  swing: 'La mueve',
  season: (label) => `Temporada ${label}`,
  asItStands: (when) => `Como está: ${when}`,
  unknown: 'No se sabe: de su percentil 10 al 90',
  recorded: 'Consta: movido por un error creíble de lo anotado',
  none: (when) => `Ningún dato, movido solo, cambia cuándo esta cerca deja de aguantar (${when}).`,
  beyond: (years) => `no en ${years} años`,
  idleBeyond: (years) => `No la acercan a menos de ${years} años`,
  idleFromNew: 'La dejan insuficiente desde nueva',
  idle: 'Sin efecto en ella',
  fromNew: 'desde nueva',
  whenNew: 'nueva',
  shortFromNew: 'insuficiente desde nueva',
  asRecorded: 'como consta',
  over: 'más de',
  in: 'en',
  to: 'a',
  years: (years) => `${figure(years)} ${figure(years) === '1.0' ? 'año' : 'años'}`,
  input: inputInSpanish,
  value: inputInSpanish,
};

/** The words of what moves a fence's short season, by language. */
export const SENSITIVITY_WORDS: Readonly<Record<ChartLanguage, SensitivityWords>> = { en: EN, es: ES };
