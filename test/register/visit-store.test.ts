import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { changeCount } from '../../src/register/register-changes.ts';
import { listVisits, readVisit, visitHistory, visitUidsFrom } from '../../src/register/visit-store.ts';
import {
  fencesDoneSince,
  listVisitHours,
  returnedFences,
  storeDoneVisit,
  visitEntries,
  visitOfEntry,
} from '../../src/register/visit-work-store.ts';
import { madeUpVisit, storeVisits, visitingRegister } from '../service/visiting-register.ts';

const ITEM = madeUpVisit({ uid: 'x' }).items[0]!;
const FIRST = madeUpVisit({ uid: 'V1-1-aaaaaa', items: [ITEM, { ...ITEM, fenceRef: 'PR-03', mustRank: 0 }] });
const SECOND = madeUpVisit({
  uid: 'V1-2-bbbbbb',
  crewRef: 'south',
  siteRef: 'SKERRY',
  items: [{ ...ITEM, fenceRef: 'SK-01' }],
  firstDay: '2027-01-04',
  lastDay: '2027-01-06',
  startsAt: '08:30',
  state: 'confirmed',
  note: 'gate code 4',
});
const DONE = {
  fenceRef: 'PR-02',
  works: [{ kind: 'post-swap', posts: [2], postCount: 1 }],
  personHours: 5.5,
  worksRefs: ['V1-1-aaaaaa.001'],
  inspectionRef: 'I-1',
} as const;

describe('visits in the register', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  beforeEach(async () => {
    sample = await visitingRegister();
    await storeVisits(sample.register, [FIRST, SECOND]);
  });
  afterEach(() => sample.remove());
  const uids = async (filter: Parameters<typeof listVisits>[1]): Promise<readonly string[]> =>
    (await listVisits(sample.register.db, filter)).map(({ uid }) => uid);

  it('come back as they were stored, by day, crew and uid', async () => {
    expect(await listVisits(sample.register.db, {})).toEqual([SECOND, FIRST]);
    expect(await readVisit(sample.register.db, FIRST.uid)).toEqual(FIRST);
    expect(await readVisit(sample.register.db, 'nobody')).toBeNull();
  });

  it('are found by crew, site, days and state', async () => {
    expect(await uids({ crewRef: 'south' })).toEqual([SECOND.uid]);
    expect(await uids({ siteRef: 'PELICAN' })).toEqual([FIRST.uid]);
    expect(await uids({ from: '2027-01-06', to: '2027-01-08' })).toEqual([SECOND.uid]);
    expect(await uids({ from: '2027-01-07' })).toEqual([FIRST.uid]);
    expect(await uids({ to: '2027-01-03' })).toEqual([]);
    expect(await uids({ states: ['proposed'] })).toEqual([FIRST.uid]);
  });

  it('are found by the beginning of their uid, byte by byte', async () => {
    expect(await visitUidsFrom(sample.register.db, 'V1-')).toEqual([FIRST.uid, SECOND.uid]);
    expect(await visitUidsFrom(sample.register.db, 'V1-2')).toEqual([SECOND.uid]);
    expect(await visitUidsFrom(sample.register.db, 'v1-2')).toEqual([]);
    expect(await visitUidsFrom(sample.register.db, '%')).toEqual([]);
  });

  it('change no forecast: the sweep has nothing to do for them', async () => {
    const before = await changeCount(sample.register.db);
    await storeVisits(sample.register, [{ ...FIRST, state: 'confirmed', sequence: 1 }]);
    expect(await changeCount(sample.register.db)).toBe(before);
  });

  it('keep what became of them, and nobody can edit that', async () => {
    await storeVisits(sample.register, [
      { ...FIRST, firstDay: '2027-01-12', lastDay: '2027-01-12', sequence: 1 },
      { ...FIRST, state: 'cancelled', sequence: 2 },
    ]);
    const history = await visitHistory(sample.register.db, FIRST.uid);
    expect(history.map(({ state, firstDay, sequence }) => [state, firstDay, sequence])).toEqual([
      ['proposed', '2027-01-11', 0],
      ['proposed', '2027-01-12', 1],
      ['cancelled', '2027-01-11', 2],
    ]);
    await expect(sample.register.db.updateTable('visit_changes').set({ by: 'me' }).execute()).rejects.toThrow(
      /never edited/,
    );
    await expect(sample.register.db.deleteFrom('visit_changes').execute()).rejects.toThrow(/never deleted/);
  });

  it('keep what was done of them, with hours and works, and what went back to the plan', async () => {
    const { db } = sample.register;
    const at = '2027-01-11T20:00:00.000Z';
    await db.transaction().execute(async (tx) => {
      await storeDoneVisit(tx, { ...FIRST, state: 'done', changedAt: at }, [DONE], { by: 'Orla', because: '' });
    });
    expect(await readVisit(db, FIRST.uid)).toMatchObject({
      state: 'done',
      items: [{ fenceRef: 'PR-02', works: DONE.works }],
    });
    expect(await returnedFences(db, FIRST.uid)).toEqual(['PR-03']);
    expect(await visitEntries(db, FIRST.uid)).toEqual([
      { uid: FIRST.uid, fenceRef: 'PR-02', kind: 'inspection', ref: 'I-1' },
      { uid: FIRST.uid, fenceRef: 'PR-02', kind: 'works', ref: 'V1-1-aaaaaa.001' },
    ]);
    expect(await visitOfEntry(db, 'works', 'V1-1-aaaaaa.001')).toMatchObject({ uid: FIRST.uid });
    expect(await visitOfEntry(db, 'works', 'W-1')).toBeNull();
    expect(await listVisitHours(db)).toEqual([
      { uid: FIRST.uid, fenceRef: 'PR-02', personHours: 5.5, works: DONE.works },
    ]);
    expect(await listVisitHours(db, SECOND.uid)).toEqual([]);
    expect(await fencesDoneSince(db, at)).toEqual(new Set(['PR-02']));
    expect(await fencesDoneSince(db, '2027-01-12T00:00:00.000Z')).toEqual(new Set());
  });

  it('of one fence, crew or site that is not there are refused', async () => {
    const stray = madeUpVisit({ uid: 'V9-1-cccccc', items: [{ ...ITEM, fenceRef: 'NO-1' }] });
    await expect(storeVisits(sample.register, [stray])).rejects.toThrow(/FOREIGN KEY/);
    await expect(storeVisits(sample.register, [{ ...FIRST, uid: 'V9-2-dddddd', crewRef: 'east' }])).rejects.toThrow(
      /FOREIGN KEY/,
    );
    expect(await uids({})).toEqual([SECOND.uid, FIRST.uid]);
  });
});
