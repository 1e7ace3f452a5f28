import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MustRank } from '../../../src/season/plan/plan-problem.ts';
import { type CrewWeek, type DayRequest, type LaidOut, layOutDays } from '../../../src/season/visit/lay-out-days.ts';
import { addDays, dayNumber } from '../../../src/units/calendar-day.ts';

const MONDAY = '2027-01-04';
const TUESDAY = '2027-01-05';
const WEDNESDAY = '2027-01-06';
const FRIDAY = '2027-01-08';

const week = (parts: Partial<CrewWeek> = {}): CrewWeek => ({
  monday: MONDAY,
  personHoursByDay: [8, 8, 8, 8, 8],
  taken: [],
  ...parts,
});
const request = (key: string, parts: Partial<DayRequest> = {}): DayRequest => ({
  key,
  siteRef: `site-${key}`,
  place: null,
  workPersonHours: 4,
  travelPersonHours: 0,
  mustRank: 0,
  standing: null,
  ...parts,
});
const daysOf = (laid: ReadonlyMap<string, LaidOut | null>, key: string): readonly string[] | null => {
  const found = laid.get(key);
  return found ? [found.firstDay, found.lastDay] : null;
};

describe('the days of a week', () => {
  it('go to the musts first, the strictest before the others', () => {
    const laid = layOutDays(week(), [
      request('pays', { workPersonHours: 7 }),
      request('short', { workPersonHours: 7, mustRank: 3 }),
      request('danger', { workPersonHours: 7, mustRank: 1 }),
    ]);
    expect(['danger', 'short', 'pays'].map((key) => laid.get(key)?.firstDay)).toEqual([MONDAY, TUESDAY, WEDNESDAY]);
  });

  it('bring neighbours together where the first day would do as well', () => {
    const far = { latitude: 31, longitude: -90 };
    const near = { latitude: 30.01, longitude: -90 };
    const laid = layOutDays(week(), [
      request('m1', { mustRank: 1, workPersonHours: 5, place: far }),
      request('m2', { mustRank: 2, workPersonHours: 5, place: { latitude: 30, longitude: -90 } }),
      request('other', { workPersonHours: 3, place: near }),
    ]);
    expect(daysOf(laid, 'other')).toEqual([TUESDAY, TUESDAY]);
  });

  it('are taken in a row by a visit that is longer than one, never over a day off', () => {
    const laid = layOutDays(week({ personHoursByDay: [8, 0, 8, 8, 8] }), [request('long', { workPersonHours: 20 })]);
    expect(daysOf(laid, 'long')).toEqual([WEDNESDAY, FRIDAY]);
    expect(
      layOutDays(week({ personHoursByDay: [8, 8, 0, 8, 8] }), [request('long', { workPersonHours: 20 })]).get('long'),
    ).toBeNull();
  });

  it('stay those of a visit that has them, and of one that is confirmed', () => {
    const taken = [{ siteRef: 'x', place: null, firstDay: MONDAY, lastDay: MONDAY, personHours: 8 }];
    const laid = layOutDays(week({ taken }), [
      request('stands', { standing: { firstDay: FRIDAY, lastDay: FRIDAY } }),
      request('new', { mustRank: 1 }),
    ]);
    expect(daysOf(laid, 'stands')).toEqual([FRIDAY, FRIDAY]);
    expect(daysOf(laid, 'new')).toEqual([TUESDAY, TUESDAY]);
  });

  it('need no second way to a site where the crew is that day', () => {
    const taken = [{ siteRef: 'oak', place: null, firstDay: WEDNESDAY, lastDay: WEDNESDAY, personHours: 3 }];
    const laid = layOutDays(week({ taken }), [request('more', { siteRef: 'oak', travelPersonHours: 2 })]);
    expect(laid.get('more')).toEqual({ firstDay: WEDNESDAY, lastDay: WEDNESDAY, travelPersonHours: 0 });
  });

  it('are laid out again without gaps where parts of days are left that hold none of the rest', () => {
    const requests = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'].map((key) => request(key, { workPersonHours: 5 }));
    const laid = layOutDays(week(), requests);
    expect([...laid.values()].every((each) => each !== null)).toBe(true);
  });
});

