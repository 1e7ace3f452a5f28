import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exposureYears, type RotClock, RUNNING_CLOCK } from '../../src/forecast/rot-clock.ts';
import { DAYS_PER_YEAR } from '../../src/units/calendar-day.ts';

const years = (n: number): number => n * DAYS_PER_YEAR;
const stop = (from: number, to: number) => ({ fromDay: years(from), toDay: years(to) });

describe('the rot clock', () => {
  it('runs from installation and not before', () => {
    expect(exposureYears(RUNNING_CLOCK, years(10), years(9))).toBe(0);
    expect(exposureYears(RUNNING_CLOCK, years(10), years(22))).toBeCloseTo(12, 12);
  });
  it('stands still for the years of a treatment', () => {
    const clock: RotClock = { stops: [stop(5, 10)], linerFromDay: null };
    expect(exposureYears(clock, 0, years(7))).toBeCloseTo(5, 12);
    expect(exposureYears(clock, 0, years(20))).toBeCloseTo(15, 12);
  });
  it('does not count an early renewal twice', () => {
    const clock: RotClock = { stops: [stop(8, 13), stop(5, 10)], linerFromDay: null };
    expect(exposureYears(clock, 0, years(20))).toBeCloseTo(12, 12);
  });
  it('runs at half pace behind a liner', () => {
    expect(exposureYears({ stops: [], linerFromDay: years(4) }, 0, years(10))).toBeCloseTo(7, 12);
    expect(exposureYears({ stops: [stop(6, 8)], linerFromDay: years(4) }, 0, years(10))).toBeCloseTo(6, 12);
  });
  it('never runs backwards, nor faster than time, whatever was done', () => {
    const day = fc.integer({ min: 0, max: 20_000 });
    const stops = fc.array(
      fc.tuple(day, day).map(([a, b]) => ({ fromDay: Math.min(a, b), toDay: Math.max(a, b) })),
      { maxLength: 5 },
    );
    fc.assert(
      fc.property(stops, fc.option(day), day, day, day, (list, linerFromDay, installed, a, b) => {
        const clock: RotClock = { stops: list, linerFromDay };
        const [early, late] = [Math.min(a, b), Math.max(a, b)];
        const gained = exposureYears(clock, installed, late) - exposureYears(clock, installed, early);
        expect(gained).toBeGreaterThanOrEqual(-1e-9);
        expect(gained * DAYS_PER_YEAR).toBeLessThanOrEqual(late - early + 1e-6);
      }),
    );
  });
});
