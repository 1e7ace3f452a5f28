import { describe, expect, it } from 'vitest';
import { changedVisit, whyNotNow } from '../../../src/season/visit/change-visit.ts';
import { VISIT_STATES } from '../../../src/season/visit/visit.ts';
import { madeUpVisit } from '../../service/visiting-register.ts';

const AT = '2026-12-01T08:00:00.000Z';
const visit = madeUpVisit({ uid: 'V1-1-abcdef', sequence: 3 });

describe('a visit that changes', () => {
  it('grows its sequence by one where a calendar must see it', () => {
    const seen = [
      changedVisit(visit, { firstDay: '2027-01-10' }, AT),
      changedVisit(visit, { startsAt: '08:30' }, AT),
      changedVisit(visit, { crewRef: 'south', lastDay: '2027-01-12' }, AT),
      changedVisit(visit, { items: [...visit.items, { ...visit.items[0]!, fenceRef: 'PR-03' }] }, AT),
      changedVisit(visit, { state: 'confirmed' }, AT),
      changedVisit(visit, { state: 'cancelled' }, AT),
      changedVisit(visit, { state: 'done' }, AT),
    ];
    for (const each of seen) expect(each).toMatchObject({ uid: visit.uid, sequence: 4, changedAt: AT });
  });

  it('keeps it where nothing of that is another', () => {
    expect(changedVisit(visit, { planId: 9, travelPersonHours: 2 }, AT).sequence).toBe(3);
    const confirmed = madeUpVisit({ uid: 'V1-1-abcdef', state: 'confirmed' });
    expect(changedVisit(confirmed, { state: 'done' }, AT).sequence).toBe(0);
  });

  it('cannot be changed once it is done, missed or cancelled', () => {
    for (const wanted of VISIT_STATES) {
      expect(whyNotNow({ state: 'done' }, wanted)).toMatch(/done already/);
      expect(whyNotNow({ state: 'missed' }, wanted)).toMatch(/missed/);
      expect(whyNotNow({ state: 'cancelled' }, wanted)).toMatch(/cancelled/);
    }
    for (const state of ['proposed', 'confirmed'] as const) {
      for (const wanted of ['confirmed', 'done', 'missed', 'cancelled'] as const)
        expect(whyNotNow({ state }, wanted)).toBeNull();
    }
  });
});
