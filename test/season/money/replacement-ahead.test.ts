import fc from 'fast-check';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { ageReplacement } from '../../../src/season/money/age-replacement.ts';
import { replacementAhead, survivalGivenAge } from '../../../src/season/money/replacement-ahead.ts';
import { survivalFromRisks } from '../../../src/season/money/survival-curve.ts';
import { drawnEvenly } from '../../drawn-evenly.ts';
import { simulatedLives } from './simulated-lives.ts';
import { weibullCurve } from './weibull-curve.ts';

describe('replacement of a fence that stands', () => {
  const ahead = survivalFromRisks([0.1, 0.2, 0.5]);
  const costs = { plannedCost: 5, failureCost: 10 };

  it('is worked out by hand on three seasons', () => {
    const found = replacementAhead(ahead, costs, 1.5);
    expect(found.advice).toEqual({ kind: 'in N years', seasons: 2, years: 2 });
    for (const [index, excess] of [1.24, 0.315, 0, 0.99].entries())
      expect(found.excessBySeason[index]).toBeCloseTo(excess, 10);
    expect(found.excessBySeason).toHaveLength(4);
    expect(found.excessToFailure).toBeCloseTo(1.98, 10);
    expect(found.keepingCostPerYear).toBeCloseTo(0.5 / 0.95, 10);
    expect(replacementAhead({ ...ahead, stepYears: 0.5 }, costs, 3).advice).toEqual({
      kind: 'in N years',
      seasons: 2,
      years: 1,
    });
  });

  it('is due now where keeping it costs more than the long run, and never where little is lost by its failing', () => {
    expect(replacementAhead(ahead, costs, 0.5).advice).toEqual({ kind: 'replace now' });
    expect(replacementAhead(ahead, costs, 10).advice).toEqual({ kind: 'run to failure', latest: null });
    expect(replacementAhead(ahead, { plannedCost: 5, failureCost: 5 }, 0.01).advice).toEqual({
      kind: 'run to failure',
      latest: null,
    });
  });

  it('ends with its longest service', () => {
    const never = { plannedCost: 5, failureCost: 5 };
    expect(replacementAhead(ahead, never, 0.01, 2).advice).toEqual({
      kind: 'run to failure',
      latest: { seasons: 2, years: 2 },
    });
    // Its best time lies before the end: the end changes nothing.
    expect(replacementAhead(ahead, costs, 1.5, 3).advice).toEqual({ kind: 'in N years', seasons: 2, years: 2 });
    expect(replacementAhead(ahead, costs, 1.5, 1)).toMatchObject({
      advice: { kind: 'run to failure', latest: { seasons: 1, years: 1 } },
    });
    expect(replacementAhead(ahead, costs, 1.5, 0).advice).toEqual({ kind: 'replace now' });
    expect(replacementAhead(ahead, never, 0.01, 40).advice).toEqual({
      kind: 'run to failure',
      latest: { seasons: 3, years: 3 },
    });
    expect(() => replacementAhead(ahead, costs, 1.5, -1)).toThrow(
      /longest service of -1 seasons ahead; give 0 or more/,
    );
  });

  it('takes the latest of times that cost the same', () => {
    // 1 - 1 after one season, (0.5 + 2.5 x 0.5) - 1.75 after two.
    const found = replacementAhead(survivalFromRisks([0, 0.5, 1]), { plannedCost: 1, failureCost: 2.5 }, 1);
    expect(found.advice).toEqual({ kind: 'in N years', seasons: 2, years: 2 });
    expect(found.excessBySeason).toEqual([1, 0, 0, 0.5]);
  });

  it('waits for ever for a fence that may stand for ever', () => {
    const sound = survivalFromRisks([0.1, 0]);
    const found = replacementAhead(sound, costs, 1);
    expect(found.advice).toEqual({ kind: 'run to failure', latest: null });
    expect(found.excessToFailure).toBe(0);
    expect(found.excessBySeason).toEqual([Infinity, Infinity, Infinity]);
    // Where what follows costs nothing a year, a chance of failing is not worth taking.
    expect(replacementAhead(sound, costs, 0).advice).toEqual({ kind: 'replace now' });
    expect(replacementAhead(sound, costs, 0).excessToFailure).toBeCloseTo(0.5, 12);
    expect(replacementAhead(survivalFromRisks([0]), costs, 0).advice).toEqual({ kind: 'run to failure', latest: null });
  });

  it('sees past one bad season to the good ones behind it', () => {
    const found = replacementAhead(survivalFromRisks([0.3, 0, 0, 0, 0, 0, 0.9]), costs, 2);
    expect(found.keepingCostPerYear).toBeGreaterThan(1.7);
    expect(found.advice).toEqual({ kind: 'in N years', seasons: 6, years: 6 });
  });

  it('refuses a long-run cost and costs that are none', () => {
    expect(() => replacementAhead(ahead, costs, -1)).toThrow(/long-run cost of -1/);
    expect(() => replacementAhead(ahead, costs, Infinity)).toThrow(RangeError);
    expect(() => replacementAhead(ahead, { plannedCost: -5, failureCost: 1 }, 1)).toThrow(/planned cost of -5/);
  });

  it('is the years left to the long-run age, where the fence is of the kind that follows it', () => {
    fc.assert(
      fc.property(
        fc.array(drawnEvenly(0, 0.6), { minLength: 2, maxLength: 25 }),
        drawnEvenly(1.5, 30),
        fc.nat({ max: 24 }),
        (risks, failureCost, age) => {
          const curve = survivalFromRisks(risks);
          const long = ageReplacement(curve, { plannedCost: 1, failureCost });
          fc.pre(age < risks.length && (long.bestSeasons === null || age <= long.bestSeasons));
          // a kind that may stand for ever costs nothing a year whatever it once costs, so no age of it is the cheapest
          fc.pre(long.costPerYear > 0);
          const found = replacementAhead(
            survivalGivenAge(curve, age),
            { plannedCost: 1, failureCost },
            long.costPerYear,
          );
          const stays =
            long.bestSeasons === null ? found.excessToFailure : found.excessBySeason[long.bestSeasons - age]!;
          // To rounding: ages may tie.
          expect(stays).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it('follows the marginal rule where the risk only rises', () => {
    fc.assert(
      fc.property(
        fc.array(drawnEvenly(0.01, 0.95), { minLength: 3, maxLength: 20 }),
        drawnEvenly(0.05, 4),
        drawnEvenly(1.5, 8),
        (drawn, g, failureCost) => {
          const risks = drawn.toSorted((a, b) => a - b);
          const found = replacementAhead(survivalFromRisks(risks), { plannedCost: 1, failureCost }, g);
          const keeping = risks.map((risk) => ((failureCost - 1) * risk) / (1 - risk / 2));
          const due = keeping.findIndex((cost) => cost > g);
          const seasons =
            found.advice.kind === 'in N years' ? found.advice.seasons : found.advice.kind === 'replace now' ? 0 : -1;
          expect(seasons).toBe(due);
          expect(found.keepingCostPerYear).toBeCloseTo(keeping[0]!, 9);
        },
      ),
    );
  });

  it('lies where lives that were drawn put it', () => {
    const life = { shape: 3, scaleYears: 16 };
    const drawnCosts = { plannedCost: 1, failureCost: 4 };
    const curve = weibullCurve(life, 0.25, 80);
    const long = ageReplacement(curve, drawnCosts);
    const presentAge = 4;
    const found = replacementAhead(survivalGivenAge(curve, presentAge * 4), drawnCosts, long.costPerYear);
    const count = 200_000;
    const relative = (lives: Float64Array, afterYears: number, g: number): number => {
      let sum = 0;
      for (const lived of lives)
        sum += (lived < afterYears ? drawnCosts.failureCost : drawnCosts.plannedCost) - g * Math.min(lived, afterYears);
      return sum / lives.length;
    };
    // The long-run cost too is counted: the rate at which new fences replaced at their best age cost no more than that.
    const fresh = simulatedLives(life, count, xoroshiro128plus(99));
    expect(Math.abs(relative(fresh, long.bestAgeYears!, long.costPerYear))).toBeLessThan(0.02);
    const left = simulatedLives(life, count, xoroshiro128plus(7), presentAge).map((lived) => lived - presentAge);
    const after = Array.from({ length: 60 }, (_, index) => index * 0.25);
    const drawn = after.map((years) => relative(left, years, long.costPerYear));
    const least = Math.min(...drawn);
    expect(found.advice.kind).toBe('in N years');
    const years = found.advice.kind === 'in N years' ? found.advice.years : Number.NaN;
    expect(years).toBeCloseTo(long.bestAgeYears! - presentAge, 9);
    expect(Math.abs(after[drawn.indexOf(least)]! - years)).toBeLessThan(0.8);
    for (const index of [0, 8, 40]) {
      expect(drawn[index]! - least).toBeCloseTo(found.excessBySeason[index]!, 1);
      expect(found.excessBySeason[index]).toBeGreaterThan(0.1);
    }
  });
});

describe('survival given an age', () => {
  it('starts at 1 and keeps the ratios', () => {
    const curve = survivalFromRisks([0, 0.5, 0.5, 1]);
    expect(survivalGivenAge(curve, 2)).toEqual({ standing: [1, 0.5, 0], stepYears: 1 });
    expect(survivalGivenAge(curve, 0)).toEqual(curve);
  });

  it('is refused where the curve has no season left, none stands, or the age is no whole number', () => {
    const curve = survivalFromRisks([0.5, 1, 0.5]);
    expect(() => survivalGivenAge(curve, 3)).toThrow(/age of 3 seasons on a curve of 3/);
    expect(() => survivalGivenAge(curve, 2)).toThrow(RangeError);
    expect(() => survivalGivenAge(curve, -1)).toThrow(RangeError);
    expect(() => survivalGivenAge(curve, 0.5)).toThrow(RangeError);
  });
});
