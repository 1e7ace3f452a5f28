import { describe, expect, it } from 'vitest';
import { isCrowded, lastDayWithRoom, weeksOverfilled } from '../../../src/season/visit/room-for-visit.ts';
import type { VisitSpan } from '../../../src/season/visit/visits-that-stand.ts';

/** 8 hours a day from Monday, November 30, 2026 to the Friday of the week after. */
const hoursOn = (_: string, day: string): number =>
  (day >= '2026-11-30' && day <= '2026-12-04') || (day >= '2026-12-07' && day <= '2026-12-11') ? 8 : 0;
const span = (firstDay: string, lastDay: string, personHours: number): VisitSpan => ({
  crewRef: 'north',
  firstDay,
  lastDay,
  travelPersonHours: 0,
  items: [{ personHours }],
});
const visit = span('2026-12-01', '2026-12-01', 20);

describe('room for a visit', () => {
  it('is found on the days that hold its hours beside the others', () => {
    expect(lastDayWithRoom({ visit, others: [], hoursOn })).toBe('2026-12-03');
    expect(lastDayWithRoom({ visit, others: [span('2026-12-02', '2026-12-02', 8)], hoursOn })).toBe('2026-12-04');
    // the other may work on Monday: it leaves Tuesday to this one
    expect(lastDayWithRoom({ visit, others: [span('2026-11-30', '2026-12-01', 8)], hoursOn })).toBe('2026-12-03');
    expect(lastDayWithRoom({ visit, others: [span('2026-12-01', '2026-12-01', 8)], hoursOn })).toBeNull();
  });

  it('is missing where the others need its days', () => {
    const day = { ...visit, lastDay: '2026-12-03' };
    expect(isCrowded({ visit: day, others: [span('2026-12-02', '2026-12-02', 4)], hoursOn })).toBe(false);
    expect(isCrowded({ visit: day, others: [span('2026-12-02', '2026-12-02', 5)], hoursOn })).toBe(true);
  });

  it('is missing in a week that it fills beyond its hours', () => {
    const long = span('2026-12-03', '2026-12-08', 24);
    expect(weeksOverfilled({ visit: long, others: [], hoursOn })).toEqual([]);
    expect(weeksOverfilled({ visit: long, others: [span('2026-12-07', '2026-12-11', 35)], hoursOn })).toEqual([
      { monday: '2026-12-07', tooMany: 3 },
    ]);
  });
});
