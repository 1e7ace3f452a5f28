import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { MipSolver } from '../../../src/season/plan/mip-solver.ts';
import { PLAN_LIMITS, type PlanLimits } from '../../../src/season/plan/plan-limits.ts';
import type { PlanProblem } from '../../../src/season/plan/plan-problem.ts';
import { planSeason } from '../../../src/season/plan/plan-season.ts';
import type { SeasonPlan } from '../../../src/season/plan/season-plan.ts';
import { loadPlanSolver } from '../../../src/service/plan-solver.ts';
import { drawnProblem } from './drawn-problem.ts';
import { enumeratedBest } from './enumerated-plan.ts';

const IN_PARTS: PlanLimits = { ...PLAN_LIMITS, wholeUpTo: -1, priceSteps: 60, searchSteps: 600 };
const TINY = { jobs: 4, crews: 2, weeks: 2, sites: 2, options: 2 };
const SMALL = { jobs: 12, crews: 2, weeks: 3, sites: 4, options: 3 };

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadPlanSolver();
});
const planned = (problem: PlanProblem, limits: PlanLimits = PLAN_LIMITS): SeasonPlan =>
  planSeason(problem, { solver, limits, timeIsOver: () => false });
const seeds = fc.integer({ min: 1, max: 1_000_000 });
const bothWays = fc.constantFrom(PLAN_LIMITS, IN_PARTS);
const valuesOf = (plan: SeasonPlan): readonly number[] => plan.stages.map(({ value }) => value);

describe('the season plan on problems small enough to enumerate', () => {
  it('reaches the enumerated best of every stage, and proves it', () => {
    for (let seed = 1; seed <= 150; seed += 1) {
      const problem = drawnProblem(seed, TINY);
      const plan = planned(problem);
      const best = enumeratedBest(problem);
      valuesOf(plan).forEach((value, stage) => {
        expect(value, `seed ${seed}, stage ${stage}`).toBeCloseTo(best[stage]!, 4);
      });
      for (const { gap } of plan.stages) expect(gap, `seed ${seed}`).toBeLessThan(1e-6);
    }
  });

  it('searched in parts, never passes the best, and its bounds never fall below the best that reaches as much', () => {
    for (let seed = 1; seed <= 150; seed += 1) {
      const problem = drawnProblem(seed, TINY);
      const plan = planned(problem, IN_PARTS);
      const best = enumeratedBest(problem);
      const first = plan.stages.findIndex(({ value }, stage) => Math.abs(value - best[stage]!) > 1e-6);
      if (first < 0) continue;
      const { value, bound } = plan.stages[first]!;
      expect(value, `seed ${seed}`).toBeLessThan(best[first]!);
      expect(bound, `seed ${seed}`).toBeGreaterThanOrEqual(best[first]! - 1e-6);
    }
  });
});

