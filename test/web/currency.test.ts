import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeSettings } from '../../src/register/settings-store.ts';
import { newOwnerLink } from '../../src/service/owner-links.ts';
import { htmlText } from '../pdf-reader.ts';
import { apiClient } from './api/api-client.ts';
import { type SampleApp, sampleApp } from './sample-app.ts';
import { SAMPLE_NOW } from './sample-register.ts';

/** An amount of the currency that is set, and one of the currency that is not. */
const IN_CAD = /\d CAD/;
const NOT_SET = /USD|\$\d/;

describe('the currency of the settings', { timeout: 60_000 }, () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await sampleApp();
    await writeSettings(sample.register.db, { currency: 'CAD' }, '2026-11-24T12:00:00.000Z');
  });
  afterAll(() => sample.close());

  it('names every amount on the pages and reports of the office', async () => {
    for (const path of [
      '/fences/PR-02',
      '/fences/PR-02/evidence',
      '/fences/PR-02/quote?works=rebuild',
      '/sites/PELICAN/plan',
      '/owners/HOA/plan',
    ]) {
      const text = htmlText(await sample.text(path));
      expect(text, path).toMatch(IN_CAD);
      expect(text, path).not.toMatch(NOT_SET);
    }
  });

  it('names planning figures whole, a quote to the cent', async () => {
    for (const path of ['/sites/PELICAN/plan', '/fences/PR-02/evidence']) {
      expect(htmlText(await sample.text(path)), path).not.toMatch(/\d\.\d\d CAD/);
    }
    expect(htmlText(await sample.text('/fences/PR-02/quote?works=rebuild'))).toMatch(/\d\.\d\d CAD/);
  });

  it('names what a board reads, also in its files', async () => {
    const cookie = await sample.signIn({ name: 'board-money', role: 'board', siteRefs: ['PELICAN'] });
    const get = async (path: string): Promise<string> =>
      (await sample.pages.request(path, { headers: { cookie } })).text();
    const text = htmlText(await get('/board'));
    expect(text).toMatch(IN_CAD);
    expect(text).not.toMatch(NOT_SET);
    for (const file of ['years', 'fences']) {
      const [header, first] = (await get(`/board/PELICAN/${file}.csv`)).split('\n');
      expect(header, file).toMatch(/,currency$/);
      expect(first, file).toMatch(/,CAD$/);
    }
  });

  it('names what an owner reads of their money', async () => {
    const { token } = await newOwnerLink(
      sample.register.db,
      { ownerRef: 'HOA', scopes: ['see'], days: 30 },
      { publicUrl: 'https://fences.example.org', now: SAMPLE_NOW },
    );
    const text = htmlText(await (await sample.pages.request(`/owner/${token}/money`)).text());
    expect(text).toMatch(IN_CAD);
    expect(text).not.toMatch(NOT_SET);
  });

  it('is what programs are answered in, unless they ask for another', async () => {
    const client = await apiClient(sample, ['read-register', 'read-fences']);
    const works = [{ kind: 'post-swap' }];
    expect(await client.json('POST', '/api/v1/fences/PR-02/quote', { works })).toMatchObject({
      quote: { currency: 'CAD' },
    });
    expect(await client.json('POST', '/api/v1/fences/PR-02/quote', { works, currency: 'EUR' })).toMatchObject({
      quote: { currency: 'EUR' },
    });
    expect(await client.json('GET', '/api/v1/owners/HOA/money')).toMatchObject({ currency: 'CAD' });
  });
});
