// Plans a made-up season and holds the plan against its bound and against two habits. `npx tsx bench/season-plan.ts [seed]`
import { compileProblem } from '../src/season/plan/compiled-problem.ts';
import { PLAN_LIMITS } from '../src/season/plan/plan-limits.ts';
import { planSeason } from '../src/season/plan/plan-season.ts';
import { loadPlanSolver } from '../src/service/plan-solver.ts';
import { madeUpProblem } from '../test/season/plan/made-up-problem.ts';
import { habitualPlan } from './plan-baselines.ts';

const SIZE = { jobs: 2000, crews: 4, weeks: 20, sites: 250 };
const SAFETY_MS = 10 * 60_000;

async function main(): Promise<void> {
  const seed = Number(process.argv[2] ?? 1);
  const solver = await loadPlanSolver();
  const problem = madeUpProblem(SIZE, seed);
  const began = performance.now();
  const cpuBegan = process.cpuUsage();
  const timeIsOver = (): boolean => performance.now() - began > SAFETY_MS;
  const plan = planSeason(problem, { solver, limits: PLAN_LIMITS, timeIsOver });
  const seconds = (performance.now() - began) / 1000;
  const cpu = process.cpuUsage(cpuBegan);
  const cpuSeconds = (cpu.user + cpu.system) / 1e6;
  const compiled = compileProblem(problem);
  console.log(
    `seed ${seed}: ${SIZE.jobs} fences, ${compiled.candidates.length} candidates, ${SIZE.crews} crews, ${SIZE.weeks} weeks, ${compiled.siteRefs.length} sites`,
  );
  console.log(
    `${seconds.toFixed(1)} s (${cpuSeconds.toFixed(1)} s of one core), ${plan.method}, ${plan.counts.steps} steps, ${plan.visits.length} visits, time struck: ${plan.safetyTimeStruck}`,
  );
  for (const { stage, value, bound, gap } of plan.stages)
    console.log(
      `  ${stage.padEnd(9)} value ${value.toFixed(0)}, bound ${bound.toFixed(0)}, gap ${(100 * gap).toFixed(2)} %`,
    );
  const value = plan.stages.at(-1)!.value;
  for (const habit of ['benefit per hour', 'oldest first'] as const) {
    const [promised, first, second, third, benefit] = habitualPlan(compiled, habit).score();
    console.log(
      `  ${habit}: promised ${promised}, musts ${first} ${second} ${third}, benefit ${benefit!.toFixed(0)}; the plan gains ${((100 * (value - benefit!)) / Math.abs(benefit!)).toFixed(1)} %`,
    );
  }
}

await main();