describe('the rules of the season plan, over random problems', () => {
  it('are kept: hours with the way, weeks, skills, promises, one option a fence; the value is what the visits say', () => {
    fc.assert(
      fc.property(seeds, bothWays, (seed, limits) => {
        const problem = drawnProblem(seed, SMALL);
        const plan = planned(problem, limits);
        const { weeks, crews, jobs, changePenalty } = problem;
        const used = new Map<string, number>();
        const counts = [0, 0, 0, 0];
        const done = new Map<string, string>();
        let value = 0;
        for (const visit of plan.visits) {
          const crew = crews.find(({ ref }) => ref === visit.crewRef)!;
          const week = weeks.indexOf(visit.week);
          const way = crew.travel.find(({ siteRef }) => siteRef === visit.siteRef)!;
          const slot = `${visit.crewRef} ${visit.week}`;
          let hours = (used.get(slot) ?? 0) + way.personHours;
          value -= way.cost;
          expect(visit.items.length).toBeGreaterThan(0);
          for (const item of visit.items) {
            const job = jobs.find(({ ref }) => ref === item.jobRef)!;
            const option = job.options.find(({ key }) => key === item.optionKey)!;
            expect(job.siteRef).toBe(visit.siteRef);
            expect(option.barsByWeek[week]).toEqual([]);
            if (option.skill !== null) expect(crew.skills).toContain(option.skill);
            if (job.promised) {
              expect(visit.week).toBe(job.promised.week);
              expect(job.promised.crewRef ?? visit.crewRef).toBe(visit.crewRef);
              expect(job.promised.optionKey ?? item.optionKey).toBe(item.optionKey);
              counts[0]! += 1;
            }
            if (job.mustRank > 0 && option.satisfiesMust) counts[job.mustRank]! += 1;
            expect(done.has(job.ref)).toBe(false);
            done.set(job.ref, `${visit.week} ${visit.crewRef} ${item.optionKey}`);
            hours += option.personHours;
            value += option.benefitByWeek[week]!;
          }
          used.set(slot, hours);
          expect(hours).toBeLessThanOrEqual(crew.personHoursByWeek[week]! + 1e-6);
        }
        for (const { ref, previous } of jobs) {
          const changed = previous && done.get(ref) !== `${previous.week} ${previous.crewRef} ${previous.optionKey}`;
          if (changed) value -= changePenalty;
          expect(plan.changedJobRefs.includes(ref)).toBe(Boolean(changed));
        }
        const slots = plan.visits.map(({ crewRef, siteRef, week }) => `${crewRef} ${siteRef} ${week}`);
        expect(new Set(slots).size).toBe(slots.length);
        expect(valuesOf(plan).slice(0, 4)).toEqual(counts);
        expect(valuesOf(plan)[4]).toBeCloseTo(value, 5);
        for (const stage of plan.stages) expect(stage.bound).toBeGreaterThanOrEqual(stage.value);
        expect(plan.brokenPromises.map(({ jobRef }) => jobRef)).toEqual(
          jobs.filter(({ ref, promised }) => promised && !done.has(ref)).map(({ ref }) => ref),
        );
        expect(plan.unserved.map(({ jobRef }) => jobRef)).toEqual(
          jobs.filter(({ ref }) => !done.has(ref)).map(({ ref }) => ref),
        );
      }),
      { numRuns: 60, seed: 4 },
    );
  });

  it('give the same plan however jobs, crews and options are ordered, and on every run', () => {
    fc.assert(
      fc.property(seeds, bothWays, (seed, limits) => {
        const problem = drawnProblem(seed, SMALL);
        const turned = {
          ...problem,
          jobs: problem.jobs.map((job) => ({ ...job, options: [...job.options].reverse() })).reverse(),
          crews: [...problem.crews].reverse(),
        };
        const plan = planned(problem, limits);
        expect(planned(turned, limits)).toEqual(plan);
        expect(planned(problem, limits)).toEqual(plan);
      }),
      { numRuns: 15, seed: 5 },
    );
  });

  it('leave a plan as it is when it is made again from itself', () => {
    fc.assert(
      fc.property(seeds, bothWays, (seed, limits) => {
        const problem = drawnProblem(seed, SMALL);
        const before = planned(problem, limits);
        const jobs = problem.jobs.map((job) => {
          const visit = before.visits.find(({ items }) => items.some(({ jobRef }) => jobRef === job.ref));
          const item = visit?.items.find(({ jobRef }) => jobRef === job.ref);
          return {
            ...job,
            previous: visit && item ? { week: visit.week, crewRef: visit.crewRef, optionKey: item.optionKey } : null,
          };
        });
        const again = planned({ ...problem, jobs }, limits);
        expect(again.changedJobRefs).toEqual([]);
        expect(again.visits).toEqual(before.visits);
      }),
      { numRuns: 40, seed: 6 },
    );
  });

  it('say "no crew hours" only where more hours would have changed the plan for the better', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = drawnProblem(seed, { ...SMALL, jobs: 8 });
        const plan = planned(problem);
        const roomy = {
          ...problem,
          crews: problem.crews.map((crew) => ({
            ...crew,
            personHoursByWeek: crew.personHoursByWeek.map((hours) => hours + 1000),
          })),
        };
        if (!plan.unserved.some(({ reason }) => reason === 'no-crew-hours')) return;
        const [now, then] = [valuesOf(plan), valuesOf(planned(roomy))];
        const first = now.findIndex((value, stage) => Math.abs(value - then[stage]!) > 1e-6);
        expect(first).toBeGreaterThanOrEqual(0);
        expect(then[first]!).toBeGreaterThan(now[first]!);
      }),
      { numRuns: 40, seed: 7 },
    );
  });
});

describe('the limits of the season plan', () => {
  it('time that is over from the start still gives a sound plan and says so', () => {
    for (const limits of [PLAN_LIMITS, IN_PARTS]) {
      const plan = planSeason(drawnProblem(3, SMALL), { solver, limits, timeIsOver: () => true });
      expect(plan.safetyTimeStruck).toBe(true);
      for (const { bound, value } of plan.stages) expect(bound).toBeGreaterThanOrEqual(value);
    }
  });
});
