import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  DAYS_PER_YEAR,
  dayFromNumber,
  dayNumber,
  isCalendarDay,
  yearOf,
  yearsBetween,
} from '../../src/units/calendar-day.ts';

describe('a calendar day', () => {
  it('is taken only where the calendar has it', () => {
    expect(['2024-02-29', '1900-01-01', '2200-12-31'].map(isCalendarDay)).toEqual([true, true, true]);
    const refused = ['2023-02-29', '1900-02-29', '2024-04-31', '2024-13-01', '2024-00-10', '1899-12-31', '2201-01-01'];
    expect(refused.filter(isCalendarDay)).toEqual([]);
    expect(['2024-1-1', '24-01-01', '2024/01/01', '2024-01-01T00:00', ' 2024-01-01', ''].filter(isCalendarDay)).toEqual(
      [],
    );
  });

  it('is refused with the text and the way out', () => {
    expect(() => dayNumber('yesterday')).toThrow(/"yesterday".*YYYY-MM-DD/);
    expect(() => addDays('2023-02-30', 1)).toThrow(RangeError);
  });

  it('comes back from its number', () => {
    fc.assert(
      fc.property(fc.integer({ min: -25_000, max: 80_000 }), (days) => {
        expect(dayNumber(dayFromNumber(days))).toBe(days);
      }),
    );
    expect(dayNumber('1970-01-01')).toBe(0);
  });

  it('moves over month, leap day and year ends', () => {
    expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
    expect(addDays('2023-02-28', 1)).toBe('2023-03-01');
    expect(addDays('2023-12-31', 1)).toBe('2024-01-01');
    expect(addDays('2024-03-01', -1)).toBe('2024-02-29');
    expect(yearOf('2024-03-01')).toBe(2024);
  });
});

describe('years between days', () => {
  it('are mean Gregorian years, negative backwards', () => {
    expect(yearsBetween('2000-01-01', '2200-01-01')).toBeCloseTo(200, 2);
    expect(yearsBetween('2010-06-01', '2000-06-01')).toBe(-yearsBetween('2000-06-01', '2010-06-01'));
    expect(yearsBetween('2001-01-01', '2002-01-01')).toBe(365 / DAYS_PER_YEAR);
  });
});
