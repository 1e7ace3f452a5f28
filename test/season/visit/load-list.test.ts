import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { materialNeeds } from '../../../src/season/visit/load-list.ts';
import type { VisitWorks } from '../../../src/season/visit/visit.ts';
import { SHIPPED_CATALOGUE, type WorksCatalogue } from '../../../src/season/works-catalogue.ts';

const works = (kind: VisitWorks['kind'], postCount: number): VisitWorks => ({
  kind,
  posts: Array.from({ length: postCount }, (_, index) => index + 1),
  postCount,
});
const need = (needs: ReturnType<typeof materialNeeds>, name: string) => needs.find((each) => each.name === name);

describe('what works take', () => {
  it('adds the same material up over kinds and fences, by hand', () => {
    // Two swapped posts and one more at another fence: 3 bags a post; four footings reset: 4 bags each.
    const needs = materialNeeds(
      [works('post-swap', 2), works('post-swap', 1), works('footing-reset', 4)],
      SHIPPED_CATALOGUE,
    );
    expect(need(needs, 'concrete mix, 80 lb')).toMatchObject({
      unit: 'bag',
      quantity: 25,
      toTake: 25,
      unitCost: 6.5,
      cost: 162.5,
      kinds: ['footing-reset', 'post-swap'],
    });
    expect(need(needs, 'treated post, 10 ft')).toMatchObject({ quantity: 3, toTake: 3, cost: 72 });
    expect(needs.map(({ name }) => name)).toEqual([
      'brackets and screws, set',
      'concrete mix, 80 lb',
      'treated post, 10 ft',
    ]);
  });

  it('rounds what comes whole up once, over everything, and what is weighed to tenths', () => {
    // Drain pipe: 1 + 0.8 a post. Two fences of 3 and 4 posts: 3.4 + 4.2 = 7.6 pieces, 8 and not 4 + 5.
    const needs = materialNeeds(
      [works('drainage', 3), works('drainage', 4), works('groundline-treatment', 5)],
      SHIPPED_CATALOGUE,
    );
    expect(need(needs, 'drain pipe, 10 ft')).toMatchObject({ toTake: 8 });
    expect(need(needs, 'drain pipe, 10 ft')?.quantity).toBeCloseTo(7.6, 9);
    // Paste: a quarter of a kilogram a post: 1.25, taken as 1.3.
    expect(need(needs, 'preservative paste')).toMatchObject({ unit: 'kg', toTake: 1.3 });
  });

  it('takes nothing for looking, and leaves out what it takes none of', () => {
    expect(materialNeeds([works('inspect', 9)], SHIPPED_CATALOGUE)).toEqual([]);
    const noBoards: WorksCatalogue = {
      ...SHIPPED_CATALOGUE,
      rebuild: {
        ...SHIPPED_CATALOGUE.rebuild,
        materials: [{ name: 'board', unit: 'piece', quantity: { fixed: 0, perPost: 0 }, unitCost: 4 }],
      },
    };
    expect(materialNeeds([works('rebuild', 9)], noBoards)).toEqual([]);
  });

  it('keeps the same name in two units apart', () => {
    const rope = (unit: string) => ({ name: 'rope', unit, quantity: { fixed: 1, perPost: 0 }, unitCost: 2 });
    const catalogue: WorksCatalogue = {
      ...SHIPPED_CATALOGUE,
      liner: { ...SHIPPED_CATALOGUE.liner, materials: [rope('m'), rope('roll')] },
    };
    expect(materialNeeds([works('liner', 1)], catalogue).map(({ unit }) => unit)).toEqual(['m', 'roll']);
  });

  it('takes enough and never a whole unit too much, whatever is planned', () => {
    const kind = fc.constantFrom<VisitWorks['kind']>(
      'post-swap',
      'drainage',
      'rebuild',
      'groundline-treatment',
      'liner',
    );
    const plan = fc.array(fc.record({ kind, count: fc.integer({ min: 1, max: 60 }) }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(plan, (parts) => {
        for (const each of materialNeeds(
          parts.map((part) => works(part.kind, part.count)),
          SHIPPED_CATALOGUE,
        )) {
          const step = each.unit === 'kg' ? 0.1 : 1;
          expect(each.toTake).toBeGreaterThanOrEqual(each.quantity - 1e-6);
          expect(each.toTake).toBeLessThan(each.quantity + step);
          expect(each.cost).toBeCloseTo(each.toTake * each.unitCost, 6);
        }
      }),
    );
  });
});
