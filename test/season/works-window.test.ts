import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SHIPPED_CATALOGUE } from '../../src/season/works-catalogue.ts';
import { barsOn, strictestRules, type WorksCalendar, worksWindow } from '../../src/season/works-window.ts';
import { addDays } from '../../src/units/calendar-day.ts';

const JUNE: WorksCalendar = { today: '2026-05-01', opensOn: '2026-06-01', frozen: null };
const CAST = strictestRules(['post-swap'], SHIPPED_CATALOGUE);
const windowOf = (calendar: WorksCalendar, rules = CAST) => worksWindow(rules, calendar);

describe('when works can be done', () => {
  it('is from the end of the locate notice to a week before the opening for a footing', () => {
    expect(windowOf(JUNE)).toMatchObject({
      fromDay: '2026-05-04',
      latestDay: '2026-05-25',
      inTime: true,
      bar: null,
      permit: false,
    });
  });

  it('is up to the eve of the opening where nothing is cast', () => {
    const treatment = strictestRules(['groundline-treatment'], SHIPPED_CATALOGUE);
    expect(windowOf(JUNE, treatment)).toMatchObject({
      fromDay: '2026-05-01',
      latestDay: '2026-05-31',
      licensedApplicator: true,
    });
  });

  it('takes of works done together the strictest rule of each', () => {
    expect(strictestRules(['steel-sleeve', 'groundline-treatment', 'rebuild'], SHIPPED_CATALOGUE)).toEqual({
      cureDays: 7,
      locateNoticeDays: 3,
      notOnFrozenGround: true,
      licensedApplicator: true,
      permit: true,
    });
    expect(strictestRules([], SHIPPED_CATALOGUE).cureDays).toBe(0);
  });

  it('names the rule that makes it too late', () => {
    expect(windowOf({ ...JUNE, today: '2026-05-23' })).toMatchObject({
      inTime: false,
      bar: 'locate-notice',
      fromDay: '2026-05-26',
    });
    expect(windowOf({ ...JUNE, today: '2026-05-26' })).toMatchObject({ inTime: false, bar: 'cure-time' });
    expect(
      windowOf({ today: '2026-01-10', opensOn: '2026-03-01', frozen: { opens: '11-15', closes: '03-20' } }),
    ).toMatchObject({
      inTime: false,
      bar: 'frozen-ground',
      fromDay: '2026-03-21',
    });
  });

  it('ends before the ground freezes where the season opens in winter', () => {
    expect(
      windowOf({ today: '2026-08-01', opensOn: '2027-01-01', frozen: { opens: '12-01', closes: '03-01' } }),
    ).toMatchObject({
      latestDay: '2026-11-30',
      inTime: true,
    });
  });

  it('refuses a season that is open already, and ground that never thaws', () => {
    expect(() => windowOf({ ...JUNE, opensOn: '2026-05-01' })).toThrow(/give the opening that comes next/);
    expect(() => windowOf({ ...JUNE, frozen: { opens: '01-01', closes: '12-31' } })).toThrow(/frozen all year/);
  });

  it('is never barred on its first and last day, and in time exactly where some day before the opening is free', () => {
    const monthDay = fc.integer({ min: 0, max: 364 }).map((day) => addDays('2025-01-01', day).slice(5));
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.values(SHIPPED_CATALOGUE)),
        fc.integer({ min: 0, max: 364 }),
        fc.integer({ min: 1, max: 120 }),
        fc.option(fc.tuple(monthDay, fc.integer({ min: 1, max: 120 })), { nil: null }),
        ({ rules }, start, ahead, frost) => {
          const today = addDays('2026-01-01', start);
          const calendar: WorksCalendar = {
            today,
            opensOn: addDays(today, ahead),
            frozen: frost && { opens: frost[0], closes: addDays(`2025-${frost[0]}`, frost[1]).slice(5) },
          };
          const window = worksWindow(rules, calendar);
          const days = Array.from({ length: ahead }, (_, day) => addDays(today, day));
          const free = days.filter((day) => barsOn(rules, calendar, day).length === 0);
          expect(window.inTime).toBe(free.length > 0);
          expect(window.bar === null).toBe(window.inTime);
          if (free.length > 0) expect([window.fromDay, window.latestDay]).toEqual([free[0], free.at(-1)]);
          else expect(barsOn(rules, { ...calendar, opensOn: addDays(window.fromDay, 61) }, window.fromDay)).toEqual([]);
        },
      ),
      { numRuns: 200 },
    );
  });
});
