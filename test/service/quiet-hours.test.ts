import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { quietHoursOf, quietHoursReason, quietUntil } from '../../src/service/quiet-hours.ts';

const NIGHT = { from: '20:00', to: '08:00' };
const until = (iso: string, zone: string, hours = NIGHT): string | null =>
  quietUntil(DateTime.fromISO(iso, { zone: 'utc' }), zone, hours)
    ?.toUTC()
    .toISO({ suppressMilliseconds: true }) ?? null;

describe('quietUntil', () => {
  it('counts on the clock of the zone, over midnight', () => {
    expect(until('2027-01-16T00:59:59Z', 'America/New_York')).toBeNull();
    expect(until('2027-01-16T01:00:00Z', 'America/New_York')).toBe('2027-01-16T13:00:00Z');
    expect(until('2027-01-16T12:59:59Z', 'America/New_York')).toBe('2027-01-16T13:00:00Z');
    expect(until('2027-01-16T13:00:00Z', 'America/New_York')).toBeNull();
    // three hours further west it is quiet at other moments
    expect(until('2027-01-16T13:00:00Z', 'America/Los_Angeles')).toBe('2027-01-16T16:00:00Z');
  });

  it('ends at the same time of day in the nights in which clocks change', () => {
    expect(until('2027-03-14T01:30:00Z', 'America/New_York')).toBe('2027-03-14T12:00:00Z');
    expect(until('2027-11-07T01:30:00Z', 'America/New_York')).toBe('2027-11-07T13:00:00Z');
  });

  it('knows hours within one day', () => {
    const noon = { from: '12:00', to: '13:30' };
    expect(until('2027-01-16T12:10:00Z', 'UTC', noon)).toBe('2027-01-16T13:30:00Z');
    expect(until('2027-01-16T13:30:00Z', 'UTC', noon)).toBeNull();
    expect(until('2027-01-16T23:00:00Z', 'UTC', noon)).toBeNull();
  });
});

describe('what says quiet hours', () => {
  it('is a span or none', () => {
    expect(quietHoursReason('20:00-08:00')).toBeNull();
    expect(quietHoursOf('20:00-08:00')).toEqual(NIGHT);
    expect(quietHoursReason('none')).toBeNull();
    expect(quietHoursOf('none')).toBeNull();
    for (const text of ['20-8', '24:00-08:00', '20:00', '20:00-20:00', '20:00-8:00'])
      expect(quietHoursReason(text)).toContain('none');
  });
});