const drawnWeek = fc.record({
  personHoursByDay: fc.array(
    fc.oneof(
      { weight: 1, arbitrary: fc.constant(0) },
      { weight: 5, arbitrary: fc.integer({ min: 16, max: 96 }).map((q) => q / 4) },
    ),
    {
      minLength: 5,
      maxLength: 5,
    },
  ),
  requests: fc.array(
    fc.record({
      workPersonHours: fc.integer({ min: 1, max: 80 }).map((q) => q / 4),
      travelPersonHours: fc.integer({ min: 0, max: 8 }).map((q) => q / 4),
      mustRank: fc.constantFrom<MustRank>(0, 1, 2, 3),
      latitude: fc.integer({ min: 300, max: 320 }).map((d) => d / 10),
      standing: fc.option(fc.integer({ min: 0, max: 4 })),
    }),
    { maxLength: 9 },
  ),
});

describe('over random weeks', () => {
  it('no day passes its hours, none is a day off, all lie in the week, and the order of asking changes nothing', () => {
    fc.assert(
      fc.property(drawnWeek, ({ personHoursByDay, requests }) => {
        const asked = requests.map(({ latitude, standing, ...rest }, index) =>
          request(`v${index}`, {
            ...rest,
            place: { latitude, longitude: -90 },
            standing:
              standing === null ? null : { firstDay: addDays(MONDAY, standing), lastDay: addDays(MONDAY, standing) },
          }),
        );
        const laid = layOutDays(week({ personHoursByDay }), asked);
        const again = layOutDays(week({ personHoursByDay }), [...asked].reverse());
        expect(Object.fromEntries(again)).toEqual(Object.fromEntries(laid));
        // every stretch of days holds at least the hours of the visits that lie within it
        const placed = asked.flatMap((each) => {
          const span = laid.get(each.key);
          if (!span) return [];
          const [first, last] = [span.firstDay, span.lastDay].map((day) => dayNumber(day) - dayNumber(MONDAY)) as [
            number,
            number,
          ];
          return [{ first, last, hours: each.workPersonHours + span.travelPersonHours }];
        });
        for (const { first, last } of placed) {
          expect(first).toBeGreaterThanOrEqual(0);
          expect(last).toBeLessThanOrEqual(4);
          for (let day = first; day <= last; day += 1) expect(personHoursByDay[day]).toBeGreaterThan(0);
        }
        for (let from = 0; from < 5; from += 1) {
          for (let to = from; to < 5; to += 1) {
            const there = personHoursByDay.slice(from, to + 1).reduce((sum, hours) => sum + hours, 0);
            const within = placed
              .filter(({ first, last }) => first >= from && last <= to)
              .reduce((sum, { hours }) => sum + hours, 0);
            expect(within).toBeLessThanOrEqual(there + 1e-5);
          }
        }
      }),
      { numRuns: 400 },
    );
  });

  it('a week without days off whose hours hold all visits finds days for all', () => {
    fc.assert(
      fc.property(drawnWeek, ({ requests }) => {
        const hours = requests.map(({ workPersonHours, travelPersonHours }) => workPersonHours + travelPersonHours);
        const day = hours.reduce((sum, each) => sum + each, 0) / 5 + 0.01;
        const asked = requests.map(({ workPersonHours, travelPersonHours, mustRank }, index) =>
          request(`v${index}`, { workPersonHours, travelPersonHours, mustRank }),
        );
        const laid = layOutDays(week({ personHoursByDay: [day, day, day, day, day] }), asked);
        expect([...laid.values()]).not.toContain(null);
      }),
      { numRuns: 300 },
    );
  });
});
