import { describe, expect, it } from 'vitest';
import { decayDepth } from '../../../src/decay/decay-depth.ts';
import type { DepthSeen } from '../../../src/forecast/evidence/depth-likelihood.ts';
import { pieceLikelihood, type TimedReading } from '../../../src/forecast/evidence/piece-likelihood.ts';

/** ln r from -2 to 1 in steps of 0.1. */
const GRID = Float64Array.from({ length: 31 }, (_, i) => -2 + i / 10);
const YEARS = 15;
const depthAt = (logRate: number): number => decayDepth(YEARS, Math.exp(logRate));
const at = (seen: DepthSeen): TimedReading => ({ seen, exposureYears: YEARS });
/** ln likelihood at each grid value. */
const logsOf = (...readings: readonly TimedReading[]): Float64Array => {
  const { relative, logHighest } = pieceLikelihood(readings, GRID);
  return relative.map((each) => Math.log(each) + logHighest);
};
const FLOOR = Math.log(1e-8);

describe('a measured depth', () => {
  it('is a normal density about the depth that a pace makes, down to one in 1e8', () => {
    const depthMm = depthAt(-0.5);
    const logs = logsOf(at({ kind: 'measured', depthMm, errorMm: 2 }));
    for (const [j, logRate] of GRID.entries()) {
      expect(logs[j]).toBeCloseTo(Math.max(FLOOR, -(((depthMm - depthAt(logRate)) / 2) ** 2) / 2), 9);
    }
    expect(logs[15]).toBeCloseTo(0, 12);
    expect(logs[30]).toBeCloseTo(FLOOR, 12);
  });

  it('is judged at the exposure at which it was taken', () => {
    const later = { seen: { kind: 'measured', depthMm: decayDepth(30, Math.exp(-1)), errorMm: 1 }, exposureYears: 30 };
    const { relative } = pieceLikelihood([later as TimedReading], GRID);
    expect(relative[10]).toBeCloseTo(1, 9);
  });
});

describe('a bound', () => {
  // 0.26 of a step above the value of index 12: of the cell around it 0.76 lies under the bound
  const bound = depthAt(GRID[12]! + 0.026);

  it('"sound to" leaves the paces under it, and of the cell in which it lies the part under it', () => {
    const logs = logsOf(at({ kind: 'below', depthMm: bound }));
    for (let j = 0; j < 12; j += 1) expect(logs[j]).toBeCloseTo(0, 12);
    expect(logs[12]).toBeCloseTo(Math.log(0.76), 6);
    for (let j = 13; j < 31; j += 1) expect(logs[j]).toBeCloseTo(FLOOR, 9);
  });

  it('"soft to" leaves what the other rules out', () => {
    const logs = logsOf(at({ kind: 'above', depthMm: bound }));
    for (let j = 0; j < 12; j += 1) expect(logs[j]).toBeCloseTo(FLOOR, 9);
    expect(logs[12]).toBeCloseTo(Math.log(0.24), 6);
    for (let j = 13; j < 31; j += 1) expect(logs[j]).toBeCloseTo(0, 12);
  });
});

describe('several readings of one piece', () => {
  it('are independent given the pace: their ln likelihoods add', () => {
    const one = at({ kind: 'measured', depthMm: 4, errorMm: 2 });
    const other = at({ kind: 'measured', depthMm: 7, errorMm: 1.5 });
    const [a, b, both] = [logsOf(one), logsOf(other), logsOf(one, other)];
    for (const j of GRID.keys()) expect(both[j]).toBeCloseTo(a[j]! + b[j]!, 9);
  });

  it('are given over their highest, with the ln of that', () => {
    // 9 mm and 1 mm, both with an error of 2 mm: at the best pace both are 4 mm off, exp(-2) each
    const { relative, logHighest } = pieceLikelihood(
      [at({ kind: 'measured', depthMm: 9, errorMm: 2 }), at({ kind: 'measured', depthMm: 1, errorMm: 2 })],
      Float64Array.from({ length: 3001 }, (_, i) => -2 + i / 1000),
    );
    expect(Math.max(...relative)).toBe(1);
    expect(logHighest).toBeCloseTo(-4, 4);
  });

  it('are nothing to go by where there are none', () => {
    const { relative, logHighest } = pieceLikelihood([], GRID);
    expect([...relative]).toEqual(new Array(31).fill(1));
    expect(logHighest).toBe(0);
  });

  it('stay in the range of numbers where more than forty of them contradict each other', () => {
    // 60 of each: the worst place carries 60 ln 1e-8 less than the best or more, far under the least number there is
    const half = (depthMm: number): TimedReading[] =>
      Array.from({ length: 60 }, () => at({ kind: 'measured', depthMm, errorMm: 2 }));
    const { relative, logHighest } = pieceLikelihood([...half(2), ...half(9)], GRID);
    const best = Math.max(
      ...GRID.map((logRate) =>
        [2, 9].reduce((sum, seen) => sum + Math.max(FLOOR, -(((seen - depthAt(logRate)) / 2) ** 2) / 2), 0),
      ),
    );
    expect(logHighest).toBeCloseTo(60 * best, 8);
    expect(logHighest).toBeLessThan(-150);
    expect(Math.max(...relative)).toBe(1);
    expect(relative.every((each) => Number.isFinite(each))).toBe(true);
  });
});
