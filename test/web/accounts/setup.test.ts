import { describe, expect, it, onTestFinished } from 'vitest';
import { listAccounts } from '../../../src/register/account-store.ts';
import { browser } from '../access/cookie-browser.ts';
import { sampleApp } from '../sample-app.ts';

async function fresh(options: { readonly publicUrl?: string; readonly setupCode?: string } = {}) {
  const sample = await sampleApp({ swept: false, empty: true, accounts: false, ...options });
  onTestFinished(() => sample.close());
  return sample;
}

const FIRST = { name: 'Ann', display_name: 'Ann Tern', password: 'gate latch and hinge' };

describe('the first run', () => {
  it('shows nothing but the page that makes the first account, and signs in with it', async () => {
    const sample = await fresh();
    const ann = browser(sample);
    for (const path of ['/fences', '/outbox', '/mail', '/accounts', '/account', '/fences/PR-01']) {
      expect((await ann.get(path)).headers.get('location'), path).toMatch(/^\/sign-in/);
    }
    expect((await ann.get('/sign-in')).headers.get('location')).toBe('/setup');
    const page = await (await ann.get('/setup')).text();
    expect(page).toContain('Make the first account');
    expect(page).not.toContain('Setup code');
    const made = await ann.send('/setup', '/setup', FIRST);
    expect(made.headers.get('location')).toBe('/');
    expect(await (await ann.get('/fences')).text()).toContain('The register holds no fences yet.');
    expect(await listAccounts(sample.register.db)).toMatchObject([
      { name: 'ann', displayName: 'Ann Tern', role: 'office', demo: false },
    ]);
    expect((await ann.get('/setup')).headers.get('location')).toBe('/sign-in');
    expect((await browser(sample).get('/setup')).headers.get('location')).toBe('/sign-in');
  });

  it('names everything that is wrong, keeps what was typed but the password, and makes nothing', async () => {
    const sample = await fresh();
    const refused = await browser(sample).send('/setup', '/setup', {
      name: 'a b',
      display_name: ' ',
      password: 'short',
    });
    expect(refused.status).toBe(400);
    const page = await refused.text();
    expect(page).toContain('without blanks');
    expect(page).toContain('write a name of 1 to 200 letters');
    expect(page).toContain('at least 12 characters');
    expect(page).toContain('value="a b"');
    expect(page).not.toContain('value="short"');
    expect(page.match(/aria-invalid="true"/g)).toHaveLength(3);
    expect(await listAccounts(sample.register.db)).toEqual([]);
  });

  it('lets one of two at once in, and not the other', async () => {
    const sample = await fresh();
    const [one, two] = [browser(sample), browser(sample)];
    await Promise.all([one.send('/setup', '/setup', FIRST), two.send('/setup', '/setup', { ...FIRST, name: 'bo' })]);
    expect(await listAccounts(sample.register.db)).toHaveLength(1);
  });

  it('asks for the code of the log where others can reach the page, and waits for whoever guesses', async () => {
    const sample = await fresh({ publicUrl: 'https://fences.example.org', setupCode: 'k7mn-2pqr-xyz9' });
    const ann = browser(sample);
    expect(await (await ann.get('/setup')).text()).toContain('Setup code');
    expect((await ann.send('/setup', '/setup', FIRST)).status).toBe(403);
    const wrong = await ann.send('/setup', '/setup', { ...FIRST, code: 'k7mn-2pqr-xyz8' });
    expect(await wrong.text()).toContain('not the code');
    const statuses: number[] = [];
    for (let index = 0; index < 5; index += 1) {
      statuses.push((await ann.send('/setup', '/setup', { ...FIRST, code: 'guess' })).status);
    }
    expect(statuses).toEqual([403, 403, 403, 429, 429]);
    expect(await listAccounts(sample.register.db)).toEqual([]);
    const right = await browser(sample).send('/setup', '/setup', { ...FIRST, code: 'K7MN 2PQR XYZ9' });
    expect(right.status).toBe(303);
    expect(await listAccounts(sample.register.db)).toHaveLength(1);
  });

  it('is closed to others where no code was made', async () => {
    const sample = await fresh({ publicUrl: 'https://fences.example.org' });
    expect((await browser(sample).send('/setup', '/setup', { ...FIRST, code: '' })).status).toBe(403);
  });
});
