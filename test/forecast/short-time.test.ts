import { describe, expect, it } from 'vitest';
import { MEDIAN_POINT, singlePoint } from '../../src/forecast/belief-points.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { normalCdf } from '../../src/forecast/normal-distribution.ts';
import { postGroups } from '../../src/forecast/post-group.ts';
import { shortTime } from '../../src/forecast/short-time.ts';
import { classValues, stateModel } from '../../src/forecast/state-model.ts';
import { dayFromNumber, dayNumber } from '../../src/units/calendar-day.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';
import { lastState, outcome } from './made-up-events.ts';

const FROM = dayNumber('2027-03-01');
const caseOf = (gustMps: number, facts: Partial<FenceFacts> = {}) => ({
  site: WARM_SITE,
  state: lastState(facts),
  gustMps,
});
const timeOf = (gustMps: number, facts: Partial<FenceFacts> = {}, point = MEDIAN_POINT) =>
  shortTime(caseOf(gustMps, facts), FROM, point);
/** Snap speed of the posts that count, so many years from 1 March 2027 [m/s]. */
function speedAt(years: number, facts: Partial<FenceFacts> = {}, sound = false): number {
  const model = stateModel(WARM_SITE, lastState(facts), MEDIAN_POINT);
  const { line, ends } = postGroups(model.classes.classes);
  const { snapMps } = classValues(model, dayFromNumber(FROM + years * 365.2425), sound);
  return Math.min(...(line ?? ends)!.members.map((index) => snapMps[index]![0]!));
}

describe('when a fence goes short', () => {
  it('is where its speed falls under the gust, straight between one year and the next', () => {
    for (const gustMps of [50, 46, 40, 30]) {
      const { yearsAhead, fromNew } = timeOf(gustMps);
      const [before, after] = [Math.floor(yearsAhead!), Math.ceil(yearsAhead!)];
      const part = (speedAt(before) - gustMps) / (speedAt(before) - speedAt(after));
      expect(fromNew).toBe(false);
      expect(part).toBeGreaterThan(0);
      expect(part).toBeLessThanOrEqual(1);
      expect(yearsAhead).toBeCloseTo(before + part, 3);
    }
  });

  it('comes before season 1 of an old fence, and sooner the stronger the gust', () => {
    const times = [30, 40, 46, 55].map((gustMps) => timeOf(gustMps).yearsAhead!);
    expect(times).toEqual([...times].sort((a, b) => b - a));
    expect(timeOf(55).yearsAhead).toBeLessThan(0);
    expect(timeOf(55).yearsAhead).toBeGreaterThan(-12);
  });

  it('is its build where sound wood never held the gust: in the middle of a range of dates', () => {
    const sound = speedAt(-12, {}, true);
    expect(timeOf(sound * 1.001)).toEqual({ yearsAhead: -12, fromNew: true });
    expect(timeOf(sound * 0.999).fromNew).toBe(false);
    const installed = { earliest: '2016-03-01', latest: '2018-03-01' };
    const middle = timeOf(sound * 1.001, { installed });
    expect(middle.fromNew).toBe(true);
    expect(middle.yearsAhead).toBeCloseTo(-10, 2);
  });

  it('takes the build as sound, whatever was found since: posts broken in 2022 make it short from then, not from new', () => {
    // Sound it holds 57.7 m/s; the median post of the line is among the three that snapped.
    const { yearsAhead, fromNew } = timeOf(40, { outcomes: [outcome({ posts: [4, 5, 6] })] });
    expect(fromNew).toBe(false);
    expect(yearsAhead).toBeLessThan(timeOf(40).yearsAhead!);
  });

  it('is not within sixty years where the wood does not rot, or not before then', () => {
    const steel = { wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 3000 } } as const;
    expect(timeOf(40, steel)).toEqual({ yearsAhead: null, fromNew: false });
    const [last, later] = [speedAt(60), speedAt(59)];
    expect(last).toBeLessThan(later);
    expect(timeOf(last * 0.999)).toEqual({ yearsAhead: null, fromNew: false });
    const between = timeOf((last + later) / 2).yearsAhead!;
    expect(between).toBeCloseTo(59.5, 1);
  });

  it('is never reached by a fence that is built only after those sixty years', () => {
    const installed = { earliest: '2090-03-01', latest: '2090-03-01' };
    expect(timeOf(20, { installed })).toEqual({ yearsAhead: null, fromNew: false });
  });

  it('is that of the ends where there are no line posts, and of the unknowns as given', () => {
    const run = { ...EXAMPLE_FENCE.run, runLengthM: 2, postSpacingM: 2.4 };
    const { yearsAhead } = timeOf(60, { run });
    expect(yearsAhead).not.toBeNull();
    expect(speedAt(Math.ceil(yearsAhead!), { run })).toBeLessThan(60);
    const fast = singlePoint({ pace: 1 }, normalCdf);
    expect(timeOf(40, {}, fast).yearsAhead!).toBeLessThan(timeOf(40).yearsAhead!);
  });
});
