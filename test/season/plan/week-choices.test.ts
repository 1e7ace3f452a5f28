import { describe, expect, it } from 'vitest';
import { PLAN_LIMITS } from '../../../src/season/plan/plan-limits.ts';
import type { PlanProblem } from '../../../src/season/plan/plan-problem.ts';
import { planSeason } from '../../../src/season/plan/plan-season.ts';
import { type PlacedJob, weekChoices } from '../../../src/season/plan/week-choices.ts';
import { loadPlanSolver } from '../../../src/service/plan-solver.ts';
import { drawnProblem } from './drawn-problem.ts';
import { enumeratedBest } from './enumerated-plan.ts';

const WEEKS = ['2027-02-01', '2027-02-08', '2027-02-15'];
const option = (key: string, personHours: number, benefitByWeek: readonly number[]) => ({
  key,
  personHours,
  cost: 100,
  benefitByWeek,
  barsByWeek: WEEKS.map(() => []),
  skill: null,
  satisfiesMust: true,
  note: null,
});
const job = (ref: string, siteRef: string, options: PlanProblem['jobs'][number]['options']) => ({
  ref,
  siteRef,
  region: 'north',
  mustRank: 0 as const,
  promised: null,
  previous: null,
  options,
});
const crew = (ref: string, hours: readonly number[], travel: PlanProblem['crews'][number]['travel']) => ({
  ref,
  personHoursByWeek: hours,
  skills: [],
  languages: [],
  travel,
});

const PROBLEM: PlanProblem = {
  weeks: WEEKS,
  crews: [
    crew(
      'north',
      [10, 10, 10],
      [
        { siteRef: 'OAK', personHours: 2, cost: 90 },
        { siteRef: 'ELM', personHours: 1, cost: 45 },
      ],
    ),
    crew('south', [10, 3, 10], [{ siteRef: 'OAK', personHours: 1, cost: 30 }]),
  ],
  jobs: [
    job('A', 'OAK', [option('swap', 4, [500, 480, 460])]),
    job('B', 'OAK', [option('swap', 3, [300, 290, 280])]),
    job('C', 'ELM', [option('swap', 5, [200, 190, 180])]),
  ],
  changePenalty: 40,
};
const PLACED: readonly PlacedJob[] = [
  { jobRef: 'A', week: WEEKS[0]!, crewRef: 'north', optionKey: 'swap' },
  { jobRef: 'B', week: WEEKS[1]!, crewRef: 'north', optionKey: 'swap' },
  { jobRef: 'C', week: WEEKS[2]!, crewRef: 'north', optionKey: 'swap' },
];
const at = (choices: ReturnType<typeof weekChoices>, crewRef: string, week: string) =>
  choices.find((each) => each.crewRef === crewRef && each.week === week);

/** What a whole choice of places is worth: written from the rules, not from the planner. Null where a week does not hold it. */
function worthOf({ crews, jobs, weeks }: PlanProblem, places: readonly PlacedJob[]): number | null {
  let worth = 0;
  const ways = new Set<string>();
  const hours = new Map<string, number>();
  for (const { jobRef, week, crewRef, optionKey } of places) {
    const own = jobs.find(({ ref }) => ref === jobRef)!;
    const chosen = own.options.find(({ key }) => key === optionKey)!;
    const slot = `${crewRef} ${week}`;
    worth += chosen.benefitByWeek[weeks.indexOf(week)]!;
    let needed = chosen.personHours;
    if (!ways.has(`${slot} ${own.siteRef}`)) {
      ways.add(`${slot} ${own.siteRef}`);
      const way = crews.find(({ ref }) => ref === crewRef)!.travel.find(({ siteRef }) => siteRef === own.siteRef)!;
      worth -= way.cost;
      needed += way.personHours;
    }
    hours.set(slot, (hours.get(slot) ?? 0) + needed);
    const thereAre = crews.find(({ ref }) => ref === crewRef)!.personHoursByWeek[weeks.indexOf(week)]!;
    if (hours.get(slot)! > thereAre + 1e-9) return null;
  }
  return worth;
}

