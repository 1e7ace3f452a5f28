import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FenceCandidate } from '../../src/season/candidates.ts';
import type { PlanJob, PlanOption } from '../../src/season/plan/plan-problem.ts';
import { type PlannedFence, type SeasonInputs, seasonProblem } from '../../src/season/season-problem.ts';
import { SHIPPED_CATALOGUE } from '../../src/season/works-catalogue.ts';
import { strictestRules } from '../../src/season/works-window.ts';
import { addDays, type CalendarDay } from '../../src/units/calendar-day.ts';
import { inspectOf, mondays, plannedFence, worksOf } from './made-up-planned-fence.ts';

const MAY = mondays('2027-05-03', 6);
const jobOf = (fence: PlannedFence, weeks: readonly CalendarDay[] = MAY): PlanJob => {
  const inputs: SeasonInputs = { weeks, crews: [], fences: [fence], catalogue: SHIPPED_CATALOGUE, changePenalty: 40 };
  return seasonProblem(inputs).jobs[0]!;
};
const optionOf = (
  candidate: FenceCandidate,
  parts: Parameters<typeof plannedFence>[0] = {},
  weeks: readonly CalendarDay[] = MAY,
): PlanOption =>
  jobOf(plannedFence({ ...parts, candidates: { ...parts.candidates, candidates: [candidate] } }), weeks).options[0]!;
const serves = (candidate: FenceCandidate, parts: Parameters<typeof plannedFence>[0]): boolean =>
  optionOf(candidate, parts).satisfiesMust;
const rankOf = (parts: Parameters<typeof plannedFence>[0]): number => jobOf(plannedFence(parts)).mustRank;
const PROMISE = { week: '2027-05-10', crewRef: null, optionKey: null };

describe('the problem of a season', () => {
  it('has the weeks, the crews, the penalty and one job a fence in their order, with all that is carried along', () => {
    const previous = { week: '2027-05-10', crewRef: 'c', optionKey: 'post-swap' };
    const fences = [
      plannedFence({ candidates: { fenceRef: 'B' }, siteRef: 'S2', region: 'hill', promised: PROMISE, previous }),
      plannedFence({ candidates: { fenceRef: 'A' } }),
    ];
    const problem = seasonProblem({ weeks: MAY, crews: [], fences, catalogue: SHIPPED_CATALOGUE, changePenalty: 40 });
    expect(problem).toMatchObject({ weeks: MAY, crews: [], changePenalty: 40 });
    expect(problem.jobs.map(({ ref }) => ref)).toEqual(['B', 'A']);
    expect(problem.jobs[0]).toMatchObject({ siteRef: 'S2', region: 'hill', promised: PROMISE, previous });
    expect(problem.jobs[1]!.options).toHaveLength(1);
    expect(problem.jobs[1]!.options[0]).toMatchObject({ key: 'post-swap', personHours: 6, cost: 300, note: null });
  });

  it('asks for an applicator where one of the works does', () => {
    expect(optionOf(worksOf(['groundline-treatment'])).skill).toBe('licensed-applicator');
    expect(optionOf(worksOf(['steel-sleeve', 'groundline-treatment'])).skill).toBe('licensed-applicator');
    expect(optionOf(worksOf(['steel-sleeve'])).skill).toBeNull();
    expect(optionOf(inspectOf()).skill).toBeNull();
  });
});

describe('how strongly a fence must be served', () => {
  it('is 1 for a promise and for a dangerous post, whatever it stands', () => {
    expect(rankOf({ promised: PROMISE })).toBe(1);
    expect(rankOf({ dangerPosts: [3] })).toBe(1);
    expect(rankOf({ dangerPosts: [3], candidates: { standing: 'short' } })).toBe(1);
  });

  it('is 2 where much hangs on it and it or its ends are short or closing', () => {
    for (const standing of ['short', 'short from new', 'closing'] as const) {
      expect(rankOf({ consequence: 'pool-barrier', candidates: { standing } }), standing).toBe(2);
      expect(rankOf({ consequence: 'over-footpath', candidates: { endsStanding: standing } }), standing).toBe(2);
    }
    expect(rankOf({ consequence: 'pool-barrier' })).toBe(0);
  });

  it('is 3 where an ordinary fence or its ends are short, and 0 where it is only closing or clear', () => {
    expect(rankOf({ candidates: { standing: 'short' } })).toBe(3);
    expect(rankOf({ candidates: { standing: 'short from new' } })).toBe(3);
    expect(rankOf({ candidates: { endsStanding: 'short' } })).toBe(3);
    expect(rankOf({ candidates: { standing: 'closing', endsStanding: 'closing' } })).toBe(0);
    expect(rankOf({})).toBe(0);
  });
});

