import { describe, expect, it } from 'vitest';
import { ALL_CHECKS } from './all-checks.ts';
import { checkOutcome, type PublishedCheck, within, withinAbsolute } from './published-check.ts';

const topics = [...new Set(ALL_CHECKS.map((check) => check.topic))];

for (const topic of topics) {
  describe(topic, () => {
    for (const check of ALL_CHECKS.filter((candidate) => candidate.topic === topic)) {
      it(`${check.id}: ${check.quantity}`, () => {
        const outcome = checkOutcome(check);
        expect(
          outcome.meets,
          `computed ${outcome.computed} ${check.unit}, published ${check.published} ${check.unit} (${check.source})`,
        ).toBe(true);
      });
    }
  });
}

describe('the checks themselves', () => {
  it('have an id each, and no two the same', () => {
    const ids = ALL_CHECKS.map((check) => check.id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });

  it('fail when a published number is moved beyond its tolerance, each of them', () => {
    const blind = ALL_CHECKS.filter((check) => {
      const { published, tolerance } = check;
      const wrong: PublishedCheck =
        typeof published === 'number'
          ? {
              ...check,
              published:
                published +
                2.1 * (tolerance.kind === 'relative' ? tolerance.value * Math.abs(published) : tolerance.value) +
                1e-8,
              tolerance: withinAbsolute(
                tolerance.kind === 'relative' ? tolerance.value * Math.abs(published) : tolerance.value,
              ),
            }
          : { ...check, published: `not ${published}` };
      return checkOutcome(wrong).meets;
    });
    expect(blind.map((check) => check.id)).toEqual([]);
  });

  it('refuse a number that is off, a verdict that differs, and NaN', () => {
    const check = (computed: () => number | string, published: number | string): PublishedCheck => ({
      id: 'made-up',
      topic: 'made up',
      quantity: 'made up',
      computed,
      published,
      unit: '-',
      tolerance: within(0.01),
      source: 'made up',
      tag: 'derived',
    });
    expect(checkOutcome(check(() => 1.0099, 1)).meets).toBe(true);
    expect(checkOutcome(check(() => 1.0101, 1)).meets).toBe(false);
    expect(checkOutcome(check(() => Number.NaN, 1)).meets).toBe(false);
    expect(checkOutcome(check(() => 'leans', 'snaps')).meets).toBe(false);
    expect(checkOutcome(check(() => '1', 1)).meets).toBe(false);
  });
});
