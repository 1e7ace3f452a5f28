import { describe, expect, it } from 'vitest';
import { isMonthDay } from '../../src/forecast/season-calendar.ts';
import { inSeason, SHIPPED_STORM_SEASONS } from '../../src/season/storm-season.ts';

describe('storm seasons that come with the program', () => {
  it('have a ref of their own, real days and a share of the year each', () => {
    expect(new Set(SHIPPED_STORM_SEASONS.map(({ ref }) => ref)).size).toBe(SHIPPED_STORM_SEASONS.length);
    for (const { window } of SHIPPED_STORM_SEASONS) {
      expect(isMonthDay(window.opens) && isMonthDay(window.closes)).toBe(true);
      expect(window.share).toBeGreaterThan(0);
      expect(window.share).toBeLessThanOrEqual(1);
    }
  });

  it('say of every number that was judged that it was', () => {
    for (const { ref, days, share } of SHIPPED_STORM_SEASONS) {
      expect(share.tag, ref).toBe(ref === 'year-round' ? 'derived' : 'judgement');
      expect(days.source, ref).not.toBe('');
    }
  });

  it('hold their first and their last day, also across the year end', () => {
    const winter = { opens: '10-01', closes: '03-31' };
    expect(inSeason(winter, '10-01')).toBe(true);
    expect(inSeason(winter, '12-31')).toBe(true);
    expect(inSeason(winter, '01-01')).toBe(true);
    expect(inSeason(winter, '03-31')).toBe(true);
    expect(inSeason(winter, '04-01')).toBe(false);
    expect(inSeason(winter, '09-30')).toBe(false);
    const summer = { opens: '06-01', closes: '11-30' };
    expect(inSeason(summer, '05-31')).toBe(false);
    expect(inSeason(summer, '06-01')).toBe(true);
    expect(inSeason(summer, '11-30')).toBe(true);
    expect(inSeason(summer, '12-01')).toBe(false);
  });
});
