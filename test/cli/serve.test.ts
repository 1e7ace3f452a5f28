import type { ChildProcessWithoutNullStreams } from 'node:child_process';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DateTime } from 'luxon';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openRegister } from '../../src/register/database.ts';
import { countFences } from '../../src/register/fence-list.ts';
import { packagePath } from '../../src/register/package-path.ts';
import { importDemo } from '../../src/service/import-demo.ts';
import { tokenIn } from '../web/access/access-visitors.ts';

const DEADLINE_MS = 120_000;

interface Running {
  readonly child: ChildProcessWithoutNullStreams;
  readonly said: () => string;
  /** Waits until standard output holds the pattern, and returns what matched. */
  readonly heard: (pattern: RegExp) => Promise<RegExpExecArray>;
  readonly ended: Promise<number | null>;
}

function start(args: readonly string[], env: Readonly<Record<string, string>> = {}): Running {
  const child = spawn(process.execPath, ['--import', 'tsx', packagePath('src', 'cli', 'main.ts'), ...args], {
    cwd: packagePath(),
    env: { PATH: process.env.PATH, STORMPALE_PORT: '0', ...env },
  });
  let text = '';
  child.stdout.setEncoding('utf8').on('data', (chunk: string) => {
    text += chunk;
  });
  child.stderr.setEncoding('utf8').on('data', (chunk: string) => {
    text += chunk;
  });
  const ended = once(child, 'close').then(([code]) => code as number | null);
  const heard = async (pattern: RegExp): Promise<RegExpExecArray> => {
    const deadline = AbortSignal.timeout(DEADLINE_MS);
    for (;;) {
      const found = pattern.exec(text);
      if (found) return found;
      if (child.exitCode !== null) throw new Error(`it ended with ${child.exitCode} and said:\n${text}`);
      await Promise.race([once(child.stdout, 'data', { signal: deadline }), ended]);
    }
  };
  return { child, said: () => text, heard, ended };
}

const cookiesOf = (response: Response): string =>
  response.headers
    .getSetCookie()
    .filter((cookie) => !/Max-Age=0/.test(cookie))
    .map((cookie) => cookie.split(';')[0])
    .join('; ');

describe('serve', { timeout: 150_000 }, () => {
  let folder: string;
  let running: Running | null = null;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'stormpale-serve-'));
  });
  afterEach(async () => {
    if (running && running.child.exitCode === null) {
      running.child.kill('SIGKILL');
      await running.ended;
    }
    rmSync(folder, { recursive: true, force: true });
  });

  it('loads the demo into an empty register, says where everything is, serves it, and stops on Ctrl-C', async () => {
    running = start(['--data', folder, 'serve', '--demo-if-empty']);
    const [, url] = await running.heard(/Stormpale is up: (http:\/\/127\.0\.0\.1:\d+)/);
    await running.heard(/Ctrl-C stops\./);
    expect(running.said()).toContain(`read it at ${url}/mail`);
    expect(running.said()).toContain('npm start -- --empty');
    expect(running.said()).toContain(`Data lie in ${folder}`);
    expect(running.said()).toContain('the demo opens by one click');
    const door = await fetch(`${url}/?standing=short+from+new`);
    const fields = { form_token: tokenIn(await door.text()), as: 'office', next: '/fences?standing=short+from+new' };
    const entered = await fetch(`${url}/demo`, {
      method: 'POST',
      body: new URLSearchParams(fields),
      headers: { cookie: cookiesOf(door) },
      redirect: 'manual',
    });
    const headers = { cookie: cookiesOf(entered) };
    const page = await (await fetch(new URL(entered.headers.get('location') ?? '', url), { headers })).text();
    expect(page).toMatch(/\d+ of \d{2} fences are short of their design gust now/);
    expect((await fetch(`${url}/mail`, { headers })).status).toBe(200);
    running.child.kill('SIGINT');
    expect(await running.ended).toBe(0);
  });

  it('begins with an empty register where told to, although the demo was asked for', async () => {
    running = start(['--data', folder, 'serve', '--demo-if-empty', '--empty']);
    const [, url] = await running.heard(/Stormpale is up: (http:\/\/127\.0\.0\.1:\d+)/);
    expect(await (await fetch(`${url}/`)).text()).toContain('Make the first account');
    await running.heard(/Ctrl-C stops\./);
    expect(running.said()).not.toContain('invented demo');
    expect(running.said()).toContain('Nobody has an account yet: the first page makes the first one');
    expect(running.said()).toContain('swept every night at 04:30 UTC');
    expect(running.said()).toContain('STORMPALE_TIME_ZONE=');
    running.child.kill('SIGTERM');
    expect(await running.ended).toBe(0);
  });

  it('says that the register is not empty where an empty one was asked for, and that it holds the demo', async () => {
    const register = await openRegister(join(folder, 'register.sqlite'));
    const now = () => DateTime.fromISO('2026-11-25T12:00:00Z', { zone: 'utc' });
    await importDemo(register, { now, onProgress: () => undefined });
    const fences = await countFences(register);
    await register.close();
    running = start(['--data', folder, 'serve', '--demo-if-empty', '--empty']);
    await running.heard(/Ctrl-C stops\./);
    expect(running.said()).toContain(
      `already holds ${fences} fences. For an empty one: STORMPALE_DATA=./mine npm start -- --empty`,
    );
    expect(running.said()).toContain('The register holds an invented demo.');
  });

  it('ends with a code and the way out where its port is taken', async () => {
    running = start(['--data', folder, 'serve', '--empty']);
    const [, port] = await running.heard(/Stormpale is up: http:\/\/127\.0\.0\.1:(\d+)/);
    const second = start(['--data', join(folder, 'other'), 'serve', '--empty'], { STORMPALE_PORT: port as string });
    expect(await second.ended).toBe(1);
    expect(second.said()).toContain(`port ${port} on 127.0.0.1 is taken`);
    running.child.kill('SIGTERM');
    await running.ended;
  });
});
