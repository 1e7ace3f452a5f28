import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { openRegister, type Register } from '../../src/register/database.ts';
import { listOwnersToWriteTo } from '../../src/register/notice-store.ts';
import { countOutbox } from '../../src/register/outbox.ts';
import { newestSweep } from '../../src/register/sweep-store.ts';
import { sha256 } from '../../src/service/canonical-json.ts';
import { systemClock } from '../../src/service/clock.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { changeFences, changeOwner, fillRegister } from '../service/fence-register.ts';
import type { KeepingServer } from './keeping-server.ts';
import { keepingServer } from './keeping-server.ts';

/** What the service was at when it was killed. */
type Moment = 'starting' | 'sweeping' | 'writing messages' | 'sending' | 'at rest';

/** What came of killing the service again and again. */
export interface KillCount {
  readonly moments: Readonly<Record<Moment, number>>;
  readonly fences: number;
  readonly notices: number;
  readonly messages: number;
  /** Messages that the mail server had when the service was killed before it had noted so. */
  readonly answersLost: number;
  readonly copies: number;
  /** Everything that is not as it has to be; nothing where all is well. */
  readonly faults: readonly string[];
}

/** How the service is killed. */
export interface KillPlan {
  readonly kills: number;
  readonly seed: number;
  /** Folder for the register and a second one to compare with. */
  readonly folder: string;
  /** Arguments of Node that run the program. */
  readonly program: readonly string[];
  /** Fences that are new each time the service starts. */
  readonly fencesALife: number;
  /** The latest moment of a kill after the service has started [ms]. */
  readonly latestKillMs: number;
  readonly onKill?: (count: number) => void;
}

/** Answers of the mail server take so long [ms]: a kill then often finds one on its way. */
const ANSWER_MS = 25;
/** Where a kill is waited for: a moment from the start of the process, of its pages, of a message written, of a mail received. */
const AFTER = ['the process began', 'it was up', 'a message was written', 'a mail arrived'] as const;
/** What does not come within so long is not waited for any more [ms]. */
const PATIENCE_MS = 120_000;

function start(plan: KillPlan, port: number) {
  const env: Record<string, string | undefined> = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !name.startsWith('STORMPALE_')),
  );
  const child = spawn(process.execPath, [...plan.program, 'serve', '--empty'], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: {
      ...env,
      STORMPALE_DATA: join(plan.folder, 'killed'),
      STORMPALE_PORT: '0',
      STORMPALE_LOG_LEVEL: 'error',
      STORMPALE_SMTP_URL: `smtp://127.0.0.1:${port}`,
      STORMPALE_MAIL_FROM: 'notices@example.org',
      STORMPALE_OFFICE_NAME: 'Gale & Rail Fence Care',
      STORMPALE_OFFICE_EMAIL: 'office@example.org',
      STORMPALE_QUIET_HOURS: 'none',
      STORMPALE_MAIL_PER_MINUTE: '100000',
      STORMPALE_BOUNCE_ADDRESS: 'bounces+*@example.org',
    },
  });
  const ended = once(child, 'exit');
  return {
    started: Promise.race([
      once(child.stdout, 'data'),
      ended.then(() => Promise.reject(new Error('the service ended by itself'))),
    ]),
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
  };
}

/** Owners and fences that are new, a fence each, old enough that every owner is written to. */
async function addFences(register: Register, first: number, count: number): Promise<void> {
  for (let number = first; number < first + count; number += 1) {
    const ownerRef = `O-${number}`;
    await changeOwner(register, { ref: ownerRef, name: `Owner ${number}`, email: `owner-${number}@example.net` });
    const day = `${1998 + (number % 12)}-04-15`;
    await changeFences(register, [
      { ref: `F-${String(number).padStart(5, '0')}`, ownerRef, installedEarliest: day, installedLatest: day },
    ]);
  }
}

async function isDone(register: Register, fences: number): Promise<boolean> {
  const { forecasts } = await register.db
    .selectFrom('forecasts')
    .select((eb) => eb.fn.countAll<number>().as('forecasts'))
    .executeTakeFirstOrThrow();
  const { queued, leased } = await countOutbox(register);
  return (
    forecasts === fences &&
    (await newestSweep(register))?.state === 'finished' &&
    (await listOwnersToWriteTo(register)).length === 0 &&
    queued + leased === 0
  );
}

async function momentOf(register: Register): Promise<Moment> {
  if ((await newestSweep(register))?.state === 'running') return 'sweeping';
  if ((await countOutbox(register)).leased > 0) return 'sending';
  return (await listOwnersToWriteTo(register)).length > 0 ? 'writing messages' : 'at rest';
}

/** Messages that the server has one copy too few of to be noted as sent: their next copy is a repeat that has its reason. */
async function unnoted(register: Register, server: KeepingServer): Promise<readonly string[]> {
  const rows = await register.db
    .selectFrom('outbox')
    .select(['message_id as id'])
    .where('state', '<>', 'sent')
    .execute();
  return rows.map(({ id }) => id).filter((id) => server.copies.has(id));
}

