import { describe, expect, it } from 'vitest';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { middleDay, seasonDays } from '../../src/forecast/season-days.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';

const swap = (day: string) => ({ ref: `W-${day}`, day, posts: [2], kind: 'post-swap', wood: PINE_4X4 }) as const;
const dayOf = (facts: FenceFacts, season: number, seasonOneYear: number): string | undefined =>
  seasonDays(facts, seasonOneYear).find((entry) => entry.season === season)?.day;

describe('the days at which a fence is looked at', () => {
  it('are its installation, every opening since, and thirty openings from season 1 on', () => {
    const days = seasonDays({ ...EXAMPLE_FENCE, installed: { earliest: '2024-05-01', latest: '2024-05-01' } }, 2027);
    expect(days.slice(0, 4)).toEqual([
      { label: 'new', season: null, day: '2024-05-01' },
      { label: '2025', season: -1, day: '2025-03-01' },
      { label: '2026', season: 0, day: '2026-03-01' },
      { label: '2027', season: 1, day: '2027-03-01' },
    ]);
    expect(days.at(-1)).toEqual({ label: '2056', season: 30, day: '2056-03-01' });
    expect(days).toHaveLength(33);
  });

  it('do not name the opening on which it was installed twice', () => {
    expect(seasonDays(EXAMPLE_FENCE, 2017).slice(0, 3)).toEqual([
      { label: 'new', season: null, day: '2015-03-01' },
      { label: '2016', season: 0, day: '2016-03-01' },
      { label: '2017', season: 1, day: '2017-03-01' },
    ]);
  });

  it('count the opening later in the year of installation as one', () => {
    const winter = { ...WARM_SITE, seasonWindow: { opens: '10-01', closes: '03-31', share: 0.85 } };
    expect(seasonDays({ ...EXAMPLE_FENCE, site: winter }, 2017).slice(0, 3)).toEqual([
      { label: 'new', season: null, day: '2015-03-01' },
      { label: '2015/16', season: -1, day: '2015-10-01' },
      { label: '2016/17', season: 0, day: '2016-10-01' },
    ]);
  });
});

describe('season 1', () => {
  it('is looked at at the latest works since it opened, in whatever order they are recorded', () => {
    const works = [swap('2026-07-04'), swap('2026-09-01'), swap('2026-04-01')];
    expect(dayOf({ ...EXAMPLE_FENCE, works }, 1, 2026)).toBe('2026-09-01');
  });

  it('is looked at at its opening where works lie before it', () => {
    expect(dayOf({ ...EXAMPLE_FENCE, works: [swap('2025-12-24')] }, 1, 2026)).toBe('2026-03-01');
  });

  it('does not see works of the next season, not even on the day that one opens', () => {
    expect(dayOf({ ...EXAMPLE_FENCE, works: [swap('2027-03-01')] }, 1, 2026)).toBe('2026-03-01');
    expect(dayOf({ ...EXAMPLE_FENCE, works: [swap('2027-02-28')] }, 1, 2026)).toBe('2027-02-28');
  });
});

describe('an install date known as a range', () => {
  it('counts from its middle, the earlier of two', () => {
    expect(middleDay({ earliest: '2014-01-01', latest: '2014-01-31' })).toBe('2014-01-16');
    expect(middleDay({ earliest: '2014-01-01', latest: '2014-01-04' })).toBe('2014-01-02');
    expect(middleDay({ earliest: '1960-01-01', latest: '1960-01-04' })).toBe('1960-01-02');
  });
});
