import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CatalogueKind } from '../../../src/season/catalogue-entry.ts';
import { correctedHours, type UsedHours, withCorrectedHours } from '../../../src/season/visit/corrected-hours.ts';
import { SHIPPED_CATALOGUE } from '../../../src/season/works-catalogue.ts';
import { worksCost } from '../../../src/season/works-cost.ts';

/** Post swap: 1 h and 1.8 h a post. */
const swap = (posts: number, ratio: number): UsedHours => ({
  works: [{ kind: 'post-swap', postCount: posts }],
  personHours: (1 + 1.8 * posts) * ratio,
});
const factorOf = (used: readonly UsedHours[], kind: CatalogueKind): number | undefined =>
  correctedHours(used, SHIPPED_CATALOGUE).find((each) => each.kind === kind)?.factor;

describe('hours that crews used', () => {
  it('leave the catalogue as it is where there are none', () => {
    expect(correctedHours([], SHIPPED_CATALOGUE)).toEqual([]);
    expect(withCorrectedHours(SHIPPED_CATALOGUE, [])).toEqual(SHIPPED_CATALOGUE);
  });

  it('pull a kind half of the way once five visits tell of it, and nearly all of it after many', () => {
    const visits = (count: number): readonly UsedHours[] => Array.from({ length: count }, () => swap(3, 1.4));
    expect(factorOf(visits(1), 'post-swap')).toBeCloseTo(1 + 0.4 / 6, 10);
    expect(factorOf(visits(5), 'post-swap')).toBeCloseTo(1.2, 10);
    expect(factorOf(visits(95), 'post-swap')).toBeCloseTo(1.38, 10);
    expect(correctedHours(visits(7), SHIPPED_CATALOGUE)).toMatchObject([{ kind: 'post-swap', visits: 7 }]);
  });

  it('weigh long visits more than short ones', () => {
    const long = swap(20, 2);
    const short = swap(1, 1);
    const used = 37 * 2 + 2.8;
    expect(factorOf([long, short], 'post-swap')).toBeCloseTo((5 + 2 * (used / (37 + 2.8))) / 7, 10);
  });

  it('are shared among kinds done together by their planned hours', () => {
    const works = [
      { kind: 'post-swap', postCount: 2 },
      { kind: 'groundline-treatment', postCount: 4 },
    ] as const;
    const planned = worksCost(works, SHIPPED_CATALOGUE).personHours;
    const found = correctedHours([{ works, personHours: planned * 1.5 }], SHIPPED_CATALOGUE);
    const sum = found.reduce((all, { plannedPersonHours }) => all + plannedPersonHours, 0);
    expect(sum).toBeCloseTo(planned, 10);
    for (const { usedPersonHours, plannedPersonHours } of found)
      expect(usedPersonHours / plannedPersonHours).toBeCloseTo(1.5, 10);
    // each counts as the part of a visit that it was
    const swapShare = (1 + 2 * 1.8) / planned;
    expect(found.find(({ kind }) => kind === 'post-swap')?.factor).toBeCloseTo(
      (5 + swapShare * 1.5) / (5 + swapShare),
      10,
    );
  });

  it('that are wildly off count as four times those planned, not more', () => {
    expect(factorOf([swap(3, 50)], 'post-swap')).toBe(factorOf([swap(3, 4)], 'post-swap'));
    expect(factorOf([swap(3, 0.001)], 'post-swap')).toBe(factorOf([swap(3, 0.25)], 'post-swap'));
  });

  it('multiply hours and nothing else', () => {
    const corrected = withCorrectedHours(SHIPPED_CATALOGUE, correctedHours([swap(3, 1.4)], SHIPPED_CATALOGUE));
    const { personHours, ...rest } = corrected['post-swap'];
    const { personHours: before, ...same } = SHIPPED_CATALOGUE['post-swap'];
    expect(rest).toEqual(same);
    expect(personHours.perPost / before.perPost).toBeCloseTo(1 + 0.4 / 6, 10);
    expect(corrected.rebuild).toEqual(SHIPPED_CATALOGUE.rebuild);
  });

  it('never move a factor past what any visit said, over random visits', () => {
    const drawn = fc.array(fc.tuple(fc.integer({ min: 1, max: 30 }), fc.double({ min: 0.3, max: 3.5, noNaN: true })), {
      minLength: 1,
      maxLength: 20,
    });
    fc.assert(
      fc.property(drawn, (visits) => {
        const factor = factorOf(
          visits.map(([posts, ratio]) => swap(posts, ratio)),
          'post-swap',
        )!;
        const ratios = [1, ...visits.map(([, ratio]) => ratio)];
        expect(factor).toBeGreaterThanOrEqual(Math.min(...ratios) - 1e-9);
        expect(factor).toBeLessThanOrEqual(Math.max(...ratios) + 1e-9);
      }),
    );
  });
});
