import type { Band } from '../../src/forecast/band.ts';
import type {
  FenceForecast,
  FenceStanding,
  GroupSpeeds,
  Mark,
  SeasonForecast,
} from '../../src/forecast/fence-forecast.ts';
import { dayNumber, yearsBetween } from '../../src/units/calendar-day.ts';

/** What a made-up fence for drawing tests is like. Speeds [m/s]. */
export interface FixtureShape {
  readonly ref?: string;
  readonly installed: string;
  readonly seasonOneYear?: number;
  readonly newSnapMps: number;
  readonly leanMps: number;
  readonly gustMps: number;
  /** Rot depth per face and year after a two year lag [mm/a]. */
  readonly rotMmPerYear: number;
  readonly hasLine?: boolean;
  readonly hasEnds?: boolean;
  /** Speeds of the ends as a share of those of the line posts [-]; 0.82 where not given. */
  readonly endsShare?: number;
  readonly wrapsYearEnd?: boolean;
}

const band = (p50: number, low: number, high: number): Band => ({ p10: p50 * low, p50, p90: p50 * high });

/**
 * A forecast of the right shape whose snap speed follows the cube of the sound width; for drawing only, where the numbers'
 * truth does not matter but their order does.
 */
export function forecastFixture(shape: FixtureShape): FenceForecast {
  const one = shape.seasonOneYear ?? 2027;
  const endsShare = shape.endsShare ?? 0.82;
  const label = (year: number): string =>
    shape.wrapsYearEnd ? `${year}/${String((year + 1) % 100).padStart(2, '0')}` : `${year}`;
  const opens = shape.wrapsYearEnd ? '11-01' : '06-01';
  const left = (ageYears: number, pace: number): number =>
    Math.max(0.02, 1 - (2 * pace * shape.rotMmPerYear * Math.max(0, ageYears - 2)) / 89) ** 3;
  const group = (ageYears: number, factor: number): GroupSpeeds => {
    const snap = (pace: number): number => shape.newSnapMps * factor * Math.sqrt(left(ageYears, pace));
    return {
      snapMps: { p10: snap(1.7) * 0.88, p50: snap(1), p90: snap(0.6) * 1.12 },
      leanMps: band(shape.leanMps * factor, 0.8, 1.25),
      snapState: 'bending',
      leanState: 'footing',
      decidingPosts: [3, 4, 5],
      codeSnapMps: snap(1) * 0.8,
      codeLeanMps: shape.leanMps * factor * 0.7,
      onceInYears: Math.exp((snap(1) / shape.gustMps) * 5.7),
    };
  };
  const season = (name: string, number: number | null, day: string): SeasonForecast => {
    const ageYears = Math.max(0, yearsBetween(shape.installed, day));
    const line = shape.hasLine === false ? null : group(ageYears, 1);
    const ahead = number !== null && number >= 1;
    const judged = line ?? group(ageYears, endsShare);
    const share = Math.min(1, Math.max(0, 1.4 - judged.snapMps.p50 / shape.gustMps));
    return {
      label: name,
      season: number,
      day,
      ageYears,
      depthMm: band(shape.rotMmPerYear * Math.max(0, ageYears - 2), 0.55, 1.8),
      strengthLeft: { p10: left(ageYears, 1.7), p50: left(ageYears, 1), p90: left(ageYears, 0.6) },
      line,
      ends: shape.hasEnds === false ? null : group(ageYears, endsShare),
      pShort: ahead ? share : null,
      expectedPostsShort: ahead ? share * 9 : null,
      pAnyShort: ahead ? Math.sqrt(share) : null,
      pSnap: ahead ? share * 0.05 : null,
    };
  };
  const seasons: SeasonForecast[] = [season('new', null, shape.installed)];
  for (let year = Number(shape.installed.slice(0, 4)); year < one + 30; year += 1) {
    const day = `${year}-${opens}`;
    if (dayNumber(day) <= dayNumber(shape.installed)) continue;
    seasons.push(season(label(year), year - one + 1, day));
  }
  const snapOf = (at: SeasonForecast): number => (at.line ?? at.ends)?.snapMps.p50 ?? 0;
  const ahead = seasons.filter((at) => at.season !== null && at.season >= 1);
  const [first] = ahead;
  if (!first) throw new Error('the made-up fence has no season 1');
  const fresh = snapOf(seasons[0] as SeasonForecast);
  const short = ahead.find((at) => snapOf(at) < shape.gustMps) ?? null;
  const standing: FenceStanding =
    fresh < shape.gustMps
      ? 'short from new'
      : short === first
        ? 'short'
        : (short?.season ?? 99) <= 3
          ? 'closing'
          : 'clear';
  const marks = (
    [
      ['two thirds', (fresh * 2) / 3],
      ['once in 50', shape.gustMps * 0.83],
      ['once in 25', shape.gustMps * 0.74],
      ['once in 10', shape.gustMps * 0.62],
    ] as readonly (readonly [Mark, number])[]
  ).flatMap(([mark, speed]) => {
    const at = seasons.find((each) => snapOf(each) < speed);
    return at ? [{ mark, season: at.label, past: at.season === null || at.season <= 1 }] : [];
  });
  const turned = seasons.find((at) => snapOf(at) < ((at.line ?? at.ends)?.leanMps.p50 ?? 0));
  return {
    modelVersion: 'made up for drawing',
    fenceRef: shape.ref ?? 'NR-07',
    designGust: { gustMps: shape.gustMps, returnPeriodYears: 300, explanation: 'entered as a 300-year ultimate gust' },
    hazard: {
      kind: 'gumbel',
      locationMps: shape.gustMps * 0.5,
      scaleMps: shape.gustMps * 0.09,
      explanation: 'from one pair',
    },
    seasons,
    postCount: 11,
    linePosts: [3, 4, 5, 6, 7, 8, 9],
    endPosts: [1, 2, 10, 11],
    standing,
    endsStanding: null,
    standingWithMargin: standing,
    endsStandingWithMargin: null,
    shortSeason: short?.label ?? null,
    endsShortSeason: null,
    shortFrom: fresh < shape.gustMps ? 'new' : (seasons.find((at) => snapOf(at) < shape.gustMps)?.label ?? null),
    turnover: turned === seasons[0] ? 'since new' : (turned?.label ?? null),
    marksCrossed: marks.filter((mark) => mark.past),
    marksAhead: marks.filter((mark) => !mark.past),
    codeVerdicts: [],
    unknowns: [],
    remarks: [],
    evidence: null,
    found: { broken: [], leaning: [], closedOff: [], crackedCollars: [], hollow: [] },
  };
}
