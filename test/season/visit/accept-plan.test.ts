import { describe, expect, it } from 'vitest';
import { type AcceptInputs, acceptPlan } from '../../../src/season/visit/accept-plan.ts';
import { layOutDays } from '../../../src/season/visit/lay-out-days.ts';
import type { Visit } from '../../../src/season/visit/visit.ts';
import type { WeekVisit } from '../../../src/season/visit/visits-of-plan.ts';
import { madeUpVisit } from '../../service/visiting-register.ts';

const AT = '2027-01-06T09:00:00.000Z';
const item = (fenceRef: string, optionKey = 'post-swap'): Visit['items'][number] => ({
  ...madeUpVisit({ uid: 'x' }).items[0]!,
  fenceRef,
  optionKey,
  personHours: 3,
});
const planned = (fences: readonly string[], parts: Partial<WeekVisit> = {}): WeekVisit => ({
  week: '2027-01-11',
  crewRef: 'north',
  siteRef: 'PELICAN',
  travelPersonHours: 1,
  items: fences.map((ref) => item(ref)),
  ...parts,
});
const visit = (uid: string, fences: readonly string[], parts: Partial<Visit> = {}): Visit =>
  madeUpVisit({ uid, items: fences.map((ref) => item(ref)), travelPersonHours: 1, sequence: 2, planId: 6, ...parts });

const accept = (
  weekVisits: readonly WeekVisit[],
  standing: readonly Visit[],
  parts: Partial<AcceptInputs> = {},
): ReturnType<typeof acceptPlan> =>
  acceptPlan({
    planId: 7,
    at: AT,
    today: '2027-01-06',
    firstWeek: '2027-01-11',
    weekVisits,
    standing,
    doneFences: new Set(),
    layOut: ({ monday, beside }, requests) =>
      layOutDays(
        {
          monday,
          personHoursByDay: [8, 8, 8, 8, 8],
          taken: beside.map((each) => ({ ...each, place: null, personHours: 4 })),
        },
        requests.map((request) => ({ ...request, place: null })),
      ),
    newUid: (_, index) => `V7-${index}`,
    ...parts,
  });

describe('a plan that is accepted', () => {
  it('leaves alone what the office proposed itself, and takes its fences out of the plan', () => {
    const given = visit('G-1', ['A'], { planId: null, firstDay: '2027-01-20', lastDay: '2027-01-20' });
    const past = visit('G-2', ['C'], { planId: null, firstDay: '2027-01-05', lastDay: '2027-01-05' });
    const { created, moved, cancelled } = accept([planned(['A', 'B'])], [given, past]);
    expect(created.map(({ items }) => items.map(({ fenceRef }) => fenceRef))).toEqual([['B']]);
    expect(moved).toEqual([]);
    expect(cancelled.map(({ uid }) => uid)).toEqual(['G-2']);
  });

  it('proposes its visits on days of their weeks', () => {
    const { created, kept, moved, cancelled } = accept([planned(['A', 'B'])], []);
    expect([kept, moved, cancelled]).toEqual([[], [], []]);
    expect(created).toMatchObject([
      { uid: 'V7-1', state: 'proposed', sequence: 0, firstDay: '2027-01-11', lastDay: '2027-01-11', planId: 7 },
    ]);
  });

  it('keeps a visit that it has again, on whatever day of the week that was', () => {
    const stands = visit('V1-1', ['A'], { firstDay: '2027-01-14', lastDay: '2027-01-14' });
    const { kept, moved, created, cancelled } = accept([planned(['A'])], [stands]);
    expect(kept).toEqual([stands]);
    expect([moved, created, cancelled]).toEqual([[], [], []]);
  });

  it('gives a visit that it keeps the hours and prices of now, which no calendar shows', () => {
    const dearer = planned(['A'], { items: [{ ...item('A'), personHours: 3.5, price: 600 }] });
    const { kept, moved } = accept([dearer], [visit('V1-1', ['A'])]);
    expect(kept).toMatchObject([{ uid: 'V1-1', sequence: 2, items: [{ personHours: 3.5, price: 600 }] }]);
    expect(moved).toEqual([]);
  });

  it('moves one that it has in another week under the same uid, one higher', () => {
    const stands = visit('V1-1', ['A']);
    const { moved, created } = accept([planned(['A'], { week: '2027-02-01' })], [stands]);
    expect(moved).toMatchObject([{ uid: 'V1-1', sequence: 3, firstDay: '2027-02-01', changedAt: AT }]);
    expect(created).toEqual([]);
  });

  it('lets the visit keep its uid that has most of its fences, and gives no uid twice', () => {
    const { moved, created, cancelled } = accept(
      [planned(['A'], { week: '2027-01-18' }), planned(['B', 'C', 'D'])],
      [visit('V1-1', ['A', 'B', 'C'])],
    );
    expect(moved).toMatchObject([{ uid: 'V1-1', items: [{ fenceRef: 'B' }, { fenceRef: 'C' }, { fenceRef: 'D' }] }]);
    expect(created).toMatchObject([{ uid: 'V7-1', items: [{ fenceRef: 'A' }] }]);
    expect(cancelled).toEqual([]);
  });

  it('cancels what was proposed and is not in it any longer, one higher', () => {
    const { cancelled } = accept([], [visit('V1-1', ['A'])]);
    expect(cancelled).toMatchObject([{ uid: 'V1-1', state: 'cancelled', sequence: 3 }]);
  });

  it('touches no confirmed visit, and takes its fences out of its own', () => {
    const confirmed = visit('V1-1', ['A'], { state: 'confirmed' });
    const { created, moved, cancelled, kept } = accept([planned(['A', 'B'])], [confirmed]);
    expect(created).toMatchObject([{ items: [{ fenceRef: 'B' }] }]);
    expect([moved, cancelled, kept]).toEqual([[], [], []]);
    // the crew is at the site that day: no second way
    expect(created).toMatchObject([{ firstDay: '2027-01-11', travelPersonHours: 0 }]);
  });

  it('leaves the visits of this week alone, and moves or cancels those that nobody came to', () => {
    const thisWeek = visit('V1-1', ['A'], { firstDay: '2027-01-07', lastDay: '2027-01-08' });
    const lapsed = visit('V1-2', ['B'], { firstDay: '2027-01-04', lastDay: '2027-01-05' });
    const { moved, cancelled, created } = accept([planned(['A', 'B'])], [thisWeek, lapsed]);
    expect(moved).toMatchObject([{ uid: 'V1-2', items: [{ fenceRef: 'B' }], firstDay: '2027-01-11' }]);
    expect([cancelled, created]).toEqual([[], []]);
  });

  it('passes over fences at which everything was done since it was made', () => {
    const { created } = accept([planned(['A', 'B'])], [], { doneFences: new Set(['A']) });
    expect(created).toMatchObject([{ items: [{ fenceRef: 'B' }] }]);
  });

  it('says which visits no days of their week hold, and cancels what stood in their place', () => {
    const long = planned(['A'], { items: [{ ...item('A'), personHours: 60 }] });
    const { withoutDays, cancelled, created } = accept([long], [visit('V1-1', ['A'])]);
    expect(withoutDays).toEqual([long]);
    expect(cancelled).toMatchObject([{ uid: 'V1-1' }]);
    expect(created).toEqual([]);
  });
});
