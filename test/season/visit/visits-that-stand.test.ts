import { describe, expect, it } from 'vitest';
import type { PlanProblem } from '../../../src/season/plan/plan-problem.ts';
import type { Visit } from '../../../src/season/visit/visit.ts';
import { visitsThatStand, withoutSpilled, withPromises } from '../../../src/season/visit/visits-that-stand.ts';
import { mondayOf } from '../../../src/season/visit/week-of-day.ts';
import { madeUpVisit } from '../../service/visiting-register.ts';

const WHEN = { today: '2027-01-06', firstWeek: '2027-01-11', hoursOn: () => 10 };
const itemOf = (fenceRef: string, personHours = 4): Visit['items'][number] => ({
  ...madeUpVisit({ uid: 'x' }).items[0]!,
  fenceRef,
  personHours,
});
const visit = (uid: string, day: string, parts: Partial<Visit> = {}): Visit =>
  madeUpVisit({ uid, firstDay: day, lastDay: day, items: [itemOf(uid)], travelPersonHours: 0, planId: 1, ...parts });

describe('visits that stand when a plan is made', () => {
  it('are promises where they are confirmed, and what the plan before said where they are proposed', () => {
    const stand = visitsThatStand([visit('A', '2027-01-14', { state: 'confirmed' }), visit('B', '2027-01-20')], WHEN);
    expect(stand.promised.get('A')).toMatchObject({
      week: '2027-01-11',
      crewRef: 'north',
      optionKey: 'post-swap at 2 5',
    });
    expect(stand.previous.get('B')).toEqual({ week: '2027-01-18', crewRef: 'north', optionKey: 'post-swap at 2 5' });
    expect(stand.promised.size + stand.previous.size).toBe(2);
  });

  it('are promises too where the office proposed them itself, until their days are past', () => {
    const given = [visit('A', '2027-01-20', { planId: null }), visit('B', '2027-01-05', { planId: null })];
    const stand = visitsThatStand(given, WHEN);
    expect([...stand.promised.keys()]).toEqual(['A']);
    expect(stand.promised.get('A')).toMatchObject({ week: '2027-01-18', crewRef: 'north' });
    expect(stand.previous.size + stand.overdue.length).toBe(0);
  });

  it('keep their fences out of a plan that begins after them', () => {
    const stand = visitsThatStand([visit('A', '2027-01-07', { state: 'confirmed' }), visit('B', '2027-01-08')], WHEN);
    expect([...stand.visitedBefore.keys()]).toEqual(['A', 'B']);
    expect(stand.promised.size + stand.previous.size).toBe(0);
  });

  it('hold nothing where they were missed or cancelled or done, or were proposed for days that are past', () => {
    const stand = visitsThatStand(
      [
        visit('A', '2027-01-14', { state: 'missed' }),
        visit('B', '2027-01-14', { state: 'cancelled' }),
        visit('C', '2027-01-14', { state: 'done' }),
        visit('D', '2027-01-05'),
      ],
      WHEN,
    );
    expect([stand.promised.size, stand.previous.size, stand.visitedBefore.size]).toEqual([0, 0, 0]);
  });

  it('are overdue where they were confirmed and nobody said what became of them', () => {
    const stand = visitsThatStand([visit('A', '2027-01-05', { state: 'confirmed' })], WHEN);
    expect(stand.overdue.map(({ uid }) => uid)).toEqual(['A']);
    expect([...stand.visitedBefore.keys()]).toEqual(['A']);
  });

  it('take of a second week what the first does not hold', () => {
    const long = visit('A', '2027-01-14', {
      state: 'confirmed',
      lastDay: '2027-01-18',
      items: [itemOf('A', 20), itemOf('B', 4)],
      travelPersonHours: 2,
    });
    const hoursOn = (_crew: string, day: string): number => (['2027-01-16', '2027-01-17'].includes(day) ? 0 : 10);
    const stand = visitsThatStand([long], { ...WHEN, hoursOn });
    // 20 of the 26 hours lie in the first week, 2 of them on the way
    expect(stand.promised.get('A')?.personHours).toBeCloseTo((20 * 18) / 24, 10);
    expect(stand.promised.get('B')?.personHours).toBeCloseTo((4 * 18) / 24, 10);
    const crew = { ref: 'north', personHoursByWeek: [50, 50], skills: [], languages: [], travel: [] };
    const [left] = withoutSpilled([crew], ['2027-01-11', '2027-01-18'], stand);
    expect(left?.personHoursByWeek).toEqual([50, 44]);
  });

  it('can be done in one way only, whatever the rules say by now', () => {
    const stand = visitsThatStand([visit('A', '2027-01-14', { state: 'confirmed' })], WHEN);
    const weeks = ['2027-01-11', '2027-01-18'];
    const other = {
      key: 'rebuild',
      personHours: 30,
      cost: 1,
      benefitByWeek: [1, 1],
      barsByWeek: [['cure-time'], []],
      skill: 'x',
      satisfiesMust: true,
      note: null,
    } as const;
    const job = { siteRef: 's', region: 'r', mustRank: 1, promised: null, previous: null, options: [other] } as const;
    const problem: PlanProblem = {
      weeks,
      crews: [],
      jobs: [
        { ...job, ref: 'A' },
        { ...job, ref: 'B' },
      ],
      changePenalty: 0,
    };
    const [promised, free] = withPromises(problem, stand).jobs;
    expect(promised?.options).toMatchObject([
      { key: 'post-swap at 2 5', personHours: 4, skill: null, barsByWeek: [[], []] },
    ]);
    expect(free?.options).toEqual([other]);
  });
});

it('a week is that of its Monday, Sunday included', () => {
  expect(['2027-01-04', '2027-01-08', '2027-01-10', '2027-01-11'].map(mondayOf)).toEqual([
    '2027-01-04',
    '2027-01-04',
    '2027-01-04',
    '2027-01-11',
  ]);
});
