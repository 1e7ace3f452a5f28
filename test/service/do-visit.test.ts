import { DateTime } from 'luxon';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listRecords } from '../../src/register/record-store.ts';
import { readVisit } from '../../src/register/visit-store.ts';
import { listVisitHours, returnedFences, visitEntries } from '../../src/register/visit-work-store.ts';
import type { Visit } from '../../src/season/visit/visit.ts';
import { type DoRequest, type DoResult, doVisit } from '../../src/service/do-visit.ts';
import { madeUpVisit, storeVisits, visitingRegister } from './visiting-register.ts';

const NOW = () => DateTime.fromISO('2027-01-12T18:00:00Z', { zone: 'utc' });
const ITEM = madeUpVisit({ uid: 'x' }).items[0]!;
const item = (fenceRef: string, works: Visit['items'][number]['works']): Visit['items'][number] => ({
  ...ITEM,
  fenceRef,
  works,
});
const SWAP = [{ kind: 'post-swap', posts: [2, 5], postCount: 2 }] as const;
const VISIT = madeUpVisit({
  uid: 'V1-1-aaaaaa',
  state: 'confirmed',
  items: [item('PR-02', SWAP), item('PR-04', [{ kind: 'steel-sleeve', posts: [1, 3], postCount: 2 }])],
});

