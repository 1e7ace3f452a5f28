import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FenceLikelihood, poolFences, poolOffsets } from '../../src/forecast/evidence/register-pool.ts';
import { normals } from '../forecast/evidence/made-up-register.ts';

const TAU = 0.6;

/** A fence whose offset was seen with a normal error. */
const seen = (ref: string, offset: number, error: number): FenceLikelihood => ({
  ref,
  logLikelihoods: poolOffsets(TAU).map((value) => -(((value - offset) / error) ** 2) / 2),
});

describe('pooling many fences', () => {
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

  it('agrees with the closed form where the own spread is near enough known', () => {
    // with errors far above the own spread, that one hardly matters: a normal mean with known variance
    const error = 3;
    const fences = Array.from({ length: 50 }, (_, i) => seen(`F${i}`, 0.4, error));
    const shared = TAU ** 2 / 2;
    const each = error ** 2 + TAU ** 2 / 2;
    const found = poolFences(fences, TAU);
    expect(found.logShift).toBeCloseTo((0.4 * shared) / (shared + each / 50), 2);
  });

  it('covers the true shift in about nine of ten made-up registers', () => {
    const next = normals(31);
    const registers = 20;
    let covered = 0;
    for (let register = 0; register < registers; register += 1) {
      const shift = (TAU / Math.SQRT2) * next();
      const own = (TAU / Math.SQRT2) * Math.exp(0.4 * next() - 0.16);
      const fences = Array.from({ length: 3 }, (_, i) => seen(`F${i}`, shift + own * next() + 0.2 * next(), 0.2));
      const { low, high } = poolFences(fences, TAU);
      if (low <= shift && shift <= high) covered += 1;
    }
    // 18 expected, standard deviation 1.3; 200 registers with readings are played through among the calibrations
    expect(covered).toBeGreaterThanOrEqual(15);
    expect(covered).toBeLessThan(registers);
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
});
