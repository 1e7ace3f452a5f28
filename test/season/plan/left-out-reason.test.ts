import { beforeAll, describe, expect, it } from 'vitest';
import type { MipSolver } from '../../../src/season/plan/mip-solver.ts';
import { PLAN_LIMITS } from '../../../src/season/plan/plan-limits.ts';
import type { PlanJob, PlanOption, PlanProblem, WeekBar } from '../../../src/season/plan/plan-problem.ts';
import { planSeason } from '../../../src/season/plan/plan-season.ts';
import type { SeasonPlan } from '../../../src/season/plan/season-plan.ts';
import { loadPlanSolver } from '../../../src/service/plan-solver.ts';
import { crew, job, option, problem, WEEKS } from './one-crew-problem.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadPlanSolver();
});

/** The plan, made in both ways, which have to agree on every reason of problems as small as these. */
function planned(parts: Partial<PlanProblem>): SeasonPlan {
  const [whole, inParts] = [PLAN_LIMITS, { ...PLAN_LIMITS, wholeUpTo: -1, priceSteps: 60, searchSteps: 300 }].map(
    (limits) => planSeason(problem(parts), { solver, limits, timeIsOver: () => false }),
  );
  for (const part of ['visits', 'leftOut', 'unserved', 'brokenPromises'] as const)
    expect(inParts![part]).toEqual(whole![part]);
  return whole!;
}

/** Why a fence is not served, and why its option `swap` is not in the plan; null where they are. */
const reasonsOf = (plan: SeasonPlan, ref = 'A', key = 'swap') => ({
  fence: plan.unserved.find(({ jobRef }) => jobRef === ref)?.reason ?? null,
  option: plan.leftOut.find(({ jobRef, optionKey }) => jobRef === ref && optionKey === key)?.reason ?? null,
});
const both = (reason: string) => ({ fence: reason, option: reason });
const withOptions = (...options: readonly PlanOption[]): Partial<PlanProblem> => ({ jobs: [job({ options })] });
const barred = (first: readonly WeekBar[], second: readonly WeekBar[]): Partial<PlanProblem> =>
  withOptions(option({ barsByWeek: [first, second] }));

describe('what is not in the plan because no crew can be asked', () => {
  it('names the rule that bars every week', () => {
    for (const [bar, reason] of [
      ['locate-notice', 'locate-notice-too-late'],
      ['cure-time', 'cure-time-too-late'],
      ['frozen-ground', 'ground-frozen'],
      ['closed', 'weeks-closed'],
    ] as const)
      expect(reasonsOf(planned(barred([bar], [bar])))).toEqual(both(reason));
  });

  it('names the rule that alone would open a week, where several bar it', () => {
    expect(reasonsOf(planned(barred(['locate-notice', 'cure-time'], ['cure-time'])))).toEqual(
      both('cure-time-too-late'),
    );
    expect(reasonsOf(planned(barred(['frozen-ground'], ['cure-time', 'closed'])))).toEqual(both('ground-frozen'));
  });

  it('names the skill, the way, and the week that is too short', () => {
    const treated = withOptions(option({ skill: 'licensed-applicator' }));
    expect(reasonsOf(planned(treated))).toEqual(both('no-crew-with-skill'));
    expect(reasonsOf(planned({ crews: [crew({ travel: [] })] }))).toEqual(both('no-crew-goes-to-site'));
    // the one crew with the skill does not come here, the one that comes has it not
    const crews = [crew({ ref: 'c' }), crew({ ref: 'd', skills: ['licensed-applicator'], travel: [] })];
    expect(reasonsOf(planned({ ...treated, crews }))).toEqual(both('no-crew-goes-to-site'));
    expect(reasonsOf(planned(withOptions(option({ personHours: 10.5 }))))).toEqual(both('longer-than-any-crew-week'));
    // without the way it would fit
    expect(reasonsOf(planned(withOptions(option({ personHours: 9.5 }))))).toEqual(both('too-far-for-any-crew'));
    expect(reasonsOf(planned(withOptions(option({ personHours: 9 }))))).toEqual({ fence: null, option: null });
  });

  it('finds a week too short also where only the long one is barred', () => {
    const parts = { crews: [crew({ personHoursByWeek: [40, 10] })] };
    const long = option({ personHours: 20, barsByWeek: [['frozen-ground'], []] });
    expect(reasonsOf(planned({ ...parts, ...withOptions(long) }))).toEqual(both('longer-than-any-crew-week'));
  });

  it('has no week at all where the plan has none', () => {
    const empty = option({ benefitByWeek: [], barsByWeek: [] });
    const none = problem({ weeks: [], crews: [crew({ personHoursByWeek: [] })], ...withOptions(empty) });
    const plan = planSeason(none, { solver, limits: PLAN_LIMITS, timeIsOver: () => false });
    expect(reasonsOf(plan)).toEqual(both('weeks-closed'));
  });
});

