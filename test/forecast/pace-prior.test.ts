import { describe, expect, it } from 'vitest';
import type { LearnedFacts } from '../../src/forecast/evidence/learned-facts.ts';
import { pacePrior } from '../../src/forecast/pace-prior.ts';

/** Decay zone 3: a climate factor of 1.6. */
const ZONE_3 = { kind: 'decay-zone', zone: 3 } as const;
const learnedOf = (...paces: LearnedFacts['paces']): LearnedFacts => ({ version: 4, paces, footing: null });

describe('the prior of the pace', () => {
  it('is the published rate phi k_wood k_climate and spread where nothing was learned', () => {
    for (const learned of [null, learnedOf()]) {
      const pine = pacePrior('ground-contact', ZONE_3, learned);
      expect(pine.medianRate).toBeCloseTo(0.055 * 5.44 * 1.6, 12);
      expect(pine.spread).toBe(0.6);
    }
    const untreated = pacePrior('untreated-softwood', ZONE_3, null);
    expect(untreated.medianRate).toBeCloseTo(5.44 * 1.6, 12);
    expect(untreated.spread).toBe(0.45);
    expect(pacePrior('does-not-rot', ZONE_3, null)).toEqual({ medianRate: 0, spread: 0 });
  });

  it('is the published rate times exp(shift), with the spread that was learned, for that class alone', () => {
    const learned = learnedOf(
      { treatmentClass: 'heavy-duty', logShift: -0.4, spread: 0.35 },
      { treatmentClass: 'ground-contact', logShift: 0.2, spread: 0.3 },
    );
    const pine = pacePrior('ground-contact', ZONE_3, learned);
    expect(pine.medianRate).toBeCloseTo(0.055 * 5.44 * 1.6 * Math.exp(0.2), 12);
    expect(pine.spread).toBe(0.3);
    const heavy = pacePrior('heavy-duty', ZONE_3, learned);
    expect(heavy.medianRate).toBeCloseTo(0.035 * 5.44 * 1.6 * Math.exp(-0.4), 12);
    expect(heavy.spread).toBe(0.35);
    expect(pacePrior('extreme-duty', ZONE_3, learned).medianRate).toBeCloseTo(0.025 * 5.44 * 1.6, 12);
  });
});
