import { describe, expect, it } from 'vitest';
import type { Register } from '../../src/register/database.ts';
import { NoticeAlreadyWritten, postMessages } from '../../src/register/notice-store.ts';
import { cancelMessage, countOutbox, listOutbox, loadOutboxBytes, retryMessages } from '../../src/register/outbox.ts';
import {
  leaseDueMessages,
  mailServerTrouble,
  noteMailServer,
  recordTry,
  releaseLeases,
} from '../../src/register/outbox-claims.ts';
import { soundRegister } from './made-up-register.ts';

const AT = '2027-01-15T12:00:00.000Z';
const LATER = '2027-01-15T12:05:00.000Z';

const message = (number: number) => ({
  messageId: `<${number}@example.org>`,
  ownerRef: 'oda',
  channel: 'mail' as const,
  envelopeFrom: 'notices@example.org',
  envelopeTo: 'oda@example.org',
  subject: `Mail ${number}`,
  raw: Buffer.from(`Subject: Mail ${number}\r\n\r\nText\r\n`),
  sha256: 'not checked here',
  noticeIds: [],
});

async function registerWithMails(count: number): Promise<Register> {
  const register = await soundRegister();
  await postMessages(
    register,
    Array.from({ length: count }, (_, index) => message(index + 1)),
    AT,
  );
  return register;
}

const lease = (register: Register, token: string, at = AT, limit = 10) =>
  leaseDueMessages(register, {
    token,
    at,
    until: LATER,
    latestDue: '2027-01-15T20:00:00.000Z',
    latestHeld: '2027-01-16T20:00:00.000Z',
    limit,
  });

describe('the outbox', () => {
  it('leases each message to one holder, oldest first, with its bytes', async () => {
    const register = await registerWithMails(3);
    const first = await lease(register, 'a', AT, 2);
    expect(first.map((each) => each.id)).toEqual([1, 2]);
    expect(Buffer.from(first[0]?.raw ?? []).toString()).toContain('Mail 1');
    expect((await lease(register, 'b')).map((each) => each.id)).toEqual([3]);
    expect(await lease(register, 'c')).toEqual([]);
  });

  it('leases nothing before it is due', async () => {
    const register = await registerWithMails(1);
    expect(await lease(register, 'a', '2027-01-15T11:59:59.999Z')).toEqual([]);
  });

  it('takes a due time or a lease further ahead than any is ever given for due: the clock was put back', async () => {
    const register = await registerWithMails(2);
    await lease(register, 'held', AT, 1);
    const dayBefore = { at: '2027-01-14T12:00:00.000Z', until: '2027-01-14T12:05:00.000Z' };
    const terms = {
      ...dayBefore,
      latestDue: '2027-01-14T20:00:00.000Z',
      latestHeld: '2027-01-15T20:00:00.000Z',
      limit: 10,
    };
    expect((await leaseDueMessages(register, { token: 'now', ...terms })).map((each) => each.id)).toEqual([1, 2]);
  });

  it('forgets what stood against the mail server when a message is to be tried at once', async () => {
    const register = await registerWithMails(1);
    await noteMailServer(register, { failures: 4, retryAt: LATER, lastReply: 'ECONNREFUSED' });
    expect(await retryMessages(register, 99, AT)).toBe(0);
    expect(await mailServerTrouble(register)).toMatchObject({ failures: 4 });
    expect(await retryMessages(register, 1, AT)).toBe(1);
    expect(await mailServerTrouble(register)).toBeNull();
  });

  it('takes no word from a holder whose lease went to another', async () => {
    const register = await registerWithMails(1);
    await lease(register, 'slow');
    await lease(register, 'next', LATER);
    expect(await recordTry(register, 1, 'slow', { kind: 'parked', at: LATER, reply: '550 late' })).toBe(false);
    expect(await recordTry(register, 1, 'next', { kind: 'sent', at: LATER, reply: '250 ok' })).toBe(true);
    expect((await listOutbox(register, { limit: 1 }))[0]).toMatchObject({
      state: 'sent',
      attempts: 1,
      lastReply: '250 ok',
    });
  });

  it('gives leases back without counting a try', async () => {
    const register = await registerWithMails(2);
    await lease(register, 'a');
    await releaseLeases(register, 'a');
    expect((await listOutbox(register, { state: 'queued', limit: 9 })).map((entry) => entry.attempts)).toEqual([0, 0]);
  });

  it('cancels what has not left, and nothing else', async () => {
    const register = await registerWithMails(2);
    await lease(register, 'a', AT, 1);
    expect(await cancelMessage(register, 1)).toBe(false);
    expect(await cancelMessage(register, 2)).toBe(true);
    expect(await cancelMessage(register, 99)).toBe(false);
    expect(await countOutbox(register)).toMatchObject({ leased: 1, cancelled: 1, queued: 0 });
    expect(await retryMessages(register, 'all', AT)).toBe(0);
  });

  it('refuses a message whose id is there already, and writes nothing of the rest', async () => {
    const register = await registerWithMails(1);
    await expect(postMessages(register, [message(2), message(1)], AT)).rejects.toThrow(NoticeAlreadyWritten);
    expect(await listOutbox(register, { limit: 9 })).toHaveLength(1);
    expect(await loadOutboxBytes(register, 99)).toBeNull();
  });
});
