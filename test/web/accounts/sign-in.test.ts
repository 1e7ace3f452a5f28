import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hashPassword } from '../../../src/service/password-hash.ts';
import { ownPath } from '../../../src/web/accounts/sign-in-routes.tsx';
import { tokenIn } from '../access/access-visitors.ts';
import { browser } from '../access/cookie-browser.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';

const PASSWORD = 'gate latch and hinge';
describe('signing in', () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await sampleApp({ swept: false });
    const passwordHash = await hashPassword(PASSWORD);
    await sample.signIn({ name: 'ann', displayName: 'Ann Tern', passwordHash });
    await sample.signIn({ name: 'bo', displayName: 'Bo Reed', role: 'crew', language: 'es', passwordHash });
  });
  afterAll(() => sample.close());
  const enter = (name = 'ann', password = PASSWORD) => ({ name, password });

  it('takes a name in any capitals, sets a cookie that no script reads, and goes on where one wanted to', async () => {
    const ann = browser(sample);
    const response = await ann.send('/sign-in', '/sign-in', { ...enter(' ANN '), next: '/fences/PR-01' });
    expect(response.status).toBe(303);
    expect(response.headers.get('location')).toBe('/fences/PR-01');
    const [cookie] = response.headers.getSetCookie().filter((each) => each.startsWith('stormpale='));
    expect(cookie).toMatch(/^stormpale=[A-Za-z0-9_-]{43};/);
    expect(cookie).toContain('HttpOnly');
    expect(cookie).toContain('SameSite=Lax');
    expect(cookie).toContain('Path=/');
    expect(cookie).not.toContain('Secure');
    const page = await (await ann.get('/fences')).text();
    expect(page).toContain('Ann Tern');
    expect((await ann.get('/sign-in')).headers.get('location')).toBe('/');
  });

  it('keeps cookies to HTTPS, under a name that no other host can set, where the pages are for others too', async () => {
    const open = await sampleApp({ swept: false, empty: true, publicUrl: 'https://fences.example.org' });
    try {
      const passwordHash = await hashPassword(PASSWORD);
      await open.signIn({ name: 'ann', passwordHash });
      const ann = browser(open);
      const response = await ann.send('/sign-in', '/sign-in', enter(), { origin: 'https://fences.example.org' });
      const [cookie] = response.headers.getSetCookie().filter((each) => each.includes('stormpale='));
      expect(cookie).toMatch(/^__Host-stormpale=.*; Secure/);
      expect((await ann.get('/fences')).status).toBe(200);
      expect((await ann.get('/fences', { cookie: `stormpale=${ann.jar.get('__Host-stormpale')}` })).status).toBe(303);
    } finally {
      await open.close();
    }
  });

  it('gives a new secret every time, and ends the one that the browser had', async () => {
    const ann = browser(sample);
    await ann.send('/sign-in', '/sign-in', enter());
    const first = ann.jar.get('stormpale');
    const form_token = tokenIn(await (await ann.get('/account')).text());
    await ann.post('/sign-in', { ...enter(), form_token });
    expect(ann.jar.get('stormpale')).not.toBe(first);
    expect((await ann.get('/account', { cookie: `stormpale=${first}` })).status).toBe(303);
    // one that somebody planted before is never taken over
    const planted = browser(sample);
    planted.jar.set('stormpale', 'x'.repeat(43));
    await planted.send('/sign-in', '/sign-in', enter());
    expect(planted.jar.get('stormpale')).not.toBe('x'.repeat(43));
  });

  it('says the same of a wrong password, of a name that nobody has, and of a disabled account', async () => {
    const disabled = await hashPassword(PASSWORD);
    await sample.signIn({ name: 'cy', passwordHash: disabled });
    await sample.register.db
      .updateTable('accounts')
      .set({ disabled_at: '2026-11-24T13:00:00.000Z' })
      .where('name', '=', 'cy')
      .execute();
    const said = await Promise.all(
      [enter('ann', 'gate latch and hinges'), enter('nobody-at-all'), enter('cy')].map(async (fields) => {
        const response = await browser(sample).send('/sign-in', '/sign-in', fields);
        expect(response.status).toBe(403);
        const text = (await response.text()).replace(/value="[^"]*"/g, '');
        expect(text).toContain('do not go together');
        return text;
      }),
    );
    expect(new Set(said).size).toBe(1);
    expect(said.join('')).not.toContain('gate latch');
  });

  it('waits longer after each wrong try, and only whoever tries waits', async () => {
    const stranger = browser(sample);
    const tries: number[] = [];
    for (let index = 0; index < 7; index += 1) {
      tries.push((await stranger.send('/sign-in', '/sign-in', enter('bo', 'not the password'))).status);
    }
    expect(tries).toEqual([403, 403, 403, 403, 403, 429, 429]);
    const waiting = await stranger.send('/sign-in', '/sign-in', enter('bo'));
    expect(waiting.status).toBe(429);
    expect(waiting.headers.get('retry-after')).toBe('2');
    expect(await waiting.text()).toContain('Wait 2 seconds');
    expect((await browser(sample).send('/sign-in', '/sign-in', enter('bo'))).status).toBe(303);
  });

  it('never leads to another site', () => {
    for (const away of [
      '//evil.example',
      '/\\evil.example',
      'https://evil.example',
      '/\t/evil.example',
      '',
      undefined,
    ]) {
      expect(ownPath(away), String(away)).toBe('/');
    }
    expect(ownPath('/fences/A%20B?x=1')).toBe('/fences/A%20B?x=1');
  });

  it('speaks Spanish to whoever reads it, and crews afterwards', async () => {
    const bo = browser(sample);
    const page = await (await bo.get('/sign-in', { 'accept-language': 'es-MX,es;q=0.9,en;q=0.5' })).text();
    expect(page).toContain('<html lang="es">');
    expect(page).toContain('Iniciar sesión');
    expect(page).toContain('href="/sign-in?lang=en');
    expect(await (await bo.get('/sign-in?lang=en', { 'accept-language': 'es' })).text()).toContain('<html lang="en">');
    await bo.send('/sign-in?lang=es', '/sign-in?lang=es', enter('bo'));
    expect(await (await bo.get('/account')).text()).toContain('Su cuenta');
    await bo.send('/account', '/account/language', { language: 'en' });
    expect(await (await bo.get('/account')).text()).toContain('Your account');
  });

  it('ends on signing out, for that browser alone', async () => {
    const [here, there] = [browser(sample), browser(sample)];
    await here.send('/sign-in', '/sign-in', enter());
    await there.send('/sign-in', '/sign-in', enter());
    const secret = here.jar.get('stormpale');
    const out = await here.send('/account', '/sign-out', {});
    expect(out.headers.get('location')).toBe('/sign-in?out');
    expect(here.jar.has('stormpale')).toBe(false);
    expect((await here.get('/account', { cookie: `stormpale=${secret}` })).status).toBe(303);
    expect((await there.get('/account')).status).toBe(200);
    expect(await (await here.get('/sign-in?out')).text()).toContain('You are signed out.');
  });

  it('changes a password only with the one until now, and ends every other session', async () => {
    const [here, there] = [browser(sample), browser(sample)];
    const passwordHash = await hashPassword(PASSWORD);
    await sample.signIn({ name: 'dee', displayName: 'Dee Marsh', passwordHash });
    await here.send('/sign-in', '/sign-in', enter('dee'));
    await there.send('/sign-in', '/sign-in', enter('dee'));
    const change = (now: string, password: string) => here.send('/account', '/account/password', { now, password });
    expect((await change('wrong by far', 'a new one of some length')).status).toBe(403);
    const short = await change(PASSWORD, 'too short');
    expect(short.status).toBe(400);
    expect(await short.text()).toContain('at least 12 characters');
    expect(await (await change(PASSWORD, 'I am Dee Marsh here')).text()).toContain('holds the name');
    expect((await there.get('/account')).status).toBe(200);
    const changed = await change(PASSWORD, 'a new one of some length');
    expect(changed.headers.get('location')).toBe('/account?changed');
    expect(await (await here.get('/account?changed')).text()).toContain('Your password is changed.');
    expect((await there.get('/account')).status).toBe(303);
    expect((await browser(sample).send('/sign-in', '/sign-in', enter('dee'))).status).toBe(403);
    const again = await browser(sample).send('/sign-in', '/sign-in', enter('dee', 'a new one of some length'));
    expect(again.status).toBe(303);
  });
});

