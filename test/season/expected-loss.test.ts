import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PointRisks } from '../../src/forecast/point-risks.ts';
import { CONSEQUENCES } from '../../src/register/fence-record.ts';
import { discountFactor, expectedLoss, lossTerms } from '../../src/season/expected-loss.ts';
import { EMERGENCY_FACTOR, SNAP_CONSEQUENCES } from '../../src/season/snap-consequence.ts';

/** Risks of so many seasons at two points, the first with weight 0.75. */
const risksOf = (
  seasons: readonly (readonly [number, number])[],
  share = 0.5,
): Pick<PointRisks, 'weights' | 'seasons'> => ({
  weights: Float64Array.of(0.75, 0.25),
  seasons: seasons.map((chances, index) => ({
    label: String(2026 + index),
    season: index + 1,
    day: `${2026 + index}-06-01`,
    snapMps: Float64Array.of(40, 30),
    leanMps: Float64Array.of(40, 30),
    endsSnapMps: null,
    seasonBreak: Float64Array.from(chances, (chance) => chance * share),
    yearBreak: Float64Array.from(chances),
  })),
});

describe('expected loss', () => {
  it('is what three years worked by hand come to', () => {
    const loss = expectedLoss(
      risksOf([
        [0.1, 0.4],
        [0.2, 0.5],
        [0.3, 0.6],
      ]),
      { snapLoss: 1000, yearlyDiscountRate: 0.25 },
    )!;
    // This season: 0.75 x 0.05 + 0.25 x 0.2 = 0.0875.
    expect(loss.thisSeason).toBeCloseTo(87.5, 9);
    // Point 1: 0.1 + 0.9 x 0.2 / 1.25 + 0.72 x 0.3 / 1.5625 = 0.38224; point 2: 0.4 + 0.6 x 0.5 / 1.25 + 0.3 x 0.6 / 1.5625 = 0.7552.
    expect([...loss.toHorizonAt].map((each) => Number(each.toFixed(6)))).toEqual([382.24, 755.2]);
    expect(loss.toHorizon).toBeCloseTo(0.75 * 382.24 + 0.25 * 755.2, 9);
  });

  it('agrees with a simulation of fences that stand until they snap', () => {
    const years = [
      [0.1, 0.4],
      [0.2, 0.5],
      [0.3, 0.6],
    ] as const;
    const loss = expectedLoss(risksOf(years), { snapLoss: 1000, yearlyDiscountRate: 0.04 })!;
    let seed = 20_261;
    const uniform = (): number => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed / 2_147_483_647;
    };
    let total = 0;
    const runs = 100_000;
    for (let run = 0; run < runs; run += 1) {
      const point = uniform() < 0.75 ? 0 : 1;
      const year = years.findIndex((chances) => uniform() < chances[point]);
      if (year >= 0) total += 1000 / 1.04 ** year;
    }
    expect(Math.abs(total / runs - loss.toHorizon)).toBeLessThan(6);
  });

  const chance = fc.double({ min: 0, max: 1, noNaN: true });
  const seasons = fc.array(fc.tuple(chance, chance), { minLength: 1, maxLength: 30 });

  it('falls as the future counts less, and never passes one snap', () => {
    fc.assert(
      fc.property(
        seasons,
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        (years, a, b) => {
          const at = (yearlyDiscountRate: number) =>
            expectedLoss(risksOf(years), { snapLoss: 1000, yearlyDiscountRate })!.toHorizon;
          expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)) + 1e-9);
          expect(at(a)).toBeLessThanOrEqual(1000 + 1e-9);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('never rises where the chances of breaking fall', () => {
    fc.assert(
      fc.property(seasons, chance, (years, part) => {
        const terms = { snapLoss: 1000, yearlyDiscountRate: 0.04 };
        const less = years.map(([a, b]): readonly [number, number] => [a * part, b * part]);
        expect(expectedLoss(risksOf(less), terms)!.toHorizon).toBeLessThanOrEqual(
          expectedLoss(risksOf(years), terms)!.toHorizon + 1e-9,
        );
      }),
      { numRuns: 100 },
    );
  });

  it('is not reckoned without a hazard curve', () => {
    const { weights, seasons: years } = risksOf([[0.1, 0.2]]);
    expect(
      expectedLoss(
        { weights, seasons: years.map((each) => ({ ...each, seasonBreak: null, yearBreak: null })) },
        { snapLoss: 1, yearlyDiscountRate: 0 },
      ),
    ).toBeNull();
  });

  it('counts a rebuild in a bad week and what stands behind the fence', () => {
    expect(lossTerms(5000, 'ordinary')).toEqual({ snapLoss: 5000 * EMERGENCY_FACTOR + 500, yearlyDiscountRate: 0.04 });
    expect(lossTerms(5000, 'pool-barrier').snapLoss).toBe(5000 * 1.4 + 12_000);
    for (const { provenance } of Object.values(SNAP_CONSEQUENCES)) expect(provenance.tag).toBe('judgement');
  });

  it('knows every consequence that the register takes, none worth less than the ordinary', () => {
    expect(Object.keys(SNAP_CONSEQUENCES)).toEqual([...CONSEQUENCES]);
    for (const { statedLoss } of Object.values(SNAP_CONSEQUENCES)) {
      expect(statedLoss).toBeGreaterThanOrEqual(SNAP_CONSEQUENCES.ordinary.statedLoss);
    }
  });

  it('discounts by the year', () => {
    expect(discountFactor(0.25, 2)).toBeCloseTo(0.64, 12);
    expect(discountFactor(0.04, 0)).toBe(1);
  });
});