describe('what it costs to give a fence to another week', () => {
  it('is what it loses by waiting and what the ways come to, one a visit', () => {
    const choices = weekChoices(PROBLEM, PLACED, 'A');
    expect(at(choices, 'north', WEEKS[0]!)).toMatchObject({ isNow: true, cost: 0, hoursLeft: 4 });
    // it joins B at the site: its own way is saved
    expect(at(choices, 'north', WEEKS[1]!)).toMatchObject({
      isNow: false,
      worthLost: 20,
      moreTravelCost: -90,
      cost: -70,
      hoursLeft: 1,
    });
    expect(at(choices, 'south', WEEKS[2]!)).toMatchObject({ worthLost: 40, moreTravelCost: -60, cost: -20 });
  });

  it('takes a shortage too small to write, 0.0 hours, as none, and no larger one', () => {
    const shortBy = (hours: number) => {
      const crews = PROBLEM.crews.map((crew) => ({
        ...crew,
        personHoursByWeek: crew.personHoursByWeek.map((each) => (crew.ref === 'south' ? each + 2 - hours : each)),
      }));
      return at(weekChoices({ ...PROBLEM, crews }, PLACED, 'A'), 'south', WEEKS[1]!)?.hoursLeft;
    };
    expect(shortBy(0.03)).toBe(0);
    expect(shortBy(0.08)).toBeCloseTo(-0.08, 9);
  });

  it('shows weeks that have not the hours, with those they lack, and leaves out crews that do not go there', () => {
    expect(at(weekChoices(PROBLEM, PLACED, 'A'), 'south', WEEKS[1]!)?.hoursLeft).toBe(-2);
    expect(new Set(weekChoices(PROBLEM, PLACED, 'C').map(({ crewRef }) => crewRef))).toEqual(new Set(['north']));
  });

  it('names the rules that forbid a week', () => {
    const swap = { ...option('swap', 4, [500, 480, 460]), barsByWeek: [[], ['cure-time' as const], []] };
    const problem = { ...PROBLEM, jobs: [job('A', 'OAK', [swap]), ...PROBLEM.jobs.slice(1)] };
    expect(at(weekChoices(problem, PLACED, 'A'), 'north', WEEKS[1]!)?.bars).toEqual(['cure-time']);
  });

  it('says what to do where the fence has no place, or other works by now', () => {
    expect(() => weekChoices(PROBLEM, PLACED.slice(1), 'A')).toThrow(/has no place/);
    const other = [{ ...PLACED[0]!, optionKey: 'sleeve' }, ...PLACED.slice(1)];
    expect(() => weekChoices(PROBLEM, other, 'A')).toThrow(/make a new plan/);
  });

  it('agrees with counting the whole plan anew, choice by choice, and never beats the best plan there is', async () => {
    const solver = await loadPlanSolver();
    let counted = 0;
    let full = 0;
    for (let seed = 1; seed <= 25; seed += 1) {
      const drawn = drawnProblem(seed, { jobs: 4, crews: 2, weeks: 3, sites: 2, options: 2 });
      const problem: PlanProblem = {
        ...drawn,
        changePenalty: 0,
        jobs: drawn.jobs.map((each) => ({ ...each, promised: null, previous: null, mustRank: 0 })),
      };
      const plan = planSeason(problem, { solver, limits: PLAN_LIMITS, timeIsOver: () => false });
      const places = plan.visits.flatMap(({ week, crewRef, items }) =>
        items.map(({ jobRef, optionKey }): PlacedJob => ({ jobRef, week, crewRef, optionKey })),
      );
      const before = worthOf(problem, places)!;
      expect(before).toBeCloseTo(enumeratedBest(problem)[4]!, 6);
      for (const { jobRef, optionKey } of places) {
        for (const { week, crewRef, cost, hoursLeft, bars } of weekChoices(problem, places, jobRef)) {
          const moved = places.map((each) => (each.jobRef === jobRef ? { jobRef, week, crewRef, optionKey } : each));
          const after = worthOf(problem, moved);
          expect(after === null, `seed ${seed}, ${jobRef} to ${crewRef} ${week}`).toBe(hoursLeft < 0);
          if (after === null) {
            full += 1;
            continue;
          }
          expect(cost).toBeCloseTo(before - after, 6);
          if (bars.length === 0) expect(cost).toBeGreaterThanOrEqual(-1e-6);
          counted += 1;
        }
      }
    }
    expect(counted).toBeGreaterThan(100);
    expect(full).toBeGreaterThan(20);
  });
});
