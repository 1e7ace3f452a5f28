import { describe, expect, it } from 'vitest';
import { decayDepth } from '../../../src/decay/decay-depth.ts';
import { impliedRate } from '../../../src/decay/implied-rate.ts';
import { fenceBelief, medianOf } from '../../../src/forecast/evidence/fence-belief.ts';
import type { GroundlineReading } from '../../../src/forecast/evidence/inspection.ts';
import { gridPosterior, gridQuantile } from '../../../src/forecast/evidence/pace-grid.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../../src/forecast/forecast-fence.ts';
import { normalCdf } from '../../../src/forecast/normal-distribution.ts';
import { halfMillimetreFence, inspectionOn } from './read-fence.ts';

const depth = (depthMm: number): GroundlineReading => ({ kind: 'depth', depthMm });
/** The same reading at so many posts. */
const each = (count: number, reading: GroundlineReading): readonly GroundlineReading[] =>
  Array.from({ length: count }, () => reading);
const soundTo = (depthMm: number): GroundlineReading => ({ kind: 'sound-to', depthMm });
const softTo = (depthMm: number): GroundlineReading => ({ kind: 'soft-to', depthMm });
const width = (widthMm: number): GroundlineReading => ({ kind: 'residual-width', widthMm });

const DAY = '2026-03-01';
const read = (years: number, readings: readonly (GroundlineReading | null)[]): FenceFacts => ({
  ...halfMillimetreFence(years),
  inspections: [inspectionOn(DAY, readings)],
});
const beliefOf = (facts: FenceFacts) => fenceBelief(facts, fenceStates(facts));
/** ln r of the fence at its points, in ascending order: prior ln 0.5, spread 0.45. */
const logRates = (facts: FenceFacts): Float64Array =>
  Float64Array.from(beliefOf(facts).points.scores.pace, (score) => Math.log(0.5) + 0.45 * score).sort();
const meanOf = (values: Float64Array): number => values.reduce((a, b) => a + b) / values.length;
const widthOf = (facts: FenceFacts): number => {
  const all = logRates(facts);
  return all[115]! - all[12]!;
};

describe('readings of depth', () => {
  // The closed form takes the error of a depth as an error of ln r; the belief takes it as what it is. They differ by
  // some hundredths of ln r where depths are near the error, and not where rot is deep.
  const closed = (depths: readonly number[], years: number): number => {
    let precision = 1 / 0.45 ** 2;
    let sum = Math.log(0.5) / 0.45 ** 2;
    for (const each of depths) {
      const variance = 0.54 ** 2 + (2 / (each + 5.5)) ** 2;
      precision += 1 / variance;
      sum += Math.log(impliedRate(each, years)) / variance;
    }
    return sum / precision;
  };

  it.each([
    [[20, 16, 24], 30, 0.02],
    [[6, 9, 8], 15, 0.06],
  ])('%j mm at %d years move the pace as the closed form says', (depths, years, tolerance) => {
    const mean = meanOf(logRates(read(years, depths.map(depth))));
    expect(Math.abs(mean - closed(depths, years))).toBeLessThan(tolerance);
  });

  it('place the points at the quantiles of the grid, within 0.02 in ln r', () => {
    for (const seen of [
      [depth(6), depth(9), depth(8)],
      each(10, soundTo(2)),
      [...each(9, soundTo(2)), softTo(23.84)],
    ]) {
      const facts = read(15, seen);
      const [grid] = beliefOf(facts).pace!.byDate;
      const points = logRates(facts);
      const at = (score: number): number => Math.log(0.5) + 0.45 * score;
      expect(Math.abs(meanOf(points) - at(grid!.mean))).toBeLessThan(0.02);
      for (const [index, level] of [
        [12.3, 0.1],
        [63.5, 0.5],
        [114.7, 0.9],
      ] as const) {
        const between =
          points[Math.floor(index)]! + (index % 1) * (points[Math.ceil(index)]! - points[Math.floor(index)]!);
        expect(Math.abs(between - at(gridQuantile(grid!, level)))).toBeLessThan(0.02);
      }
    }
  });

  it('that are bounds move it as the exact censored likelihood says', () => {
    const bound = Math.log(impliedRate(2, 12));
    const exact = gridPosterior(
      { mean: Math.log(0.5), sd: 0.45 },
      new Array(10).fill((logRate: number) => Math.log(normalCdf((bound - logRate) / 0.54))),
    );
    expect(Math.abs(meanOf(logRates(read(12, each(10, soundTo(2))))) - exact.mean)).toBeLessThan(0.02);
  });

  it('never confuse a depth with a width: 7 mm gone of each face is 75 mm left of 89', () => {
    const byDepth = { ...halfMillimetreFence(15), inspections: [inspectionOn(DAY, [depth(7)], 'drill-resistance')] };
    const byWidth = { ...halfMillimetreFence(15), inspections: [inspectionOn(DAY, [width(88.9 - 14)], 'caliper')] };
    expect(Math.abs(meanOf(logRates(byDepth)) - meanOf(logRates(byWidth)))).toBeLessThan(0.02);
  });

  it('narrow the belief, each more', () => {
    expect(widthOf(read(15, [depth(8)]))).toBeLessThan(widthOf(halfMillimetreFence(15)));
    expect(widthOf(read(15, [depth(8), depth(8), depth(8)]))).toBeLessThan(widthOf(read(15, [depth(8)])));
  });

  it('give the same whatever their order in the register', () => {
    const [a, b] = [
      inspectionOn('2024-03-01', [depth(4), null, depth(9)]),
      inspectionOn(DAY, [depth(7), depth(6), null]),
    ];
    const facts = halfMillimetreFence(15);
    const turned = { ...b, readings: [...b.readings].reverse() };
    const forecast = (inspections: FenceFacts['inspections']) =>
      forecastFence({ ...facts, inspections }, 2026, DEFAULT_SETTINGS);
    const [one, other] = [forecast([a, b]), forecast([turned, a])];
    expect(other.seasons).toEqual(one.seasons);
  });

  it('of one post twice say less than of two posts once', () => {
    const earlier = inspectionOn('2026-02-01', [depth(12)]);
    const again = { ...halfMillimetreFence(15), inspections: [earlier, inspectionOn(DAY, [depth(12)])] };
    const another = { ...halfMillimetreFence(15), inspections: [earlier, inspectionOn(DAY, [null, depth(12)])] };
    expect(meanOf(logRates(another))).toBeGreaterThan(meanOf(logRates(again)));
  });

  it('of a post that has been swapped since still speak of the fence, not of the new post', () => {
    const swapped: FenceFacts = {
      ...read(15, [depth(15)]),
      works: [{ ref: 'W', day: '2026-04-01', kind: 'post-swap', posts: [1], wood: halfMillimetreFence(15).wood }],
    };
    const { piecePaces } = beliefOf(swapped).points;
    expect([...piecePaces.keys()]).toEqual(['1']);
    expect(fenceStates(swapped).at(-1)!.state.posts[0]!.piece).toBe('1 by W');
    expect(meanOf(logRates(swapped))).toBeCloseTo(meanOf(logRates(read(15, [depth(15)]))), 12);
  });
});

