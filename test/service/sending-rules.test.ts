import type { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import type { Register } from '../../src/register/database.ts';
import { postMessages } from '../../src/register/notice-store.ts';
import { countOutbox, listOutbox, retryMessages } from '../../src/register/outbox.ts';
import { reconsiderHolds } from '../../src/register/outbox-holds.ts';
import { isoUtc } from '../../src/service/clock.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { drainOutbox } from '../../src/service/drain-outbox.ts';
import { mailServerAddress, smtpTransport } from '../../src/service/mail-transport.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import type { SendingRules } from '../../src/service/sending-rules.ts';
import { fenceRegister, JANUARY, manyFences, SENDER } from './fence-register.ts';
import { mailServer } from './mail-server.ts';

const NIGHT = { quietHours: { from: '20:00', to: '08:00' }, perMinute: null, timeZone: 'UTC' };

async function draining(register: Register) {
  const server = await mailServer();
  const transport = smtpTransport(mailServerAddress(`smtp://127.0.0.1:${server.port}`));
  const drain = (now: DateTime, rules: SendingRules) => drainOutbox(register, { now: () => now, transport, rules });
  return { server, drain };
}

/** Puts mails to numbered people of domains into the queue. */
async function queueTo(register: Register, domains: readonly string[], urgent = false): Promise<void> {
  const messages = domains.map((domain, index) => {
    const messageId = `<${urgent ? 'urgent' : 'mail'}-${index}@example.org>`;
    return {
      ...{ messageId, ownerRef: 'ANN', channel: 'mail' as const, envelopeFrom: 'notices@example.org' },
      envelopeTo: `${urgent ? 'u' : 'p'}${index}@${domain}`,
      subject: 'test',
      raw: Buffer.from(`Message-ID: ${messageId}\r\n\r\ntext\r\n`),
      ...{ sha256: '', noticeIds: [], urgent },
    };
  });
  await postMessages(register, messages, isoUtc(JANUARY));
}

describe('quiet hours', () => {
  it('hold ordinary mails until the morning at the site, say so, and lose none', async () => {
    const register = await fenceRegister({ fences: manyFences(2) });
    await runSweep(register, { now: () => JANUARY });
    await composeNotices(register, { now: () => JANUARY, sender: SENDER });
    const { server, drain } = await draining(register);
    // 12:00 UTC is seven in the morning at the site
    expect(await drain(JANUARY, NIGHT)).toMatchObject({ sent: 0, held: 2, unavailable: null });
    const held = await listOutbox(register, { state: 'queued', limit: 5 });
    expect(held.map(({ heldBy, dueAt, attempts }) => [heldBy, dueAt, attempts])).toEqual(
      Array(2).fill(['quiet hours', '2027-01-15T13:00:00.000Z', 0]),
    );
    expect(await drain(JANUARY.plus({ minutes: 59 }), NIGHT)).toMatchObject({ sent: 0, held: 0 });
    expect(await drain(JANUARY.plus({ minutes: 60 }), NIGHT)).toMatchObject({ sent: 2, held: 0 });
    expect(server.received).toHaveLength(2);
    expect((await listOutbox(register, { limit: 5 })).every(({ heldBy }) => heldBy === null)).toBe(true);
  });

  it('do not hold what is urgent, which goes ahead of what waits', async () => {
    const register = await fenceRegister({ fences: [] });
    await queueTo(register, Array(30).fill('example.net') as string[]);
    await queueTo(register, ['example.net', 'example.com'], true);
    const { server, drain } = await draining(register);
    const night = JANUARY.set({ hour: 23 });
    expect(await drain(night, NIGHT)).toMatchObject({ sent: 2, held: 30 });
    expect(server.received.map(({ to }) => to)).toEqual(['u0@example.net', 'u1@example.com']);
    expect(await drain(JANUARY.plus({ days: 1 }), NIGHT)).toMatchObject({ sent: 30 });
  });

  it('are asked anew where the office retries, the clock is put back, or the hours were changed', async () => {
    const register = await fenceRegister({ fences: [] });
    await queueTo(register, ['example.net']);
    const { drain } = await draining(register);
    const night = JANUARY.set({ hour: 23 });
    await drain(night, NIGHT);
    await retryMessages(register, 'all', isoUtc(night));
    expect(await drain(night, NIGHT)).toMatchObject({ sent: 0, held: 1 });
    // two days back it is due further ahead than any hour would have it
    expect(await drain(night.minus({ days: 2 }), NIGHT)).toMatchObject({ held: 1 });
    await reconsiderHolds(register, isoUtc(night));
    expect(await drain(night, { ...NIGHT, quietHours: null })).toMatchObject({ sent: 1 });
  });
});

describe('the rate of a domain', () => {
  it('spreads mails over minutes in their order, keeps no other domain waiting, and loses none', async () => {
    const register = await fenceRegister({ fences: [] });
    await queueTo(register, [...(Array(25).fill('slow.example') as string[]), 'other.example']);
    const { server, drain } = await draining(register);
    const rules = { quietHours: null, perMinute: 10, timeZone: 'UTC' };
    expect(await drain(JANUARY, rules)).toMatchObject({ sent: 11, held: 15 });
    expect(server.received.map(({ to }) => to)).toContain('p25@other.example');
    const [last] = await listOutbox(register, { state: 'queued', limit: 1 });
    expect(last).toMatchObject({ heldBy: 'sending rate', dueAt: isoUtc(JANUARY.plus({ minutes: 2 })), attempts: 0 });
    expect(await drain(JANUARY.plus({ seconds: 59 }), rules)).toMatchObject({ sent: 0, held: 0 });
    expect(await drain(JANUARY.plus({ seconds: 60 }), rules)).toMatchObject({ sent: 10 });
    expect(await drain(JANUARY.plus({ seconds: 120 }), rules)).toMatchObject({ sent: 5 });
    expect(await countOutbox(register)).toMatchObject({ sent: 26, queued: 0 });
    const order = server.received.map(({ to }) => Number(/\d+/.exec(to)?.[0])).filter((index) => index !== 25);
    expect(order).toEqual(Array.from({ length: 25 }, (_, index) => index));
  });

  it('lets those that have waited go before those that came later', async () => {
    const register = await fenceRegister({ fences: [] });
    const { server, drain } = await draining(register);
    const rules = { quietHours: null, perMinute: 1, timeZone: 'UTC' };
    await queueTo(register, ['slow.example', 'slow.example', 'slow.example']);
    await drain(JANUARY, rules);
    let now = JANUARY;
    for (let minute = 0; minute < 5; minute += 1) {
      now = now.plus({ minutes: 1 });
      await drain(now, rules);
    }
    expect(server.received.map(({ to }) => to)).toEqual(['p0@slow.example', 'p1@slow.example', 'p2@slow.example']);
  });

  it('holds nothing that is urgent', async () => {
    const register = await fenceRegister({ fences: [] });
    await queueTo(register, Array(3).fill('slow.example') as string[]);
    await queueTo(register, Array(3).fill('slow.example') as string[], true);
    const { drain } = await draining(register);
    const rules = { quietHours: null, perMinute: 1, timeZone: 'UTC' };
    expect(await drain(JANUARY, rules)).toMatchObject({ sent: 3, held: 3 });
  });
});
