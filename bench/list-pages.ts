import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { openRegister, type Register } from '../src/register/database.ts';
import { isoUtc, systemClock } from '../src/service/clock.ts';
import { benchReaders } from './bench-readers.ts';
import { LISTED_PAGES, type ListedPage } from './listed-pages.ts';
import { manyFences } from './many-fences.ts';
import { type Reading, startTimedService, THINK_MS, type TimedService } from './timed-reading.ts';

/**
 * Measures every list page of a large register: 50 readers who think for a second between pages, with and without a sweep at
 * work. `npm run bench:pages [FENCES, default 100,000] [SECONDS a run, default 60] [READERS, default 50] [FOLDER]`: the register
 * is made in the folder, kept there, and used again by the next run; without a folder it is made anew and thrown away.
 */
const fences = Number(process.argv[2] ?? 100_000);
const seconds = Number(process.argv[3] ?? 60);
const readers = Number(process.argv[4] ?? 50);
const kept = process.argv[5];
const LIMIT_MS = 100;
const SCRIPT_LIMIT_BYTES = 50 * 1024;
/** How long a sweep may take to begin [ms]. */
const LONGEST_START_MS = 120_000;
const folder = kept ?? mkdtempSync(join(tmpdir(), 'stormpale-pages-'));

/** The register of the folder, made where there is none yet. */
async function registerAt(path: string): Promise<Register> {
  if (!existsSync(path)) {
    const from = performance.now();
    const making = await openRegister(`${path}.new`);
    await manyFences(making, fences, systemClock);
    await making.close();
    renameSync(`${path}.new`, path);
    console.log(`${fences} fences made in ${((performance.now() - from) / 1000).toFixed(0)} s`);
  }
  return openRegister(path);
}

/** The pages with the last fence's site and owner filled in. */
async function pagesOf({ db }: Register): Promise<readonly ListedPage[]> {
  const some = await db
    .selectFrom('fences')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .select(['fences.site_ref as site', 'fences.owner_ref as owner', 'sites.name as name'])
    .orderBy('fences.ref', 'desc')
    .limit(1)
    .executeTakeFirstOrThrow();
  return LISTED_PAGES.map((page) => ({
    ...page,
    path: page.path
      .replace('SITENAME', encodeURIComponent(some.name))
      .replace('SITE', encodeURIComponent(some.site))
      .replace('OWNER', encodeURIComponent(some.owner)),
  }));
}

/** Bytes of script that a page brings along, its own and those it names. */
async function scriptBytes(service: TimedService, page: ListedPage): Promise<{ script: number; html: number }> {
  const { body, status } = await service.ask(page);
  if (status !== 200) throw new Error(`${page.path} answers ${status}`);
  const inline = [...body.matchAll(/<script[^>]*>([^<]*)<\/script>/g)].reduce((sum, [, text]) => sum + text!.length, 0);
  let linked = 0;
  for (const [, src] of body.matchAll(/<script[^>]* src="([^"]+)"/g)) {
    linked += (await service.ask({ ...page, path: src! })).body.length;
  }
  return { script: inline + linked, html: body.length };
}

const percentile = (times: readonly number[], share: number): number => {
  const ascending = [...times].sort((a, b) => a - b);
  return ascending[Math.min(ascending.length - 1, Math.ceil(ascending.length * share) - 1)] ?? Number.NaN;
};
const ms = (value: number): string => value.toFixed(1);
const line = (name: string, cells: readonly string[]): void =>
  console.log(`${name.padEnd(34)}${cells.map((cell) => cell.padStart(9)).join('')}`);

async function reading(service: TimedService, pages: readonly ListedPage[]): Promise<Reading> {
  // each page once beforehand, so that what is kept is kept
  for (const page of pages) await service.ask(page);
  return service.read(pages, readers, seconds);
}

