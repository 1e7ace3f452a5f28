import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { hasAccounts } from '../../../src/register/account-store.ts';
import { importDemo } from '../../../src/service/import-demo.ts';
import { browser } from '../access/cookie-browser.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';
import { storeAccount } from './signed-in.ts';

async function demoApp(publicUrl?: string): Promise<SampleApp> {
  const sample = await sampleApp({ swept: false, empty: true, accounts: false, ...(publicUrl ? { publicUrl } : {}) });
  await importDemo(sample.register, { now: SAMPLE_NOW, onProgress: () => undefined });
  return sample;
}

describe('the demo', () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await demoApp();
  });
  afterAll(() => sample.close());
  const enter = async (as: string, next = '/') => {
    const visitor = browser(sample);
    const response = await visitor.send('/sign-in', '/demo', { as, next });
    return { visitor, response };
  };

  it('opens by one click, says that it is one, and goes on where one wanted to', async () => {
    const page = await (await browser(sample).get('/sign-in')).text();
    expect(page).toContain('invented demo');
    expect(page).not.toContain('type="password"');
    const { visitor, response } = await enter('office', '/fences/CT-11');
    expect(response.headers.get('location')).toBe('/fences/CT-11');
    expect((await visitor.get('/outbox')).status).toBe(200);
    expect(await (await visitor.get('/accounts')).text()).toContain('The demo has no accounts of people.');
    expect(await (await visitor.get('/account')).text()).toContain('this account has no password');
    const made = await visitor.send('/account', '/accounts', { name: 'ann', role: 'office' });
    expect(made.status).toBe(403);
    expect(await hasAccounts(sample.register.db)).toBe(false);
  });

  it('shows a crew, a board and owners what is theirs', async () => {
    const crew = (await enter('crew')).visitor;
    expect((await crew.get('/fences/PF-01')).status).toBe(200);
    expect((await crew.get('/outbox')).status).toBe(403);
    const board = (await enter('board')).visitor;
    expect((await board.get('/fences/CT-11')).status).toBe(200);
    expect((await board.get('/fences/PF-01')).status).toBe(404);
    const owner = await enter('owner');
    const path = owner.response.headers.get('location') ?? '';
    expect(path).toMatch(/^\/owner\/[0-9a-z]+\./);
    expect(await (await owner.visitor.get(path)).text()).toContain('Tamsin Orrowby');
    expect((await owner.visitor.get('/fences')).status).toBe(303);
    const spanish = await enter('owner-es');
    const page = await spanish.visitor.get(spanish.response.headers.get('location') ?? '');
    expect(await page.text()).toContain('Sus cercas');
  });

  it('takes the same account for every click, and none that it does not know', async () => {
    await enter('office');
    await enter('office');
    const rows = await sample.register.db.selectFrom('accounts').select('name').execute();
    expect(rows.map(({ name }) => name).sort()).toEqual(['demo board', 'demo crew', 'demo office']);
    expect((await enter('king')).response.status).toBe(403);
    // a password is never asked of a demo account, so none lets anybody in
    await storeAccount(sample.register, SAMPLE_NOW, { name: 'ann' });
    const tried = await browser(sample).send('/sign-in', '/sign-in', { name: 'demo office', password: '' });
    expect(tried.status).toBe(403);
  });

  it('is closed once somebody has an account, for whoever is in it too', async () => {
    const closing = await demoApp();
    onTestFinished(() => closing.close());
    const visitor = browser(closing);
    await visitor.send('/sign-in', '/demo', { as: 'office' });
    const late = browser(closing);
    await late.get('/sign-in');
    expect((await visitor.get('/fences')).status).toBe(200);
    await visitor.send('/setup', '/setup', { name: 'ann', display_name: 'Ann', password: 'gate latch and hinge' });
    const other = browser(closing);
    expect(await (await other.get('/sign-in')).text()).toContain('type="password"');
    expect((await other.send('/sign-in', '/demo', { as: 'office' })).status).toBe(403);
    expect(await (await visitor.get('/account')).text()).toContain('You sign in as ann');
  });

  it('is never open where the pages are not for this machine only, nor through a proxy', async () => {
    const open = await demoApp('https://fences.example.org');
    onTestFinished(() => open.close());
    const visitor = browser(open);
    expect((await visitor.get('/sign-in')).headers.get('location')).toBe('/setup');
    expect((await visitor.send('/setup', '/demo', { as: 'office' })).status).toBe(403);
    const proxied = browser(await demoAppOnce());
    const headers = { 'x-forwarded-for': '203.0.113.5' };
    expect((await proxied.get('/sign-in', headers)).headers.get('location')).toBe('/setup');
  });

  const demoAppOnce = async (): Promise<SampleApp> => {
    const once = await demoApp();
    onTestFinished(() => once.close());
    return once;
  };
});
