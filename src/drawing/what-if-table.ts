import type { FenceLife } from '../season/fence-life.ts';
import type { Prospect, WhatIf, WhatIfRow } from '../season/what-if.ts';
import type { ChartLanguage } from './chart-words.ts';
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

const WORDS = {
  en: {
    nothing: ['nothing'],
    number: 'No.',
    what: 'What is done',
    price: 'Price',
    work: ['Work', 'hours'],
    snap: 'Snap',
    ends: 'Ends',
    lean: 'Lean',
    once: ['Once in', 'years'],
    chance: ['P(snap)', 'season'],
    posts: ['Posts', 'short'],
    short: ['Short', 'from'],
    life: ['Life', 'years'],
    year: ['A year more', 'costs'],
    none: 'none',
    over: 'over',
    atMost: 'at most',
  },
  es: {
    nothing: ['nada'],
    number: 'N.º',
    what: 'Qué se hace',
    price: 'Precio',
    work: ['Trabajo', 'horas'],
    snap: 'Rotura',
    ends: 'Extremos',
    lean: 'Inclinación',
    once: ['Una vez en', 'años'],
    chance: ['P(rotura)', 'temporada'],
    posts: ['Postes', 'insuf.'],
    short: ['Insuf.', 'desde'],
    life: ['Vida', 'años'],
    year: ['Un año más', 'cuesta'],
    none: 'ninguna',
    over: 'más de',
    atMost: 'máx.',
  },
} as const;

const money = (amount: number): string => figureText(Math.round(amount), 15);
const hours = (personHours: number): string => String(Number(personHours.toFixed(1)));

const lifeCell = ({ years, atLeast }: FenceLife, language: ChartLanguage): string =>
  atLeast ? `${WORDS[language].over} ${Math.floor(years)}` : years.toFixed(1);

function costOfYearCell(row: WhatIfRow, language: ChartLanguage): string {
  if (row.costPerYear === null) return '–';
  return row.life.atLeast ? `${WORDS[language].atMost} ${money(row.costPerYear)}` : money(row.costPerYear);
}

/** Price, hours, speeds, risk, short season, life and what a year of life costs: one row each, in the order of `whatIf`. */
export function whatIfTable(
  { nothing, rows }: WhatIf,
  units: DisplayUnits,
  language: ChartLanguage = 'en',
): WhatIfTable {
  const words = WORDS[language];
  const speed = (speedMps: number): string => String(Math.round(displaySpeed(speedMps, units)));
  const prospect = (each: Prospect): readonly string[] => {
    const { snapMps, leanMps, endsSnapMps } = each.seasons[0]!;
    return [
      speed(snapMps),
      endsSnapMps === null ? '–' : speed(endsSnapMps),
      speed(leanMps),
      onceInYearsCell(each.onceInYears, language),
      each.pSnap === null ? '–' : percentText(each.pSnap, language),
      each.expectedPostsShort.toFixed(1),
      each.shortSeason ?? words.none,
      lifeCell(each.life, language),
    ];
  };
  const unit = speedUnit(units);
  return {
    columns: [
      { heading: words.number, unit: '' },
      { heading: words.what, unit: '' },
      { heading: words.price, unit: '' },
      { heading: words.work[0], unit: words.work[1] },
      { heading: words.snap, unit },
      { heading: words.ends, unit },
      { heading: words.lean, unit },
      { heading: words.once[0], unit: words.once[1] },
      { heading: words.chance[0], unit: words.chance[1] },
      { heading: words.posts[0], unit: words.posts[1] },
      { heading: words.short[0], unit: words.short[1] },
      { heading: words.life[0], unit: words.life[1] },
      { heading: words.year[0], unit: words.year[1] },
    ],
    rows: [
      { name: words.nothing, cells: ['–', '–', ...prospect(nothing), '–'] },
      ...rows.map((row) => ({
        name: optionLines(row.option, language),
        cells: [money(row.cost.price), hours(row.cost.personHours), ...prospect(row), costOfYearCell(row, language)],
      })),
    ],
  };
}

/** Snap and lean speed of some of the seasons ahead, `102 / 60`, one row each, in the same order. */
export function whatIfSeasonsTable(
  { nothing, rows }: WhatIf,
  units: DisplayUnits,
  language: ChartLanguage = 'en',
): WhatIfTable {
  const words = WORDS[language];
  const listed = nothing.seasons.filter(({ season }) => LISTED_SEASONS.includes(season));
  const speed = (speedMps: number): string => String(Math.round(displaySpeed(speedMps, units)));
  const cells = ({ seasons }: Prospect): readonly string[] =>
    seasons
      .filter(({ season }) => LISTED_SEASONS.includes(season))
      .map(({ snapMps, leanMps }) => `${speed(snapMps)} / ${speed(leanMps)}`);
  return {
    columns: [
      { heading: words.number, unit: '' },
      { heading: words.what, unit: '' },
      ...listed.map(({ label }) => ({ heading: label, unit: '' })),
    ],
    rows: [
      { name: words.nothing, cells: cells(nothing) },
      ...rows.map((row) => ({ name: optionLines(row.option, language), cells: cells(row) })),
    ],
  };
}