const noticesOf = async (register: Register): Promise<readonly string[]> => {
  const rows = await register.db
    .selectFrom('notices')
    .select(['fence_ref', 'owner_ref', 'matter', 'occasion'])
    .where('void_reason', 'is', null)
    .execute();
  return rows.map((row) => `${row.fence_ref} ${row.owner_ref} ${row.matter} ${row.occasion}`).sort();
};

/** Compares what is left with what has to be: against a sweep that nobody killed, and against what the server has. */
async function faultsOf(
  register: Register,
  whole: Register,
  server: KeepingServer,
  lost: ReadonlyMap<string, number>,
): Promise<readonly string[]> {
  const faults: string[] = [];
  const [got, wanted] = [await noticesOf(register), await noticesOf(whole)];
  const missing = wanted.filter((notice) => !got.includes(notice));
  if (missing.length > 0 || got.length !== wanted.length) {
    faults.push(`${got.length} notices instead of ${wanted.length}; missing: ${missing.slice(0, 5).join('; ')}`);
  }
  const rows = await register.db.selectFrom('outbox').select(['message_id as id', 'state', 'sha256']).execute();
  for (const { id, state, sha256: digest } of rows) {
    const copies = server.copies.get(id) ?? [];
    const due = 1 + (lost.get(id) ?? 0);
    if (state !== 'sent') faults.push(`${id} is ${state}`);
    if (copies.length !== due) faults.push(`${id} arrived ${copies.length} times instead of ${due}`);
    if (copies.some((raw) => sha256(raw) !== digest)) faults.push(`${id} arrived with other bytes`);
  }
  const known = new Set(rows.map(({ id }) => id));
  for (const id of server.copies.keys()) if (!known.has(id)) faults.push(`${id} arrived and is in no outbox`);
  return faults;
}

/** Waits until what a kill comes after has come, or patience is over. */
async function comes(
  what: (typeof AFTER)[number],
  life: {
    readonly service: ReturnType<typeof start>;
    readonly register: Register;
    readonly server: KeepingServer;
    /** How many mails are to arrive. */
    readonly mails: number;
  },
): Promise<void> {
  const { service, register, server, mails } = life;
  if (what === 'the process began') return;
  const before = server.count();
  await service.started;
  if (what === 'it was up') return;
  const rowsOf = async (): Promise<number> =>
    Object.values(await countOutbox(register)).reduce((sum, count) => sum + count, 0);
  const written = await rowsOf();
  const endsAt = performance.now() + PATIENCE_MS;
  const hasCome = async (): Promise<boolean> =>
    what === 'a mail arrived' ? server.count() >= before + mails : (await rowsOf()) > written;
  while (performance.now() < endsAt && !(await hasCome())) await pause(5);
}

/** Kills a service that sweeps, writes and sends at seeded moments, starts it again each time, and lets it end its work at last. */
export async function killRun(plan: KillPlan): Promise<KillCount> {
  const random = xoroshiro128plus(plan.seed);
  const server = await keepingServer(ANSWER_MS);
  const register = await openRegister(join(plan.folder, 'killed', 'register.sqlite'));
  const whole = await openRegister(join(plan.folder, 'whole', 'register.sqlite'));
  const moments = { starting: 0, sweeping: 0, 'writing messages': 0, sending: 0, 'at rest': 0 };
  const lost = new Map<string, number>();
  let fences = 0;
  try {
    for (const each of [register, whole]) await fillRegister(each, { fences: [] });
    for (let count = 1; count <= plan.kills; count += 1) {
      for (const each of [register, whole]) await addFences(each, fences, plan.fencesALife);
      fences += plan.fencesALife;
      const service = start(plan, server.port);
      service.started.catch(() => undefined);
      const after = AFTER[uniformInt(random, 0, AFTER.length - 1)] ?? 'it was up';
      const share = uniformInt(random, 0, 999) / 1000;
      await comes(after, { service, register, server, mails: uniformInt(random, 1, plan.fencesALife) });
      // answers take their time: a kill after a mail arrived comes before its answer or soon after
      const spreadMs = after === 'it was up' ? plan.latestKillMs : after === 'a mail arrived' ? 2 * ANSWER_MS : 300;
      await pause(share * spreadMs);
      await service.kill();
      await server.idle();
      moments[after === 'the process began' ? 'starting' : await momentOf(register)] += 1;
      for (const id of await unnoted(register, server)) lost.set(id, server.copies.get(id)?.length ?? 0);
      plan.onKill?.(count);
    }
    const last = start(plan, server.port);
    await last.started;
    while (!(await isDone(register, fences))) await pause(250);
    await last.kill();
    await runSweep(whole, { now: systemClock });
    const faults = await faultsOf(register, whole, server, lost);
    const { sent } = await countOutbox(register);
    const copies = [...server.copies.values()].reduce((sum, each) => sum + each.length, 0);
    const answersLost = [...lost.values()].reduce((sum, times) => sum + times, 0);
    const notices = (await noticesOf(register)).length;
    return { moments, fences, notices, messages: sent, answersLost, copies, faults };
  } finally {
    await register.close();
    await whole.close();
    await server.close();
  }
}
