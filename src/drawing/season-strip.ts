import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';
import { CHART_PALETTE } from './chart-palette.ts';
import { svgElement } from './svg-element.ts';

const WIDTH_PX = 260;
const HEIGHT_PX = 22;
const LINE_Y = 11;
/** Days that the strip shows before today and after it. */
const DAYS_BEFORE = 30;
const DAYS_AFTER = 365;

/** A storm season on the strip, both days included. */
export interface StripSeason {
  readonly opensOn: CalendarDay;
  readonly closesOn: CalendarDay;
}

/** The first days of the months between two days. */
function monthStarts(from: number, to: number): readonly number[] {
  const starts: number[] = [];
  for (let day = from; day <= to; day += 1) {
    if (new Date(day * 86_400_000).getUTCDate() === 1) starts.push(day);
  }
  return starts;
}

/**
 * The year ahead as a line with a stroke for each month, storm seasons as bars upon it, today as an upright. It is decoration beside
 * the same days in words, so it is hidden from readers of the text.
 */
export function drawSeasonStrip(today: CalendarDay, seasons: readonly StripSeason[]): string {
  const at = dayNumber(today);
  const [from, to] = [at - DAYS_BEFORE, at + DAYS_AFTER];
  const x = (day: number): number => 1 + ((Math.min(to, Math.max(from, day)) - from) / (to - from)) * (WIDTH_PX - 2);
  const line = (className: string, x1: number, x2: number, y1: number, y2: number, width: number): string =>
    svgElement('line', {
      class: className,
      x1,
      x2,
      y1,
      y2,
      stroke: className === 'ss-today' ? CHART_PALETTE.ink : CHART_PALETTE.muted,
      'stroke-width': width,
    });
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'season-strip',
      viewBox: `0 0 ${WIDTH_PX} ${HEIGHT_PX}`,
      width: WIDTH_PX,
      height: HEIGHT_PX,
      'aria-hidden': 'true',
      focusable: 'false',
    },
    [
      line('ss-line', 1, WIDTH_PX - 1, LINE_Y, LINE_Y, 1),
      ...monthStarts(from, to).map((day) => line('ss-line', x(day), x(day), LINE_Y - 3, LINE_Y + 3, 1)),
      ...seasons
        .filter(({ opensOn, closesOn }) => dayNumber(closesOn) >= from && dayNumber(opensOn) <= to)
        .map(({ opensOn, closesOn }) =>
          svgElement('rect', {
            class: 'ss-season',
            x: x(dayNumber(opensOn)),
            y: LINE_Y - 4,
            width: Math.max(1, x(dayNumber(closesOn) + 1) - x(dayNumber(opensOn))),
            height: 8,
            fill: CHART_PALETTE.snap,
          }),
        ),
      line('ss-today', x(at), x(at), 0, HEIGHT_PX, 2),
    ],
  );
}
