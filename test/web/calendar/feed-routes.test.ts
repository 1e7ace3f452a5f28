import { DateTime } from 'luxon';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadConfig } from '../../../src/service/config.ts';
import { newFeedLink } from '../../../src/service/feed-links.ts';
import { createLog } from '../../../src/service/log.ts';
import { feedRoutes } from '../../../src/web/calendar/feed-routes.ts';
import { readCalendar } from '../../service/calendar-importer.ts';
import { madeUpVisit, storeVisits, visitingRegister } from '../../service/visiting-register.ts';
import { sampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';

describe('a calendar behind a secret link', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  let app: ReturnType<typeof feedRoutes>;
  let path: string;
  beforeAll(async () => {
    sample = await visitingRegister();
    app = feedRoutes({ register: sample.register, clock: SAMPLE_NOW, log: createLog('silent') });
    await storeVisits(sample.register, [madeUpVisit({ uid: 'V-1' })]);
    const { publicUrl } = loadConfig({});
    const { url } = await newFeedLink(
      sample.register.db,
      { kind: 'crew', ref: 'north' },
      { publicUrl, now: SAMPLE_NOW },
    );
    path = new URL(url).pathname;
  });
  afterAll(() => sample.remove());

  it('is served as a calendar that only the asker may keep', async () => {
    const response = await app.request(path);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
    expect(response.headers.get('cache-control')).toBe('private, no-cache');
    expect(response.headers.get('etag')).toMatch(/^"[0-9a-f]{64}"$/);
    expect(readCalendar(await response.text()).events.map(({ uid }) => uid)).toEqual(['V-1@stormpale']);
  });

  it('is not sent again while it is the same', async () => {
    const etag = (await app.request(path)).headers.get('etag')!;
    const ask = (tag: string) => app.request(path, { headers: { 'if-none-match': tag } });
    for (const tag of [etag, `W/${etag}`, `"other", ${etag}`, '*']) {
      const same = await ask(tag);
      expect(same.status, tag).toBe(304);
      expect(same.headers.get('etag'), tag).toBe(etag);
      expect(await same.text(), tag).toBe('');
    }
    expect((await ask('"other"')).status).toBe(200);
    await storeVisits(sample.register, [
      madeUpVisit({ uid: 'V-1', sequence: 1, state: 'confirmed', changedAt: SAMPLE_NOW().toISO()! }),
    ]);
    expect((await ask(etag)).status).toBe(200);
  });

  it('is not there for any other address', async () => {
    for (const wrong of [
      '/feed/x.ics',
      `${path.slice(0, -5)}${path.at(-5) === 'A' ? 'B' : 'A'}.ics`,
      '/feed/.ics',
      path.replace('.ics', ''),
      '/feed/..%2F..%2Fregister.ics',
    ]) {
      const response = await app.request(wrong);
      expect(response.status, wrong).toBe(404);
    }
  });

  it('is part of the pages, with their headers, and its secret is in no log', async () => {
    const pages = await sampleApp({ swept: false, catcher: false });
    const gone = await pages.app.request(path);
    expect(gone.status).toBe(404);
    expect(await gone.text()).toContain('ask the fence office');
    expect(gone.headers.get('referrer-policy')).toBe('no-referrer');
    expect(gone.headers.get('cache-control')).toBe('no-store');
    await pages.register.close();
    const logged: unknown[] = [];
    const log = { error: (...said: unknown[]) => logged.push(said) } as never;
    const broken = feedRoutes({ register: pages.register, clock: () => DateTime.utc(), log });
    const response = await broken.request(path);
    expect(response.status).toBe(503);
    expect(response.headers.get('retry-after')).toBe('600');
    expect(logged).toHaveLength(1);
    expect(
      JSON.stringify(logged, (_key, value: unknown) => (value instanceof Error ? value.stack : value)),
    ).not.toContain(path.slice(6, -4));
    await pages.close();
  });
});