describe('what is not in the plan because it does not pay', () => {
  it('costs more than it saves, and may be cheaper to replace next year', () => {
    const loses = option({ benefitByWeek: [-5, -9] });
    expect(reasonsOf(planned(withOptions(loses)))).toEqual(both('costs-more-than-it-saves'));
    const noted = { ...loses, note: 'cheaper-to-replace-next-year' as const };
    expect(reasonsOf(planned(withOptions(noted)))).toEqual(both('cheaper-to-replace-next-year'));
  });

  it('is not worth the way, though it would be worth doing on the spot', () => {
    const small = withOptions(option({ benefitByWeek: [15, 15] }));
    expect(reasonsOf(planned(small))).toEqual(both('travel-costs-more-than-it-saves'));
    // with a neighbour that pays for the way it is done
    const [first] = small.jobs!;
    expect(
      reasonsOf(planned({ jobs: [first!, job({ ref: 'B', options: [option({ personHours: 4 })] })] })).fence,
    ).toBeNull();
  });

  it('is done all the same where it must be', () => {
    const must: PlanJob = job({ mustRank: 3, options: [option({ benefitByWeek: [-500, -510] })] });
    expect(reasonsOf(planned({ jobs: [must] }))).toEqual({ fence: null, option: null });
  });
});

describe('what is not in the plan because something else has its place', () => {
  const full = { crews: [crew({ personHoursByWeek: [6, 0] })] };

  it('finds no hours: by the worth of others, or by their must', () => {
    const better = job({ ref: 'B', options: [option({ benefitByWeek: [150, 140] })] });
    expect(reasonsOf(planned({ ...full, jobs: [job(), better] }))).toEqual(both('no-crew-hours'));
    const must = job({ ref: 'B', mustRank: 2, options: [option({ benefitByWeek: [-50, -50] })] });
    expect(reasonsOf(planned({ ...full, jobs: [job(), must] }))).toEqual(both('no-crew-hours'));
    const lesser = job({ mustRank: 3 });
    expect(reasonsOf(planned({ ...full, jobs: [lesser, must] }))).toEqual(both('no-crew-hours'));
  });

  it('finds no hours for the better of two options, where only the lesser fits', () => {
    const two = job({
      options: [option({ key: 'rebuild', personHours: 9, benefitByWeek: [400, 390] }), option({ personHours: 3 })],
    });
    const must = job({ ref: 'B', mustRank: 1, options: [option()] });
    const plan = planned({ crews: [crew({ personHoursByWeek: [10, 0] })], jobs: [two, must] });
    expect(reasonsOf(plan, 'A', 'rebuild')).toEqual({ fence: null, option: 'no-crew-hours' });
  });

  it('is outdone by another option', () => {
    const plan = planned(withOptions(option(), option({ key: 'rebuild', benefitByWeek: [300, 290] })));
    expect(reasonsOf(plan)).toEqual({ fence: null, option: 'another-option-is-better' });
  });

  it('is a little better than what was planned before, but less than a change costs', () => {
    const two = [option(), option({ key: 'sleeve', benefitByWeek: [120, 110] })];
    const previous = { week: WEEKS[0], crewRef: 'c', optionKey: 'swap' };
    const kept = planned({ jobs: [job({ previous, options: two })] });
    expect(reasonsOf(kept, 'A', 'sleeve')).toEqual({ fence: null, option: 'kept-as-planned-before' });
    expect(kept.changedJobRefs).toEqual([]);
    const changed = planned({ changePenalty: 10, jobs: [job({ previous, options: two })] });
    expect(reasonsOf(changed)).toEqual({ fence: null, option: 'another-option-is-better' });
    expect(changed.changedJobRefs).toEqual(['A']);
  });

  it('was promised otherwise', () => {
    const promised = { week: WEEKS[0], crewRef: null, optionKey: 'sleeve' };
    const two = [option(), option({ key: 'sleeve', benefitByWeek: [20, 10] })];
    expect(reasonsOf(planned({ jobs: [job({ promised, options: two })] }))).toEqual({
      fence: null,
      option: 'promised-otherwise',
    });
  });
});

