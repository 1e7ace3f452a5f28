import { describe, expect, it } from 'vitest';
import type { HazardCurve } from '../../src/forecast/fence-forecast.ts';
import { findMarks } from '../../src/forecast/marks.ts';
import { group, season } from './made-up-season.ts';

const CURVE: HazardCurve = { kind: 'gumbel', locationMps: 17, scaleMps: 10, explanation: 'made up' };
const NO_CURVE: HazardCurve = { kind: 'none', reason: 'made up' };
const BUILT = season(2010, { line: group(60, 100, 300) });
/** Seasons from 2029 on with the given share of strength left and return period held. */
const seasons = (...states: readonly (readonly [left: number, onceInYears: number | null])[]) =>
  states.map(([left, once], index) => season(2029 + index, { line: group(50, 100, once), left }));

describe('the marks of a fence', () => {
  it('are crossed at just two thirds of the strength, and at just once in 50, 25 and 10 years', () => {
    const { marksCrossed, marksAhead } = findMarks(
      BUILT,
      seasons([0.9, 90], [2 / 3, 50], [0.6, 25.1], [0.5, 25], [0.4, 10.1], [0.3, 10]),
      CURVE,
    );
    expect(marksCrossed).toEqual([
      { mark: 'two thirds', season: '2030' },
      { mark: 'once in 50', season: '2030' },
    ]);
    expect(marksAhead).toEqual([
      { mark: 'once in 25', season: '2032' },
      { mark: 'once in 10', season: '2034' },
    ]);
  });

  it('are none while more than two thirds are left and the gust comes more rarely than once in 50 years', () => {
    expect(findMarks(BUILT, seasons([0.9, 90], [0.67, 50.1]), CURVE)).toEqual({ marksCrossed: [], marksAhead: [] });
  });

  it('are as old as the fence where it was built beyond them', () => {
    const weak = season(2010, { line: group(30, 100, 20) });
    expect(findMarks(weak, seasons([0.9, 19], [0.8, 18]), CURVE).marksCrossed).toEqual([
      { mark: 'once in 50', season: 'new' },
      { mark: 'once in 25', season: 'new' },
    ]);
  });

  it('are only that of two thirds where there is no curve', () => {
    expect(findMarks(BUILT, seasons([0.9, 5], [0.5, 5]), NO_CURVE)).toEqual({
      marksCrossed: [{ mark: 'two thirds', season: '2030' }],
      marksAhead: [],
    });
  });

  it('are not crossed by a fence of which nothing says how often its gust comes', () => {
    expect(findMarks(BUILT, seasons([0.9, null], [0.8, null]), CURVE)).toEqual({ marksCrossed: [], marksAhead: [] });
  });

  it('are those of the ends where there are no line posts, and of nobody where there are no posts', () => {
    const ends = { line: null, ends: group(40, 100, 30) };
    const short = [season(2030, ends)];
    expect(findMarks(season(2010, { line: null, ends: group(60, 100, 90) }), short, CURVE).marksCrossed).toEqual([
      { mark: 'once in 50', season: '2030' },
    ]);
    const empty = season(2030, { line: null });
    expect(findMarks(empty, [empty], CURVE)).toEqual({ marksCrossed: [], marksAhead: [] });
  });

  it('are those of the line posts where there are ends too', () => {
    const both = season(2030, { line: group(60, 100, 90), ends: group(40, 100, 5) });
    expect(findMarks(both, [both], CURVE).marksCrossed).toEqual([]);
  });
});