describe('what was done of a visit', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  beforeEach(async () => {
    sample = await visitingRegister();
    await storeVisits(sample.register, [VISIT]);
  });
  afterEach(() => sample.remove());

  const done = (parts: Partial<DoRequest> = {}): Promise<DoResult> =>
    doVisit(sample.register, {
      uid: VISIT.uid,
      now: NOW,
      day: '2027-01-11',
      only: null,
      except: [],
      hours: { kind: 'none' },
      changed: new Map(),
      inspections: new Map(),
      sure: false,
      by: 'Orla Finch',
      because: '',
      ...parts,
    });
  const works = () => listRecords(sample.register.db, 'works');
  const refusal = (result: DoResult): string =>
    result.kind === 'refused' || result.kind === 'asked' ? result.reasons.join('\n') : result.kind;
  const nothingStored = async (): Promise<void> => {
    expect(await works()).toEqual([]);
    expect(await readVisit(sample.register.db, VISIT.uid)).toEqual(VISIT);
    expect(await listVisitHours(sample.register.db)).toEqual([]);
  };

  it('enters the register as works of that day, built as the catalogue says, with refs that name the visit', async () => {
    expect(await done()).toMatchObject({ kind: 'done', returned: [], visit: { state: 'done', sequence: 0 } });
    expect(await works()).toMatchObject([
      {
        ref: 'V1-1-aaaaaa.001',
        fenceRef: 'PR-02',
        day: '2027-01-11',
        kind: 'post-swap',
        posts: [2, 5],
        treatmentClass: 'heavy-duty',
        sectionWidthMm: 88.9,
      },
      { ref: 'V1-1-aaaaaa.002', fenceRef: 'PR-04', kind: 'steel-sleeve', posts: [1, 3], momentCapacityNm: 4881 },
    ]);
    expect((await visitEntries(sample.register.db, VISIT.uid)).map(({ ref }) => ref)).toEqual([
      'V1-1-aaaaaa.001',
      'V1-1-aaaaaa.002',
    ]);
  });

  it('is entered once: done twice is refused', async () => {
    await done();
    expect(refusal(await done())).toBe('it is done already, and what was done is in the register');
    expect(await works()).toHaveLength(2);
  });

  it('sends back to the plan what was left out', async () => {
    expect(await done({ except: ['PR-04'] })).toMatchObject({ kind: 'done', returned: ['PR-04'] });
    expect(await works()).toMatchObject([{ fenceRef: 'PR-02' }]);
    expect(await returnedFences(sample.register.db, VISIT.uid)).toEqual(['PR-04']);
    expect((await readVisit(sample.register.db, VISIT.uid))?.items.map(({ fenceRef }) => fenceRef)).toEqual(['PR-02']);
  });

  it('shares the hours of the visit by what was planned for each fence, or takes those of each', async () => {
    await done({ hours: { kind: 'visit', personHours: 12 } });
    // post swap 1 + 2 x 1.8 h, sleeves 0.5 + 2 x 0.6 h
    const [swap, sleeve] = await listVisitHours(sample.register.db);
    expect(swap?.personHours).toBeCloseTo((12 * 4.6) / 6.3, 10);
    expect(sleeve?.personHours).toBeCloseTo((12 * 1.7) / 6.3, 10);
  });

  it('with hours that are far off is asked about first', async () => {
    const hours = { kind: 'fences', personHours: new Map([['PR-02', 46]]) } as const;
    expect(refusal(await done({ hours }))).toBe('fence PR-02: 46.0 hours, and 4.6 were planned');
    await nothingStored();
    expect(await done({ hours, sure: true })).toMatchObject({ kind: 'done' });
  });

  it('can be other works than planned', async () => {
    const changed = new Map([
      [
        'PR-02',
        [
          { kind: 'post-swap', posts: [5] },
          { kind: 'liner', posts: [5] },
        ] as const,
      ],
    ]);
    expect(await done({ changed })).toMatchObject({ kind: 'done' });
    expect((await works()).map(({ kind, posts }) => [kind, posts])).toEqual([
      ['post-swap', [5]],
      ['liner', [5]],
      ['steel-sleeve', [1, 3]],
    ]);
    expect((await readVisit(sample.register.db, VISIT.uid))?.items[0]?.works.map(({ kind }) => kind)).toEqual([
      'post-swap',
      'liner',
    ]);
  });

  it('stores nothing where any of it cannot be: not a post, not a day, not the other fence', async () => {
    const liner = new Map([['PR-04', [{ kind: 'liner', posts: [3] }] as const]]);
    expect(refusal(await done({ changed: liner }))).toMatch(/^fence PR-04, liner: a full-height liner goes on before/);
    await nothingStored();
    const stray = new Map([['PR-04', [{ kind: 'steel-sleeve', posts: [99] }] as const]]);
    expect(refusal(await done({ changed: stray }))).toMatch(/fence PR-04 has no post 99/);
    await nothingStored();
    expect(refusal(await done({ day: '2027-01-13' }))).toBe(
      '2027-01-13 is still to come: at the site it is 2027-01-12',
    );
    expect(refusal(await done({ except: ['PR-02', 'PR-04'] }))).toMatch(/was missed$/);
    expect(refusal(await done({ only: ['PR-09'] }))).toMatch(/^fence PR-09 is not on this visit/);
    await nothingStored();
  });

  it('of an inspection needs that inspection, of that fence and day, once', async () => {
    const looked = madeUpVisit({
      uid: 'V1-2-bbbbbb',
      state: 'confirmed',
      firstDay: '2026-05-04',
      lastDay: '2026-05-04',
      items: [item('PR-02', [{ kind: 'inspect', posts: [2, 5, 6], postCount: 3 }])],
    });
    await storeVisits(sample.register, [looked]);
    const request = { uid: looked.uid, day: '2026-05-04' };
    expect(refusal(await done(request))).toMatch(/was to be inspected: .*--inspection PR-02=REF$/);
    const named = (ref: string) => ({ ...request, inspections: new Map([['PR-02', ref]]) });
    expect(refusal(await done(named('I-9')))).toMatch(/there is no inspection I-9/);
    expect(refusal(await done({ ...named('I-1'), day: '2026-05-05' }))).toMatch(/inspection I-1 is of 2026-05-04/);
    expect(await done(named('I-1'))).toMatchObject({ kind: 'done', done: [{ inspectionRef: 'I-1', worksRefs: [] }] });
    await storeVisits(sample.register, [{ ...looked, uid: 'V1-3-cccccc' }]);
    expect(refusal(await done({ ...named('I-1'), uid: 'V1-3-cccccc' }))).toBe(
      'inspection I-1 was made on visit V1-2-bbbbbb',
    );
  });
});
