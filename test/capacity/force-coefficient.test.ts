import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forceCoefficientA, forceCoefficientC, returnCornerFactor } from '../../src/capacity/force-coefficient.ts';

const aspects = fc.double({ min: 0.01, max: 200, noNaN: true });

describe('Case A', () => {
  it('stays within the table, and keeps its ends beyond it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1, noNaN: true }), aspects, (clearance, aspect) => {
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
  it('does not apply to stubs shorter than twice the height', () => {
    expect(forceCoefficientC(1, 1.99, 0)).toBe(0);
    expect(forceCoefficientC(1, 2, 0)).toBeCloseTo(1.8, 10);
  });

  it('never rises away from the windward edge, up to three heights', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 45, noNaN: true }),
        fc.double({ min: 0, max: 3.99, noNaN: true }),
        fc.double({ min: 0, max: 3.99, noNaN: true }),
        (aspect, a, b) => {
          const near = forceCoefficientC(1, aspect, Math.min(a, b));
          expect(forceCoefficientC(1, aspect, Math.max(a, b))).toBeLessThanOrEqual(near + 1e-12);
        },
      ),
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
  });

  it('never helps less when it is longer', () => {
    const ratio = fc.double({ min: 0, max: 10, noNaN: true });
    fc.assert(
      fc.property(ratio, ratio, aspects, (a, b, aspect) => {
        expect(returnCornerFactor(Math.max(a, b), aspect)).toBeLessThanOrEqual(
          returnCornerFactor(Math.min(a, b), aspect),
        );
      }),
    );
  });
});
