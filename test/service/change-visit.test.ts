import { DateTime } from 'luxon';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readVisit, visitHistory } from '../../src/register/visit-store.ts';
import type { Visit } from '../../src/season/visit/visit.ts';
import {
  type ConfirmRequest,
  cancelVisit,
  confirmVisit,
  missVisit,
  type VisitChangeResult,
} from '../../src/service/change-visit.ts';
import { madeUpVisit, storeVisits, visitingRegister } from './visiting-register.ts';

// a Wednesday; the season of the site opens on 1 June
const NOW = () => DateTime.fromISO('2027-05-12T15:00:00Z', { zone: 'utc' });
const VISIT = madeUpVisit({ uid: 'V1-1-aaaaaa', firstDay: '2027-05-17', lastDay: '2027-05-17' });
const doing = (kind: Visit['items'][number]['works'][number]['kind']): Visit['items'] => [
  { ...VISIT.items[0]!, works: [{ kind, posts: [2], postCount: 1 }] },
];

describe('a visit', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  beforeEach(async () => {
    sample = await visitingRegister();
  });
  afterEach(() => sample.remove());

  const confirm = async (visit: Visit, parts: Partial<ConfirmRequest> = {}): Promise<VisitChangeResult> => {
    await storeVisits(sample.register, [visit]);
    return confirmVisit(sample.register, {
      uid: visit.uid,
      now: NOW,
      day: '2027-05-18',
      startsAt: null,
      crewRef: null,
      sure: false,
      by: 'Nell',
      because: '',
      ...parts,
    });
  };
  const reasons = (result: VisitChangeResult): string =>
    result.kind === 'asked' || result.kind === 'refused' ? `${result.kind}: ${result.reasons.join('; ')}` : result.kind;

  it('is promised for a day and an hour, and whoever has it in a calendar sees it', async () => {
    const result = await confirm(VISIT, { startsAt: '08:30' });
    expect(result).toMatchObject({
      kind: 'changed',
      visit: { state: 'confirmed', firstDay: '2027-05-18', lastDay: '2027-05-18', startsAt: '08:30', sequence: 1 },
    });
    expect(await visitHistory(sample.register.db, VISIT.uid)).toMatchObject([
      { state: 'proposed', firstDay: '2027-05-17' },
      { state: 'confirmed', firstDay: '2027-05-18', by: 'Nell' },
    ]);
  });

  it('takes the days that its hours need, over a weekend too', async () => {
    const long = { ...VISIT, items: [{ ...VISIT.items[0]!, personHours: 30 }] };
    // two people of 8 h a day: 31.2 h from Friday on
    expect(await confirm(long, { day: '2027-05-14', sure: true })).toMatchObject({
      visit: { firstDay: '2027-05-14', lastDay: '2027-05-17' },
    });
  });

  it('is asked about first where the days do not hold it', async () => {
    const ask = async (visit: Visit, parts: Partial<ConfirmRequest> = {}) => reasons(await confirm(visit, parts));
    expect(await ask(VISIT, { day: '2027-05-16' })).toBe('asked: crew north does not go out on 2027-05-16');
    expect(await ask(VISIT, { day: '2027-05-14' })).toBe(
      'asked: fence PR-02: buried utilities cannot be marked by then',
    );
    expect(await ask(VISIT, { day: '2027-05-26' })).toMatch(/new footings would not have gained their strength/);
    expect(await ask(VISIT, { day: '2027-06-08' })).toMatch(/the storm season has opened by then/);
    const treated = { ...VISIT, items: doing('groundline-treatment') };
    expect(await ask(treated, { crewRef: 'south' })).toBe(
      'asked: nobody of crew south has the skill licensed-applicator that day',
    );
    expect(await readVisit(sample.register.db, VISIT.uid)).toMatchObject({ state: 'proposed' });
    expect(await confirm(treated, { crewRef: 'south', sure: true })).toMatchObject({
      kind: 'changed',
      doubts: ['nobody of crew south has the skill licensed-applicator that day'],
    });
  });

  it('is asked about where the crew is promised elsewhere and has no hours for both', async () => {
    const other = madeUpVisit({
      uid: 'V1-2-bbbbbb',
      state: 'confirmed',
      firstDay: '2027-05-18',
      lastDay: '2027-05-18',
      items: [{ ...VISIT.items[0]!, fenceRef: 'PR-03', personHours: 12 }],
    });
    await storeVisits(sample.register, [other]);
    expect(reasons(await confirm(VISIT))).toMatch(/promised elsewhere then \(V1-2-bbbbbb at PELICAN\)/);
    expect(await confirm(VISIT, { day: '2027-05-19' })).toMatchObject({ kind: 'changed' });
  });

  it('is never promised for a day that is past, by a crew that nobody knows, or once it is over', async () => {
    expect(reasons(await confirm(VISIT, { day: '2027-05-11' }))).toBe(
      'refused: 2027-05-11 is past: at the site it is 2027-05-12',
    );
    expect(reasons(await confirm(VISIT, { crewRef: 'east' }))).toBe(
      'refused: there is no crew "east"; there are north, south',
    );
    expect(reasons(await confirm({ ...VISIT, state: 'missed' }))).toMatch(/^refused: it was missed/);
    const nobody = { uid: 'V9', now: NOW, by: '', because: '' };
    expect(await cancelVisit(sample.register, nobody)).toEqual({ kind: 'no such visit' });
  });

  it('can be missed from its day on, and cancelled at any time', async () => {
    await storeVisits(sample.register, [VISIT]);
    const act = { uid: VISIT.uid, now: NOW, by: '', because: 'rain' };
    expect(reasons(await missVisit(sample.register, act))).toMatch(/^refused: its day, 2027-05-17, is still to come/);
    const later = { ...act, now: () => NOW().plus({ days: 6 }) };
    expect(await missVisit(sample.register, later)).toMatchObject({ visit: { state: 'missed', sequence: 1 } });
    expect(reasons(await cancelVisit(sample.register, act))).toMatch(/^refused: it was missed/);
    await storeVisits(sample.register, [{ ...VISIT, uid: 'V1-5-eeeeee' }]);
    expect(await cancelVisit(sample.register, { ...act, uid: 'V1-5-eeeeee' })).toMatchObject({
      visit: { state: 'cancelled', sequence: 1 },
    });
  });
});
