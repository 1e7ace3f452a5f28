import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import type { ScheduleFacts } from '../../src/service/sweep-schedule.ts';
import { clockTimeReason, lastScheduledMoment, sweepDue } from '../../src/service/sweep-schedule.ts';

const zone = 'America/Chicago';
const local = (text: string) => DateTime.fromISO(text, { zone });
const facts = (now: string, asOf: string | null, changes: Partial<ScheduleFacts> = {}): ScheduleFacts => ({
  now: local(now),
  zone,
  at: '04:30',
  modelVersion: '1',
  last: asOf === null ? null : { asOf: local(asOf), modelVersion: '1' },
  unfinished: false,
  changed: false,
  ...changes,
});

describe('lastScheduledMoment', () => {
  it.each([
    ['is today once the time has come', '2027-05-10T04:30', '2027-05-10T04:30'],
    ['is yesterday before', '2027-05-10T04:29', '2027-05-09T04:30'],
    ['is in the old year on the first morning of the new', '2027-01-01T02:00', '2026-12-31T04:30'],
  ])('%s', (_what, now, expected) => {
    expect(lastScheduledMoment(local(now), zone, '04:30').toISO()).toBe(local(expected).toISO());
  });

  it('lies 23 hours after the one before when clocks are put forward, 25 when they are put back', () => {
    const hours = (day: string, before: string) =>
      lastScheduledMoment(local(`${day}T12:00`), zone, '04:30')
        .diff(lastScheduledMoment(local(`${before}T12:00`), zone, '04:30'))
        .as('hours');
    expect(hours('2027-03-14', '2027-03-13')).toBe(23);
    expect(hours('2027-11-07', '2027-11-06')).toBe(25);
    expect(hours('2027-11-08', '2027-11-07')).toBe(24);
  });
});

describe('sweepDue', () => {
  it('sweeps once in the night when clocks are put forward', () => {
    expect(sweepDue(facts('2027-03-14T04:31', '2027-03-13T04:30'))).toBe('scheduled');
    expect(sweepDue(facts('2027-03-14T23:59', '2027-03-14T04:30'))).toBeNull();
  });

  it('sweeps once in the night when clocks are put back', () => {
    // 01:30 comes twice; neither brings a sweep
    const first = DateTime.fromISO('2027-11-07T06:30:00Z');
    const second = DateTime.fromISO('2027-11-07T07:30:00Z');
    for (const now of [first, second]) {
      expect(sweepDue({ ...facts('2027-11-07T00:00', '2027-11-06T04:30'), now })).toBeNull();
    }
    expect(sweepDue(facts('2027-11-07T04:30', '2027-11-06T04:30'))).toBe('scheduled');
    expect(sweepDue(facts('2027-11-07T04:31', '2027-11-07T04:30'))).toBeNull();
  });

  it('does not sweep again when the clock goes back an hour past the scheduled time', () => {
    expect(sweepDue(facts('2027-05-10T04:00', '2027-05-10T04:30'))).toBeNull();
    expect(sweepDue(facts('2027-05-10T04:45', '2027-05-10T04:30'))).toBeNull();
  });

  it('sweeps anew when the last sweep took its seasons from a clock that was days ahead', () => {
    expect(sweepDue(facts('2027-05-10T12:00', '2031-01-01T04:30'))).toBe('clock corrected');
  });

  it('makes one sweep due after three days of downtime', () => {
    expect(sweepDue(facts('2027-05-10T09:00', '2027-05-07T04:30'))).toBe('scheduled');
    expect(sweepDue(facts('2027-05-10T09:01', '2027-05-10T09:00'))).toBeNull();
  });

  it('sweeps in the first night of the year', () => {
    expect(sweepDue(facts('2027-01-01T04:30', '2026-12-31T04:30'))).toBe('scheduled');
  });

  it('finishes what was left unfinished before anything else', () => {
    expect(sweepDue(facts('2027-05-10T09:00', '2027-05-10T04:30', { unfinished: true }))).toBe('unfinished');
  });

  it('sweeps a register that never was, and one that a newer model has not seen', () => {
    expect(sweepDue(facts('2027-05-10T09:00', null))).toBe('never swept');
    expect(sweepDue(facts('2027-05-10T09:00', '2027-05-10T04:30', { modelVersion: '2' }))).toBe('model changed');
  });

  it('sweeps where records changed since', () => {
    const swept = (changed: boolean) => facts('2027-05-10T09:00', '2027-05-10T04:30', { changed });
    expect(sweepDue(swept(true))).toBe('register changed');
    expect(sweepDue(swept(false))).toBeNull();
  });
});

describe('clockTimeReason', () => {
  it('refuses the hours in which clocks change', () => {
    expect(['00:59', '03:31', '04:30', '23:59'].map(clockTimeReason)).toEqual([null, null, null, null]);
    for (const text of ['01:00', '02:15', '03:30']) expect(clockTimeReason(text)).toContain('write 04:30');
    for (const text of ['4:30', '24:00', 'noon', '']) expect(clockTimeReason(text)).toContain('not a time of day');
  });
});
