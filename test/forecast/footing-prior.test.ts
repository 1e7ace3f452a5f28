import { describe, expect, it } from 'vitest';
import { FOOTING_SPREAD } from '../../src/capacity/soil-class.ts';
import { footingPrior } from '../../src/forecast/footing-prior.ts';

describe('the prior of footing resistance', () => {
  it('is as judged where nothing was learned of it', () => {
    for (const learned of [null, { version: 1, paces: [], footing: null }]) {
      expect(footingPrior(learned)).toEqual({ logShift: 0, spread: FOOTING_SPREAD });
    }
    expect(FOOTING_SPREAD).toBeGreaterThan(0);
  });

  it('is what was learned of it', () => {
    const learned = { version: 1, paces: [], footing: { logShift: -0.2, spread: 0.25 } };
    expect(footingPrior(learned)).toEqual({ logShift: -0.2, spread: 0.25 });
  });
});
