import type { Band } from '../../src/forecast/band.ts';
import type { GroupSpeeds, SeasonForecast } from '../../src/forecast/fence-forecast.ts';

const band = (p50: number): Band => ({ p10: p50 - 1, p50, p90: p50 + 1 });

/** A group of posts that snaps and leans at the given gusts [m/s]. */
export const group = (snapMps: number, leanMps = 100, onceInYears: number | null = null): GroupSpeeds => ({
  snapMps: band(snapMps),
  leanMps: band(leanMps),
  snapState: 'bending',
  leanState: 'footing',
  decidingPosts: [2],
  codeSnapMps: snapMps / 2,
  codeLeanMps: leanMps / 2,
  onceInYears,
});

/** The season that opens in a year, season 1 being that of 2030; sound line posts and no ends unless said otherwise. */
export const season = (
  year: number,
  state: Partial<Pick<SeasonForecast, 'line' | 'ends'>> & { readonly left?: number } = {},
): SeasonForecast => ({
  label: String(year),
  season: year - 2029,
  day: `${year}-06-01`,
  ageYears: year - 2010,
  depthMm: band(5),
  strengthLeft: band(state.left ?? 1),
  line: state.line === undefined ? group(60) : state.line,
  ends: state.ends ?? null,
  pShort: null,
  expectedPostsShort: null,
  pAnyShort: null,
  pSnap: null,
});
