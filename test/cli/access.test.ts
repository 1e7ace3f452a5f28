import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { trySignIn } from '../../src/service/sign-in.ts';
import { sampleApp } from '../web/sample-app.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';
import { command } from './command-line.ts';

let sample: Awaited<ReturnType<typeof sampleRegister>>;
beforeAll(async () => {
  sample = await sampleRegister({ swept: false });
});
afterAll(() => sample.remove());
const run = (...args: readonly string[]) => command(sample.folder, args);
const signIn = (name: string, password: string) =>
  trySignIn(sample.register, { name, password, address: '203.0.113.1' }, SAMPLE_NOW);

describe('stormpale account', () => {
  it('makes the first account of the office, and shows a password that lets it in, once', async () => {
    expect((await run('account', 'list')).out).toContain('Nobody has an account.');
    const crew = await run('account', 'add', 'bo', '--role', 'board', '--site', 'PELICAN');
    expect(crew.code).toBe(3);
    expect(crew.err).toContain('the first account is one of the office');
    const made = await run('account', 'add', 'Ann', '--role', 'office', '--called', 'Ann Tern');
    expect(made.code).toBe(0);
    const password = made.out.trim();
    expect(password).toMatch(/^([a-z2-9]{4}-){3}[a-z2-9]{4}$/);
    expect(made.err).toContain('shown this once');
    expect((await signIn('ann', password)).kind).toBe('in');
  });

  it('takes a password from a file, and tells every fault at once', async () => {
    const file = join(sample.folder, 'password.txt');
    writeFileSync(file, 'gate latch and hinge\n');
    const made = await run('account', 'add', 'lee', '--role', 'board', '--site', 'PELICAN', '--password-file', file);
    expect(made).toMatchObject({ code: 0, out: '' });
    expect((await signIn('lee', 'gate latch and hinge')).kind).toBe('in');
    const refused = await run('account', 'add', 'a b', '--role', 'board', '--site', 'NOWHERE');
    expect(refused.code).toBe(3);
    expect(refused.err).toContain('name: ');
    expect(refused.err).toContain('the register has no site "NOWHERE"');
  });

  it('sets sites and passwords, disables and lets in again', async () => {
    expect((await run('account', 'sites', 'lee', 'SKERRY', 'PELICAN')).out).toContain('SKERRY, PELICAN');
    expect((await run('account', 'list')).out).toMatch(/lee +lee +board +PELICAN SKERRY +signs in/);
    expect((await run('account', 'sites', 'ann', 'SKERRY')).err).toContain('ann is no board');
    const another = (await run('account', 'password', 'lee')).out.trim();
    expect((await signIn('lee', 'gate latch and hinge')).kind).toBe('wrong');
    expect((await signIn('lee', another)).kind).toBe('in');
    await run('account', 'disable', 'lee');
    expect((await signIn('lee', another)).kind).toBe('wrong');
    await run('account', 'disable', 'lee', '--undo');
    expect((await signIn('lee', another)).kind).toBe('in');
    expect((await run('account', 'disable', 'ann')).err).toContain('the last account of the office');
    const unknown = await run('account', 'disable', 'lea');
    expect(unknown.code).toBe(4);
    expect(unknown.err).toContain('did you mean lee?');
    expect(JSON.parse((await run('account', 'list', '--json')).out)).toMatchObject([{ name: 'ann' }, { name: 'lee' }]);
  });
});

describe('stormpale token and owner-link', () => {
  it('make what opens the pages, show it once, list it without its secret, and end it', async () => {
    const token = await run('token', 'new', 'monitor', '--scope', 'read-fences', 'read-metrics', '--days', '30');
    const text = token.out.trim();
    expect(token.err).toContain('read-fences read-metrics, until 2026-12-24');
    const listed = (await run('token', 'list')).out;
    expect(listed).toContain('monitor');
    expect(listed).not.toContain(text.slice(10));
    expect((await run('token', 'revoke', '1')).out).toContain('never answers again');
    expect((await run('token', 'list')).out).toContain('revoked 2026-11-24');
    expect((await run('token', 'revoke', '9')).code).toBe(4);
    expect((await run('token', 'new', 'x', '--scope', 'everything')).code).toBe(2);

    const link = await run('owner-link', 'new', 'QUINN');
    expect(link.out).toMatch(/^http:\/\/127\.0\.0\.1:8480\/owner\/1\.[A-Za-z0-9_-]{43}\n$/);
    expect(link.err).toContain('until 2027-02-22');
    expect(link.err).toContain('STORMPALE_PUBLIC_URL');
    expect((await run('owner-link', 'list')).out).not.toContain(link.out.trim().split('.').at(-1));
    expect((await run('owner-link', 'revoke', '1')).out).toContain('never answers again');
    const unknown = await run('owner-link', 'new', 'QUIN');
    expect(unknown.code).toBe(4);
    expect(unknown.err).toContain('did you mean QUINN?');
  });

  it('open them, from the command line to the browser', async () => {
    const app = await sampleApp({ swept: false });
    try {
      const { folder } = { folder: app.config.dataFolder };
      const link = (await command(folder, ['owner-link', 'new', 'MASON'])).out.trim();
      expect((await app.pages.request(new URL(link).pathname)).status).toBe(200);
      const token = (await command(folder, ['token', 'new', 'x', '--scope', 'read-fences'])).out.trim();
      const headers = { authorization: `Bearer ${token}` };
      expect((await app.pages.request('/fences/PR-01.json', { headers })).status).toBe(200);
      await command(folder, ['token', 'revoke', '1']);
      expect((await app.pages.request('/fences/PR-01.json', { headers })).status).toBe(401);
    } finally {
      await app.close();
    }
  });
});
