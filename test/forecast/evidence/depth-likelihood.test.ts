import { describe, expect, it } from 'vitest';
import type { PostSection } from '../../../src/capacity/post-section.ts';
import { depthLikelihood, depthSeen } from '../../../src/forecast/evidence/depth-likelihood.ts';

const SQUARE: PostSection = { kind: 'rectangular', widthMm: 90, depthMm: 140 };
const ROUND: PostSection = { kind: 'round', diameterMm: 120 };

describe('what a reading says of the depth', () => {
  it('is the depth itself with the error of the method', () => {
    expect(depthSeen({ kind: 'depth', depthMm: 7 }, SQUARE, 'awl-or-probe')).toEqual({
      kind: 'measured',
      depthMm: 7,
      errorMm: 2,
    });
    expect(depthSeen({ kind: 'depth', depthMm: 7 }, ROUND, 'drill-resistance')).toEqual({
      kind: 'measured',
      depthMm: 7,
      errorMm: 1.5,
    });
  });

  it('is half of what is gone of a width, for half its error', () => {
    // (90 - 76) / 2 and (120 - 110) / 2
    expect(depthSeen({ kind: 'residual-width', widthMm: 76 }, SQUARE, 'caliper')).toEqual({
      kind: 'measured',
      depthMm: 7,
      errorMm: 1,
    });
    expect(depthSeen({ kind: 'residual-width', widthMm: 110 }, ROUND, 'caliper')).toEqual({
      kind: 'measured',
      depthMm: 5,
      errorMm: 1,
    });
  });

  it('is an eighth of what is gone of the girth of a rectangle', () => {
    // girth 2 (90 + 140) = 460; 3 mm off each face leave 84 x 134: 436
    expect(depthSeen({ kind: 'residual-circumference', circumferenceMm: 436 }, SQUARE, 'circumference-tape')).toEqual({
      kind: 'measured',
      depthMm: 3,
      errorMm: 1.25,
    });
  });

  it('is what is gone of the girth of a round over 2 pi', () => {
    // 4 mm all round leave a diameter of 112
    const seen = depthSeen(
      { kind: 'residual-circumference', circumferenceMm: 112 * Math.PI },
      ROUND,
      'circumference-tape',
    );
    if (seen.kind !== 'measured') expect.unreachable();
    expect(seen.depthMm).toBeCloseTo(4, 12);
    expect(seen.errorMm).toBeCloseTo(1.59155, 5);
  });

  it('is a bound where no rot was found down to a depth, or where it was soft at least so far', () => {
    expect(depthSeen({ kind: 'sound-to', depthMm: 2 }, SQUARE, 'awl-or-probe')).toEqual({ kind: 'below', depthMm: 2 });
    expect(depthSeen({ kind: 'soft-to', depthMm: 25 }, SQUARE, 'awl-or-probe')).toEqual({ kind: 'above', depthMm: 25 });
  });

  it('is a bound at which a twentieth of the section modulus is left where the post is broken', () => {
    const seen = depthSeen({ kind: 'broken' }, ROUND, 'eye');
    expect(seen.kind).toBe('above');
    // 120/2 (1 - 0.05^(1/3))
    expect(seen.depthMm).toBeCloseTo(37.89581, 4);
  });
});

describe('the likelihood of a reading', () => {
  it('is exp(-1/2) at one error off, either way, and 1 where it fits', () => {
    const seen = { kind: 'measured', depthMm: 8, errorMm: 2 } as const;
    expect(depthLikelihood(seen, 8)).toBe(1);
    expect(depthLikelihood(seen, 10)).toBeCloseTo(0.60653, 5);
    expect(depthLikelihood(seen, 6)).toBeCloseTo(0.60653, 5);
    expect(depthLikelihood(seen, 12)).toBeCloseTo(0.13534, 5);
  });

  it('is 0 or 1 at a bound: the bound itself is not sound any more', () => {
    expect([1.9, 2, 2.1].map((depth) => depthLikelihood({ kind: 'below', depthMm: 2 }, depth))).toEqual([1, 0, 0]);
    expect([1.9, 2, 2.1].map((depth) => depthLikelihood({ kind: 'above', depthMm: 2 }, depth))).toEqual([0, 1, 1]);
  });
});
