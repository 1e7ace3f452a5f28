import { describe, expect, it } from 'vitest';
import type { FenceForecast, SeasonForecast } from '../../src/forecast/fence-forecast.ts';
import { decodeForecast, encodeForecast } from '../../src/forecast/forecast-codec.ts';
import { group, season } from './made-up-season.ts';

const FORECAST: FenceForecast = {
  modelVersion: 'made up',
  fenceRef: 'EX-1',
  designGust: { gustMps: 45, returnPeriodYears: 300, explanation: 'made up' },
  hazard: { kind: 'none', reason: 'made up' },
  seasons: [],
  postCount: 3,
  linePosts: [2],
  endPosts: [1, 3],
  standing: 'clear',
  endsStanding: null,
  standingWithMargin: 'closing',
  endsStandingWithMargin: null,
  shortSeason: null,
  endsShortSeason: null,
  shortFrom: null,
  turnover: 'since new',
  marksCrossed: [{ mark: 'two thirds', season: '2030' }],
  marksAhead: [],
  codeVerdicts: [],
  unknowns: [],
  evidence: null,
  found: { broken: [], leaning: [3], closedOff: [], crackedCollars: [], hollow: [] },
  remarks: ['made up'],
};
const of = (...seasons: readonly SeasonForecast[]): FenceForecast => ({ ...FORECAST, seasons });
const columnsOf = (forecast: FenceForecast): Record<string, unknown> =>
  (JSON.parse(encodeForecast(forecast)) as { columns: Record<string, unknown> }).columns;
const readBack = (forecast: FenceForecast): FenceForecast => decodeForecast(encodeForecast(forecast));

describe('a stored forecast', () => {
  it('writes once what is the same in every season, lists of posts too, and season by season what is not', () => {
    const columns = columnsOf(of(season(2030), season(2031)));
    expect(columns.depthMm).toBeUndefined();
    expect(columns['depthMm.p50']).toEqual({ same: 5 });
    expect(columns['line.decidingPosts']).toEqual({ same: [2] });
    expect(columns.pSnap).toEqual({ same: null });
    expect(columns.label).toEqual({ each: ['2030', '2031'] });
    expect(columns.season).toEqual({ each: [1, 2] });
  });

  it('leaves a gap where a group has no values in a season, and tells the gap from a null', () => {
    const forecast = of(
      season(2030, { line: null, ends: group(40) }),
      season(2031, { line: group(50, 60, null), ends: group(41) }),
      season(2032, { line: group(49, 60, 12), ends: null }),
    );
    const columns = columnsOf(forecast);
    expect(columns['line.snapMps.p50']).toEqual({ each: ['gap', 50, 49] });
    expect(columns['line.onceInYears']).toEqual({ each: ['gap', null, 12] });
    expect(columns.line).toEqual({ each: [null, 'gap', 'gap'] });
    expect(columns['ends.leanMps.p50']).toEqual({ each: [100, 100, 'gap'] });
    expect(readBack(forecast)).toEqual(forecast);
  });

  it('tells lists that differ in one place apart', () => {
    const one = season(2030);
    const two = season(2031, { line: { ...group(60), decidingPosts: [2, 3] } });
    expect(columnsOf(of(one, two))['line.decidingPosts']).toEqual({ each: [[2], [2, 3]] });
    expect(readBack(of(one, two))).toEqual(of(one, two));
  });

  it('has its columns in the order of their names, in whatever order a season lists its values', () => {
    const forecast = of(season(2030));
    const names = Object.keys(columnsOf(forecast));
    expect(names).toEqual([...names].sort());
    const turned = Object.fromEntries(Object.entries(season(2030)).reverse()) as unknown as SeasonForecast;
    expect(encodeForecast(of(turned))).toBe(encodeForecast(forecast));
  });

  it('keeps one season, and none', () => {
    expect(readBack(of(season(2030)))).toEqual(of(season(2030)));
    expect(readBack(of())).toEqual(of());
  });

  it('is refused where the text is no JSON', () => {
    expect(() => decodeForecast('{"seasons"')).toThrow(SyntaxError);
  });
});
