import { checkProblem } from './check-problem.ts';
import { BENEFIT_STAGE, compileProblem, STAGES } from './compiled-problem.ts';
import type { MipSolver } from './mip-solver.ts';
import { planInParts } from './plan-in-parts.ts';
import type { PlanLimits } from './plan-limits.ts';
import type { PlanProblem } from './plan-problem.ts';
import { planWhole } from './plan-whole.ts';
import { reportPlan } from './report-plan.ts';
import type { SeasonPlan } from './season-plan.ts';

/** What a plan is made with. */
export interface PlanTools {
  readonly solver: MipSolver;
  readonly limits: PlanLimits;
  /** True once the safety time is over; the plan is then what was found so far, and says so. */
  readonly timeIsOver: () => boolean;
}

/**
 * The season plan: which works, which week, which crew. First as many promised dates as can be kept, then as many fences
 * of must rank 1, then 2, then 3, then the most benefit less ways and change penalties. A small problem is solved whole; a
 * large one is searched in parts and held against a relaxation of the whole. Throws RangeError where the problem
 * contradicts itself.
 */
export function planSeason(problem: PlanProblem, { solver, limits, timeIsOver }: PlanTools): SeasonPlan {
  checkProblem(problem);
  const compiled = compileProblem(problem);
  let struck = false;
  const stopNow = (): boolean => {
    struck ||= timeIsOver();
    return struck;
  };
  const whole = compiled.candidates.length <= limits.wholeUpTo;
  const found = whole ? planWhole(compiled, { solver, limits, stopNow }) : planInParts(compiled, { limits, stopNow });
  const score = found.schedule.score();
  const stages = STAGES.map((stage, index) => {
    const value = score[index]!;
    const bound = Math.max(value, found.bounds[index]!);
    const isEqual = index < BENEFIT_STAGE ? bound === value : bound - value <= 1e-6 * Math.max(1, Math.abs(value));
    return { stage, value, bound, gap: isEqual ? 0 : (bound - value) / Math.abs(bound) };
  });
  return {
    ...reportPlan(found.schedule),
    stages,
    method: whole ? 'whole' : 'in-parts',
    counts: found.counts,
    safetyTimeStruck: struck,
  };
}
