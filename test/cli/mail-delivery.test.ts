import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openRegister } from '../../src/register/database.ts';
import { sha256 } from '../../src/service/canonical-json.ts';
import { drainOutbox } from '../../src/service/drain-outbox.ts';
import type { ProvenHistory } from '../../src/service/mail-proof.ts';
import { mailServerAddress, smtpTransport } from '../../src/service/mail-transport.ts';
import { deliveryReport } from '../service/delivery-reports.ts';
import { temporaryFolder } from '../service/fence-register.ts';
import { mailServer } from '../service/mail-server.ts';
import { SAMPLE_NOW, sampleRegister } from '../web/sample-register.ts';
import { command } from './command-line.ts';

const ENV = { STORMPALE_BOUNCE_ADDRESS: 'bounces+*@example.org' };

/** The sample's mails, sent to a server, and one of them. */
async function sentSample() {
  const { folder, remove } = await sampleRegister();
  onTestFinished(remove);
  const run = (...args: readonly string[]) => command(folder, args, { env: ENV });
  await run('sweep');
  const server = await mailServer();
  const register = await openRegister(join(folder, 'register.sqlite'));
  const transport = smtpTransport(mailServerAddress(`smtp://127.0.0.1:${server.port}`));
  await drainOutbox(register, { now: SAMPLE_NOW, transport });
  const sent = await register.db
    .selectFrom('outbox')
    .select(['id', 'message_id', 'envelope_from', 'envelope_to', 'raw'])
    .where('state', '=', 'sent')
    .orderBy('id')
    .executeTakeFirstOrThrow();
  await register.close();
  const received = server.received.find(({ to }) => to === sent.envelope_to)?.raw ?? '';
  const report = join(temporaryFolder(), 'report.eml');
  writeFileSync(report, deliveryReport({ to: sent.envelope_from ?? '', messageId: sent.message_id }));
  return { run, sent, address: sent.envelope_to ?? '', received, report };
}

describe('mail bounce, stopped and resume', () => {
  it('stop an address, show it, and let mail go to it again', async () => {
    const { run, sent, address, report } = await sentSample();
    const bounce = await run('mail', 'bounce', report);
    expect(bounce).toMatchObject({ code: 0, err: '' });
    expect(bounce.out).toContain(`Report on message ${sent.id}, found by its signed address: failed 5.1.1`);
    expect(bounce.out).toContain(`Mail to ${address} is stopped`);
    expect((await run('mail', 'bounce', report)).out).toContain('It was noted before');
    const stopped = await run('mail', 'stopped');
    expect(stopped.out).toContain(address);
    expect(stopped.out).toContain('550 5.1.1');
    expect((await run('mail', 'show', String(sent.id))).out).toContain('report: failed 5.1.1');
    expect((await run('mail', 'resume', address)).out).toBe(`Mail to ${address} goes again. Nothing waits for it.\n`);
    expect((await run('mail', 'resume', address)).code).toBe(4);
    expect((await run('mail', 'stopped')).out).toContain('No address is stopped.');
  });

  it('refuse what is no report, with the reason, and a file that is not there', async () => {
    const { run } = await sentSample();
    const away = join(temporaryFolder(), 'away.eml');
    writeFileSync(away, 'Subject: Away\r\n\r\nI am on holiday.\r\n');
    const refused = await run('mail', 'bounce', away);
    expect(refused.code).toBe(3);
    expect(refused.err).toContain('no delivery report');
    expect((await run('mail', 'bounce', `${away}.gone`)).code).toBe(4);
  });
});

describe('mail proof and verify', () => {
  it('write out the very bytes that the server got, with what became of them, and find every change', async () => {
    const { run, sent, received, report } = await sentSample();
    await run('mail', 'bounce', report);
    const folder = join(temporaryFolder(), 'proofs');
    const proof = await run('mail', 'proof', String(sent.id), '--out', folder);
    expect(proof).toMatchObject({ code: 0, err: '' });
    const stem = `message-${sent.id}`;
    expect(readdirSync(folder).sort()).toEqual(
      ['.eml', '.history.json', '.history.txt', '.report-1.eml'].map((end) => stem + end),
    );
    const eml = join(folder, `${stem}.eml`);
    const bytes = readFileSync(eml);
    expect(bytes.equals(Buffer.from(sent.raw))).toBe(true);
    expect(bytes.toString('utf8')).toBe(received);
    const path = join(folder, `${stem}.history.json`);
    const history = JSON.parse(readFileSync(path, 'utf8')) as ProvenHistory;
    expect(history.message).toMatchObject({ sha256: sha256(bytes), bytes: bytes.length, messageId: sent.message_id });
    expect(history.tries).toMatchObject([{ outcome: 'sent', envelopeTo: sent.envelope_to, mayHaveArrived: false }]);
    expect(history.tries[0]?.reply).toMatch(/^250/);
    expect(history.reports).toMatchObject([{ action: 'failed', foundBy: 'signed address' }]);
    expect(history.notices.length).toBeGreaterThan(0);
    const text = readFileSync(join(folder, `${stem}.history.txt`), 'utf8');
    expect(text).toContain(`SHA-256 ${sha256(bytes)}`);
    expect(text).toContain('taken by the mail server');

    const good = await run('mail', 'verify', eml);
    expect(good.code).toBe(0);
    expect(good.out).toContain('This is what was sent, byte for byte.');
    expect(good.out).not.toContain('NO:');
    writeFileSync(eml, Buffer.concat([bytes, Buffer.from(' ')]));
    const changed = await run('mail', 'verify', eml);
    expect(changed.code).toBe(3);
    expect(changed.out).toContain('NO: its bytes have the SHA-256 of the history');
    // whoever changes the history to fit does not have the register's secret
    const forged = { ...history.message, sha256: sha256(readFileSync(eml)), bytes: bytes.length + 1 };
    writeFileSync(path, JSON.stringify({ ...history, message: forged }));
    const sealed = await run('mail', 'verify', eml);
    expect(sealed.code).toBe(3);
    expect(sealed.out).toContain('NO: the history is as this register wrote it');
  });

  it('say what cannot be checked without the register, and name what is missing', async () => {
    const { run, sent } = await sentSample();
    const file = join(temporaryFolder(), 'proof.eml');
    await run('mail', 'proof', sent.message_id, '--out', file);
    const elsewhere = await command(temporaryFolder(), ['mail', 'verify', file]);
    expect(elsewhere.code).toBe(0);
    expect(elsewhere.out).toContain('not checked: the history is as this register wrote it');
    expect((await run('mail', 'proof', '99999', '--out', file)).code).toBe(4);
    expect((await run('mail', 'verify', `${file}.gone`)).code).toBe(4);
  });
});
