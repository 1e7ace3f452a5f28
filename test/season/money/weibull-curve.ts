import type { SurvivalCurve } from '../../../src/season/money/survival-curve.ts';

/** Lifetimes of the Weibull law, R(t) = exp(-(t / scale)^shape). */
export interface WeibullLife {
  readonly shape: number;
  readonly scaleYears: number;
}

/** The survival curve of such lifetimes, in fine steps out to where next to none is left. */
export const weibullCurve = ({ shape, scaleYears }: WeibullLife, stepYears: number, years: number): SurvivalCurve => ({
  standing: Array.from({ length: Math.round(years / stepYears) + 1 }, (_, step) =>
    Math.exp(-(((step * stepYears) / scaleYears) ** shape)),
  ),
  stepYears,
});
