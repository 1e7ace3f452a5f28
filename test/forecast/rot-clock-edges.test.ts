import { describe, expect, it } from 'vitest';
import { exposureYears, LINER_PACE, type RotClock, RUNNING_CLOCK } from '../../src/forecast/rot-clock.ts';
import { DAYS_PER_YEAR } from '../../src/units/calendar-day.ts';

/** Days of rot that count from day 100 to a day. */
const daysTo = (day: number, clock: Partial<RotClock>): number =>
  exposureYears({ stops: [], linerFromDay: null, ...clock }, 100, day) * DAYS_PER_YEAR;

describe('a stop of the rot clock', () => {
  it('counts only as far as it lies between installation and the day', () => {
    expect(daysTo(200, { stops: [{ fromDay: 0, toDay: 130 }] })).toBeCloseTo(70, 9);
    expect(daysTo(200, { stops: [{ fromDay: 180, toDay: 400 }] })).toBeCloseTo(80, 9);
    expect(daysTo(200, { stops: [{ fromDay: 0, toDay: 400 }] })).toBeCloseTo(0, 9);
    expect(daysTo(200, { stops: [{ fromDay: 0, toDay: 90 }] })).toBeCloseTo(100, 9);
    expect(daysTo(200, { stops: [{ fromDay: 210, toDay: 400 }] })).toBeCloseTo(100, 9);
  });

  it('does not count again within a longer one, in whatever order they are given', () => {
    const stops = [
      { fromDay: 120, toDay: 180 },
      { fromDay: 130, toDay: 140 },
      { fromDay: 170, toDay: 190 },
    ];
    expect(daysTo(200, { stops })).toBeCloseTo(30, 9);
    expect(daysTo(200, { stops: [...stops].reverse() })).toBeCloseTo(30, 9);
  });

  it('leaves the list of stops as it was', () => {
    const stops = [
      { fromDay: 150, toDay: 160 },
      { fromDay: 120, toDay: 130 },
    ];
    daysTo(200, { stops });
    expect(stops.map(({ fromDay }) => fromDay)).toEqual([150, 120]);
  });
});

describe('a liner', () => {
  it('halves the pace from the day it was put on, from the first day where it came before the post', () => {
    expect(LINER_PACE).toBe(0.5);
    expect(daysTo(200, { linerFromDay: 160 })).toBeCloseTo(80, 9);
    expect(daysTo(200, { linerFromDay: 100 })).toBeCloseTo(50, 9);
    expect(daysTo(200, { linerFromDay: 10 })).toBeCloseTo(50, 9);
  });

  it('does nothing before it is put on', () => {
    expect(daysTo(200, { linerFromDay: 200 })).toBeCloseTo(100, 9);
    expect(daysTo(200, { linerFromDay: 300 })).toBeCloseTo(100, 9);
  });

  it('halves nothing while a treatment stops the clock', () => {
    expect(daysTo(200, { linerFromDay: 140, stops: [{ fromDay: 130, toDay: 180 }] })).toBeCloseTo(40, 9);
  });
});

it('has no exposure on the day of installation nor before', () => {
  expect(daysTo(100, {})).toBe(0);
  expect(daysTo(99, { linerFromDay: 10 })).toBe(0);
});

it('runs without stop or liner where nothing was done', () => {
  expect(RUNNING_CLOCK).toEqual({ stops: [], linerFromDay: null });
});
