import type { CheckedPost } from '../season/visit/check-list.ts';
import type { SheetFence, SheetStop } from '../season/visit/day-sheet.ts';
import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import { feetFromMetres } from '../units/length.ts';
import type { ChartLanguage } from './chart-words.ts';
import { monthName } from './month-name.ts';
import { bandText, depthFigure, depthUnit, lengthText } from './quantity-text.ts';
import { methodName, styleName } from './report/record-names.ts';
import { readingIn } from './report/seen-texts.ts';
import type { DisplayUnits } from './speed-text.ts';
import { worksNameIn } from './what-if-words.ts';

const WEEK_DAYS = {
  en: 'Thursday Friday Saturday Sunday Monday Tuesday Wednesday'.split(' '),
  es: 'jueves viernes sábado domingo lunes martes miércoles'.split(' '),
} as const;

/** A day as a sheet is headed: `Monday, January 11, 2027`, `lunes 11 de enero de 2027`. */
export function longDay(day: CalendarDay, language: ChartLanguage = 'en'): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  // 1970-01-01 was a Thursday.
  const name = WEEK_DAYS[language][((dayNumber(day) % 7) + 7) % 7];
  return language === 'es'
    ? `${name} ${date} de ${monthName(month, 'es')} de ${year}`
    : `${name}, ${monthName(month, 'en')} ${date}, ${year}`;
}

/** Distance along the run in the display units, short enough for a table: `24 ft`, `7.3 m`. */
export const alongText = (positionM: number, units: DisplayUnits): string =>
  units === 'us' ? `${Number(feetFromMetres(positionM).toFixed(1))} ft` : `${Number(positionM.toFixed(1))} m`;

/** Units that people write in the plural. */
const PLURALS: Readonly<Record<string, string>> = {
  bag: 'bags',
  piece: 'pieces',
  set: 'sets',
  roll: 'rolls',
  box: 'boxes',
  pail: 'pails',
  can: 'cans',
  tube: 'tubes',
};

const UNITS_ES: Readonly<Record<string, readonly [one: string, many: string]>> = {
  bag: ['saco', 'sacos'],
  piece: ['pieza', 'piezas'],
  set: ['juego', 'juegos'],
  roll: ['rollo', 'rollos'],
  box: ['caja', 'cajas'],
  pail: ['cubeta', 'cubetas'],
  can: ['lata', 'latas'],
  tube: ['tubo', 'tubos'],
};

/** A quantity with its unit: `3 bags`, `1.5 kg`; a unit that is not among the usual ones as it was entered. */
export function amountText(amount: number, unit: string, language: ChartLanguage = 'en'): string {
  const [one, many] = language === 'es' ? (UNITS_ES[unit] ?? [unit, unit]) : [unit, PLURALS[unit] ?? unit];
  return `${Number(amount.toFixed(2))} ${amount === 1 ? one : many}`;
}

const CONDITIONS = {
  en: {
    broken: 'broken',
    leaning: 'leaning',
    closedOff: 'closed off',
    collarCracked: 'collar cracked',
    sleeved: 'in a steel sleeve',
  },
  es: {
    broken: 'roto',
    leaning: 'inclinado',
    closedOff: 'acordonado',
    collarCracked: 'collar agrietado',
    sleeved: 'con funda de acero',
  },
} as const;

/** What stands against a post already: `broken`, `leaning, closed off`; empty where nothing does. */
export function conditionText({ condition, sleeved }: CheckedPost, language: ChartLanguage = 'en'): string {
  const { broken, leaning, closedOff, collarCracked } = condition;
  const words = CONDITIONS[language];
  return [
    ...(broken ? [words.broken] : []),
    ...(leaning ? [words.leaning] : []),
    ...(closedOff ? [words.closedOff] : []),
    ...(collarCracked ? [words.collarCracked] : []),
    ...(sleeved ? [words.sleeved] : []),
  ].join(', ');
}

/** What was last read at a post: `2026-05-02: 0.24 in of rot on each face (caliper on the sound shell)`; `not read yet`. */
export function lastReadText(
  { lastReading }: CheckedPost,
  units: DisplayUnits,
  language: ChartLanguage = 'en',
): string {
  if (!lastReading) return language === 'es' ? 'todavía sin medir' : 'not read yet';
  const { day, method, reading } = lastReading;
  return `${day}: ${readingIn(reading, units, language)} (${methodName(method, language)})`;
}

