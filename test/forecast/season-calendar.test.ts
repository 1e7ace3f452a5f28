import { describe, expect, it } from 'vitest';
import {
  closingDay,
  isMonthDay,
  openingDay,
  type SeasonWindow,
  seasonLabel,
  seasonOneYear,
  YEAR_ROUND,
} from '../../src/forecast/season-calendar.ts';
import { seasonDays } from '../../src/forecast/season-days.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';

const HURRICANE: SeasonWindow = { opens: '06-01', closes: '11-30', share: 0.97 };
const WINTER: SeasonWindow = { opens: '10-01', closes: '03-31', share: 0.85 };

describe('storm seasons', () => {
  it('are labelled by the year in which they open, with both years where they wrap', () => {
    expect(seasonLabel(HURRICANE, 2027)).toBe('2027');
    expect(seasonLabel(WINTER, 2027)).toBe('2027/28');
    expect(seasonLabel(WINTER, 2099)).toBe('2099/00');
  });

  it('season 1 is the one running, or the next to open', () => {
    expect(seasonOneYear(HURRICANE, '2026-05-31')).toBe(2026);
    expect(seasonOneYear(HURRICANE, '2026-06-01')).toBe(2026);
    expect(seasonOneYear(HURRICANE, '2026-11-30')).toBe(2026);
    expect(seasonOneYear(HURRICANE, '2026-12-01')).toBe(2027);
  });

  it('a season that wraps the year end is still running in the new year', () => {
    expect(seasonOneYear(WINTER, '2026-12-31')).toBe(2026);
    expect(seasonOneYear(WINTER, '2027-01-01')).toBe(2026);
    expect(seasonOneYear(WINTER, '2027-03-31')).toBe(2026);
    expect(seasonOneYear(WINTER, '2027-04-01')).toBe(2027);
    expect(closingDay(WINTER, 2026)).toBe('2027-03-31');
    expect(openingDay(WINTER, 2026)).toBe('2026-10-01');
  });

  it('without a storm season the calendar year is the season, and the year turns at midnight', () => {
    expect(seasonOneYear(YEAR_ROUND, '2026-12-31')).toBe(2026);
    expect(seasonOneYear(YEAR_ROUND, '2027-01-01')).toBe(2027);
  });

  it('refuses a month and day that not every year has', () => {
    expect(isMonthDay('02-28')).toBe(true);
    expect(isMonthDay('02-29')).toBe(false);
    expect(isMonthDay('13-01')).toBe(false);
    expect(isMonthDay('6-1')).toBe(false);
  });
});

describe('the days at which a fence is looked at', () => {
  it('takes season 1 at its opening while it is still to come', () => {
    const days = seasonDays(EXAMPLE_FENCE, 2027);
    expect(days.find(({ season }) => season === 1)).toEqual({ label: '2027', season: 1, day: '2027-03-01' });
  });

  it('takes a running season 1 at the latest works since it opened', () => {
    const works = [{ ref: 'W', day: '2026-07-04', posts: [2], kind: 'post-swap', wood: PINE_4X4 } as const];
    const days = seasonDays({ ...EXAMPLE_FENCE, works }, 2026);
    expect(days.find(({ season }) => season === 1)!.day).toBe('2026-07-04');
    expect(days.find(({ season }) => season === 2)!.day).toBe('2027-03-01');
  });

  it('takes a fence built in the running season at its building', () => {
    const installed = { earliest: '2026-08-08', latest: '2026-08-08' };
    const days = seasonDays({ ...EXAMPLE_FENCE, installed }, 2026);
    expect(days.slice(0, 2)).toEqual([
      { label: 'new', season: null, day: '2026-08-08' },
      { label: '2026', season: 1, day: '2026-08-08' },
    ]);
  });
});
