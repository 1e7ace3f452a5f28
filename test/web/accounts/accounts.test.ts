import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accountNamed, sitesOfAccount } from '../../../src/register/account-store.ts';
import { hashPassword } from '../../../src/service/password-hash.ts';
import { browser } from '../access/cookie-browser.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';

const PASSWORD = 'gate latch and hinge';

describe('the office looks after accounts', () => {
  let sample: SampleApp;
  let office: ReturnType<typeof browser>;
  beforeAll(async () => {
    sample = await sampleApp({ swept: false });
    await sample.signIn({ name: 'ann', passwordHash: await hashPassword(PASSWORD) });
    office = browser(sample);
    await office.send('/sign-in', '/sign-in', { name: 'ann', password: PASSWORD });
  });
  afterAll(() => sample.close());
  const numbered = async (name: string) => (await accountNamed(sample.register.db, name))!.account;

  it('makes one for a board, which then sees its site, and another when its sites are set', async () => {
    const fields = { name: 'Lee', display_name: 'Lee Moss', role: 'board', site: 'SKERRY', password: PASSWORD };
    const made = await office.send('/accounts', '/accounts', fields);
    const lee = await numbered('lee');
    expect(made.headers.get('location')).toBe(`/accounts/${lee.id}`);
    const board = browser(sample);
    await board.send('/sign-in', '/sign-in', { name: 'lee', password: PASSWORD });
    expect((await board.get('/fences/SK-01')).status).toBe(200);
    await office.send(`/accounts/${lee.id}`, `/accounts/${lee.id}/sites`, { site: 'PELICAN' });
    expect(await sitesOfAccount(sample.register.db, lee.id)).toEqual(['PELICAN']);
    expect((await board.get('/fences/SK-01')).status).toBe(404);
    const unknown = await office.send(`/accounts/${lee.id}`, `/accounts/${lee.id}/sites`, { site: 'NOWHERE' });
    expect(await unknown.text()).toContain('the register has no site');
    expect(await sitesOfAccount(sample.register.db, lee.id)).toEqual(['PELICAN']);
  });

  it('names what is missing for the role, and keeps what was typed', async () => {
    const refused = await office.send('/accounts', '/accounts', {
      name: 'cy',
      display_name: 'Cy',
      role: 'crew',
      password: PASSWORD,
    });
    expect(refused.status).toBe(400);
    const page = await refused.text();
    expect(page).toContain('name the crew whose work it does');
    expect(page).toContain('value="cy"');
    const taken = await office.send('/accounts', '/accounts', {
      name: 'ANN',
      display_name: 'Ann',
      role: 'office',
      password: PASSWORD,
    });
    expect(await taken.text()).toContain('somebody has this name already');
  });

  it('disables one, which is out at once, and lets it in again; the last of the office stays', async () => {
    await office.send('/accounts', '/accounts', {
      name: 'kit',
      display_name: 'Kit',
      role: 'office',
      password: PASSWORD,
    });
    const kit = await numbered('kit');
    const out = browser(sample);
    const enter = () => out.send('/sign-in', '/sign-in', { name: 'kit', password: PASSWORD });
    await enter();
    expect((await out.get('/fences')).status).toBe(200);
    const set = (disabled: string) => office.send(`/accounts/${kit.id}`, `/accounts/${kit.id}/disabled`, { disabled });
    await set('yes');
    expect((await out.get('/fences')).status).toBe(303);
    expect((await enter()).status).toBe(403);
    await set('no');
    expect((await enter()).status).toBe(303);
    await set('yes');
    // besides ann there is the sample's own
    const own = await numbered('office');
    await office.send(`/accounts/${own.id}`, `/accounts/${own.id}/disabled`, { disabled: 'yes' });
    const ann = await numbered('ann');
    const refused = await office.send(`/accounts/${ann.id}`, `/accounts/${ann.id}/disabled`, { disabled: 'yes' });
    expect(refused.status).toBe(400);
    expect(await refused.text()).toContain('the last account of the office');
    expect((await office.get('/accounts')).status).toBe(200);
  });

  it('sets another password, and whoever was signed in with the old one no longer is', async () => {
    const lee = await numbered('lee');
    const board = browser(sample);
    await board.send('/sign-in', '/sign-in', { name: 'lee', password: PASSWORD });
    const set = (password: string) => office.send(`/accounts/${lee.id}`, `/accounts/${lee.id}/password`, { password });
    expect(await (await set('short')).text()).toContain('too short');
    expect((await board.get('/fences')).status).toBe(200);
    expect(await (await set('another of some length')).text()).toContain('The password is set.');
    expect((await board.get('/fences')).status).toBe(303);
  });

  it('answers 404 for an account that is not there', async () => {
    expect((await office.get('/accounts/9999')).status).toBe(404);
    expect((await office.send('/accounts', '/accounts/9999/disabled', { disabled: 'yes' })).status).toBe(404);
  });
});
