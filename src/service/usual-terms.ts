/** The terms of a plan of money where none are given; the office may ask for others. Source: judgement. */
export const USUAL_TERMS = {
  years: 20,
  /** Rise of prices and what a fund earns [%/a]. */
  inflationPercent: 3,
  interestPercent: 2,
  /** Age at which rails and boards count as worn out [a], and years between inspections [a]. */
  longestServiceYears: 25,
  inspectEveryYears: 5,
  /** What an owner pays of a fence with two owners [%]. */
  sharedPercent: 50,
} as const;
