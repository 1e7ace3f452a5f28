import type { FenceForecast, GroupSpeeds, SeasonForecast } from '../forecast/fence-forecast.ts';
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

const share = (value: number | null): string => (value === null ? '–' : percentText(value, 'en'));

/**
 * The seasons of a forecast as rows of text: age, rot depth, snap and lean speed with their bands, the ends' snap speed, once in
 * N years and the risks.
 * @param keep which seasons to show; all of them unless given
 */
export function seasonTable(
  forecast: FenceForecast,
  units: DisplayUnits,
  keep: (season: SeasonForecast) => boolean = () => true,
): SeasonTable {
  const speed = (speedMps: number): string => String(Math.round(displaySpeed(speedMps, units)));
  const depth = (depthMm: number): string => depthFigure(depthMm, units);
  const unit = speedUnit(units);
  const rows = forecast.seasons.filter(keep).map((season) => {
    const judged: GroupSpeeds | null = season.line ?? season.ends;
    return {
      label: season.label,
      season: season.season,
      cells: [
        season.ageYears.toFixed(1),
        bandText(season.depthMm, depth),
        judged ? bandText(judged.snapMps, speed) : '–',
        judged ? bandText(judged.leanMps, speed) : '–',
        season.line && season.ends ? speed(season.ends.snapMps.p50) : '–',
        judged ? onceInYearsCell(judged.onceInYears) : '–',
        share(season.pShort),
        season.expectedPostsShort === null ? '–' : season.expectedPostsShort.toFixed(1),
        share(season.pSnap),
      ],
    };
  });
  return {
    columns: [
      { heading: 'Season', unit: '' },
      { heading: 'Fence age', unit: 'years' },
      { heading: 'Rot depth', unit: depthUnit(units) },
      { heading: 'Snap speed', unit },
      { heading: 'Lean speed', unit },
      { heading: 'Ends snap', unit },
      { heading: 'Once in', unit: 'years' },
      { heading: 'P(short)', unit: '' },
      { heading: 'Posts short', unit: `of ${forecast.postCount}` },
      { heading: 'P(snap)', unit: 'this season' },
    ],
    rows,
  };
}