try {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, 'register.sqlite');
  const register = await registerAt(path);
  const counted = await register.db
    .selectFrom('fences')
    .select(({ fn }) => fn.countAll<number>().as('fences'))
    .executeTakeFirstOrThrow();
  console.log(
    `${counted.fences} fences; Node ${process.version}, ${cpus().length} cores, load ${loadavg()[0]!.toFixed(1)} beforehand`,
  );
  const pages = await pagesOf(register);
  const siteRefs = (
    await register.db.selectFrom('fences').select('site_ref').distinct().orderBy('site_ref', 'desc').limit(3).execute()
  ).map(({ site_ref }) => site_ref);
  const { crew_ref: crewRef } = await register.db
    .selectFrom('visits')
    .select('crew_ref')
    .where('first_day', '>=', isoUtc(systemClock()).slice(0, 10))
    .orderBy('first_day')
    .limit(1)
    .executeTakeFirstOrThrow();
  const shown = await benchReaders(register, { siteRefs, crewRef, now: systemClock });
  // a sweep that began and was never finished is due at once
  const at = isoUtc(systemClock());
  const { count } = await register.db.selectFrom('register_changes').select('count').executeTakeFirstOrThrow();
  await register.db
    .updateTable('sweeps')
    .set({ as_of: at, finished_at: at, state: 'finished', change_count: count })
    .execute();
  await register.close();

  const still = await startTimedService(folder, shown);
  const scripts: { readonly script: number; readonly html: number }[] = [];
  for (const page of pages) scripts.push(await scriptBytes(still, page));
  const alone = await reading(still, pages);
  await still.end();

  const again = await openRegister(path);
  await again.db.updateTable('sweeps').set({ as_of: '2026-01-01T00:00:00.000Z' }).execute();
  await again.close();
  const busy = await startTimedService(folder, shown);
  const deadline = performance.now() + LONGEST_START_MS;
  while (!((await busy.told()).sweptSoFar ?? 0)) {
    if (performance.now() > deadline) throw new Error('no sweep began');
    await setTimeout(250);
  }
  const sweeping = await reading(busy, pages);
  await busy.end();

  console.log(
    `${readers} readers, ${THINK_MS / 1000} s of thought, ${seconds} s a run: ${alone.seenMs.length} pages without a sweep, ${sweeping.seenMs.length} with one at work (${sweeping.sweptMeanwhile} fences swept meanwhile)`,
  );
  console.log(
    'server time from the parsed request to the last byte [ms]; ratio of the medians with and without the sweep',
  );
  line('', ['p50', 'p95', 'p99', 'p50', 'p95', 'p99', 'ratio', 'script', 'html kB']);
  line('', ['without', '', '', 'sweeping']);
  let worst = 0;
  for (const [index, page] of pages.entries()) {
    const [quietly, busily] = [alone, sweeping].map((run) =>
      [0.5, 0.95, 0.99].map((share) => percentile(run.pages[`${page.as ?? 'office'} ${page.path}`] ?? [], share)),
    ) as [number[], number[]];
    worst = Math.max(worst, busily[1]!);
    line(page.name, [
      ...quietly.map(ms),
      ...busily.map(ms),
      (busily[0]! / quietly[0]!).toFixed(2),
      String(scripts[index]!.script),
      String(Math.round(scripts[index]!.html / 1000)),
    ]);
  }
  const all = [alone, sweeping].map((run) => ms(percentile(Object.values(run.pages).flat(), 0.95)));
  console.log(`all pages together, p95: ${all[0]} ms without, ${all[1]} ms with the sweep`);
  const seen = [alone, sweeping].map((run) => ms(percentile(run.seenMs, 0.95)));
  console.log(
    `as the readers saw them, connection and waiting for the server included, p95: ${seen[0]} ms without, ${seen[1]} ms with the sweep`,
  );
  console.log(`processor time a page, without a sweep: ${ms(alone.cpuMs / alone.seenMs.length)} ms`);
  const heaviest = Math.max(...scripts.map(({ script }) => script));
  console.log(
    `${worst < LIMIT_MS ? 'held' : 'MISSED'}: every list page under ${LIMIT_MS} ms at p95 with a sweep at work (worst ${ms(worst)} ms); ${heaviest < SCRIPT_LIMIT_BYTES ? 'held' : 'MISSED'}: under 50 kB of script a page (${heaviest} bytes)`,
  );
  process.exitCode = worst < LIMIT_MS && heaviest < SCRIPT_LIMIT_BYTES ? 0 : 1;
} finally {
  if (kept === undefined) rmSync(folder, { recursive: true, force: true });
}
