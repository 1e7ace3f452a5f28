import { describe, expect, it } from 'vitest';
import { type FenceLikelihood, poolFences, poolOffsets } from '../../../src/forecast/evidence/register-pool.ts';

const TAU = 0.6;

/** A fence whose offset was seen with a normal error. */
const seen = (ref: string, offset: number, error: number): FenceLikelihood => ({
  ref,
  logLikelihoods: poolOffsets(TAU).map((value) => -(((value - offset) / error) ** 2) / 2),
});

/**
 * The same belief where every fence was seen with a normal error, the fences' own offsets integrated out in closed form:
 * offset ~ N(delta, w^2 + error^2), delta ~ N(0, tau^2 / 2), ln w ~ N(ln (tau / sqrt 2) - 0.16, 0.4), so that the mean of w^2 is
 * tau^2 / 2.
 */
function integrated(rows: readonly (readonly [number, number])[]) {
  const shifts = Array.from({ length: 1201 }, (_, i) => (i - 600) / 300);
  let [total, mean, square, own] = [0, 0, 0, 0];
  const weights = shifts.map((shift) => {
    let weight = 0;
    for (let score = -4; score <= 4; score += 0.1) {
      const w = (TAU / Math.SQRT2) * Math.exp(0.4 * score - 0.16);
      let log = -(score ** 2) / 2 - shift ** 2 / TAU ** 2;
      for (const [offset, error] of rows) {
        const variance = w * w + error * error;
        log -= (offset - shift) ** 2 / (2 * variance) + Math.log(variance) / 2;
      }
      weight += Math.exp(log);
      own += Math.exp(log) * w * w;
    }
    total += weight;
    mean += weight * shift;
    square += weight * shift * shift;
    return weight;
  });
  const quantile = (level: number): number => {
    let below = 0;
    return shifts.find((_, i) => {
      below += weights[i]!;
      return below >= level * total;
    })!;
  };
  return { mean: mean / total, spread: Math.sqrt(square / total - (mean / total) ** 2 + own / total), quantile };
}

describe('the offsets at which fences are wanted', () => {
  it('are even, from -8 to 8 spreads, twenty a spread', () => {
    const offsets = poolOffsets(0.5);
    expect(offsets).toHaveLength(321);
    expect(offsets[0]).toBeCloseTo(-4, 12);
    expect(offsets[160]).toBe(0);
    expect(offsets[181]).toBeCloseTo((21 / 20) * 0.5, 12);
    expect(offsets[320]).toBeCloseTo(4, 12);
  });
});

describe('pooling the fences of a register', () => {
  it('is the published belief where nothing was seen', () => {
    for (const tau of [0.4, 0.45, 0.6, 0.8]) {
      const none = poolFences([], tau);
      expect(none.logShift).toBeCloseTo(0, 12);
      expect(none.spread).toBeCloseTo(tau, 6);
      expect(none.low).toBeCloseTo(none.published.low, 2);
      expect(none.high).toBeCloseTo(none.published.high, 2);
      expect(none.published).toEqual({ low: -none.published.high, high: none.published.high, spread: tau });
      expect(none.published.high).toBeCloseTo(1.16309 * tau, 4);
    }
  });

  it('is the published belief where what was seen says nothing', () => {
    const flat = { ref: 'A', logLikelihoods: poolOffsets(TAU).map(() => -3) };
    expect(poolFences([flat, { ...flat, ref: 'B' }], TAU)).toEqual({ ...poolFences([], TAU), fences: 2 });
  });

  it('moves a register of one fence by less than half of what that fence shows', () => {
    const one = poolFences([seen('A', Math.log(2), 0.3)], TAU);
    expect(one.logShift).toBeGreaterThan(0.1);
    expect(one.logShift).toBeLessThan(Math.log(2) / 2);
    expect(one.low).toBeLessThan(0);
    expect(one.spread).toBeGreaterThan(0.45);
  });

  it.each([
    ['one fence', [[0.7, 0.3]]],
    [
      'two fences',
      [
        [-0.4, 0.2],
        [0.3, 0.25],
      ],
    ],
    [
      'four fences that agree',
      [
        [0.6, 0.3],
        [0.55, 0.2],
        [0.65, 0.25],
        [0.5, 0.4],
      ],
    ],
  ] as const)('is the posterior integrated by hand: %s', (_, rows) => {
    const hand = integrated(rows);
    const found = poolFences(
      rows.map(([offset, error], i) => seen(`F${i}`, offset, error)),
      TAU,
    );
    expect(found.fences).toBe(rows.length);
    expect(found.logShift).toBeCloseTo(hand.mean, 2.5);
    expect(found.low).toBeCloseTo(hand.quantile(0.05), 1.8);
    expect(found.high).toBeCloseTo(hand.quantile(0.95), 1.8);
    expect(found.spread).toBeCloseTo(hand.spread, 2);
  });

  it('does not depend on the order of the fences, to the last bit', () => {
    const fences = [seen('B', 0.7, 0.2), seen('A', -0.1, 0.3), seen('C', 0.2, 0.15)];
    expect(poolFences([...fences].reverse(), TAU)).toEqual(poolFences(fences, TAU));
  });

  it('is mirrored where everything seen is', () => {
    const fences = [seen('A', 0.7, 0.2), seen('B', 0.1, 0.3)];
    const mirrored = [seen('A', -0.7, 0.2), seen('B', -0.1, 0.3)];
    const [up, down] = [poolFences(fences, TAU), poolFences(mirrored, TAU)];
    expect(down.logShift).toBeCloseTo(-up.logShift, 10);
    expect(down.low).toBeCloseTo(-up.high, 10);
    expect(down.spread).toBeCloseTo(up.spread, 10);
  });

  it('stays finite where fences contradict each other beyond anything the model holds possible', () => {
    const { logShift, low, high, spread } = poolFences([seen('A', -4, 0.01), seen('B', 4, 0.01)], TAU);
    expect(logShift).toBeCloseTo(0, 6);
    for (const value of [low, high, spread]) expect(Number.isFinite(value)).toBe(true);
    expect(spread).toBeGreaterThan(TAU);
  });
});
