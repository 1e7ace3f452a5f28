import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seasonToPlan } from '../../src/season/planned-season.ts';
import { addDays, dayNumber } from '../../src/units/calendar-day.ts';

const ATLANTIC = { opens: '06-01', closes: '11-30', share: 0.9 };
const WINTER = { opens: '10-01', closes: '03-31', share: 0.9 };
const YEAR = { opens: '01-01', closes: '12-31', share: 1 };

describe('the season that a plan is for', () => {
  it('is the next to open between two seasons, and its opening is the deadline', () => {
    expect(seasonToPlan(ATLANTIC, '2027-02-10')).toEqual({
      year: 2027,
      season: { opensOn: '2027-06-01', closesOn: '2027-11-30', allYear: false },
      nextOpening: '2027-06-01',
    });
  });

  it('is the one that runs while at least a quarter of it is left; the deadline is then the opening after it', () => {
    // 183 days; on 16 October 46 of them are left, a little more than a quarter
    expect(seasonToPlan(ATLANTIC, '2026-10-16')).toMatchObject({ year: 2026, nextOpening: '2027-06-01' });
    expect(seasonToPlan(ATLANTIC, '2026-10-17')).toMatchObject({ year: 2027, nextOpening: '2027-06-01' });
    expect(seasonToPlan(ATLANTIC, '2026-11-25').season.opensOn).toBe('2027-06-01');
  });

  it('may wrap the year end', () => {
    expect(seasonToPlan(WINTER, '2026-11-25')).toEqual({
      year: 2026,
      season: { opensOn: '2026-10-01', closesOn: '2027-03-31', allYear: false },
      nextOpening: '2027-10-01',
    });
    expect(seasonToPlan(WINTER, '2027-01-05').year).toBe(2026);
    expect(seasonToPlan(WINTER, '2027-03-01').year).toBe(2027);
  });

  it('is a year where there is no storm season, and says so', () => {
    expect(seasonToPlan(YEAR, '2026-05-01')).toMatchObject({ year: 2026, season: { allYear: true } });
    expect(seasonToPlan(YEAR, '2026-11-25')).toMatchObject({ year: 2027, season: { allYear: true } });
  });

  it('has a quarter of itself to come at least, is never skipped while more is left, and its deadline always lies ahead', () => {
    const monthDay = fc.integer({ min: 0, max: 364 }).map((day) => addDays('2025-01-01', day).slice(5));
    fc.assert(
      fc.property(monthDay, monthDay, fc.integer({ min: 0, max: 2000 }), (opens, closes, days) => {
        fc.pre(opens !== closes);
        const window = { opens, closes, share: 0.8 };
        const today = addDays('2026-01-01', days);
        const { year, season, nextOpening } = seasonToPlan(window, today);
        expect(season.opensOn).toBe(`${year}-${opens}`);
        expect(season.closesOn > season.opensOn).toBe(true);
        const openings = [2025, 2026, 2027, 2028, 2029, 2030, 2031, 2032, 2033].map((each) => `${each}-${opens}`);
        expect(nextOpening).toBe(openings.find((day) => day > today));
        // days of a season that are to come, today included, over all of its days
        const leftOf = (from: string, to: string): number =>
          (dayNumber(to) + 1 - Math.max(dayNumber(today), dayNumber(from))) / (dayNumber(to) + 1 - dayNumber(from));
        expect(leftOf(season.opensOn, season.closesOn)).toBeGreaterThanOrEqual(0.25);
        expect(seasonToPlan(window, season.opensOn).season).toEqual(season);
        if (today < season.opensOn) {
          const closed = `${Number(season.closesOn.slice(0, 4)) - 1}-${closes}`;
          expect(leftOf(`${year - 1}-${opens}`, closed)).toBeLessThan(0.25);
        }
      }),
      { numRuns: 300, seed: 41 },
    );
  });
});
