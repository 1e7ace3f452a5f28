import { describe, expect, it } from 'vitest';
import type { AcceptedVisits } from '../../../src/season/visit/accept-plan.ts';
import { fenceMoves } from '../../../src/season/visit/fence-moves.ts';
import type { Visit } from '../../../src/season/visit/visit.ts';
import { madeUpVisit } from '../../service/visiting-register.ts';

const NONE: AcceptedVisits = { kept: [], moved: [], movedFrom: [], created: [], cancelled: [], withoutDays: [] };
const visit = (uid: string, fences: readonly string[], parts: Partial<Visit> = {}): Visit => {
  const [item] = madeUpVisit({ uid }).items;
  return madeUpVisit({ uid, items: fences.map((fenceRef) => ({ ...item!, fenceRef })), ...parts });
};
const later = { firstDay: '2027-01-19', lastDay: '2027-01-20', crewRef: 'south' };

describe('from which week to which fences go', () => {
  it('says the old and the new days and crew of a visit that moves, its fences together', () => {
    const moves = fenceMoves({
      ...NONE,
      movedFrom: [visit('A', ['F2', 'F1'])],
      moved: [visit('A', ['F2', 'F1'], later)],
    });
    expect(moves).toEqual([
      {
        siteRef: 'PELICAN',
        fenceRefs: ['F1', 'F2'],
        from: { crewRef: 'north', firstDay: '2027-01-11', lastDay: '2027-01-11' },
        to: { crewRef: 'south', firstDay: '2027-01-19', lastDay: '2027-01-20' },
      },
    ]);
  });

  it('follows a fence from a visit that is called off to a new one, and leaves out what is only new or only called off', () => {
    const moves = fenceMoves({
      ...NONE,
      cancelled: [visit('A', ['F1', 'F2'])],
      created: [visit('B', ['F1', 'F3'], later)],
    });
    expect(moves.map(({ fenceRefs }) => fenceRefs)).toEqual([['F1']]);
  });

  it('names a fence at which something else is done on the same day, and no other of its visit', () => {
    const before = visit('A', ['F1', 'F2']);
    const [first, second] = before.items;
    const works = [{ kind: 'rebuild', posts: [], postCount: 9 }] as const;
    const after = { ...before, items: [{ ...first!, works }, second!] };
    expect(fenceMoves({ ...NONE, movedFrom: [before], moved: [after] })).toMatchObject([
      { fenceRefs: ['F1'], from: { firstDay: '2027-01-11' }, to: { firstDay: '2027-01-11' } },
    ]);
  });
});
