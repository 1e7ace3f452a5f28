import type { FenceLife } from '../season/fence-life.ts';
import type { Prospect, WhatIf, WhatIfRow } from '../season/what-if.ts';
import { figureText, onceInYearsCell, percentText } from './quantity-text.ts';
import type { DisplayUnits } from './speed-text.ts';
import { displaySpeed, speedUnit } from './speed-text.ts';
import { optionLines } from './what-if-words.ts';

/** What could be done to a fence as a table of text; row 0 is doing nothing. */
export interface WhatIfTable {
  readonly columns: readonly { readonly heading: string; readonly unit: string }[];
  readonly rows: readonly {
    /** What is done, a line a part. */
    readonly name: readonly string[];
    readonly cells: readonly string[];
  }[];
}

/** Seasons ahead whose speeds are listed. */
const LISTED_SEASONS: readonly number[] = [1, 3, 5, 10, 20, 30];
const NOTHING = ['nothing'] as const;

const money = (amount: number): string => figureText(Math.round(amount), 15);
const hours = (personHours: number): string => String(Number(personHours.toFixed(1)));

const lifeCell = ({ years, atLeast }: FenceLife): string => (atLeast ? `over ${Math.floor(years)}` : years.toFixed(1));

function costOfYearCell(row: WhatIfRow): string {
  if (row.costPerYear === null) return '–';
  return row.life.atLeast ? `at most ${money(row.costPerYear)}` : money(row.costPerYear);
}

/** Price, hours, speeds, risk, short season, life and what a year of life costs: one row each, in the order of `whatIf`. */
export function whatIfTable({ nothing, rows }: WhatIf, units: DisplayUnits): WhatIfTable {
  const speed = (speedMps: number): string => String(Math.round(displaySpeed(speedMps, units)));
  const prospect = (each: Prospect): readonly string[] => {
    const { snapMps, leanMps, endsSnapMps } = each.seasons[0]!;
    return [
      speed(snapMps),
      endsSnapMps === null ? '–' : speed(endsSnapMps),
      speed(leanMps),
      onceInYearsCell(each.onceInYears),
      each.pSnap === null ? '–' : percentText(each.pSnap, 'en'),
      each.expectedPostsShort.toFixed(1),
      each.shortSeason ?? 'none',
      lifeCell(each.life),
    ];
  };
  const unit = speedUnit(units);
  return {
    columns: [
      { heading: 'No.', unit: '' },
      { heading: 'What is done', unit: '' },
      { heading: 'Price', unit: '' },
      { heading: 'Work', unit: 'hours' },
      { heading: 'Snap', unit },
      { heading: 'Ends', unit },
      { heading: 'Lean', unit },
      { heading: 'Once in', unit: 'years' },
      { heading: 'P(snap)', unit: 'season' },
      { heading: 'Posts', unit: 'short' },
      { heading: 'Short', unit: 'from' },
      { heading: 'Life', unit: 'years' },
      { heading: 'A year more', unit: 'costs' },
    ],
    rows: [
      { name: NOTHING, cells: ['–', '–', ...prospect(nothing), '–'] },
      ...rows.map((row) => ({
        name: optionLines(row.option),
        cells: [money(row.cost.price), hours(row.cost.personHours), ...prospect(row), costOfYearCell(row)],
      })),
    ],
  };
}

/** Snap and lean speed of some of the seasons ahead, `102 / 60`, one row each, in the same order. */
export function whatIfSeasonsTable({ nothing, rows }: WhatIf, units: DisplayUnits): WhatIfTable {
  const listed = nothing.seasons.filter(({ season }) => LISTED_SEASONS.includes(season));
  const speed = (speedMps: number): string => String(Math.round(displaySpeed(speedMps, units)));
  const cells = ({ seasons }: Prospect): readonly string[] =>
    seasons
      .filter(({ season }) => LISTED_SEASONS.includes(season))
      .map(({ snapMps, leanMps }) => `${speed(snapMps)} / ${speed(leanMps)}`);
  return {
    columns: [
      { heading: 'No.', unit: '' },
      { heading: 'What is done', unit: '' },
      ...listed.map(({ label }) => ({ heading: label, unit: '' })),
    ],
    rows: [
      { name: NOTHING, cells: cells(nothing) },
      ...rows.map((row) => ({ name: optionLines(row.option), cells: cells(row) })),
    ],
  };
}