describe('what serves a must', () => {
  const swap = (parts: Parameters<typeof worksOf>[1]) => worksOf(['post-swap'], parts);

  it('is no inspection', () => {
    expect(serves(inspectOf(), { candidates: { standing: 'short' } })).toBe(false);
    expect(serves(inspectOf(), { promised: PROMISE })).toBe(false);
  });

  it('leaves no post dangerous; then it may leave the fence short', () => {
    const danger = { dangerPosts: [3, 7], candidates: { standing: 'short' as const } };
    expect(serves(swap({ mends: [3] }), danger)).toBe(false);
    expect(serves(swap({ mends: [3, 7] }), danger)).toBe(true);
    expect(serves(swap({ mends: [3, 7], standing: 'short' }), danger)).toBe(true);
  });

  it('leaves neither the fence nor its ends short', () => {
    const short = { candidates: { standing: 'short' as const, endsStanding: 'short' as const } };
    expect(serves(swap({ standing: 'clear', endsStanding: 'short' }), short)).toBe(false);
    expect(serves(swap({ standing: 'short from new', endsStanding: 'clear' }), short)).toBe(false);
    expect(serves(swap({ standing: 'closing', endsStanding: 'clear' }), short)).toBe(true);
  });

  it('does not leave closing what must be served because it closes', () => {
    const closing = { consequence: 'pool-barrier' as const, candidates: { standing: 'closing' as const } };
    expect(serves(swap({ standing: 'closing' }), closing)).toBe(false);
    expect(serves(swap({ standing: 'clear' }), closing)).toBe(true);
    expect(serves(swap({ standing: 'clear', endsStanding: 'closing' }), closing)).toBe(false);
    const short = { consequence: 'pool-barrier' as const, candidates: { standing: 'short' as const } };
    expect(serves(swap({ standing: 'closing' }), short)).toBe(true);
  });
});

describe('what bars a week', () => {
  const barsOf = (
    parts: Parameters<typeof plannedFence>[0],
    weeks = MAY,
    kind: 'post-swap' | 'trimmer-guard' = 'post-swap',
  ) => optionOf(worksOf([kind]), parts, weeks).barsByWeek;

  it('is the locate notice first, then the time a footing needs before the opening, then the season', () => {
    // 1 May and three days of notice: not yet on Monday the 3rd; opening 1 June less seven days: until Friday the 21st
    expect(barsOf({})).toEqual([['locate-notice'], [], [], ['cure-time'], ['cure-time', 'closed'], ['closed']]);
  });

  it('is the season alone where nothing is dug or cast', () => {
    expect(barsOf({}, MAY, 'trimmer-guard')).toEqual([[], [], [], [], ['closed'], ['closed']]);
    expect(optionOf(inspectOf()).barsByWeek).toEqual([[], [], [], [], ['closed'], ['closed']]);
  });

  it('is nothing in a running season, up to the next one', () => {
    const running = {
      calendar: { today: '2027-07-01', opensOn: '2028-06-01', frozen: null },
      season: { opensOn: '2027-06-01', closesOn: '2027-11-30', allYear: false },
    };
    expect(barsOf(running, mondays('2027-07-05', 3))).toEqual([[], [], []]);
    expect(barsOf(running, mondays('2028-05-15', 3))).toEqual([[], ['cure-time'], ['cure-time', 'closed']]);
  });

  it('is frozen ground on any working day, also over the year end', () => {
    const frozen = (opens: string, closes: string) => ({
      calendar: { today: '2026-12-01', opensOn: '2027-06-01', frozen: { opens, closes } },
    });
    const winter = mondays('2027-03-08', 3);
    expect(barsOf(frozen('11-15', '03-15'), winter)).toEqual([['frozen-ground'], ['frozen-ground'], []]);
    expect(barsOf(frozen('11-15', '03-15'), winter, 'trimmer-guard')).toEqual([[], [], []]);
    // a frost from a Tuesday to a Thursday, and one over a week end
    expect(barsOf(frozen('03-16', '03-18'), winter)).toEqual([[], ['frozen-ground'], []]);
    expect(barsOf(frozen('03-13', '03-14'), winter)).toEqual([[], [], []]);
  });

  it('is never lateness where there is no storm season', () => {
    const allYear = {
      calendar: { today: '2027-12-01', opensOn: '2028-01-01', frozen: null },
      season: { opensOn: '2027-01-01', closesOn: '2027-12-31', allYear: true },
    };
    expect(barsOf(allYear, mondays('2027-12-20', 4))).toEqual([[], [], [], []]);
    const noticed = { ...allYear, calendar: { ...allYear.calendar, today: '2027-12-18' } };
    expect(barsOf(noticed, mondays('2027-12-20', 2))).toEqual([['locate-notice'], []]);
  });
});

