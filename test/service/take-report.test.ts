import { describe, expect, it } from 'vitest';
import type { Register } from '../../src/register/database.ts';
import { listStoppedAddresses, listUnstoppedReports, resumeAddress } from '../../src/register/delivery-reports.ts';
import { loadMailHistory } from '../../src/register/mail-history.ts';
import { mailSecret } from '../../src/register/mail-secret.ts';
import { countOutbox, listOutbox } from '../../src/register/outbox.ts';
import { isoUtc } from '../../src/service/clock.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { drainOutbox } from '../../src/service/drain-outbox.ts';
import { mailServerAddress, smtpTransport } from '../../src/service/mail-transport.ts';
import { returnAddressOf } from '../../src/service/return-address.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { takeReport } from '../../src/service/take-report.ts';
import { deliveryReport, type ReportPlan } from './delivery-reports.ts';
import { changeFences, fenceRegister, JANUARY, manyFences, SENDER } from './fence-register.ts';
import { mailServer } from './mail-server.ts';

const PATTERN = 'bounces+*@example.org';
const now = () => JANUARY.plus({ minutes: 30 });

/** A register whose owner was sent one mail, and what a report of it needs to know. */
async function sentMail() {
  const register = await fenceRegister({ fences: manyFences(1) });
  await composeAll(register);
  const froms: string[] = [];
  const server = await mailServer({
    onSender: (from) => {
      froms.push(from);
      return null;
    },
  });
  const transport = smtpTransport(mailServerAddress(`smtp://127.0.0.1:${server.port}`));
  const drain = () => drainOutbox(register, { now, transport });
  await drain();
  const [entry] = await listOutbox(register, { state: 'sent', limit: 1 });
  if (!entry) throw new Error('nothing was sent');
  const signed = returnAddressOf(entry.messageId, PATTERN, await mailSecret(register, ''));
  const report = (plan: Partial<ReportPlan>) =>
    takeReport(register, deliveryReport({ to: signed, messageId: entry.messageId, ...plan }), { now });
  return { register, entry, signed, froms, drain, report };
}

async function composeAll(register: Register): Promise<void> {
  await runSweep(register, { now: () => JANUARY });
  await composeNotices(register, { now: () => JANUARY, sender: { ...SENDER, returnPattern: PATTERN } });
}

/** One more fence of the owner, and its mail in the queue. */
async function anotherMail(register: Register): Promise<void> {
  await changeFences(register, [{ ref: 'F-200', installedEarliest: '2003-04-15', installedLatest: '2003-04-15' }]);
  await composeAll(register);
}

describe('takeReport', () => {
  it('finds the mail by the address it went out under, and stops mail to an address that is gone', async () => {
    const { register, entry, signed, froms, drain, report } = await sentMail();
    expect(froms).toEqual([signed]);
    const taken = await report({ messageId: null });
    expect(taken).toMatchObject({ outboxId: entry.id, foundBy: 'signed address', noted: { kind: 'stopped' } });
    expect(await listStoppedAddresses(register)).toMatchObject([
      { address: 'ann@example.net', ownerRef: 'ANN', status: '5.1.1', outboxId: entry.id, waiting: 0 },
    ]);
    await anotherMail(register);
    expect(await drain()).toMatchObject({ sent: 0, unavailable: null });
    const [waiting] = await listOutbox(register, { state: 'queued', limit: 5 });
    expect(waiting).toMatchObject({ heldBy: 'stopped address', attempts: 0 });
    expect(await listStoppedAddresses(register)).toMatchObject([{ waiting: 1 }]);
  });

  it('lets mail go again once the office says so, and no late report of the old mail stops it anew', async () => {
    const { register, report, drain } = await sentMail();
    await report({});
    await anotherMail(register);
    expect(await resumeAddress(register, 'Ann@Example.net', isoUtc(now()))).toBe(1);
    expect(await resumeAddress(register, 'ann@example.net', isoUtc(now()))).toBeNull();
    expect((await report({ diagnostic: '550 5.1.1 the same mail, reported by another server' })).noted).toEqual({
      kind: 'resumed since',
    });
    expect(await drain()).toMatchObject({ sent: 1 });
    expect(await listStoppedAddresses(register)).toEqual([]);
  });

  it('notes the same report once', async () => {
    const { register, entry, report } = await sentMail();
    expect((await report({})).noted).toMatchObject({ kind: 'stopped' });
    expect((await report({})).noted).toEqual({ kind: 'known' });
    expect((await loadMailHistory(register, entry.id)).reports).toHaveLength(1);
  });

  it('finds the mail by the Message-ID in the returned headers, and stops nobody by it', async () => {
    const { register, entry, report } = await sentMail();
    const taken = await report({ to: 'office@example.org' });
    expect(taken).toMatchObject({ outboxId: entry.id, foundBy: 'message id', noted: { kind: 'noted' } });
    expect(await listStoppedAddresses(register)).toEqual([]);
    expect(await listUnstoppedReports(register, isoUtc(JANUARY))).toMatchObject([
      { outboxId: entry.id, foundBy: 'message id', action: 'failed', status: '5.1.1' },
    ]);
  });

  it('is not taken in by a forged signature', async () => {
    const { register, signed, report } = await sentMail();
    const forged = signed.replace(/.@/, (end) => (end === '0@' ? '1@' : '0@'));
    expect(await report({ to: forged, returnPath: forged })).toMatchObject({ foundBy: 'message id' });
    expect(await listStoppedAddresses(register)).toEqual([]);
    await expect(report({ to: forged, messageId: '<other@example.org>' })).rejects.toThrow('no mail of this register');
  });

  it.each([
    ['delayed', '4.4.1'],
    ['failed', '4.4.7'],
    ['delivered', '2.0.0'],
    ['relayed', '2.1.9'],
  ])('notes what is %s with %s and stops nothing', async (action, status) => {
    const { register, entry, report } = await sentMail();
    expect((await report({ action, status })).noted).toEqual({ kind: 'noted' });
    expect(await listStoppedAddresses(register)).toEqual([]);
    expect((await loadMailHistory(register, entry.id)).reports).toMatchObject([{ action, status }]);
    expect(await countOutbox(register)).toMatchObject({ sent: 1 });
  });
});
