import { describe, expect, it } from 'vitest';
import { IMPROVEMENT_MARGIN, judgeStanding, standingAfter } from '../../src/forecast/standing.ts';

const judge = (seasonsMps: readonly number[], builtMps = 60, gust = 45) =>
  judgeStanding({ builtMps, seasonsMps }, gust, 2);

describe('standing', () => {
  it('is clear while it holds the design gust through the look-ahead', () => {
    expect(judge([50, 48, 46, 44])).toBe('clear');
  });
  it('is closing where it goes short within two seasons after season 1', () => {
    expect(judge([50, 46, 44.9])).toBe('closing');
    expect(judge([50, 44.9, 44])).toBe('closing');
  });
  it('is short once season 1 does not hold it, and short from new where sound wood never did', () => {
    expect(judge([44.9, 44])).toBe('short');
    expect(judge([44.9, 44], 44.95)).toBe('short from new');
  });
  it('counts a speed equal to the design gust as held', () => {
    expect(judge([45, 45, 45])).toBe('clear');
  });
});

describe('a standing that changes', () => {
  const changed = (previous: 'clear' | 'closing' | 'short' | 'short from new', speeds: readonly number[]) =>
    standingAfter(
      previous,
      judge(speeds),
      judgeStanding({ builtMps: 60, seasonsMps: speeds }, 45 * IMPROVEMENT_MARGIN, 2),
    );

  it('worsens at once', () => {
    expect(changed('clear', [44.99, 44, 43])).toBe('short');
    expect(changed('clear', [46, 44.99, 43])).toBe('closing');
  });
  it('does not flap: a reading that lifts it 1 % over the gust leaves it short', () => {
    expect(changed('short', [45.5, 45.4, 45.3])).toBe('short');
  });
  it('improves once it holds 3 % more than the gust', () => {
    expect(changed('short', [60, 59, 58])).toBe('clear');
    expect(changed('short', [47, 46.2, 45.2])).toBe('closing');
  });
  it('is taken as judged the first time', () => {
    expect(standingAfter(null, 'closing', 'short')).toBe('closing');
  });
});