describe('what it is worth, week by week', () => {
  const benefitOf = (candidate: FenceCandidate, parts: Parameters<typeof plannedFence>[0], weeks = MAY) =>
    optionOf(candidate, parts, weeks).benefitByWeek;

  it('is the whole drop before the opening less the price, and a thousandth less with each week of waiting', () => {
    const [first, second, third] = benefitOf(worksOf(['post-swap']), {});
    expect([first, second, third]).toEqual([1000 - 300, 1000 - 1 - 300, 1000 - 2 - 300]);
  });

  it('loses its part of this season evenly while that runs, and is what comes late once it is over', () => {
    const at = (monday: CalendarDay): number =>
      benefitOf(worksOf(['post-swap']), { calendar: { today: '2027-06-15', opensOn: '2028-06-01', frozen: null } }, [
        monday,
      ])[0]!;
    // 183 days; on Friday, 9 July, 144 of them are to come
    expect(at('2027-07-05')).toBeCloseTo(400 + (600 * 144) / 183 - 300, 9);
    expect(at('2027-12-06')).toBeCloseTo(400 - 300, 9);
  });

  it('is of an inspection what it tells, the less the less is left of the season', () => {
    expect(benefitOf(inspectOf(), {})[0]).toBeCloseTo(90 - 50, 9);
    const running = { calendar: { today: '2027-06-15', opensOn: '2028-06-01', frozen: null } };
    expect(benefitOf(inspectOf(), running, ['2027-07-05'])[0]).toBeCloseTo((90 * 144) / 183 - 50, 9);
    expect(benefitOf(inspectOf({ evsi: null, netBenefit: null }), {})[0]).toBe(-50);
  });

  it('is the price alone where the site has no hazard curve', () => {
    expect(benefitOf(worksOf(['post-swap'], { drop: null, netBenefit: null }), {})).toEqual(MAY.map(() => -300));
  });

  it('falls by a hundred a week for what makes a dangerous fence safe, and only for that', () => {
    const danger = { dangerPosts: [2] };
    const mending = benefitOf(worksOf(['post-swap'], { mends: [2] }), danger);
    expect(mending[1]! - mending[0]!).toBeCloseTo(-101, 9);
    const other = benefitOf(worksOf(['post-swap']), danger);
    expect(other[1]! - other[0]!).toBeCloseTo(-1, 9);
  });

  it('is held against the same replacement a year later, where that is worth more', () => {
    // 300 put off by a year at 4 % is 288.46: waiting keeps 290 - 288.46 and the price of this year less what it still saves
    const drop = { thisSeason: 5, toHorizon: 295, ifLate: 290 };
    const swap = optionOf(worksOf(['post-swap'], { drop }), {});
    expect(swap.note).toBe('cheaper-to-replace-next-year');
    expect(swap.benefitByWeek[0]).toBeCloseTo(295 - 300 - (290 - 300 / 1.04), 9);
    const pays = optionOf(worksOf(['rebuild'], { drop: { thisSeason: 5, toHorizon: 900, ifLate: 895 } }), {});
    expect(pays.note).toBe('cheaper-to-replace-next-year');
    expect(pays.benefitByWeek[0]).toBeCloseTo(900 - 300 - (895 - 300 / 1.04), 9);
    // what this season's risk outweighs, what never pays, what replaces nothing and what has to be done is as it was
    const risky = { thisSeason: 50, toHorizon: 900, ifLate: 850 };
    expect(optionOf(worksOf(['rebuild'], { drop: risky }), {}).note).toBeNull();
    expect(optionOf(worksOf(['rebuild'], { drop: { ...drop, toHorizon: 100, ifLate: 99 } }), {}).note).toBeNull();
    expect(optionOf(worksOf(['steel-sleeve'], { drop }), {}).note).toBeNull();
    expect(optionOf(worksOf(['post-swap'], { drop }), { candidates: { standing: 'short' } }).note).toBeNull();
  });

  it('takes nothing more for waiting off works that do harm', () => {
    const harm = worksOf(['post-swap'], { drop: { thisSeason: 0, toHorizon: -20, ifLate: -20 } });
    expect(benefitOf(harm, {})).toEqual(MAY.map(() => -320));
  });
});

