import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listHeldNotices } from '../../../src/register/held-notices.ts';
import { writeSettings } from '../../../src/register/settings-store.ts';
import { storeVisitPhoto } from '../../../src/register/visit-photo-store.ts';
import { newOwnerLink } from '../../../src/service/owner-links.ts';
import { changePreferences } from '../../../src/service/owner-preferences.ts';
import { runSweep } from '../../../src/service/run-sweep.ts';
import { DOT_PNG } from '../crew/crew-sender.ts';
import { answeringSample } from '../owner/answering-sample.ts';
import { SAMPLE_NOW } from '../sample-register.ts';
import { type ApiClient, apiClient } from './api-client.ts';
import type { OpenApiDocument } from './openapi-shape.ts';

/** What stands for the parameters of a list's address. */
const PLACES: Readonly<Record<string, string>> = {
  '/api/v1/records/{kind}': '/api/v1/records/readings',
  '/api/v1/records/{kind}/{name}/edits': '/api/v1/records/owners/QUINN/edits',
  '/api/v1/visits/{uid}/photos': '/api/v1/visits/V-BOTH/photos',
  '/api/v1/fences/{ref}/photos': '/api/v1/fences/PR-01/photos',
};
const AT = '2026-11-24T12:00:00.000Z';

describe('every list', { timeout: 120_000 }, () => {
  let sample: Awaited<ReturnType<typeof answeringSample>>;
  let program: ApiClient;
  let lists: readonly string[];
  beforeAll(async () => {
    sample = await answeringSample({ swept: false });
    const { register } = sample;
    await writeSettings(register.db, { holdFirstSweep: 'yes' }, AT);
    program = await apiClient(sample, ['read-fences', 'read-register', 'write-register', 'release-notices']);
    const inspection = { ref: 'L-1', fence: 'PR-03', day: '2026-11-20', inspector: 'Nell Fox', method: 'awl-or-probe' };
    const readings = [2, 3, 4].map((post) => ({ inspection: 'L-1', post, depth_in: 0.3 }));
    await program.json('PUT', '/api/v1/records', { records: { inspections: [inspection], readings } });
    const quinn = { ref: 'QUINN', name: 'Quinn', kind: 'person', channel: 'letter', postal_address: '2 Row' };
    for (const language of ['es', 'en', 'es']) {
      await program.json('PUT', '/api/v1/records/owners', { rows: [{ ...quinn, language }] });
    }
    for (const post of [1, 2, null]) {
      const of = { uid: 'V-BOTH', fenceRef: 'PR-01', post, takenAt: AT, storedAt: AT, takenBy: 'Orla Finch' };
      await storeVisitPhoto(register.db, { ...of, mediaType: 'image/png', sha256: 'c'.repeat(64), bytes: DOT_PNG });
    }
    await runSweep(register, { now: SAMPLE_NOW });
    await program.json('POST', '/api/v1/notices/release', { owner: 'HOA' });
    const [quinns] = await listHeldNotices(register, { ownerRef: 'QUINN' });
    await program.json('POST', '/api/v1/notices/release', { ids: [quinns?.id] });
    await sample.sendMail();
    // two of them as if they were released and not written yet, one as if it were held still
    const theirs = await register.db.selectFrom('notices').select('id').where('owner_ref', '=', 'HOA').execute();
    const [one, ...two] = theirs.slice(0, 3).map(({ id }) => id);
    await register.db.updateTable('notices').set({ outbox_id: null }).where('id', 'in', two).execute();
    const held = { outbox_id: null, released_at: null };
    await register.db.updateTable('notices').set(held).where('id', '=', one!).execute();
    const office = { matter: 'readings disagree', facts: '{}', sweep_id: 1, created_at: AT, settled_at: null };
    for (const occasion of ['one', 'another']) {
      await register.db
        .insertInto('office_notices')
        .values({ fence_ref: 'PR-01', occasion, ...office })
        .execute();
      const plan = { as_of: '2026-11-24', first_week: '2026-11-30', weeks: 4, model_version: '1', content: '{}' };
      await register.db
        .insertInto('season_plans')
        .values({ made_at: AT, state: 'made', accepted_at: null, by: occasion, because: '', ...plan })
        .execute();
      const options = { publicUrl: sample.config.publicUrl, now: SAMPLE_NOW };
      const wanted = { ownerRef: 'HOA', scopes: ['see'], days: 30 } as const;
      const { link } = await newOwnerLink(register.db, wanted, options);
      const change = { pausedUntil: occasion === 'one' ? '2027-01-31' : null };
      await changePreferences(register, link, { change, kind: 'preferences' }, SAMPLE_NOW);
    }
    const response = await sample.pages.request('/api/v1/openapi.json');
    const { paths } = (await response.json()) as OpenApiDocument;
    lists = Object.entries(paths).flatMap(([path, { get }]) =>
      get?.parameters?.some(({ name }) => name === 'cursor') ? [path] : [],
    );
  });
  afterAll(() => sample.close());

  it('is the same read one by one and at once, nothing left out and nothing twice', async () => {
    expect(lists.length).toBeGreaterThan(12);
    for (const pattern of lists) {
      const path = PLACES[pattern] ?? pattern;
      expect(path, 'needs a place').not.toContain('{');
      const all = await program.walk(path, 500);
      expect(all.length, path).toBeGreaterThan(1);
      expect(await program.walk(path, 1), path).toEqual(all);
      expect(await program.walk(path, 2), path).toEqual(all);
      expect(new Set(all.map((row) => JSON.stringify(row))).size, path).toBe(all.length);
    }
  });

  it('refuses a cursor that is none, and pages that are too long', async () => {
    for (const pattern of lists) {
      const path = PLACES[pattern] ?? pattern;
      for (const query of ['cursor=nonsense', 'limit=501', 'limit=0', 'limit=some']) {
        await program.json('GET', `${path}?${query}`, undefined, 400);
      }
    }
  });
});
