import { type ChildProcess, fork } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { Agent, get } from 'node:http';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { addAccount } from '../src/register/account-store.ts';
import { openRegister } from '../src/register/database.ts';
import { isoUtc, systemClock } from '../src/service/clock.ts';
import { startSession } from '../src/service/sessions.ts';
import { LISTED_PAGES, type ListedPage } from './listed-pages.ts';
import { manyFences } from './many-fences.ts';
import type { TimedServiceMessage } from './timed-service.ts';

/**
 * Measures every list page of a large register: 50 readers who think for a second between pages, with and without a sweep at
 * work. `npm run bench:pages [FENCES, default 100,000] [SECONDS a run, default 60] [READERS, default 50]`.
 */
const fences = Number(process.argv[2] ?? 100_000);
const seconds = Number(process.argv[3] ?? 60);
const readers = Number(process.argv[4] ?? 50);
const THINK_MS = 1_000;
const LIMIT_MS = 100;
const SCRIPT_LIMIT_BYTES = 50 * 1024;

const folder = mkdtempSync(join(tmpdir(), 'stormpale-pages-'));
const agent = new Agent({ keepAlive: true, maxSockets: readers });

interface Answer {
  readonly status: number;
  readonly html: string;
  readonly tookMs: number;
}

/** A kept connection that the server closed just then is not a page's fault: it is asked again. */
async function ask(base: string, path: string, cookie: string): Promise<Answer> {
  try {
    return await askOnce(base, path, cookie);
  } catch (error) {
    if ((error as { readonly code?: string }).code !== 'ECONNRESET') throw error;
    return askOnce(base, path, cookie);
  }
}

function askOnce(base: string, path: string, cookie: string): Promise<Answer> {
  const from = performance.now();
  return new Promise((resolve, reject) => {
    get(`${base}${path}`, { agent, headers: { cookie } }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () =>
        resolve({
          status: answer.statusCode ?? 0,
          html: Buffer.concat(parts).toString('utf8'),
          tookMs: performance.now() - from,
        }),
      );
    }).on('error', reject);
  });
}

const told = <K extends TimedServiceMessage['kind']>(
  child: ChildProcess,
  kind: K,
): Promise<Extract<TimedServiceMessage, { readonly kind: K }>> =>
  new Promise((resolve) => {
    const hear = (message: TimedServiceMessage): void => {
      if (message.kind !== kind) return;
      child.off('message', hear);
      resolve(message as Extract<TimedServiceMessage, { readonly kind: K }>);
    };
    child.on('message', hear);
  });

/** The service as a process of its own, which tells what its pages took. */
async function startChild(): Promise<{ readonly child: ChildProcess; readonly base: string }> {
  const child = fork(join(import.meta.dirname, 'timed-service.ts'), {
    execArgv: ['--import', 'tsx'],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    env: { ...process.env, STORMPALE_DATA: folder, STORMPALE_PORT: '0', STORMPALE_TIME_ZONE: 'UTC' },
  });
  const { url } = await told(child, 'up');
  return { child, base: url };
}

const percentile = (ascending: readonly number[], share: number): number =>
  ascending[Math.min(ascending.length - 1, Math.ceil(ascending.length * share) - 1)] ?? Number.NaN;

interface Run {
  readonly pages: Readonly<Record<string, readonly number[]>>;
  readonly seen: readonly number[];
  readonly asked: number;
  readonly swept: number;
  readonly cpuMsPerPage: number;
}

/** Fifty readers for so many seconds; what the pages took, and what the readers saw. */
async function read(service: { readonly child: ChildProcess; readonly base: string }, cookie: string): Promise<Run> {
  const { child, base } = service;
  const pages = filledIn;
  for (const { path } of pages) {
    const { status } = await ask(base, path, cookie);
    if (status !== 200) throw new Error(`${path} answers ${status}`);
  }
  child.send('forget');
  child.send('tell');
  const before = await told(child, 'took');
  const seen: number[] = [];
  const until = performance.now() + seconds * 1000;
  await Promise.all(
    Array.from({ length: readers }, async (_, reader) => {
      await setTimeout((reader * THINK_MS) / readers);
      for (let turn = reader; performance.now() < until; turn += 1) {
        const page = pages[turn % pages.length]!;
        const { status, tookMs } = await ask(base, page.path, cookie);
        if (status !== 200) throw new Error(`${page.path} answers ${status}`);
        seen.push(tookMs);
        await setTimeout(THINK_MS);
      }
    }),
  );
  child.send('tell');
  const after = await told(child, 'took');
  return {
    pages: after.pages,
    seen,
    asked: seen.length,
    swept: (after.sweptSoFar ?? 0) - (before.sweptSoFar ?? 0),
    cpuMsPerPage: (1000 * (after.cpuSeconds - before.cpuSeconds)) / seen.length,
  };
}

const line = (name: string, cells: readonly string[]): void =>
  console.log(`${name.padEnd(34)}${cells.map((cell) => cell.padStart(9)).join('')}`);
const ms = (value: number): string => value.toFixed(1);

function figures(run: Run, page: ListedPage): readonly [number, number, number] {
  const ascending = [...(run.pages[page.path] ?? [])].sort((a, b) => a - b);
  return [percentile(ascending, 0.5), percentile(ascending, 0.95), percentile(ascending, 0.99)];
}