const KINDS = (Object.keys(SHIPPED_CATALOGUE) as (keyof typeof SHIPPED_CATALOGUE)[]).filter(
  (kind) => kind !== 'inspect',
);
const monthDay = fc.integer({ min: 0, max: 364 }).map((day) => addDays('2025-01-01', day).slice(5));
const standings = fc.constantFrom('clear', 'closing', 'short', 'short from new' as const);

/** A fence on some day before or in its season, with some works that are worth something, and some weeks. */
const drawn = fc
  .record({
    start: fc.integer({ min: 0, max: 364 }),
    ahead: fc.integer({ min: 1, max: 300 }),
    length: fc.integer({ min: 30, max: 330 }),
    isRunning: fc.boolean(),
    allYear: fc.boolean(),
    frost: fc.option(fc.tuple(monthDay, fc.integer({ min: 0, max: 150 })), { nil: null }),
    kinds: fc.uniqueArray(fc.constantFrom(...KINDS), { minLength: 1, maxLength: 3 }),
    ifLate: fc.integer({ min: -500, max: 5000 }),
    thisSeason: fc.integer({ min: 0, max: 3000 }),
    weeks: fc.integer({ min: 1, max: 30 }),
    dangerPosts: fc.uniqueArray(fc.integer({ min: 1, max: 9 }), { maxLength: 3 }),
    mends: fc.uniqueArray(fc.integer({ min: 1, max: 9 }), { maxLength: 9 }),
    consequence: fc.constantFrom('ordinary', 'pool-barrier', 'livestock' as const),
    standing: standings,
    endsStanding: fc.option(standings, { nil: null }),
    hasPromise: fc.boolean(),
  })
  .map((each) => {
    const today = addDays('2027-01-01', each.start);
    const opensOn = addDays(today, each.ahead);
    const runsFrom = addDays(opensOn, -365);
    const season = each.isRunning
      ? { opensOn: runsFrom, closesOn: addDays(runsFrom, each.length) }
      : { opensOn, closesOn: addDays(opensOn, each.length) };
    const [from, days] = each.frost ?? [null, 0];
    const frozen = from === null ? null : { opens: from, closes: addDays(`2025-${from}`, days).slice(5) };
    const drop = { thisSeason: each.thisSeason, toHorizon: each.ifLate + each.thisSeason, ifLate: each.ifLate };
    const fence = plannedFence({
      calendar: { today, opensOn, frozen },
      season: { ...season, allYear: each.allYear },
      consequence: each.consequence,
      dangerPosts: each.dangerPosts,
      promised: each.hasPromise ? PROMISE : null,
      candidates: {
        standing: each.standing,
        endsStanding: each.endsStanding,
        candidates: [worksOf(each.kinds, { drop, mends: each.mends }), inspectOf({ evsi: each.thisSeason })],
      },
    });
    const past = (new Date(`${today}T00:00:00Z`).getUTCDay() + 6) % 7;
    const weeks = mondays(addDays(today, past === 0 ? 0 : 7 - past), each.weeks);
    return { fence, weeks, rules: strictestRules(each.kinds, SHIPPED_CATALOGUE) };
  });

