import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FenceLikelihood, poolFences, poolOffsets } from '../../../src/forecast/evidence/register-pool.ts';

const TAU = 0.6;

/** A fence whose offset was seen with a normal error. */
const seen = (ref: string, offset: number, error: number): FenceLikelihood => ({
  ref,
  logLikelihoods: poolOffsets(TAU).map((value) => -(((value - offset) / error) ** 2) / 2),
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

  it('finds a shift that many fences share, and how far they lie apart', () => {
    const offsets = Array.from({ length: 60 }, (_, i) => 0.5 + 0.25 * Math.SQRT2 * Math.sin(i * 2.4));
    const found = poolFences(
      offsets.map((offset, i) => seen(`F${i}`, offset, 0.1)),
      TAU,
    );
    expect(found.logShift).toBeCloseTo(0.5, 1);
    expect(found.low).toBeLessThan(0.5);
    expect(found.high).toBeGreaterThan(0.5);
    expect(found.high - found.low).toBeLessThan(0.2);
    expect(found.spread).toBeGreaterThan(0.22);
    expect(found.spread).toBeLessThan(0.32);
  });

  it('moves a register of one fence by less than half of what that fence shows', () => {
    const one = poolFences([seen('A', Math.log(2), 0.3)], TAU);
    expect(one.logShift).toBeGreaterThan(0.1);
    expect(one.logShift).toBeLessThan(Math.log(2) / 2);
    expect(one.low).toBeLessThan(0);
    expect(one.spread).toBeGreaterThan(0.45);
  });

  it('agrees with the closed form where the own spread is near enough known', () => {
    // with errors far above the own spread, that one hardly matters: a normal mean with known variance
    const error = 3;
    const fences = Array.from({ length: 50 }, (_, i) => seen(`F${i}`, 0.4, error));
    const shared = TAU ** 2 / 2;
    const each = error ** 2 + TAU ** 2 / 2;
    const found = poolFences(fences, TAU);
    expect(found.logShift).toBeCloseTo((0.4 * shared) / (shared + each / 50), 2);
  });

  it('does not depend on the order of the fences, to the last bit', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.double({ min: -1.5, max: 1.5, noNaN: true }), fc.double({ min: 0.1, max: 1, noNaN: true })),
          {
            minLength: 2,
            maxLength: 5,
          },
        ),
        (rows) => {
          const fences = rows.map(([offset, error], i) => seen(`F${i}`, offset, error));
          expect(poolFences([...fences].reverse(), TAU)).toEqual(poolFences(fences, TAU));
        },
      ),
      { numRuns: 5 },
    );
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
