import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listWithdrawals } from '../../../src/register/evidence-withdrawal.ts';
import { readRecord } from '../../../src/register/record-store.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { type ApiClient, apiClient } from './api-client.ts';

const INSPECTION = { ref: 'API-1', fence: 'PR-03', day: '2026-11-20', inspector: 'Nell Fox', method: 'awl-or-probe' };
const QUINN = { ref: 'QUINN', name: 'Quinn', kind: 'person', channel: 'letter', postal_address: '2 Row' };
const outcome = (result: 'stood' | 'leaned', posts: string) => ({
  ref: `PR-03/2026-10-02/Ida/${result}`,
  storm: 'Ida',
  fence: 'PR-03',
  day: '2026-10-02',
  gust_mph: 70,
  posts,
  result,
  gust_source: 'station at the harbour',
  reported_by: 'Nell Fox',
});

describe('records by the API', { timeout: 60_000 }, () => {
  let sample: SampleApp;
  let program: ApiClient;
  beforeAll(async () => {
    sample = await sampleApp();
    program = await apiClient(sample, ['read-fences', 'read-register', 'write-register']);
  });
  afterAll(() => sample.close());
  const db = () => sample.register.db;

  it('writes an inspection with its readings at once, or neither', async () => {
    const records = (post: number) => ({
      readings: [{ inspection: 'API-1', post, depth_in: 0.4 }],
      inspections: [INSPECTION],
    });
    const refused = await program.json('PUT', '/api/v1/records', { records: records(99) }, 422);
    expect(refused.faults).toMatchObject([{ kind: 'readings', row: 0, field: 'post' }]);
    expect(await readRecord(db(), 'inspections', 'API-1')).toBeNull();
    const looked = await program.json('PUT', '/api/v1/records', { records: records(2), preview: true });
    expect(looked).toMatchObject({ applied: false, created: 2 });
    expect(await readRecord(db(), 'inspections', 'API-1')).toBeNull();
    const written = await program.json('PUT', '/api/v1/records', { records: records(2) });
    expect(written).toMatchObject({ applied: true, created: 2, doubts: [] });
    expect((written.changes as { kind: string }[]).map(({ kind }) => kind).toSorted()).toEqual([
      'inspections',
      'readings',
    ]);
    await program.json('PUT', '/api/v1/records', { records: {} }, 422);
    await program.json('PUT', '/api/v1/records', { records: { spoons: [{ ref: 'x' }] } }, 422);
  });

  it('reads one record by its name, whether or not it has a ref', async () => {
    const one = async (kind: string, name: string, status = 200) =>
      program.json('GET', `/api/v1/records/${kind}/${encodeURIComponent(name)}`, undefined, status);
    expect(await one('readings', 'API-1 post 2')).toMatchObject({ record: { inspectionRef: 'API-1', post: 2 } });
    expect(await one('fences', 'PR-01')).toMatchObject({
      kind: 'fences',
      name: 'PR-01',
      record: { siteRef: 'PELICAN' },
    });
    await one('readings', 'API-1 post 3', 404);
    await one('readings', 'API-1', 404);
    await one('fences', 'pr-01', 404);
    await one('spoons', 'x', 400);
  });

  it('leaves alone what a row does not name, whatever the others beside it name', async () => {
    const { rows } = await program.json('GET', '/api/v1/records/owners');
    const known = (rows as { ref: string; language: string; email: string | null }[]).find(({ ref }) => ref === 'HOA')!;
    const lake = {
      ref: 'LAKE',
      name: 'R. Lake',
      kind: 'person',
      channel: 'letter',
      language: 'es',
      postal_address: '1 Row',
    };
    const hoa = { ref: 'HOA', name: 'Pelican Reach HOA', kind: 'association', channel: 'mail' };
    await program.json('PUT', '/api/v1/records/owners', { rows: [lake, hoa] });
    expect(await readRecord(db(), 'owners', 'HOA')).toMatchObject({
      name: 'Pelican Reach HOA',
      email: known.email,
      language: known.language,
    });
    const twice = await program.json(
      'PUT',
      '/api/v1/records/owners',
      { rows: [lake, hoa, { ...hoa, kind: 'club', language: 'en' }] },
      422,
    );
    expect((twice.faults as { row: number }[]).map(({ row }) => row)).toEqual([2]);
  });

  it('takes rows for the kind that the address names, whatever their fields look like', async () => {
    const crew = { ref: 'west', name: 'West crew', base_latitude: '', base_longitude: '', speed_mph: 40 };
    const refused = await program.json('PUT', '/api/v1/records/owners', { rows: [crew] }, 422);
    expect(JSON.stringify(refused.faults)).toContain('owners have no such column');
    expect(await readRecord(db(), 'crews', 'west')).toBeNull();
  });

  it('keeps who changed a record and how it was, page after page', async () => {
    const put = (language: string, preview = false) =>
      program.json('PUT', '/api/v1/records/owners', { rows: [{ ...QUINN, language }], preview });
    for (const language of ['es', 'en', 'es']) await put(language);
    await put('en', true);
    const first = await program.json('GET', '/api/v1/records/owners/QUINN/edits?limit=2');
    const rest = await program.json('GET', `/api/v1/records/owners/QUINN/edits?limit=2&cursor=${String(first.next)}`);
    const edits = [first, rest].flatMap(({ rows }) => rows as { by: string; after: { language: string } }[]);
    expect(edits.map(({ by, after }) => [by, after.language])).toEqual([
      ['program tests', 'es'],
      ['program tests', 'en'],
      ['program tests', 'es'],
    ]);
    expect(rest.next).toBeNull();
    expect((await program.json('GET', '/api/v1/records/fences/PR-01/edits')).rows).toEqual([]);
    // the page of the owner shows them too
    expect(await sample.text('/owners/QUINN')).toContain('program tests');
  });

  it('takes storm outcomes back, and asks where another would then say more', async () => {
    const rows = [outcome('stood', 'all'), outcome('leaned', '3 4')];
    await program.json('PUT', '/api/v1/records/outcomes', { rows });
    const leaned = { ref: rows[1]!.ref, because: 'another fence' };
    const asked = await program.json('POST', '/api/v1/outcomes/withdraw', leaned, 409);
    expect(asked.detail).toContain('would speak of posts 3, 4 too');
    const both = { ref: 'PR-03/2026-10-02/Ida', because: 'another fence' };
    const looked = await program.json('POST', '/api/v1/outcomes/withdraw', { ...both, preview: true });
    expect(looked).toMatchObject({ applied: false, rows: [{ kind: 'outcome' }, { kind: 'outcome' }] });
    expect(await listWithdrawals(db(), 'PR-03', 'outcome')).toEqual([]);
    const taken = await program.json('POST', '/api/v1/outcomes/withdraw', both);
    expect((taken.rows as { record: { result: string } }[]).map(({ record }) => record.result)).toEqual([
      'stood',
      'leaned',
    ]);
    expect(await listWithdrawals(db(), 'PR-03', 'outcome')).toMatchObject([
      { because: 'another fence', by: 'program tests' },
      { because: 'another fence' },
    ]);
    await program.json('POST', '/api/v1/outcomes/withdraw', both, 404);
    await program.json('POST', '/api/v1/outcomes/withdraw', { ref: 'x' }, 422);
  });

  it('takes one outcome back though another then says more, where that is sure', async () => {
    await program.json('PUT', '/api/v1/records/outcomes', {
      rows: [outcome('stood', 'all'), outcome('leaned', '3 4')],
    });
    const ref = 'PR-03/2026-10-02/Ida/leaned';
    await program.json('POST', '/api/v1/outcomes/withdraw', { ref, because: 'they stood', sure: true });
    expect(await readRecord(db(), 'outcomes', ref)).toBeNull();
    expect(await readRecord(db(), 'outcomes', 'PR-03/2026-10-02/Ida/stood')).not.toBeNull();
  });

  it('looks at what an inspection would take with it before it is taken back', async () => {
    const wish = { ref: 'API-1', because: 'wrong fence' };
    const looked = await program.json('POST', '/api/v1/inspections/withdraw', { ...wish, preview: true });
    expect(looked).toMatchObject({ applied: false, rows: [{ record: { ref: 'API-1', readings: [{ post: 2 }] } }] });
    expect(await readRecord(db(), 'inspections', 'API-1')).not.toBeNull();
    await program.json('POST', '/api/v1/inspections/withdraw', wish);
    expect(await readRecord(db(), 'inspections', 'API-1')).toBeNull();
  });

  it('tells the history of a fence, the newest first, with what was taken back', async () => {
    const { rows } = await program.json('GET', '/api/v1/fences/PR-03/history');
    const events = rows as { day: string; kind: string }[];
    expect(events.map(({ day }) => day)).toEqual(
      events
        .map(({ day }) => day)
        .toSorted()
        .toReversed(),
    );
    const kinds = new Set(events.map(({ kind }) => kind));
    for (const kind of ['storm', 'notice', 'withdrawal']) expect(kinds).toContain(kind);
    expect(events.filter(({ kind }) => kind === 'withdrawal')).toHaveLength(4);
    await program.json('GET', '/api/v1/fences/NOPE/history', undefined, 404);
    const other = await apiClient(sample, ['read-fences'], 'other');
    // owners and what they were told are in it
    await other.json('GET', '/api/v1/fences/PR-03/history', undefined, 403);
  });

  it('finds fences as the list of the pages does', async () => {
    const refs = async (query: string) =>
      ((await program.json('GET', `/api/v1/fences?${query}`)).rows as { ref: string }[]).map(({ ref }) => ref);
    expect(await refs('text=pelican&standing=clear')).toEqual(await refs('site=PELICAN&standing=clear'));
    expect(await refs('builtTo=2005')).toEqual(['PR-02']);
    expect(await refs('treatment=above-ground-stock')).toEqual(['PR-03', 'PR-04']);
    expect(await refs('text=quinn')).toEqual(await refs('owner=QUINN'));
    expect(await refs('text=nothing+is+called+so')).toEqual([]);
    const [from] = await refs('shortFrom=2030&shortTo=2060');
    expect(from).toBeDefined();
    await program.json('GET', '/api/v1/fences?treatment=paint', undefined, 400);
  });
});
