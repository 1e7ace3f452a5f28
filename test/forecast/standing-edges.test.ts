import { describe, expect, it } from 'vitest';
import { isWorse, judgeStanding, standingAfter } from '../../src/forecast/standing.ts';

const ORDER = ['clear', 'closing', 'short', 'short from new'] as const;

describe('standings', () => {
  it('are worse the later they come in clear, closing, short, short from new, and none is worse than itself', () => {
    ORDER.forEach((a, i) => {
      ORDER.forEach((b, j) => {
        expect(isWorse(a, b), `${a} over ${b}`).toBe(i > j);
      });
    });
  });

  it('are short, not short from new, where sound wood held just the design gust', () => {
    expect(judgeStanding({ builtMps: 45, seasonsMps: [44] }, 45, 2)).toBe('short');
    expect(judgeStanding({ builtMps: 44.9, seasonsMps: [44] }, 45, 2)).toBe('short from new');
  });

  it('are clear of a fence built too weak and since made strong enough', () => {
    expect(judgeStanding({ builtMps: 40, seasonsMps: [46, 46, 46] }, 45, 2)).toBe('clear');
  });

  it('are never closing without a look-ahead', () => {
    expect(judgeStanding({ builtMps: 60, seasonsMps: [46, 30] }, 45, 0)).toBe('clear');
  });

  it('are refused without a season', () => {
    expect(() => judgeStanding({ builtMps: 60, seasonsMps: [] }, 45, 2)).toThrow(RangeError);
    expect(() => judgeStanding({ builtMps: 60, seasonsMps: [] }, 45, 2)).toThrow('no season given');
  });
});

describe('a standing kept', () => {
  it('stays where it is judged the same again, whatever the margin says', () => {
    expect(standingAfter('clear', 'clear', 'short')).toBe('clear');
    expect(standingAfter('closing', 'closing', 'closing')).toBe('closing');
  });

  it('improves as far as the margin lets it and no further', () => {
    expect(standingAfter('short', 'clear', 'closing')).toBe('closing');
    expect(standingAfter('short', 'clear', 'short')).toBe('short');
    expect(standingAfter('closing', 'clear', 'short')).toBe('closing');
    expect(standingAfter('short from new', 'clear', 'clear')).toBe('clear');
  });

  it('worsens as judged, not as the margin would have it', () => {
    expect(standingAfter('clear', 'closing', 'short')).toBe('closing');
  });
});