/** The days of a frost, told apart from how the program does it: by counting from its first day. */
const freezesOn = (
  { opens, closes }: { readonly opens: string; readonly closes: string },
  day: CalendarDay,
): boolean => {
  const year = Number(day.slice(0, 4));
  return [year - 1, year].some((of) => {
    const last = closes < opens ? `${of + 1}-${closes}` : `${of}-${closes}`;
    return `${of}-${opens}` <= day && day <= last;
  });
};

describe('over random fences and calendars', () => {
  it('a week is free exactly where notice was given, no day is frozen, and all is done and hard before the opening', () => {
    fc.assert(
      fc.property(drawn, ({ fence, weeks, rules }) => {
        const { calendar, season } = fence;
        const { barsByWeek } = jobOf(fence, weeks).options[0]!;
        for (const [week, monday] of weeks.entries()) {
          const days = [0, 1, 2, 3, 4].map((day) => addDays(monday, day));
          const late = days[4]! > addDays(calendar.opensOn, -Math.max(1, rules.cureDays));
          const noticed = monday >= addDays(calendar.today, rules.locateNoticeDays);
          const frozen =
            rules.notOnFrozenGround && days.some((day) => calendar.frozen && freezesOn(calendar.frozen, day));
          const bars = barsByWeek[week]!;
          expect(bars.includes('locate-notice')).toBe(!noticed);
          expect(bars.includes('frozen-ground')).toBe(frozen);
          expect(bars.includes('cure-time') || bars.includes('closed')).toBe(late && !season.allYear);
          expect(bars.length === 0).toBe(noticed && !frozen && (!late || season.allYear));
          expect(new Set(bars).size).toBe(bars.length);
        }
      }),
      { numRuns: 300, seed: 11 },
    );
  });

  it('once a week is too late, every later one is', () => {
    fc.assert(
      fc.property(drawn, ({ fence, weeks }) => {
        const late = jobOf(fence, weeks).options[0]!.barsByWeek.map(
          (bars) => bars.includes('cure-time') || bars.includes('closed'),
        );
        const first = late.indexOf(true);
        if (first >= 0) expect(late.slice(first).every(Boolean)).toBe(true);
      }),
      { numRuns: 200, seed: 12 },
    );
  });

  it('the same thing is never worth more in a later week', () => {
    fc.assert(
      fc.property(drawn, ({ fence, weeks }) => {
        for (const { benefitByWeek } of jobOf(fence, weeks).options) {
          benefitByWeek.forEach((benefit, week) => {
            if (week > 0) expect(benefit).toBeLessThanOrEqual(benefitByWeek[week - 1]! + 1e-9);
          });
        }
      }),
      { numRuns: 300, seed: 13 },
    );
  });

  it('a must never weakens when a post is found dangerous, and nothing begins to serve it that leaves that post', () => {
    const strength = (rank: number): number => (rank === 0 ? 0 : 4 - rank);
    fc.assert(
      fc.property(drawn, fc.integer({ min: 10, max: 20 }), ({ fence, weeks }, post) => {
        const before = jobOf(fence, weeks);
        const after = jobOf({ ...fence, dangerPosts: [...fence.dangerPosts, post] }, weeks);
        expect(strength(after.mustRank)).toBeGreaterThanOrEqual(strength(before.mustRank));
        expect(after.mustRank).toBe(1);
        expect(after.options.map(({ satisfiesMust }) => satisfiesMust)).toEqual([false, false]);
      }),
      { numRuns: 200, seed: 14 },
    );
  });

  it('what makes a fence worse never makes its must weaker', () => {
    const strength = (rank: number): number => (rank === 0 ? 0 : 4 - rank);
    fc.assert(
      fc.property(drawn, ({ fence, weeks }) => {
        const rank = (parts: Partial<PlannedFence>): number => strength(jobOf({ ...fence, ...parts }, weeks).mustRank);
        const now = rank({});
        expect(rank({ promised: PROMISE })).toBeGreaterThanOrEqual(now);
        expect(rank({ consequence: 'pool-barrier' })).toBeGreaterThanOrEqual(now);
        expect(rank({ candidates: { ...fence.candidates, standing: 'short' } })).toBeGreaterThanOrEqual(now);
      }),
      { numRuns: 200, seed: 15 },
    );
  });
});
