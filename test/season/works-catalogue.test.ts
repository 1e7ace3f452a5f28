import { describe, expect, it } from 'vitest';
import { WORKS_KINDS } from '../../src/register/works-record.ts';
import { catalogueFaults } from '../../src/season/catalogue-checks.ts';
import { catalogueProvenance, SHIPPED_CATALOGUE } from '../../src/season/works-catalogue.ts';
import { amountAt, worksCost } from '../../src/season/works-cost.ts';

const ENTRIES = Object.values(SHIPPED_CATALOGUE);
const SWAP = SHIPPED_CATALOGUE['post-swap'];

describe('the shipped catalogue', () => {
  it('has an inspection and every kind of works the register takes, each under its own name', () => {
    expect(Object.keys(SHIPPED_CATALOGUE).sort()).toEqual(['inspect', ...WORKS_KINDS].sort());
    for (const [kind, entry] of Object.entries(SHIPPED_CATALOGUE)) expect(entry.kind).toBe(kind);
  });

  it('passes its own checks, costs money and takes time', () => {
    for (const entry of ENTRIES) {
      expect(catalogueFaults(entry)).toEqual([]);
      expect(amountAt(entry.price, 10)).toBeGreaterThan(0);
      expect(amountAt(entry.personHours, 10)).toBeGreaterThan(0);
    }
  });

  it('asks more for each kind than its materials cost', () => {
    for (const { kind } of ENTRIES) {
      const { price, materialCost } = worksCost([{ kind, postCount: 12 }], SHIPPED_CATALOGUE);
      expect(price, kind).toBeGreaterThan(materialCost);
    }
  });

  it('gives notice before whatever is dug, and a week before the season to whatever is cast', () => {
    const where = (is: (entry: (typeof ENTRIES)[number]) => boolean): string[] =>
      ENTRIES.filter(is).map(({ kind }) => kind);
    const cast = ['footing-reset', 'post-swap', 'added-posts', 'rebuild'];
    expect(where(({ rules }) => rules.locateNoticeDays === 3).sort()).toEqual(
      ['drainage', 'steel-sleeve', ...cast].sort(),
    );
    expect(where(({ rules }) => rules.cureDays === 7).sort()).toEqual([...cast].sort());
    expect(where(({ rules }) => rules.licensedApplicator)).toEqual(['groundline-treatment']);
    expect(where(({ rules }) => rules.permit)).toEqual(['rebuild']);
  });

  it('says of every number that it is judgement, and of the notice days that they are from memory', () => {
    for (const part of ['personHours', 'materials', 'price', 'cureDays', 'otherRules', 'build'] as const) {
      expect(catalogueProvenance(SWAP, part).tag).toBe('judgement');
    }
    expect(catalogueProvenance(SWAP, 'locateNoticeDays').tag).toBe('memory');
    expect(catalogueProvenance(SHIPPED_CATALOGUE.liner, 'locateNoticeDays').tag).toBe('judgement');
    expect(SWAP.source).toMatch(/judgement/);
  });
});

describe('catalogue checks', () => {
  it('names the place, the value, the reason and the way out', () => {
    const faults = catalogueFaults({ ...SWAP, price: { fixed: -1, perPost: 185 } });
    expect(faults).toEqual([
      {
        field: 'price.fixed',
        value: -1,
        reason: 'is not from 0 to 100000000',
        wayOut: 'write a number from 0 to 100000000',
      },
    ]);
  });

  it('refuses half days, what is not a number, materials without a name or listed twice, and works without hours', () => {
    const [post, concrete] = SWAP.materials;
    const faults = catalogueFaults({
      ...SWAP,
      personHours: { fixed: 0, perPost: 0 },
      rules: { ...SWAP.rules, cureDays: 2.5 },
      build: { ...SWAP.build, embedmentM: Number.NaN },
      materials: [post!, { ...concrete!, name: ' ' }, { ...post!, unitCost: Number.POSITIVE_INFINITY }],
    });
    expect(faults.map(({ field }) => field)).toEqual([
      'rules.cureDays',
      'build.embedmentM',
      'materials[1].name',
      'materials[2].unitCost',
      'materials[2].name',
      'personHours',
    ]);
    expect(faults[0]!.reason).toBe('is not a whole number of days');
  });
});

describe('the cost of works', () => {
  it('adds up what counts a post and takes the largest of what counts once', () => {
    const { price, personHours, materialCost } = worksCost(
      [
        { kind: 'post-swap', postCount: 2 },
        { kind: 'groundline-treatment', postCount: 8 },
      ],
      SHIPPED_CATALOGUE,
    );
    // Price max(150, 90) + 2 x 185 + 8 x 38; hours max(1, 0.5) + 2 x 1.8 + 8 x 0.35.
    expect(price).toBe(824);
    expect(personHours).toBeCloseTo(7.4, 12);
    // 2 x (24 + 3 x 6.5 + 7) + 8 x (0.25 x 18 + 6).
    expect(materialCost).toBeCloseTo(185, 12);
  });
});
