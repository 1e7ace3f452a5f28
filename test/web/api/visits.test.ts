import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { storeVisitPhoto } from '../../../src/register/visit-photo-store.ts';
import { listVisits, readVisit } from '../../../src/register/visit-store.ts';
import { importFiles } from '../../register/made-up-register.ts';
import { madeUpVisit, storeVisits } from '../../service/visiting-register.ts';
import { DOT_PNG } from '../crew/crew-sender.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { type ApiClient, apiClient } from './api-client.ts';

const CREWS = [
  {
    name: 'crews.csv',
    text: 'ref,name,base_latitude,base_longitude,speed_mph\nnorth,North crew,,,40\nsouth,South crew,,,40\n',
  },
  {
    name: 'crew-members.csv',
    text: 'ref,crew,name,hours_per_week,languages,skills\nm1,north,Orla Finch,40,en,licensed-applicator\nm2,north,Tom Reed,40,en,\nm3,south,Bea Stone,40,en,\n',
  },
];

interface Choice {
  readonly week: string;
  readonly crewRef: string;
  readonly isNow: boolean;
  readonly mayBeGiven: boolean;
  readonly cost: number | null;
}

describe('visits by the API', { timeout: 120_000 }, () => {
  let sample: SampleApp;
  let program: ApiClient;
  let reader: ApiClient;
  const db = () => sample.register.db;
  const stateOf = async (uid: string) => (await readVisit(db(), uid))?.state;

  beforeAll(async () => {
    sample = await sampleApp();
    expect((await importFiles(sample.register, CREWS)).faults).toEqual([]);
    await storeVisits(sample.register, [
      madeUpVisit({ uid: 'A' }),
      madeUpVisit({ uid: 'B', firstDay: '2026-11-23', lastDay: '2026-11-23', crewRef: 'south' }),
      madeUpVisit({ uid: 'C', firstDay: '2026-11-20', lastDay: '2026-11-20', state: 'confirmed' }),
      madeUpVisit({ uid: 'D', firstDay: '2027-01-13', lastDay: '2027-01-13' }),
      madeUpVisit({ uid: 'E', firstDay: '2027-01-13', lastDay: '2027-01-14', crewRef: 'south' }),
    ]);
    program = await apiClient(sample, ['read-register', 'change-visits']);
    reader = await apiClient(sample, ['read-register'], 'reader');
  });
  afterAll(() => sample.close());

  it('are listed by day, crew and uid, whatever the size of a page and however they are narrowed', async () => {
    const uids = async (query: string, limit = 1): Promise<readonly string[]> =>
      (await reader.walk<{ uid: string }>(`/api/v1/visits?${query}`, limit)).map(({ uid }) => uid);
    for (const limit of [1, 2, 500]) expect(await uids('', limit)).toEqual(['C', 'B', 'A', 'D', 'E']);
    expect(await uids('crew=north&state=proposed')).toEqual(['A', 'D']);
    expect(await uids('from=2027-01-14')).toEqual(['E']);
    expect(await uids('state=confirmed&endedBefore=2026-11-24')).toEqual(['C']);
    expect(await uids('site=SKERRY')).toEqual([]);
    await reader.json('GET', '/api/v1/visits?from=2027-02-30', undefined, 400);
  });

  it('are promised, missed, called off: a look changes nothing, doubts are asked about', async () => {
    const looked = await program.json('POST', '/api/v1/visits/A/confirm', { day: '2027-01-12', preview: true });
    expect(looked).toMatchObject({ applied: false, visit: { uid: 'A', state: 'confirmed', firstDay: '2027-01-12' } });
    expect(await stateOf('A')).toBe('proposed');
    const weekend = await program.json('POST', '/api/v1/visits/A/confirm', { day: '2027-01-16' }, 409);
    expect(weekend.wayOut).toContain('sure: true');
    const sure = await program.json('POST', '/api/v1/visits/A/confirm', {
      day: '2027-01-16',
      startsAt: '08:30',
      sure: true,
    });
    expect(sure).toMatchObject({ applied: true, visit: { startsAt: '08:30' } });
    expect((sure.doubts as string[]).length).toBeGreaterThan(0);
    const gone = await program.json('POST', '/api/v1/visits/B/miss', { because: 'rain', preview: true });
    expect([gone.applied, await stateOf('B')]).toEqual([false, 'proposed']);
    await program.json('POST', '/api/v1/visits/B/miss', { because: 'rain' });
    await program.json('POST', '/api/v1/visits/E/cancel', { because: 'sold' });
    expect([await stateOf('B'), await stateOf('E')]).toEqual(['missed', 'cancelled']);
    const detail = await reader.json('GET', '/api/v1/visits/E');
    expect(detail.history).toMatchObject([
      { by: 'a test' },
      { by: 'program tests', because: 'sold', state: 'cancelled' },
    ]);
    await program.json('POST', '/api/v1/visits/E/cancel', {}, 422);
    await program.json('POST', '/api/v1/visits/none/cancel', { because: 'x' }, 404);
    await program.json('POST', '/api/v1/visits/E/confirm', { day: '2027-01-12' }, 409);
  });

  it('are entered as done once somebody has looked at what that comes to', async () => {
    const done = { day: '2026-11-20', personHours: 4, because: 'as planned' };
    const looked = await program.json('POST', '/api/v1/visits/C/done', { ...done, preview: true });
    expect(looked).toMatchObject({ applied: false, done: [{ fenceRef: 'PR-02', personHours: 4 }], returned: [] });
    expect(await stateOf('C')).toBe('confirmed');
    const entered = await program.json('POST', '/api/v1/visits/C/done', done);
    const [item] = entered.done as { worksRefs: string[] }[];
    expect([entered.applied, await stateOf('C'), item?.worksRefs.length]).toEqual([true, 'done', 1]);
    const works = await reader.json('GET', `/api/v1/records/works/${encodeURIComponent(item?.worksRefs[0] ?? '')}`);
    expect(works).toMatchObject({ kind: 'works', record: { fenceRef: 'PR-02', day: '2026-11-20' } });
    await program.json('POST', '/api/v1/visits/C/done', done, 409);
  });

  it('come from plans that are looked at before they are accepted', async () => {
    expect(await program.json('GET', '/api/v1/plan-making')).toMatchObject({ kind: 'idle' });
    expect(await program.json('POST', '/api/v1/plans', {}, 202)).toMatchObject({ kind: 'at work' });
    await sample.parts.planner.settled();
    expect(await program.json('GET', '/api/v1/plan-making')).toMatchObject({ kind: 'made', number: 1 });
    const before = await listVisits(db(), {});
    const looked = await program.json('POST', '/api/v1/plans/1/accept', { preview: true });
    expect(looked).toMatchObject({ applied: false, plan: 1 });
    expect(looked.created).toBeGreaterThan(0);
    expect(looked.ownersToTell).toBeGreaterThan(0);
    expect(await listVisits(db(), {})).toEqual(before);
    const accepted = await program.json('POST', '/api/v1/plans/1/accept', { because: 'agreed' });
    expect(accepted).toMatchObject({ applied: true, created: looked.created, moved: looked.moved });
    expect(await program.json('GET', '/api/v1/plans')).toMatchObject({ rows: [{ number: 1, state: 'accepted' }] });
    expect(await program.json('GET', '/api/v1/plans/1')).toMatchObject({ number: 1, because: 'agreed' });
    await program.json('POST', '/api/v1/plans/1/accept', { preview: true }, 409);
    await program.json('POST', '/api/v1/plans/9/accept', { preview: true }, 404);
  });

  it('give a fence another week by what each of them costs, and leave it to the plans again', async () => {
    const [visit] = await listVisits(db(), { states: ['proposed'], from: '2026-11-30' });
    const place = `/api/v1/visits/${visit?.uid}/fences/${visit?.items[0]?.fenceRef}`;
    const { choices } = (await reader.json('GET', `${place}/weeks`)) as unknown as { choices: readonly Choice[] };
    expect(choices.filter(({ isNow }) => isNow)).toHaveLength(1);
    const chosen = choices.filter(({ mayBeGiven }) => mayBeGiven).at(-1)!;
    const { week, crewRef: crew } = chosen;
    const looked = await program.json('POST', `${place}/give`, { week, crew, preview: true });
    expect(looked).toMatchObject({ applied: false, choice: chosen, visit: { crewRef: crew, planId: null } });
    expect(await readVisit(db(), visit!.uid)).toEqual(visit);
    const given = await program.json('POST', `${place}/give`, { week, crew, because: 'the owner is away' });
    const { uid } = given.visit as { uid: string };
    expect(await readVisit(db(), uid)).toMatchObject({ planId: null, state: 'proposed', crewRef: crew });
    const refused = await program.json('POST', `${place}/give`, { week: '2020-01-06', crew }, 409);
    expect(refused.detail).toContain('nothing was changed');
    expect(await program.json('POST', `/api/v1/visits/${uid}/leave`, {})).toMatchObject({ visit: { uid, planId: 1 } });
    await program.json('POST', `/api/v1/visits/${uid}/leave`, {}, 409);
    await reader.json('GET', '/api/v1/visits/A/fences/PR-02/weeks', undefined, 409);
    await reader.json('GET', '/api/v1/visits/none/fences/PR-02/weeks', undefined, 404);
    await reader.json('POST', `${place}/give`, { week, crew }, 403);
    await program.json('POST', `${place}/give`, { week: 'soon', crew }, 422);
  });

  it('do once what carries a key, and refuse that key for another week', async () => {
    const [visit] = await listVisits(db(), { states: ['proposed'], from: '2026-11-30', crewRef: 'north' });
    const place = `/api/v1/visits/${visit?.uid}/fences/${visit?.items[0]?.fenceRef}`;
    const { choices } = (await reader.json('GET', `${place}/weeks`)) as unknown as { choices: readonly Choice[] };
    const [first, second] = choices.filter(({ mayBeGiven }) => mayBeGiven);
    const give = (choice: Choice | undefined) =>
      program.ask(
        'POST',
        `${place}/give`,
        { week: choice?.week, crew: choice?.crewRef },
        { 'idempotency-key': 'another week' },
      );
    const done = await give(first);
    const again = await give(first);
    expect([done.status, again.status, again.headers.get('idempotency-replayed')]).toEqual([200, 200, 'true']);
    expect(await again.text()).toBe(await done.text());
    expect((await give(second)).status).toBe(422);
  });

  it('show the pictures that were taken, and give their bytes', async () => {
    const photo = (post: number | null) => ({
      uid: 'C',
      fenceRef: 'PR-02',
      post,
      takenAt: '2026-11-20T15:00:00.000Z',
      storedAt: '2026-11-20T15:01:00.000Z',
      takenBy: 'Orla Finch',
      mediaType: 'image/png' as const,
      sha256: 'c'.repeat(64),
      bytes: DOT_PNG,
    });
    const ids = [await storeVisitPhoto(db(), photo(2)), await storeVisitPhoto(db(), photo(null))];
    const first = await reader.json('GET', '/api/v1/visits/C/photos?limit=1');
    expect(first.rows).toMatchObject([{ id: ids[0], post: 2, takenBy: 'Orla Finch' }]);
    const rest = await reader.json('GET', `/api/v1/visits/C/photos?cursor=${String(first.next)}`);
    expect(rest).toMatchObject({ rows: [{ id: ids[1], post: null }], next: null });
    expect((await reader.json('GET', '/api/v1/fences/PR-02/photos')).rows).toHaveLength(2);
    expect((await reader.json('GET', '/api/v1/visits/A/photos')).rows).toEqual([]);
    const bytes = await reader.ask('GET', `/api/v1/photos/${ids[0]}`);
    expect(bytes.headers.get('content-type')).toBe('image/png');
    expect(Buffer.from(await bytes.arrayBuffer()).equals(DOT_PNG)).toBe(true);
    await reader.json('GET', '/api/v1/photos/999', undefined, 404);
    await reader.json('GET', '/api/v1/photos/one', undefined, 400);
    await reader.json('GET', '/api/v1/fences/NOPE/photos', undefined, 404);
  });
});
