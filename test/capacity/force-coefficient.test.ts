import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forceCoefficientA, forceCoefficientC, returnCornerFactor } from '../../src/capacity/force-coefficient.ts';
import { drawnEvenly } from '../drawn-evenly.ts';

const aspects = drawnEvenly(0.01, 200);

describe('Case A', () => {
  it('stays within the table, and keeps its ends beyond it', () => {
    fc.assert(
      fc.property(drawnEvenly(0.01, 1), aspects, (clearance, aspect) => {
        const coefficient = forceCoefficientA(clearance, aspect);
        expect(coefficient).toBeGreaterThanOrEqual(1.3);
        expect(coefficient).toBeLessThanOrEqual(1.95);
      }),
    );
    expect(forceCoefficientA(1, 500)).toBe(forceCoefficientA(1, 45));
    expect(forceCoefficientA(0.01, 1)).toBe(forceCoefficientA(0.16, 1));
  });
});

describe('Case C', () => {
  it('has the values of the figure from each of its steps on', () => {
    const along = (aspect: number, distances: readonly number[]): readonly number[] =>
      distances.map((distance) => forceCoefficientC(0.5, aspect, distance));
    expect(along(45, [0, 1, 2, 3, 4, 5, 10])).toEqual([4.3, 2.55, 1.95, 1.85, 1.85, 1.1, 0.55]);
    expect(along(13, [0.99, 1.99, 2.99, 3.99, 4.99, 9.99, 12])).toEqual([4, 2.6, 2, 1.5, 1.35, 0.9, 0.55]);
    expect(along(3, [0, 1, 2])).toEqual([2.6, 1.7, 1.15]);
  });

  it('does not apply to stubs shorter than twice the height', () => {
    expect(forceCoefficientC(1, 1.99, 0)).toBe(0);
    expect(forceCoefficientC(1, 2, 0)).toBeCloseTo(1.8, 10);
  });

  it('never rises away from the windward edge, up to three heights', () => {
    fc.assert(
      fc.property(drawnEvenly(2, 45), drawnEvenly(0, 3.99), drawnEvenly(0, 3.99), (aspect, a, b) => {
        const near = forceCoefficientC(1, aspect, Math.min(a, b));
        expect(forceCoefficientC(1, aspect, Math.max(a, b))).toBeLessThanOrEqual(near + 1e-12);
      }),
    );
  });

  it('is reduced on the ground and not high above it', () => {
    expect(forceCoefficientC(1, 5, 0) / forceCoefficientC(0.8, 5, 0)).toBeCloseTo(0.8, 10);
    expect(forceCoefficientC(0.5, 5, 0)).toBe(forceCoefficientC(0.8, 5, 0));
  });
});

describe('a return corner', () => {
  it('helps from 0.3 heights, most from two, and only long runs', () => {
    expect(returnCornerFactor(0, 20)).toBe(1);
    expect(returnCornerFactor(0.299, 20)).toBe(1);
    expect(returnCornerFactor(0.3, 20)).toBe(0.9);
    expect(returnCornerFactor(Number.POSITIVE_INFINITY, 20)).toBe(0.6);
    expect(returnCornerFactor(2, 4.99)).toBe(1);
    expect(returnCornerFactor(1, 5)).toBe(0.75);
  });

  it('never helps less when it is longer', () => {
    const ratio = drawnEvenly(0, 10);
    fc.assert(
      fc.property(ratio, ratio, aspects, (a, b, aspect) => {
        expect(returnCornerFactor(Math.max(a, b), aspect)).toBeLessThanOrEqual(
          returnCornerFactor(Math.min(a, b), aspect),
        );
      }),
    );
  });
});
