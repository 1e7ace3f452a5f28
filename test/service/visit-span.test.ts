import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { visitSpan } from '../../src/service/visit-span.ts';
import { addDays } from '../../src/units/calendar-day.ts';
import { madeUpVisit } from './visiting-register.ts';

const visit = (firstDay: string, startsAt: string | null, personHours: number, days = 1) => {
  const made = madeUpVisit({ uid: 'a', firstDay, lastDay: addDays(firstDay, days - 1), startsAt });
  return { ...made, items: [{ ...made.items[0]!, personHours }] };
};
const span = (...args: Parameters<typeof visitSpan>): string => {
  const found = visitSpan(...args);
  return found.kind === 'days'
    ? `${found.firstDay}/${found.dayAfter}`
    : `${found.start.toISOString()}/${found.end.toISOString()}`;
};

describe('when a visit is', () => {
  it('is whole days where no time is agreed, the day after not in it', () => {
    expect(span(visit('2027-02-27', null, 8), 'America/Chicago', 2)).toBe('2027-02-27/2027-02-28');
    expect(span(visit('2027-02-27', null, 8, 3), 'America/Chicago', 2)).toBe('2027-02-27/2027-03-02');
  });

  it('lasts as long as its people need, rounded up to a quarter of an hour', () => {
    // 4.6 hours of two people: 2.3 hours, 2 h 30.
    expect(span(visit('2027-01-11', '08:30', 4.6), 'America/Chicago', 2)).toBe(
      '2027-01-11T14:30:00.000Z/2027-01-11T17:00:00.000Z',
    );
    expect(span(visit('2027-01-11', '08:30', 0), 'America/Chicago', 2)).toBe(
      '2027-01-11T14:30:00.000Z/2027-01-11T14:45:00.000Z',
    );
  });

  it('keeps the local time on both sides of a change of the clocks', () => {
    // 2027-03-14 02:00 CST becomes 03:00 CDT; 2027-11-07 02:00 CDT becomes 01:00 CST.
    expect(span(visit('2027-03-13', '09:00', 2), 'America/Chicago', 1)).toBe(
      '2027-03-13T15:00:00.000Z/2027-03-13T17:00:00.000Z',
    );
    expect(span(visit('2027-03-14', '09:00', 2), 'America/Chicago', 1)).toBe(
      '2027-03-14T14:00:00.000Z/2027-03-14T16:00:00.000Z',
    );
    expect(span(visit('2027-11-07', '09:00', 2), 'America/Chicago', 1)).toBe(
      '2027-11-07T15:00:00.000Z/2027-11-07T17:00:00.000Z',
    );
    // Over the change itself: three real hours from half past midnight.
    expect(span(visit('2027-03-14', '00:30', 3), 'America/Chicago', 1)).toBe(
      '2027-03-14T06:30:00.000Z/2027-03-14T09:30:00.000Z',
    );
    // A zone of half an hour, south of the equator: clocks go back on 2027-04-04.
    expect(span(visit('2027-04-03', '09:00', 2), 'Australia/Adelaide', 1)).toBe(
      '2027-04-02T22:30:00.000Z/2027-04-03T00:30:00.000Z',
    );
    expect(span(visit('2027-04-04', '09:00', 2), 'Australia/Adelaide', 1)).toBe(
      '2027-04-03T23:30:00.000Z/2027-04-04T01:30:00.000Z',
    );
  });

  it('ends on its last day, every day as long as the others, across a change of the clocks too', () => {
    // 24 hours of two people over two days: 6 hours a day. Saturday in winter time, Sunday in summer time.
    expect(span(visit('2027-03-13', '09:00', 24, 2), 'America/Chicago', 2)).toBe(
      '2027-03-13T15:00:00.000Z/2027-03-14T20:00:00.000Z',
    );
  });

  it('never runs into the day after', () => {
    expect(span(visit('2027-01-11', '20:00', 40), 'America/Chicago', 1)).toBe(
      '2027-01-12T02:00:00.000Z/2027-01-12T06:00:00.000Z',
    );
  });

  it('begins at its local time and stays within its days, whatever the zone and the day', () => {
    const zones = fc.constantFrom(
      'America/Chicago',
      'America/Halifax',
      'Europe/Lisbon',
      'Australia/Lord_Howe',
      'Asia/Tokyo',
    );
    const day = fc.integer({ min: 0, max: 730 }).map((days) => addDays('2026-11-24', days));
    fc.assert(
      fc.property(
        zones,
        day,
        fc.integer({ min: 4, max: 20 }),
        fc.double({ min: 0, max: 200, noNaN: true }),
        fc.integer({ min: 1, max: 4 }),
        (zone, firstDay, hour, hours, days) => {
          const startsAt = `${String(hour).padStart(2, '0')}:15`;
          const found = visitSpan(visit(firstDay, startsAt, hours, days), zone, 2);
          if (found.kind !== 'time') throw new Error('a visit with a time was given whole days');
          const start = DateTime.fromJSDate(found.start, { zone });
          expect(start.toFormat('yyyy-LL-dd HH:mm')).toBe(`${firstDay} ${startsAt}`);
          expect(found.end.getTime()).toBeGreaterThan(found.start.getTime());
          expect(
            DateTime.fromJSDate(found.end, { zone }).minus({ milliseconds: 1 }).toISODate()! <=
              addDays(firstDay, days - 1),
          ).toBe(true);
        },
      ),
    );
  });

  it('refuses a zone that nobody knows', () => {
    expect(() => visitSpan(visit('2027-01-11', '08:30', 1), 'Nowhere/Land', 1)).toThrow(/is no moment/);
  });
});
