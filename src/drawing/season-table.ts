import type { FenceForecast, GroupSpeeds, SeasonForecast } from '../forecast/fence-forecast.ts';
import type { ChartLanguage } from './chart-words.ts';
import { bandText, depthFigure, depthUnit, onceInYearsCell, percentText } from './quantity-text.ts';
import type { DisplayUnits } from './speed-text.ts';
import { displaySpeed, speedUnit } from './speed-text.ts';

/** The chart as a table: the same years, one row a season, every cell as it is shown. */
export interface SeasonTable {
  readonly columns: readonly { readonly heading: string; readonly unit: string }[];
  readonly rows: readonly {
    readonly label: string;
    readonly season: number | null;
    /** The cells after the season's label, in the order of the columns after the first. */
    readonly cells: readonly string[];
  }[];
}

/** Headings of the columns with their units where those are words. */
const COLUMNS = {
  en: {
    season: 'Season',
    age: ['Fence age', 'years'],
    depth: 'Rot depth',
    snap: 'Snap speed',
    lean: 'Lean speed',
    ends: 'Ends snap',
    once: ['Once in', 'years'],
    short: 'P(short)',
    postsShort: ['Posts short', 'of'],
    snapChance: ['P(snap)', 'this season'],
    new: 'new',
  },
  es: {
    season: 'Temporada',
    age: ['Edad', 'años'],
    depth: 'Pudrición',
    snap: 'Rotura',
    lean: 'Inclinación',
    ends: 'Rotura, extremos',
    once: ['Una vez en', 'años'],
    short: 'P(insuficiente)',
    postsShort: ['Postes insuficientes', 'de'],
    snapChance: ['P(rotura)', 'en la temporada'],
    new: 'nueva',
  },
} as const;

/**
 * The seasons of a forecast as rows of text: age, rot depth, snap and lean speed with their bands, the ends' snap speed, once in
 * N years and the risks.
 * @param show which seasons to show, all of them unless given; the language, English unless given
 */
export function seasonTable(
  forecast: FenceForecast,
  units: DisplayUnits,
  show: { readonly keep?: (season: SeasonForecast) => boolean; readonly language?: ChartLanguage } = {},
): SeasonTable {
  const { keep = () => true, language = 'en' } = show;
  const words = COLUMNS[language];
  const share = (value: number | null): string => (value === null ? '–' : percentText(value, language));
  const speed = (speedMps: number): string => String(Math.round(displaySpeed(speedMps, units)));
  const depth = (depthMm: number): string => depthFigure(depthMm, units);
  const unit = speedUnit(units);
  const rows = forecast.seasons.filter(keep).map((season) => {
    const judged: GroupSpeeds | null = season.line ?? season.ends;
    return {
      label: season.season === null ? words.new : season.label,
      season: season.season,
      cells: [
        season.ageYears.toFixed(1),
        bandText(season.depthMm, depth),
        judged ? bandText(judged.snapMps, speed) : '–',
        judged ? bandText(judged.leanMps, speed) : '–',
        season.line && season.ends ? speed(season.ends.snapMps.p50) : '–',
        judged ? onceInYearsCell(judged.onceInYears, language) : '–',
        share(season.pShort),
        season.expectedPostsShort === null ? '–' : season.expectedPostsShort.toFixed(1),
        share(season.pSnap),
      ],
    };
  });
  return {
    columns: [
      { heading: words.season, unit: '' },
      { heading: words.age[0], unit: words.age[1] },
      { heading: words.depth, unit: depthUnit(units) },
      { heading: words.snap, unit },
      { heading: words.lean, unit },
      { heading: words.ends, unit },
      { heading: words.once[0], unit: words.once[1] },
      { heading: words.short, unit: '' },
      { heading: words.postsShort[0], unit: `${words.postsShort[1]} ${forecast.postCount}` },
      { heading: words.snapChance[0], unit: words.snapChance[1] },
    ],
    rows,
  };
}