describe('a form', () => {
  let sample: SampleApp;
  beforeAll(async () => {
    sample = await sampleApp({ swept: false, empty: true });
    await sample.signIn({ name: 'ann', passwordHash: await hashPassword(PASSWORD) });
  });
  afterAll(() => sample.close());
  const fields = { name: 'ann', password: PASSWORD };

  it('does nothing without the token of its browser, with another browser’s, or with one from before signing in', async () => {
    const ann = browser(sample);
    expect((await ann.post('/sign-in', fields)).status).toBe(403);
    const other = tokenIn(await (await browser(sample).get('/sign-in')).text());
    const before = tokenIn(await (await ann.get('/sign-in')).text());
    const refused = await ann.post('/sign-in', { ...fields, form_token: other });
    expect(refused.status).toBe(403);
    expect(await refused.text()).toContain('Nothing was changed.');
    expect((await ann.post('/sign-in', { ...fields, form_token: before })).status).toBe(303);
    const late = await ann.post('/sign-out', { form_token: before });
    expect(await late.text()).toContain('That form is no longer good');
    expect((await ann.get('/account')).status).toBe(200);
  });

  it('does nothing where the browser says that another site sent it, token or not', async () => {
    const signIn = (headers: Readonly<Record<string, string>>) =>
      browser(sample).send('/sign-in', '/sign-in', fields, headers);
    for (const site of ['cross-site', 'same-site', 'none']) {
      expect((await signIn({ 'sec-fetch-site': site })).status, site).toBe(403);
    }
    expect((await signIn({ origin: 'https://evil.example' })).status).toBe(403);
    expect((await signIn({ origin: 'nonsense' })).status).toBe(403);
    // what a browser sends from a page that tells nobody where it is
    expect((await signIn({ origin: 'null', 'sec-fetch-site': 'same-origin' })).status).toBe(303);
    expect((await signIn({ origin: 'null' })).status).toBe(303);
    expect((await signIn({ origin: 'http://localhost' })).status).toBe(303);
  });

  it('is refused where it is larger than any of ours', async () => {
    const response = await browser(sample).send('/sign-in', '/sign-in', { ...fields, next: 'x'.repeat(70_000) });
    expect(response.status).toBe(413);
    expect(await response.text()).toContain('Too much at once');
  });
});
