import { BENEFIT_STAGE, type CompiledProblem } from './compiled-problem.ts';
import { completePlan, firstPlan } from './first-plan.ts';
import type { MipSolver } from './mip-solver.ts';
import type { PlanFound, PlanLimits } from './plan-limits.ts';
import { planMip } from './plan-mip.ts';
import { compareScores, makeSchedule } from './schedule.ts';

/** What the whole plan is solved with. */
export interface WholeTools {
  readonly solver: MipSolver;
  readonly limits: PlanLimits;
  readonly stopNow: () => boolean;
}

/**
 * Solves the whole plan stage by stage, each as one mixed-integer problem that keeps what the stages before have reached.
 * The plan before stays where nothing is better than it.
 */
export function planWhole(compiled: CompiledProblem, { solver, limits, stopNow }: WholeTools): PlanFound {
  const first = firstPlan(compiled, new Float64Array(compiled.slotCount));
  let schedule = first;
  let [solves, nodes, iterations] = [0, 0, 0];
  const bounds: number[] = [];
  for (let stage = 0; stage <= BENEFIT_STAGE; stage += 1) {
    const value = schedule.score()[stage]!;
    if (stage < BENEFIT_STAGE && value === compiled.countable[stage]) {
      bounds.push(value);
      continue;
    }
    const mip = planMip({ schedule, offered: compiled.candidates, stage });
    const solved = solver.solve(mip.model, limits, stopNow);
    solves += 1;
    nodes += solved.nodes;
    iterations += solved.iterations;
    if (solved.values !== null) {
      const next = makeSchedule(compiled, mip.read(solved.values));
      if (compareScores(next.score().slice(0, stage + 1), schedule.score().slice(0, stage + 1)) > 0) schedule = next;
    }
    bounds.push(
      stage < BENEFIT_STAGE
        ? Math.min(compiled.countable[stage]!, Math.floor(solved.bound + 1e-6))
        : solved.bound + compiled.baseValue,
    );
  }
  schedule = completePlan(schedule);
  if (compareScores(schedule.score(), first.score()) <= 0) schedule = first;
  return { schedule, bounds, counts: { solves, nodes, iterations, steps: 0 } };
}