let filledIn: readonly ListedPage[] = LISTED_PAGES;
try {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, 'register.sqlite');
  const register = await openRegister(path);
  const from = performance.now();
  await manyFences(register, fences, systemClock);
  console.log(
    `${fences} fences copied from 200 that were swept, in ${((performance.now() - from) / 1000).toFixed(0)} s; Node ${process.version}, ${cpus().length} cores, load ${loadavg()[0]!.toFixed(1)} beforehand`,
  );
  const made = await addAccount(
    register,
    {
      name: 'bench',
      displayName: 'Bench',
      role: 'office',
      crewRef: null,
      language: 'en',
      passwordHash: null,
      siteRefs: [],
    } as never,
    { now: isoUtc(systemClock()), onlyAsFirst: false },
  );
  if ('refused' in made) throw new Error(made.refused);
  const { token } = await startSession(register, made.account, null, systemClock);
  const cookie = `stormpale=${token}`;
  const some = await register.db
    .selectFrom('fences')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .select(['fences.site_ref as site', 'fences.owner_ref as owner', 'sites.name as name'])
    .orderBy('fences.ref', 'desc')
    .limit(1)
    .executeTakeFirstOrThrow();
  filledIn = LISTED_PAGES.map(({ name, path: wanted }) => ({
    name,
    path: wanted
      .replace('SITENAME', encodeURIComponent(some.name))
      .replace('SITE', encodeURIComponent(some.site))
      .replace('OWNER', encodeURIComponent(some.owner)),
  }));
  // a sweep that began and was never finished is due at once
  const quiet = await register.db
    .updateTable('sweeps')
    .set({
      as_of: isoUtc(systemClock()),
      finished_at: isoUtc(systemClock()),
      change_count: (await register.db.selectFrom('register_changes').select('count').executeTakeFirstOrThrow()).count,
    })
    .execute();
  if (quiet.length === 0) throw new Error('the small register was not swept');
  await register.close();

  const still = await startChild();
  const script = await Promise.all(
    filledIn.map(async ({ path: page }) => {
      const { html } = await ask(still.base, page, cookie);
      const inline = [...html.matchAll(/<script[^>]*>([^<]*)<\/script>/g)].reduce(
        (sum, [, text]) => sum + (text ?? '').length,
        0,
      );
      const linked = [...html.matchAll(/<script[^>]* src="([^"]+)"/g)].map(([, src]) => src!);
      const files = await Promise.all(linked.map(async (src) => (await ask(still.base, src, cookie)).html.length));
      return { script: inline + files.reduce((a, b) => a + b, 0), html: html.length };
    }),
  );
  const alone = await read(still, cookie);
  still.child.send('close');
  await new Promise((resolve) => still.child.once('exit', resolve));

  const again = await openRegister(path);
  await again.db.updateTable('sweeps').set({ as_of: '2026-01-01T00:00:00.000Z' }).execute();
  await again.close();
  const busy = await startChild();
  const deadline = performance.now() + 60_000;
  for (;;) {
    busy.child.send('tell');
    const { sweptSoFar } = await told(busy.child, 'took');
    if ((sweptSoFar ?? 0) > 0) break;
    if (performance.now() > deadline) throw new Error('no sweep began');
    await setTimeout(250);
  }
  const sweeping = await read(busy, cookie);
  busy.child.kill('SIGKILL');

  console.log(
    `${readers} readers, ${THINK_MS / 1000} s of thought, ${seconds} s a run: ${alone.asked} pages without a sweep, ${sweeping.asked} with one at work (${sweeping.swept} fences swept meanwhile)`,
  );
  console.log(
    'server time from the parsed request to the last byte [ms]; ratio of the medians with and without the sweep',
  );
  line('', ['p50', 'p95', 'p99', 'p50', 'p95', 'p99', 'ratio', 'script', 'html kB']);
  line('', ['without', '', '', 'sweeping']);
  let worst = 0;
  for (const [index, page] of filledIn.entries()) {
    const [quietly, busily] = [figures(alone, page), figures(sweeping, page)];
    worst = Math.max(worst, busily[1]);
    line(page.name, [
      ...quietly.map(ms),
      ...busily.map(ms),
      (busily[0] / quietly[0]).toFixed(2),
      String(script[index]!.script),
      String(Math.round(script[index]!.html / 1000)),
    ]);
  }
  const seen = [alone, sweeping].map((run) =>
    percentile(
      [...run.seen].sort((a, b) => a - b),
      0.95,
    ),
  );
  console.log(
    `as the readers saw them, connection and waiting for the server included, p95: ${ms(seen[0]!)} ms without, ${ms(seen[1]!)} ms with the sweep`,
  );
  console.log(`processor time a page, without a sweep: ${ms(alone.cpuMsPerPage)} ms`);
  const heaviest = Math.max(...script.map((each) => each.script));
  console.log(
    `${worst < LIMIT_MS ? 'held' : 'MISSED'}: every list page under ${LIMIT_MS} ms at p95 with a sweep at work (worst ${ms(worst)} ms); ${heaviest < SCRIPT_LIMIT_BYTES ? 'held' : 'MISSED'}: under 50 kB of script a page (${heaviest} bytes)`,
  );
  process.exitCode = worst < LIMIT_MS && heaviest < SCRIPT_LIMIT_BYTES ? 0 : 1;
} finally {
  agent.destroy();
  rmSync(folder, { recursive: true, force: true });
}