/** The sound width believed to be left, middle and likely range, without its unit: `2.9 (2.2–3.2)`; a dash where there is none. */
export const believedText = ({ believedWidthMm }: CheckedPost, units: DisplayUnits): string =>
  believedWidthMm === null ? '–' : bandText(believedWidthMm, (mm) => depthFigure(mm, units));

/** Heading of that column: `Sound width believed, in`. */
export const believedHeading = (units: DisplayUnits, language: ChartLanguage = 'en'): string =>
  `${language === 'es' ? 'Ancho sano estimado' : 'Sound width believed'}, ${depthUnit(units)}`;

/** What is done at a post, a kind a line; `look` where nothing is. */
export const todoTexts = ({ todo }: CheckedPost, language: ChartLanguage = 'en'): readonly string[] =>
  todo.length === 0 ? [language === 'es' ? 'mirar' : 'look'] : todo.map((kind) => worksNameIn(kind, language));

/** A post as it was set, by its measures: `3.50 × 3.50 in`, `5.00 in round`. */
function sectionText({ wood: { section } }: CheckedPost, units: DisplayUnits, language: ChartLanguage): string {
  const unit = depthUnit(units);
  if (section.kind === 'round')
    return `${depthFigure(section.diameterMm, units)} ${unit} ${language === 'es' ? 'redondo' : 'round'}`;
  return `${depthFigure(section.widthMm, units)} × ${depthFigure(section.depthMm, units)} ${unit}`;
}

const CONSEQUENCES: Readonly<Record<ChartLanguage, Readonly<Record<string, string>>>> = {
  en: {
    'pool-barrier': 'pool barrier',
    'over-footpath': 'over a footpath',
    livestock: 'keeps livestock in',
    'other-high': 'much hangs on it',
  },
  es: {
    'pool-barrier': 'barrera de piscina',
    'over-footpath': 'junto a un paso de gente',
    livestock: 'encierra ganado',
    'other-high': 'mucho depende de ella',
  },
};

/** A fence in a few words: `solid boards, 6 ft high, 80 ft long, pool barrier`. */
export function fenceText(fence: SheetFence, units: DisplayUnits, language: ChartLanguage = 'en'): string {
  const consequence = CONSEQUENCES[language][fence.consequence];
  const [high, long] = language === 'es' ? ['de alto', 'de largo'] : ['high', 'long'];
  return [
    language === 'es' ? styleName(fence.style, 'es') : fence.style,
    `${lengthText(fence.heightM, units)} ${high}`,
    `${lengthText(fence.runLengthM, units)} ${long}`,
    ...(consequence === undefined ? [] : [consequence]),
  ].join(', ');
}

/** From where the posts are counted, with the section that most have. */
export function countedFromText(
  { namedEnd, posts }: SheetFence,
  units: DisplayUnits,
  language: ChartLanguage = 'en',
): string {
  const [first] = posts;
  const section = first ? sectionText(first, units, language) : null;
  const number = first?.number ?? 1;
  return language === 'es'
    ? `El poste ${number} está en el extremo A (${namedEnd}); las distancias se cuentan desde ahí.${section === null ? '' : ` Puestos de ${section}.`}`
    : `Post ${number} is at end A (${namedEnd}); distances are from there.${section === null ? '' : ` Set as ${section}.`}`;
}

const TIMES = {
  en: {
    goesOn: 'goes on',
    anyTime: 'any time',
    day: (day: number, days: number): string => `day ${day} of ${days}`,
    confirmed: 'promised to the owner',
    done: 'done',
    other: 'not yet promised',
  },
  es: {
    goesOn: 'continúa',
    anyTime: 'a cualquier hora',
    day: (day: number, days: number): string => `día ${day} de ${days}`,
    confirmed: 'prometida al dueño',
    done: 'hecha',
    other: 'todavía sin prometer',
  },
} as const;

/** When the crew comes and for how long: `08:30`, `any time`, with `day 2 of 3`. */
export function whenText({ startsAt, dayOfVisit, daysOfVisit }: SheetStop, language: ChartLanguage = 'en'): string {
  const words = TIMES[language];
  const time = dayOfVisit > 1 ? words.goesOn : (startsAt ?? words.anyTime);
  return daysOfVisit > 1 ? `${time}, ${words.day(dayOfVisit, daysOfVisit)}` : time;
}

/** How firm a visit is: `promised` where it is confirmed. */
export function stateText({ state }: Pick<SheetStop, 'state'>, language: ChartLanguage = 'en'): string {
  const words = TIMES[language];
  return state === 'confirmed' ? words.confirmed : state === 'done' ? words.done : words.other;
}
