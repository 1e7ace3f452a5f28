import { describe, expect, it } from 'vitest';
import { tallyDays } from '../../../src/season/visit/day-tally.ts';

const [MON, TUE, WED] = ['2027-01-11', '2027-01-12', '2027-01-13'] as const;
const offered = [MON, TUE, WED];
const says = (ownerRef: string, suits: readonly string[], asked: readonly string[] = offered) => ({
  ownerRef,
  offered: asked,
  suits,
});
const tally = (said: Parameters<typeof tallyDays>[0]['said'], proposed: string = WED) =>
  tallyDays({ offered, proposed, owners: ['A', 'B', 'C'], said });

describe('the day that suits most owners', () => {
  it('is counted by owners, and names those whom a day does not suit and those who said nothing', () => {
    const { days, best, answered, silent } = tally([says('A', [MON, TUE]), says('B', [TUE])]);
    expect(days).toEqual([
      { day: MON, suits: ['A'], doesNotSuit: ['B'] },
      { day: TUE, suits: ['A', 'B'], doesNotSuit: [] },
      { day: WED, suits: [], doesNotSuit: ['A', 'B'] },
    ]);
    expect([best?.day, answered, silent]).toEqual([TUE, ['A', 'B'], ['C']]);
  });

  it('is of equals the proposed one, else the earliest', () => {
    expect(tally([says('A', [MON, WED])]).best?.day).toBe(WED);
    expect(tally([says('A', [TUE, MON])]).best?.day).toBe(MON);
    expect(tally([says('A', [MON, WED]), says('B', [MON])]).best?.day).toBe(MON);
  });

  it('is none where nobody marked one, or none suits', () => {
    expect(tally([]).best).toBeNull();
    const { best, answered, days } = tally([says('A', [])]);
    expect([best, answered]).toEqual([null, ['A']]);
    expect(days.every(({ doesNotSuit }) => doesNotSuit.includes('A'))).toBe(true);
  });

  it('counts a day on which somebody was not asked neither way, and nobody who owns none of the fences', () => {
    const { days } = tally([says('A', [MON], [MON, TUE]), says('X', offered)]);
    expect(days[2]).toEqual({ day: WED, suits: [], doesNotSuit: [] });
    expect(days[0]?.suits).toEqual(['A']);
  });
});
