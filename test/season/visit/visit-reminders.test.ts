import { describe, expect, it } from 'vitest';
import type { CatalogueKind } from '../../../src/season/catalogue-entry.ts';
import { visitReminders } from '../../../src/season/visit/visit-reminders.ts';
import { SHIPPED_CATALOGUE } from '../../../src/season/works-catalogue.ts';
import { madeUpVisit } from '../../service/visiting-register.ts';

const visitOf = (...kinds: readonly (readonly [string, CatalogueKind])[]) => {
  const visit = madeUpVisit({ uid: 'a', firstDay: '2027-03-02', lastDay: '2027-03-03' });
  const items = kinds.map(([fenceRef, kind]) => ({
    ...visit.items[0]!,
    fenceRef,
    works: [{ kind, posts: [1], postCount: 1 }],
  }));
  return { ...visit, items };
};

describe('what to see to before a visit', () => {
  it('says by when to have lines marked, over the turn of a month', () => {
    expect(
      visitReminders(visitOf(['A', 'post-swap'], ['B', 'drainage'], ['C', 'inspect']), SHIPPED_CATALOGUE)[0],
    ).toEqual({
      kind: 'locate',
      works: ['post-swap', 'drainage'],
      fenceRefs: ['A', 'B'],
      noticeDays: 3,
      askBy: '2027-02-27',
    });
  });

  it('names permits and licensed applicators where the catalogue asks for them, and nothing for a look', () => {
    const kinds = (kind: CatalogueKind) =>
      visitReminders(visitOf(['A', kind]), SHIPPED_CATALOGUE).map((each) => each.kind);
    expect(kinds('rebuild')).toEqual(['locate', 'permit', 'frozen-ground']);
    expect(kinds('groundline-treatment')).toEqual(['licensed-applicator', 'frozen-ground']);
    expect(kinds('inspect')).toEqual([]);
  });
});
