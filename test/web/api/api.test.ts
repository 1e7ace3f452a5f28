import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readRecord } from '../../../src/register/record-store.ts';
import { ROUTE_ACCESS } from '../../../src/web/access/route-access.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { type ApiClient, apiClient } from './api-client.ts';

const OWNER = {
  ref: 'ALDER',
  name: 'Alder, "Ned"\nof the Mill =1+1',
  kind: 'person',
  channel: 'letter',
  postal_address: '4 Mill Lane\nPelican Reach',
  language: 'es',
};

describe('the API', () => {
  let sample: SampleApp;
  let program: ApiClient;
  beforeAll(async () => {
    sample = await sampleApp();
    program = await apiClient(sample, ['read-fences', 'read-register', 'write-register', 'release-notices']);
  });
  afterAll(() => sample.close());

  it('describes every one of its routes in the OpenAPI document, and no other', async () => {
    const response = await sample.pages.request('/api/v1/openapi.json');
    const document = (await response.json()) as {
      openapi: string;
      paths: Record<string, Record<string, { summary: string; responses: Record<string, unknown> }>>;
      components: { schemas: Record<string, unknown>; securitySchemes: unknown };
    };
    expect(document.openapi).toBe('3.1.0');
    const described = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, { summary, responses }]) => {
        expect(summary.length, path).toBeGreaterThan(10);
        expect(
          Object.keys(responses).some((status) => status.startsWith('2')),
          path,
        ).toBe(true);
        return `${method.toUpperCase()} ${path.replace(/\{(\w+)\}/g, ':$1')}`;
      }),
    );
    const routes = ROUTE_ACCESS.filter(({ path }) => path.startsWith('/api/') && !path.endsWith('openapi.json'));
    expect(described.sort()).toEqual(routes.map(({ method, path }) => `${method} ${path}`).sort());
    // whatever is referred to is there
    const refs = [...JSON.stringify(document).matchAll(/"#\/components\/schemas\/([^"]+)"/g)].map(([, name]) => name!);
    expect(refs.length).toBeGreaterThan(20);
    expect(refs.filter((name) => !(name in document.components.schemas))).toEqual([]);
  });

  it('reads fences page after page, each once, in any size of page', async () => {
    for (const limit of [1, 3, 500]) {
      const refs: string[] = [];
      let next: string | null = null;
      do {
        const cursor = next === null ? '' : `&cursor=${next}`;
        const page = await program.json('GET', `/api/v1/fences?limit=${limit}${cursor}`);
        refs.push(...(page.rows as { ref: string }[]).map(({ ref }) => ref));
        next = page.next as string | null;
      } while (next !== null);
      expect(refs, String(limit)).toEqual([...new Set(refs)].sort());
      expect(refs).toHaveLength(8);
    }
    const short = await program.json('GET', '/api/v1/fences?standing=short+from+new');
    expect(short.rows).toMatchObject([{ ref: 'SK-01', standing: 'short from new' }]);
  });

  it('gives a fence with its forecast and its reasons, cautions beside them', async () => {
    const fence = await program.json('GET', '/api/v1/fences/PR-01');
    const listed = (await program.json('GET', '/api/v1/fences?limit=1')).rows as { snapMps: number }[];
    expect(fence).toMatchObject({ fence: { ref: 'PR-01', siteRef: 'PELICAN' } });
    expect(JSON.stringify(fence.forecast)).toContain(String(listed[0]!.snapMps));
    expect((fence.cautions as string[]).join(' ')).toContain('structural certification');
    const reasons = await program.json('GET', '/api/v1/fences/PR-01/reasons?of=line%20posts');
    expect(JSON.stringify(reasons)).toContain('source');
    expect(await program.json('GET', '/api/v1/fences/PR-01/reasons?season=1999', undefined, 404)).toMatchObject({
      detail: 'the forecast of fence PR-01 has no season "1999"',
    });
  });

  it('writes a record by the checks of an import, shows it before, and reads back what was written', async () => {
    const preview = await program.json('PUT', '/api/v1/records/owners', { rows: [OWNER], preview: true });
    expect(preview).toMatchObject({ applied: false, created: 1 });
    expect(await readRecord(sample.register.db, 'owners', 'ALDER')).toBeNull();
    expect(await program.json('PUT', '/api/v1/records/owners', { rows: [OWNER] })).toMatchObject({
      applied: true,
      created: 1,
      changes: [{ ref: 'ALDER', change: 'created', columns: [] }],
    });
    expect(await readRecord(sample.register.db, 'owners', 'ALDER')).toMatchObject({ name: OWNER.name, language: 'es' });
    const again = await program.json('PUT', '/api/v1/records/owners', { rows: [{ ...OWNER, language: 'en' }] });
    expect(again).toMatchObject({ changed: 1, changes: [{ columns: ['language'] }] });
    const owners = (await program.json('GET', '/api/v1/records/owners')).rows as { ref: string }[];
    expect(owners.find(({ ref }) => ref === 'ALDER')).toMatchObject({ language: 'en', enrolled: true });
  });

  it('refuses rows one and all, each fault at its row and field, also behind texts of several lines', async () => {
    const rows = [
      { ...OWNER, ref: 'B-1' },
      { ...OWNER, ref: 'B-2', kind: 'club' },
      { ...OWNER, ref: 'B-3', channel: 'mail', email: 'nowhere' },
    ];
    const problem = await program.json('PUT', '/api/v1/records/owners', { rows }, 422);
    expect(problem).toMatchObject({ status: 422, wayOut: 'correct the rows and send them again' });
    const faults = problem.faults as { row: number; field: string }[];
    expect(faults.map(({ row, field }) => [row, field])).toEqual([
      [1, 'kind'],
      [2, 'email'],
    ]);
    expect(await readRecord(sample.register.db, 'owners', 'B-1')).toBeNull();
    const column = await program.json('PUT', '/api/v1/records/owners', { rows: [{ ref: 'B-4', nmae: 'x' }] }, 422);
    expect(JSON.stringify(column.faults)).toContain('did you mean name?');
  });

  it('enters an inspection with its readings, asks about what speaks against it, and takes it back', async () => {
    const inspection = {
      ref: 'API-1',
      fence: 'PR-03',
      day: '2026-11-20',
      inspector: 'Nell Fox',
      method: 'awl-or-probe',
    };
    await program.json('PUT', '/api/v1/records/inspections', { rows: [inspection] });
    await program.json('PUT', '/api/v1/records/readings', {
      rows: [{ inspection: 'API-1', post: 2, depth_in: 0.4 }],
    });
    const fence = await program.json('GET', '/api/v1/fences/PR-03');
    expect(fence.inspections).toMatchObject([{ ref: 'API-1', readings: [{ post: 2 }] }]);
    const taken = await program.json('POST', '/api/v1/inspections/withdraw', { ref: 'API-1', because: 'wrong fence' });
    expect(taken).toMatchObject({
      applied: true,
      rows: [{ ref: 'API-1', by: 'program tests', because: 'wrong fence' }],
    });
    expect((await program.json('GET', '/api/v1/fences/PR-03')).inspections).toEqual([]);
    await program.json('POST', '/api/v1/inspections/withdraw', { ref: 'API-1', because: 'again' }, 404);
  });

  it('sets settings by their rules, all or none', async () => {
    const refused = await program.json('PATCH', '/api/v1/settings', { reminderDays: 30, lookAheadSeasons: 900 }, 422);
    expect(refused.faults).toMatchObject([{ field: 'lookAheadSeasons', value: 900 }]);
    expect(await program.json('GET', '/api/v1/settings')).toMatchObject({ reminderDays: 60 });
    expect(await program.json('PATCH', '/api/v1/settings', { reminderDays: 30 })).toMatchObject({ reminderDays: 30 });
    expect((await program.json('PATCH', '/api/v1/settings', { colour: 'red' }, 422)).status).toBe(422);
  });

  it('releases nothing where nothing is held, and wants to be told which', async () => {
    await program.json('POST', '/api/v1/notices/release', { all: true }, 404);
    const unclear = await program.json('POST', '/api/v1/notices/release', {}, 422);
    expect(JSON.stringify(unclear.faults)).toContain('say either');
  });

  it('says every problem as RFC 9457 has it, with the way out', async () => {
    for (const [method, path, body, status] of [
      ['GET', '/api/v1/nothing', undefined, 404],
      ['DELETE', '/api/v1/fences', undefined, 405],
      ['GET', '/api/v1/fences?limit=0', undefined, 400],
      ['GET', '/api/v1/fences?cursor=%7B%7D', undefined, 400],
      ['GET', '/api/v1/fences/NOPE', undefined, 404],
      ['GET', '/api/v1/records/spoons', undefined, 400],
      ['PUT', '/api/v1/records/owners', { rows: [] }, 422],
      ['POST', '/api/v1/visits/none/cancel', { because: 'x' }, 403],
    ] as const) {
      const response = await program.ask(method, path, body);
      expect(response.status, path).toBe(status);
      expect(response.headers.get('content-type'), path).toBe('application/problem+json');
      const problem = (await response.json()) as Record<string, unknown>;
      expect(problem, path).toMatchObject({ type: 'about:blank', status });
      for (const key of ['title', 'detail', 'wayOut']) expect(String(problem[key]).length, path).toBeGreaterThan(4);
    }
    const nobody = await sample.pages.request('/api/v1/fences');
    expect(nobody.status).toBe(401);
    expect(nobody.headers.get('www-authenticate')).toBe('Bearer');
    expect(await nobody.json()).toMatchObject({ type: 'about:blank', status: 401 });
  });

  it('does not take a body that is no JSON', async () => {
    const { headers } = { headers: { 'content-type': 'application/json' } };
    const response = await program.ask('PUT', '/api/v1/records/owners', undefined, headers);
    expect(response.status).toBe(400);
    expect(response.headers.get('content-type')).toBe('application/problem+json');
    const form = await program.ask('PUT', '/api/v1/records/owners', {}, { 'content-type': 'text/plain' });
    expect(form.status).toBe(415);
  });
});
