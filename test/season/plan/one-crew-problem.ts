import type { PlanCrew, PlanJob, PlanOption, PlanProblem } from '../../../src/season/plan/plan-problem.ts';

/** Weeks of the small problems below. */
export const WEEKS = ['2027-03-01', '2027-03-08'] as const;

/** Works of five hours that are worth 100 in the first week and 90 in the second, and may be done in both. */
export const option = (parts: Partial<PlanOption> = {}): PlanOption => ({
  key: 'swap',
  personHours: 5,
  cost: 80,
  benefitByWeek: [100, 90],
  barsByWeek: [[], []],
  skill: null,
  satisfiesMust: true,
  note: null,
  ...parts,
});

/** A fence at site S with the works above. */
export const job = (parts: Partial<PlanJob> = {}): PlanJob => ({
  ref: 'A',
  siteRef: 'S',
  region: '',
  mustRank: 0,
  promised: null,
  previous: null,
  options: [option()],
  ...parts,
});

/** A crew with ten hours a week, whose way to site S takes one hour and costs 20. */
export const crew = (parts: Partial<PlanCrew> = {}): PlanCrew => ({
  ref: 'c',
  personHoursByWeek: [10, 10],
  skills: [],
  languages: [],
  travel: [{ siteRef: 'S', personHours: 1, cost: 20 }],
  ...parts,
});

/** One crew, two weeks, one fence. */
export const problem = (parts: Partial<PlanProblem> = {}): PlanProblem => ({
  weeks: WEEKS,
  crews: [crew()],
  jobs: [job()],
  changePenalty: 40,
  ...parts,
});
