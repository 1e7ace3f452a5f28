import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { inSeason, SHIPPED_STORM_SEASONS } from '../../src/season/storm-season.ts';
import { EXACT, type PublishedCheck, withinAbsolute } from './published-check.ts';
import { SOURCES } from './sources.ts';

interface StormDays {
  readonly month: string;
  readonly day: string;
  readonly storm_days: string;
}

/**
 * Atlantic storm-days (a storm of at least 34 kt on a day) by day of the year, 1975 to 2020, counted from the subset of
 * NOAA's HURDAT2 in the R package dplyr 1.0.10 (data of the United States Government).
 */
const stormDays = (): readonly StormDays[] =>
  parse(readFileSync(new URL('atlantic-storm-days.csv', import.meta.url)), { columns: true });

/** Share of all Atlantic storm-days that fall in a window, in percent. */
function percentIn(window: { readonly opens: string; readonly closes: string }): number {
  let inside = 0;
  let all = 0;
  for (const { month, day, storm_days } of stormDays()) {
    const count = Number(storm_days);
    all += count;
    if (inSeason(window, `${month.padStart(2, '0')}-${day.padStart(2, '0')}`)) inside += count;
  }
  return (100 * inside) / all;
}

const storms = { topic: 'Storm seasons', tag: 'read at second hand' } as const;

const daysOf = (ref: string): string => {
  const { window } = SHIPPED_STORM_SEASONS.find((season) => season.ref === ref)!;
  return `${window.opens} to ${window.closes}`;
};

export const STORM_SEASON_CHECKS: readonly PublishedCheck[] = [
  {
    ...storms,
    id: 'season.atlantic-window',
    quantity: 'storm-days (34 kt or more) of 1975 to 2020 inside the shipped Atlantic window ("over 97 %")',
    computed: () => percentIn(SHIPPED_STORM_SEASONS.find(({ ref }) => ref === 'atlantic-hurricane')!.window),
    published: 97,
    unit: '%',
    tolerance: withinAbsolute(1),
    source: SOURCES.hurricaneQuestions,
    note: 'Counted from NOAA HURDAT2 (the subset in the R package dplyr 1.0.10). The window holds the storms, not all of the yearly gusts: its share of the hazard is judged at 90 %, because fronts bring strong gusts too.',
  },
  {
    ...storms,
    id: 'season.atlantic-peak',
    quantity: 'storm-days (34 kt or more) of 1975 to 2020 from August to October',
    computed: () => percentIn({ opens: '08-01', closes: '10-31' }),
    published: 78,
    unit: '%',
    tolerance: withinAbsolute(5),
    source: SOURCES.hurricaneQuestions,
    note: 'The published share is of earlier decades; the count of 1975 to 2020 gives more.',
  },
  {
    ...storms,
    id: 'season.atlantic-days',
    quantity: 'official days of the Atlantic hurricane season',
    computed: () => daysOf('atlantic-hurricane'),
    published: '06-01 to 11-30',
    unit: '-',
    tolerance: EXACT,
    source: SOURCES.hurricaneQuestions,
  },
  {
    ...storms,
    id: 'season.eastern-pacific-days',
    quantity: 'official days of the eastern Pacific hurricane season',
    computed: () => daysOf('eastern-pacific-hurricane'),
    published: '05-15 to 11-30',
    unit: '-',
    tolerance: EXACT,
    tag: 'read',
    source: SOURCES.pacificSeason,
  },
];
