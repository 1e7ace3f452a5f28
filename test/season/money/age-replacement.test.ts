import fc from 'fast-check';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { ageReplacement } from '../../../src/season/money/age-replacement.ts';
import { survivalFromRisks } from '../../../src/season/money/survival-curve.ts';
import { drawnEvenly } from '../../drawn-evenly.ts';
import { simulatedLives } from './simulated-lives.ts';
import { weibullCurve } from './weibull-curve.ts';

describe('the age of replacement', () => {
  it('is worked out by hand on three seasons', () => {
    const curve = survivalFromRisks([0, 0.5, 1]);
    const cheap = ageReplacement(curve, { plannedCost: 2, failureCost: 10 });
    expect(cheap).toEqual({
      bestSeasons: 1,
      bestAgeYears: 1,
      costPerYear: 2,
      costPerYearBySeason: [2, 6 / 1.75, 5],
      costPerYearToFailure: 5,
      meanServiceYears: 1,
    });
    expect(ageReplacement(curve, { plannedCost: 5, failureCost: 10 })).toMatchObject({
      bestSeasons: 2,
      costPerYear: 7.5 / 1.75,
    });
    expect(ageReplacement({ ...curve, stepYears: 0.5 }, { plannedCost: 5, failureCost: 10 })).toMatchObject({
      bestSeasons: 2,
      bestAgeYears: 1,
      costPerYear: 15 / 1.75,
    });
  });

  it('is the end of its longest service at the latest', () => {
    const curve = survivalFromRisks([0, 0.5, 1]);
    const costs = { plannedCost: 6, failureCost: 7 };
    expect(ageReplacement(curve, costs).bestSeasons).toBeNull();
    expect(ageReplacement(curve, costs).meanServiceYears).toBeCloseTo(2, 12);
    expect(ageReplacement(curve, costs, 2)).toMatchObject({
      bestSeasons: 2,
      meanServiceYears: 1.75,
      costPerYear: 6.5 / 1.75,
    });
    expect(ageReplacement(curve, costs, 2).costPerYearBySeason).toHaveLength(2);
    // One that hardly ever snaps is not credited with centuries.
    const lasting = survivalFromRisks([0.001, 0.001]);
    expect(ageReplacement(lasting, costs).costPerYear).toBeLessThan(0.01);
    expect(ageReplacement(lasting, costs, 2).costPerYear).toBeGreaterThan(3);
    expect(() => ageReplacement(curve, costs, 0)).toThrow(/longest service of 0 seasons; give 1 or more/);
  });

  it('is never, where replacing before it snaps is no cheaper', () => {
    const curve = survivalFromRisks([0, 0.5, 1]);
    expect(ageReplacement(curve, { plannedCost: 6, failureCost: 7 })).toMatchObject({
      bestSeasons: null,
      bestAgeYears: null,
      costPerYear: 3.5,
    });
    expect(ageReplacement(survivalFromRisks([0.1, 0.1]), { plannedCost: 1, failureCost: 50 }).bestSeasons).toBe(null);
    expect(ageReplacement(survivalFromRisks([0]), { plannedCost: 1, failureCost: 50 })).toMatchObject({
      bestSeasons: null,
      costPerYear: 0,
    });
  });

  it('takes the latest of ages that cost the same', () => {
    // 1 / 1 after one season, (0.5 + 2.5 x 0.5) / 1.75 after two.
    expect(ageReplacement(survivalFromRisks([0, 0.5, 1]), { plannedCost: 1, failureCost: 2.5 })).toMatchObject({
      bestSeasons: 2,
      costPerYear: 1,
    });
  });

  it('refuses costs that are none', () => {
    const curve = survivalFromRisks([0.1]);
    expect(() => ageReplacement(curve, { plannedCost: 0, failureCost: 1 })).toThrow(/planned cost of 0/);
    expect(() => ageReplacement(curve, { plannedCost: Infinity, failureCost: 1 })).toThrow(RangeError);
    expect(() => ageReplacement(curve, { plannedCost: 1, failureCost: -1 })).toThrow(/after failure of -1/);
    expect(() => ageReplacement(curve, { plannedCost: 1, failureCost: Number.NaN })).toThrow(RangeError);
  });

  it('is beaten by no other age, within the curve or 400 seasons beyond it', () => {
    const risks = fc.array(drawnEvenly(0, 0.9), { minLength: 1, maxLength: 30 });
    const cost = drawnEvenly(0.1, 100);
    fc.assert(
      fc.property(risks, cost, cost, (given, plannedCost, failureCost) => {
        const best = ageReplacement(survivalFromRisks(given), { plannedCost, failureCost });
        let standing = 1;
        let served = 0;
        for (let season = 0; season < given.length + 400; season += 1) {
          const after = standing * (1 - given[Math.min(season, given.length - 1)]!);
          served += (standing + after) / 2;
          standing = after;
          const costHere = (plannedCost * standing + failureCost * (1 - standing)) / served;
          expect(best.costPerYear).toBeLessThanOrEqual(costHere * (1 + 1e-9));
        }
      }),
    );
  });

  it('never comes later when failing costs more', () => {
    const curve = weibullCurve({ shape: 3, scaleYears: 15 }, 1, 60);
    const ages = [1.2, 2, 4, 8, 16, 32].map(
      (failureCost) => ageReplacement(curve, { plannedCost: 1, failureCost }).bestAgeYears ?? Infinity,
    );
    expect(ages).toEqual([...ages].sort((a, b) => b - a));
    expect(new Set(ages).size).toBeGreaterThan(4);
  });
});

describe('the age of replacement of Weibull lives, against lives that were drawn', () => {
  const cases = [
    { shape: 2.5, scaleYears: 12, failureCost: 5 },
    { shape: 4, scaleYears: 20, failureCost: 3 },
    { shape: 1.6, scaleYears: 15, failureCost: 12 },
  ] as const;

  it.each(cases)('shape $shape, scale $scaleYears years, failure $failureCost times as dear', (life) => {
    const costs = { plannedCost: 1, failureCost: life.failureCost };
    const found = ageReplacement(weibullCurve(life, 0.05, 6 * life.scaleYears), costs);
    const lives = simulatedLives(life, 200_000, xoroshiro128plus(4711));
    // Cost over time of replacing again and again at an age, counted life by life.
    const drawnRate = (ageYears: number): number => {
      let cost = 0;
      let years = 0;
      for (const lived of lives) {
        cost += lived < ageYears ? costs.failureCost : costs.plannedCost;
        years += Math.min(lived, ageYears);
      }
      return cost / years;
    };
    const best = found.bestAgeYears!;
    expect(drawnRate(best) / found.costPerYear).toBeCloseTo(1, 2);
    const grid = Array.from({ length: 60 }, (_, index) => ((index + 1) / 40) * life.scaleYears);
    const rates = grid.map(drawnRate);
    const least = Math.min(...rates);
    // The drawn optimum lies by the computed one, and no age on the grid beats the computed one by more than chance.
    expect(least / drawnRate(best)).toBeGreaterThan(0.997);
    expect(Math.abs(grid[rates.indexOf(least)]! - best) / best).toBeLessThan(0.12);
    expect(rates[0]! / drawnRate(best)).toBeGreaterThan(1.5);
    expect(drawnRate(Infinity) / found.costPerYearToFailure).toBeCloseTo(1, 2);
  });
});
