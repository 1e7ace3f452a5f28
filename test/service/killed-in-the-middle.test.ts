import { expect, it } from 'vitest';
import { countOutbox, listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { newestSweep } from '../../src/register/sweep-store.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { drainOutbox } from '../../src/service/drain-outbox.ts';
import { mailServerAddress, smtpTransport } from '../../src/service/mail-transport.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import type { Child } from './child-process.ts';
import { startChild } from './child-process.ts';
import { fenceRegister, JANUARY, manyFences, SENDER, sweptBytes } from './fence-register.ts';
import { mailServer, messageIdOf } from './mail-server.ts';
import { queueMails } from './queued-mails.ts';

it('stores the same forecasts and notices when the sweep is killed in the middle of a chunk and resumed', async () => {
  const plan = { fences: manyFences(24) };
  const whole = await fenceRegister(plan);
  await runSweep(whole, { now: () => JANUARY });
  const killed = await fenceRegister(plan);
  // two kills, each in the middle of a chunk, at different fences
  for (const ref of ['F-007', 'F-013']) {
    const child = startChild('./sweep-child.ts', killed.path);
    await child.line(`at ${ref}`);
    await child.kill();
    const left = await newestSweep(killed, 'running');
    expect(left?.checkpointRef).toBe(ref === 'F-007' ? 'F-004' : 'F-009');
    expect(await killed.db.selectFrom('forecasts').select('fence_ref').execute()).toHaveLength(left?.computed ?? 0);
  }
  // the dead process still holds the claim, and is seen to be dead
  const resumed = await runSweep(killed, { now: () => JANUARY.plus({ minutes: 1 }) });
  expect(resumed).toMatchObject({ kind: 'finished', resumed: true, sweep: { id: 1, computed: 24 } });
  expect(await sweptBytes(killed)).toBe(await sweptBytes(whole));
});

it('writes every message once, with the same bytes, when the writing is killed and begun again', async () => {
  const owners = Array.from({ length: 8 }, (_, index) => ({
    ref: `O-${index}`,
    name: `Owner ${index}`,
    email: `owner-${index}@example.net`,
  }));
  const plan = {
    owners,
    fences: owners.map((owner, index) => ({ ref: `F-${index}`, ownerRef: owner.ref })),
  };
  const whole = await fenceRegister(plan);
  const killed = await fenceRegister(plan);
  for (const register of [whole, killed]) await runSweep(register, { now: () => JANUARY });
  await composeNotices(whole, { now: () => JANUARY, sender: SENDER });
  const child = startChild('./compose-child.ts', killed.path);
  await child.line('begun');
  await expect
    .poll(async () => (await countOutbox(killed)).queued, { interval: 5, timeout: 20_000 })
    .toBeGreaterThan(1);
  await child.kill();
  const left = (await countOutbox(killed)).queued;
  expect(left).toBeLessThan(8);
  expect(await composeNotices(killed, { now: () => JANUARY, sender: SENDER })).toMatchObject({ mails: 8 - left });
  const digests = async (register: typeof whole) =>
    (await listOutbox(register, { limit: 20 })).map(({ messageId, sha256 }) => `${messageId} ${sha256}`).sort();
  expect(await digests(killed)).toEqual(await digests(whole));
  expect(await digests(killed)).toHaveLength(8);
});

it('delivers every mail when the drain is killed, and repeats only the one whose answer was lost', async () => {
  const register = await fenceRegister({ fences: [] });
  const ids = await queueMails(register, 12, JANUARY.toISO() ?? '');
  const started: { child: Child | null } = { child: null };
  const server = await mailServer({
    // the server has the fifth mail and its answer never arrives
    onMessage: async (_mail, count) => {
      if (count === 5 && started.child) await started.child.kill();
      return null;
    },
  });
  started.child = startChild('./drain-child.ts', register.path, String(server.port));
  await expect.poll(() => server.received.length, { timeout: 20_000 }).toBe(5);
  expect(await countOutbox(register)).toMatchObject({ sent: 4, leased: 6, queued: 2 });
  const transport = smtpTransport(mailServerAddress(`smtp://127.0.0.1:${server.port}`));
  // what the dead process had leased waits until its lease runs out
  await drainOutbox(register, { now: () => JANUARY.plus({ seconds: 10 }), transport });
  expect(await countOutbox(register)).toMatchObject({ sent: 6, leased: 6 });
  await drainOutbox(register, { now: () => JANUARY.plus({ minutes: 21 }), transport });
  expect(await countOutbox(register)).toMatchObject({ sent: 12, leased: 0, queued: 0 });

  const arrived = server.received.map(messageIdOf);
  expect(new Set(arrived)).toEqual(new Set(ids));
  const twice = arrived.filter((id, index) => arrived.indexOf(id) !== index);
  expect(twice).toEqual(['<mail-5@example.org>']);
  const copies = server.received.filter((mail) => messageIdOf(mail) === twice[0]);
  expect(copies[0]?.raw).toBe(copies[1]?.raw);
  const stored = await loadOutboxBytes(register, 5);
  expect(copies[0]?.raw).toBe(Buffer.from(stored?.raw ?? []).toString('utf8'));
});
