import type { CheckedPost } from '../season/visit/check-list.ts';
import type { SheetFence, SheetStop } from '../season/visit/day-sheet.ts';
import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import { feetFromMetres } from '../units/length.ts';
import { methodText, readingText } from './evidence-text.ts';
import { monthName } from './month-name.ts';
import { bandText, depthFigure, depthUnit, lengthText } from './quantity-text.ts';
import type { DisplayUnits } from './speed-text.ts';
import { worksName } from './what-if-words.ts';

const WEEK_DAYS = 'Thursday Friday Saturday Sunday Monday Tuesday Wednesday'.split(' ');

/** A day as a sheet is headed: `Monday, January 11, 2027`. */
export function longDay(day: CalendarDay): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  // 1970-01-01 was a Thursday.
  return `${WEEK_DAYS[((dayNumber(day) % 7) + 7) % 7]}, ${monthName(month, 'en')} ${date}, ${year}`;
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

/** A quantity with its unit: `3 bags`, `1.5 kg`. */
export const amountText = (amount: number, unit: string): string =>
  `${Number(amount.toFixed(2))} ${amount === 1 ? unit : (PLURALS[unit] ?? unit)}`;

/** What stands against a post already: `broken`, `leaning, closed off`; empty where nothing does. */
export function conditionText({ condition, sleeved }: CheckedPost): string {
  const { broken, leaning, closedOff, collarCracked } = condition;
  return [
    ...(broken ? ['broken'] : []),
    ...(leaning ? ['leaning'] : []),
    ...(closedOff ? ['closed off'] : []),
    ...(collarCracked ? ['collar cracked'] : []),
    ...(sleeved ? ['in a steel sleeve'] : []),
  ].join(', ');
}

/** What was last read at a post: `2026-05-02: 0.24 in of rot on each face (caliper on the sound shell)`; `not read yet`. */
export function lastReadText({ lastReading }: CheckedPost, units: DisplayUnits): string {
  if (!lastReading) return 'not read yet';
  const { day, method, reading } = lastReading;
  return `${day}: ${readingText(reading, units)} (${methodText(method)})`;
}

/** The sound width believed to be left, middle and likely range, without its unit: `2.9 (2.2–3.2)`; a dash where there is none. */
export const believedText = ({ believedWidthMm }: CheckedPost, units: DisplayUnits): string =>
  believedWidthMm === null ? '–' : bandText(believedWidthMm, (mm) => depthFigure(mm, units));

/** Heading of that column: `Sound width believed, in`. */
export const believedHeading = (units: DisplayUnits): string => `Sound width believed, ${depthUnit(units)}`;

/** What is done at a post, a kind a line; `look` where nothing is. */
export const todoTexts = ({ todo }: CheckedPost): readonly string[] =>
  todo.length === 0 ? ['look'] : todo.map(worksName);

/** A post as it was set, by its measures: `3.50 × 3.50 in`, `5.00 in round`. */
function sectionText({ wood: { section } }: CheckedPost, units: DisplayUnits): string {
  const unit = depthUnit(units);
  if (section.kind === 'round') return `${depthFigure(section.diameterMm, units)} ${unit} round`;
  return `${depthFigure(section.widthMm, units)} × ${depthFigure(section.depthMm, units)} ${unit}`;
}

const CONSEQUENCES: Readonly<Record<string, string>> = {
  'pool-barrier': 'pool barrier',
  'over-footpath': 'over a footpath',
  livestock: 'keeps livestock in',
  'other-high': 'much hangs on it',
};

/** A fence in a few words: `solid-board, 6 ft high, 80 ft long, pool barrier`. */
export function fenceText(fence: SheetFence, units: DisplayUnits): string {
  const consequence = CONSEQUENCES[fence.consequence];
  return [
    fence.style,
    `${lengthText(fence.heightM, units)} high`,
    `${lengthText(fence.runLengthM, units)} long`,
    ...(consequence === undefined ? [] : [consequence]),
  ].join(', ');
}

/** From where the posts are counted, with the section that most have. */
export const countedFromText = ({ namedEnd, posts }: SheetFence, units: DisplayUnits): string =>
  `Post ${posts[0]?.number ?? 1} is at end A (${namedEnd}); distances are from there.${posts[0] ? ` Set as ${sectionText(posts[0], units)}.` : ''}`;

/** When the crew comes and for how long: `08:30`, `any time`, with `day 2 of 3`. */
export function whenText({ startsAt, dayOfVisit, daysOfVisit }: SheetStop): string {
  const time = dayOfVisit > 1 ? 'goes on' : (startsAt ?? 'any time');
  return daysOfVisit > 1 ? `${time}, day ${dayOfVisit} of ${daysOfVisit}` : time;
}

/** How firm a visit is: `promised` where it is confirmed. */
export const stateText = ({ state }: Pick<SheetStop, 'state'>): string =>
  state === 'confirmed' ? 'promised to the owner' : state === 'done' ? 'done' : 'not yet promised';
