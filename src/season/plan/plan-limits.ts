import type { Schedule } from './schedule.ts';
import type { SeasonPlan } from './season-plan.ts';

/** Where the search stops: counts alone, so that the same problem always gives the same plan. */
export interface PlanLimits {
  /** Up to so many candidates (option, crew and week) one problem holds the whole plan. */
  readonly wholeUpTo: number;
  /** Nodes and simplex iterations of one solve. */
  readonly maxNodes: number;
  readonly maxIterations: number;
  /** Steps of the bound's prices, a stage. */
  readonly priceSteps: number;
  /** Steps of the second bound on the benefit. */
  readonly slotSteps: number;
  /** Steps of the search in parts. */
  readonly searchSteps: number;
}

/** Limits that plan 2,000 fences, four crews and twenty weeks in about a minute. */
export const PLAN_LIMITS: PlanLimits = {
  wholeUpTo: 1500,
  maxNodes: 20_000,
  maxIterations: 400_000,
  priceSteps: 260,
  slotSteps: 40,
  searchSteps: 500_000,
};

/** What a way of planning found. */
export interface PlanFound {
  readonly schedule: Schedule;
  /** By stage, no plan that reaches the stages before does better. */
  readonly bounds: readonly number[];
  readonly counts: SeasonPlan['counts'];
}
