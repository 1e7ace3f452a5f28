import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DIMENSIONS, type Dimension, exactInUnit, limitInUnit } from '../../../src/register/csv/quantity-column.ts';

const si = (dimension: Dimension, suffix: string, value: number): number | undefined =>
  dimension.all.find((unit) => unit.suffix === suffix)?.toSi(value);

// Expected values: exact definitions of inch, foot, mile, nautical mile, pound (NIST Handbook 44, Appendix C).
test.each([
  [DIMENSIONS.shortLength, 'in', 24, 0.6096],
  [DIMENSIONS.length, 'ft', 80, 24.384],
  [DIMENSIONS.length, 'mm', 1829, 1.829],
  [DIMENSIONS.thickness, 'in', 3.5, 88.9],
  [DIMENSIONS.rain, 'in', 63, 1600.2],
  [DIMENSIONS.speed, 'mph', 105, 46.9392],
  [DIMENSIONS.speed, 'kmh', 180, 50],
  [DIMENSIONS.speed, 'kt', 90, 46.3],
  [DIMENSIONS.temperature, 'f', 50, 10],
  [DIMENSIONS.retention, 'pcf', 1, 16.0184633739601],
  [DIMENSIONS.moment, 'lbft', 1000, 1355.81794833],
] as const)('%# a column in %s is read as SI', (dimension, suffix, value, expected) => {
  expect(si(dimension, suffix, value)).toBeCloseTo(expected, 8);
});

test('what was typed in a unit is what that unit exports', () => {
  for (const dimension of Object.values(DIMENSIONS)) {
    for (const unit of dimension.all) {
      fc.assert(
        fc.property(fc.integer({ min: -200_000, max: 200_000 }), (hundredths) => {
          const typed = hundredths / 100;
          const written = exactInUnit(unit, unit.toSi(typed));
          expect(written).not.toBeNull();
          expect(unit.toSi(Number(written))).toBe(unit.toSi(typed));
        }),
        { numRuns: 50 },
      );
    }
  }
  expect(exactInUnit(DIMENSIONS.shortLength.us, 1.8288)).toBe('72');
  expect(exactInUnit(DIMENSIONS.shortLength.us, 1.8000000000000003)).toBeNull();
});

test('limits are said to four digits', () => {
  expect(limitInUnit(DIMENSIONS.length.us, 1000)).toBe('3281');
});