describe('what is not in the plan because it does not do what must be done', () => {
  it('pays, but leaves the must unserved', () => {
    const must = job({
      mustRank: 2,
      options: [option({ satisfiesMust: false }), option({ key: 'rebuild', benefitByWeek: [-80, -90] })],
    });
    expect(reasonsOf(planned({ jobs: [must] }))).toEqual({ fence: null, option: 'does-not-serve-the-must' });
  });

  it('is nothing at all where nothing could be done', () => {
    const plan = planned(withOptions());
    expect(plan.unserved).toEqual([{ jobRef: 'A', mustRank: 0, reason: 'nothing-to-do', nearest: null }]);
    expect(plan.leftOut).toEqual([]);
  });
});

describe('the reason given for a fence', () => {
  it('is that of the option that came nearest, of those that serve where it must be served', () => {
    const late = option({ barsByWeek: [['cure-time'], ['cure-time']] });
    const loses = option({ key: 'sleeve', benefitByWeek: [-5, -9] });
    expect(reasonsOf(planned(withOptions(late, loses))).fence).toBe('cure-time-too-late');
    const skilled = option({ key: 'treat', skill: 'licensed-applicator', satisfiesMust: false });
    expect(reasonsOf(planned(withOptions(late, skilled))).fence).toBe('no-crew-with-skill');
    const must = { ...withOptions(late, skilled), jobs: [job({ mustRank: 3, options: [late, skilled] })] };
    expect(reasonsOf(planned(must)).fence).toBe('cure-time-too-late');
  });

  it('is the promise where one cannot be kept', () => {
    const promised = { week: '2027-04-05', crewRef: null, optionKey: null };
    expect(reasonsOf(planned({ jobs: [job({ promised })] }))).toEqual(both('promised-otherwise'));
  });
});

