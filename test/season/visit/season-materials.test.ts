import { describe, expect, it } from 'vitest';
import { seasonMaterials } from '../../../src/season/visit/season-materials.ts';
import { SHIPPED_CATALOGUE } from '../../../src/season/works-catalogue.ts';
import { madeUpVisit } from '../../service/visiting-register.ts';

describe('materials of a season', () => {
  const swap = madeUpVisit({ uid: 'a', firstDay: '2027-02-08', lastDay: '2027-02-08' });
  const posts = (visits: Parameters<typeof seasonMaterials>[0]) =>
    seasonMaterials(visits, SHIPPED_CATALOGUE).find(({ name }) => name === 'treated post, 10 ft');

  it('counts proposed and confirmed visits, and says when the first needs it and how much is promised', () => {
    const confirmed = madeUpVisit({ uid: 'b', state: 'confirmed', firstDay: '2027-01-18', lastDay: '2027-01-19' });
    expect(posts([swap, confirmed])).toMatchObject({
      toTake: 4,
      visits: 2,
      neededBy: '2027-01-18',
      confirmedQuantity: 2,
      cost: 96,
    });
  });

  it('leaves out what is done, missed or cancelled', () => {
    const over = (['done', 'missed', 'cancelled'] as const).map((state) => madeUpVisit({ uid: state, state }));
    expect(seasonMaterials(over, SHIPPED_CATALOGUE)).toEqual([]);
    expect(posts([swap, ...over])).toMatchObject({ toTake: 2, visits: 1, confirmedQuantity: 0 });
  });
});
