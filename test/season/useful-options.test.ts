import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlanJob, PlanOption } from '../../src/season/plan/plan-problem.ts';
import { usefulOptions } from '../../src/season/useful-options.ts';
import { drawnProblem } from './plan/drawn-problem.ts';
import { enumeratedBest } from './plan/enumerated-plan.ts';

const option = (key: string, parts: Partial<PlanOption> = {}): PlanOption => ({
  key,
  personHours: 5,
  cost: 100,
  benefitByWeek: [50, 40],
  barsByWeek: [[], []],
  skill: null,
  satisfiesMust: false,
  note: null,
  ...parts,
});
const kept = (options: readonly PlanOption[], job: Partial<PlanJob> = {}): readonly string[] =>
  usefulOptions({
    ref: 'F',
    siteRef: 'S',
    region: '',
    mustRank: 0,
    promised: null,
    previous: null,
    options,
    ...job,
  }).map(({ key }) => key);

describe('options that a plan could want', () => {
  it('are those that pay in some week', () => {
    const loses = option('loses', { benefitByWeek: [-1, -2] });
    const late = option('late', { benefitByWeek: [-1, 1], personHours: 4 });
    expect(kept([option('pays'), loses, late])).toEqual(['pays', 'late']);
  });

  it('lack what another one outdoes in hours, worth and weeks', () => {
    expect(kept([option('long', { personHours: 6 }), option('short')])).toEqual(['short']);
    expect(kept([option('long but worth more', { personHours: 6, benefitByWeek: [60, 40] }), option('short')])).toEqual(
      ['long but worth more', 'short'],
    );
    expect(
      kept([option('barred less', { personHours: 6 }), option('barred', { barsByWeek: [['closed'], []] })]),
    ).toEqual(['barred less', 'barred']);
    expect(
      kept([option('for all', { personHours: 6 }), option('asks for a skill', { skill: 'licensed-applicator' })]),
    ).toEqual(['for all', 'asks for a skill']);
  });

  it('keep the first of two that are alike', () => {
    expect(kept([option('a'), option('b')])).toEqual(['a']);
  });

  it('keep what serves the must though it loses money, and what a promise or the plan before names', () => {
    const serves = option('serves', { benefitByWeek: [-900, -900], personHours: 30, satisfiesMust: true });
    expect(kept([option('pays'), serves])).toEqual(['pays']);
    expect(kept([option('pays'), serves], { mustRank: 3 })).toEqual(['pays', 'serves']);
    const promised = { week: '2027-03-01', crewRef: null, optionKey: 'serves' };
    expect(kept([option('pays'), serves], { promised })).toEqual(['pays', 'serves']);
    const previous = { week: '2027-03-01', crewRef: 'c', optionKey: 'serves' };
    expect(kept([option('pays'), serves], { previous })).toEqual(['pays', 'serves']);
  });

  it('keep what loses money where a date was promised and nobody said for what', () => {
    const loses = option('loses', { benefitByWeek: [-1, -2] });
    const losesMore = option('loses more', { benefitByWeek: [-3, -4] });
    const promised = { week: '2027-03-01', crewRef: null, optionKey: null };
    expect(kept([loses, losesMore], { promised })).toEqual(['loses']);
    expect(kept([loses, losesMore])).toEqual([]);
  });

  it('hold the best plan of all options, stage by stage, over random problems', () => {
    let fewer = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const problem = drawnProblem(seed, { jobs: 3, crews: 2, weeks: 2, sites: 2, options: 4 });
        const useful = { ...problem, jobs: problem.jobs.map((job) => ({ ...job, options: usefulOptions(job) })) };
        fewer += Number(useful.jobs.some(({ options }, index) => options.length < problem.jobs[index]!.options.length));
        const best = enumeratedBest(problem);
        enumeratedBest(useful).forEach((value, stage) => {
          expect(value, `stage ${stage}`).toBeCloseTo(best[stage]!, 6);
        });
      }),
      { numRuns: 250, seed: 21 },
    );
    expect(fewer).toBeGreaterThan(50);
  });
});