describe('a post that has been read', () => {
  const facts = read(15, [depth(20), depth(1), depth(1)]);
  const levels = [0.1, 0.5, 0.9];
  const own = (piece: string): readonly number[] =>
    beliefOf(facts)
      .points.piecePaces.get(piece)!
      .logRates(0, 0.5, levels)
      .map((logRate) => decayDepth(15, Math.exp(logRate)));

  it('has its own posterior, near what was read at it', () => {
    const [low, middle, high] = own('1') as [number, number, number];
    expect(middle).toBeGreaterThan(17);
    expect(middle).toBeLessThan(20);
    expect(high - low).toBeLessThan(6);
    expect(own('2')[1]).toBeLessThan(3);
  });

  it('is never forecast under the depth at which it was read, its posterior at one in ten', () => {
    const pace = beliefOf(facts).points.piecePaces.get('1')!;
    expect(pace.floorMm(0.5)).toBeGreaterThan(14);
    const slow = decayDepth(15, Math.exp(pace.logRates(-3, 0.5, [0.01])[0]!));
    expect(slow).toBeLessThan(pace.floorMm(0.5));
  });

  it('decides for its own place and no other', () => {
    const forecast = forecastFence(facts, 2026, DEFAULT_SETTINGS);
    const season = forecast.seasons.find((each) => each.season === 1)!;
    expect(season.ends!.decidingPosts).not.toContain(2);
    expect(forecast.evidence!.readPosts.map(({ post }) => post)).toEqual([1, 2, 3]);
  });
});

describe('readings that disagree with the model', () => {
  it('are told, and make the pace twice as uncertain', () => {
    const odd = beliefOf(read(15, each(8, depth(34))));
    expect(odd.pace!.surprise).toBeLessThan(0.01);
    expect(odd.pace!.disagrees).toBe(true);
    expect(odd.pace!.byDate[0]!.values[0]).toBe(-10);
    const forecast = forecastFence(read(15, each(8, depth(34))), 2026, DEFAULT_SETTINGS);
    expect(forecast.remarks.join(' ')).toMatch(/readings disagree with the model/);
  });

  it('are not, where they are as forecast', () => {
    const usual = beliefOf(read(15, [depth(3), depth(2), depth(5)]));
    expect(usual.pace!.surprise).toBeGreaterThan(0.3);
    expect(usual.pace!.disagrees).toBe(false);
  });
});

describe('an install date known as a range', () => {
  const facts: FenceFacts = {
    ...halfMillimetreFence(15),
    installed: { earliest: '2001-03-01', latest: '2021-03-01' },
    inspections: [inspectionOn(DAY, each(11, depth(9)))],
  };

  it('is judged by the readings: much rot speaks for an early date', () => {
    const { points } = beliefOf(facts);
    const mean = points.levels['install date'].reduce((sum, level, i) => sum + points.weights![i]! * level, 0);
    expect(mean).toBeLessThan(0.4);
    expect(points.weights!.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
  });

  it('goes with the pace: the later it was built the faster it rots', () => {
    const { points } = beliefOf(facts);
    const paceWhere = (late: boolean): number => {
      const indices = [...points.levels['install date'].keys()].filter(
        (i) => points.levels['install date'][i]! > 0.5 === late,
      );
      return indices.reduce((sum, i) => sum + points.scores.pace[i]!, 0) / indices.length;
    };
    expect(paceWhere(true)).toBeGreaterThan(paceWhere(false) + 0.3);
  });
});

describe('the median of a belief', () => {
  it('is the published one where nothing was seen', () => {
    const { scores } = medianOf(beliefOf(halfMillimetreFence(15)).points);
    expect(Object.values(scores).map(([score]) => score)).toEqual([0, 0, 0, 0, 0, 0, 0]);
  });
});