describe('the numbers behind the reason of a fence', () => {
  const nearestOf = (plan: SeasonPlan) => plan.unserved.find(({ jobRef }) => jobRef === 'A')?.nearest;

  it('count the weeks that each rule bars, and say that none is left', () => {
    const plan = planned(barred(['frozen-ground'], ['frozen-ground', 'closed']));
    expect(nearestOf(plan)).toEqual({
      optionKey: 'swap',
      weeks: 2,
      openWeeks: 0,
      bars: [
        { bar: 'frozen-ground', weeks: 2, firstWeek: WEEKS[0], lastWeek: WEEKS[1] },
        { bar: 'closed', weeks: 1, firstWeek: WEEKS[1], lastWeek: WEEKS[1] },
      ],
      best: null,
      options: 1,
      barredOptions: 1,
    });
  });

  it('tell hours that others have from weeks that are barred, where both stand in the way', () => {
    const digging = option({ key: 'rebuild', personHours: 4, barsByWeek: [['frozen-ground'], ['frozen-ground']] });
    const sleeve = option({ key: 'sleeve', barsByWeek: [['frozen-ground'], []] });
    const must = job({ ref: 'B', siteRef: 'T', mustRank: 1, options: [option({ barsByWeek: [['closed'], []] })] });
    const ways = ['S', 'T'].map((siteRef) => ({ siteRef, personHours: 1, cost: 20 }));
    const plan = planned({
      crews: [crew({ travel: ways })],
      jobs: [job({ mustRank: 3, options: [digging, sleeve] }), must],
    });
    expect(reasonsOf(plan).fence).toBe('no-crew-hours');
    expect(nearestOf(plan)).toMatchObject({
      optionKey: 'sleeve',
      weeks: 2,
      openWeeks: 1,
      bars: [{ bar: 'frozen-ground', weeks: 1 }],
      // ten hours, six of which the other site has: five and the way are missing two
      best: { week: WEEKS[1], crewRef: 'c', neededHours: 6, wayHours: 1, leftHours: 4, thereAreHours: 10 },
      options: 2,
      barredOptions: 1,
    });
  });

  it('name the week with the most hours where none is long enough, an empty one where nobody goes out', () => {
    const long = withOptions(option({ personHours: 30 }));
    const crews = [crew({ personHoursByWeek: [10, 12] })];
    expect(nearestOf(planned({ ...long, crews }))?.best).toMatchObject({ week: WEEKS[1], thereAreHours: 12 });
    const away = planned({ ...withOptions(option()), crews: [crew({ personHoursByWeek: [0, 0] })] });
    expect(nearestOf(away)?.best).toMatchObject({ thereAreHours: 0 });
  });

  it('leave out weeks in which it would not pay, for those have the hours', () => {
    const fading = option({ benefitByWeek: [100, -5] });
    const other = job({ ref: 'B', options: [option({ benefitByWeek: [300, -5] })] });
    const plan = planned({ crews: [crew({ personHoursByWeek: [6, 10] })], jobs: [job({ options: [fading] }), other] });
    expect(nearestOf(plan)?.best).toMatchObject({ week: WEEKS[0], leftHours: 0, neededHours: 5 });
  });
});

describe('why a promise cannot be kept', () => {
  const brokenBy = (promised: Partial<NonNullable<PlanJob['promised']>>, parts: Partial<PlanProblem> = {}) => {
    const asked = { week: WEEKS[0] as string, crewRef: null, optionKey: null, ...promised };
    const jobs = (parts.jobs ?? [job()]).map((each) => ({ ...each, promised: asked }));
    return planned({ ...parts, jobs }).brokenPromises.find(({ jobRef }) => jobRef === 'A')?.reason ?? null;
  };

  it('is null where it can', () => {
    expect(brokenBy({})).toBeNull();
    expect(brokenBy({ crewRef: 'c', optionKey: 'swap' })).toBeNull();
  });

  it('is a week, a crew or an option that is not there', () => {
    expect(brokenBy({ week: '2027-04-05' })).toBe('week-outside-plan');
    expect(brokenBy({ crewRef: 'x' })).toBe('crew-unknown');
    expect(brokenBy({ optionKey: 'rebuild' })).toBe('option-unknown');
  });

  it('is a rule of that week, though another week were free', () => {
    expect(brokenBy({}, barred(['frozen-ground'], []))).toBe('week-barred');
  });

  it('is the skill, the way or the hours of the crew', () => {
    expect(brokenBy({}, withOptions(option({ skill: 'licensed-applicator' })))).toBe('no-crew-with-skill');
    expect(brokenBy({}, { crews: [crew({ travel: [] })] })).toBe('no-crew-goes-to-site');
    expect(brokenBy({}, { crews: [crew({ personHoursByWeek: [5.5, 40] })] })).toBe('longer-than-the-crew-week');
  });

  it('is the hours of other promises, and never of anything less', () => {
    const crews = [crew({ personHoursByWeek: [6, 0] })];
    const before = job({ ref: 'B', options: [option({ benefitByWeek: [900, 900] })] });
    expect(brokenBy({}, { crews, jobs: [job(), before] })).toBe('hours-go-to-other-promises');
    const promised = { week: WEEKS[0], crewRef: null, optionKey: null };
    const must = job({ ref: 'B', mustRank: 1, options: [option({ benefitByWeek: [900, 900] })] });
    expect(planned({ crews, jobs: [job({ promised }), must] }).brokenPromises).toEqual([]);
  });
});
