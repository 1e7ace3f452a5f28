/** Sends notices to a real Postfix with STARTTLS on loopback through a relay that cuts conversations; counts what arrives. */
import { generateKeyPairSync } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { DateTime } from 'luxon';
import { dkimVerify } from 'mailauth/lib/dkim/verify.js';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { openRegister, type Register } from '../../src/register/database.ts';
import { mailSecret } from '../../src/register/mail-secret.ts';
import { postMessages } from '../../src/register/notice-store.ts';
import { sha256 } from '../../src/service/canonical-json.ts';
import { isoUtc, systemClock } from '../../src/service/clock.ts';
import { drainOutbox } from '../../src/service/drain-outbox.ts';
import { mailBytes } from '../../src/service/mail-bytes.ts';
import { type DkimIdentity, signedBytes } from '../../src/service/mail-signature.ts';
import { mailServerAddress, smtpTransport } from '../../src/service/mail-transport.ts';
import { returnAddressOf } from '../../src/service/return-address.ts';
import { fillRegister } from '../service/fence-register.ts';
import { cuttingRelay } from './cutting-relay.ts';
import { startPostfix } from './postfix-instance.ts';
import { writeResult } from './write-result.ts';

const NOTICES = Number(process.argv[2] ?? '10000');
const SEED = Number(process.argv[3] ?? '1');
/** A conversation is cut once in so many answers of the server, on the average. */
const ANSWERS_A_CUT = 200;
const VERIFIED = 200;

const folder = mkdtempSync(join(tmpdir(), 'stormpale-delivery-'));
const { publicKey, privateKey } = generateKeyPairSync('rsa', { modulusLength: 2048 });
const dkim: DkimIdentity = { domain: 'example.org', selector: 'fences2027', keyFile: join(folder, 'dkim.pem') };
writeFileSync(dkim.keyFile, privateKey.export({ type: 'pkcs8', format: 'pem' }));

async function queueNotices(register: Register): Promise<void> {
  const secret = await mailSecret(register, 'secret of this run');
  const at = systemClock();
  const paragraph = 'Your fence holds a gust of 71 mph now. The design gust at your site is 105 mph. ';
  for (let first = 0; first < NOTICES; first += 500) {
    const messages = [];
    for (let number = first; number < Math.min(first + 500, NOTICES); number += 1) {
      const messageId = `<${sha256(`notice ${number}`).slice(0, 40)}@example.org>`;
      const subject = `Fence ${number}: it goes short in 2028`;
      const text = `${paragraph.repeat(1 + (number % 12))}\n.\n.. and so on\n`;
      const html = `<html><body><p>${paragraph.repeat(1 + (number % 40))}</p></body></html>`;
      const message = { subject, text, html, pictures: [], files: [] };
      const to = { name: `Owner ${number}`, address: `owner-${number}@d${number % 50}.example` };
      const office = { name: 'Gale & Rail Fence Care', email: 'office@example.org' };
      const raw = await signedBytes(
        await mailBytes({ message, messageId, at, from: 'notices@example.org', to, office, invitation: null }),
        dkim,
      );
      messages.push({
        ...{ messageId, ownerRef: 'ANN', channel: 'mail' as const, subject, raw, sha256: sha256(raw), noticeIds: [] },
        envelopeFrom: returnAddressOf(messageId, 'bounces+*@example.org', secret),
        envelopeTo: to.address,
      });
    }
    await postMessages(register, messages, isoUtc(at));
  }
}

/** The mail as it was sent, out of the file that Postfix keeps: without the headers it put before, with a mail's line ends. */
function asSent(file: Buffer): Buffer {
  const text = file.toString('latin1');
  return Buffer.from(text.slice(text.indexOf('DKIM-Signature:')).replace(/\r?\n/g, '\r\n'), 'latin1');
}

async function verifiedSignatures(files: readonly Buffer[]): Promise<number> {
  const published = publicKey.export({ type: 'spki', format: 'der' }).toString('base64');
  let passed = 0;
  for (const file of files) {
    const crlf = Buffer.from(file.toString('latin1').replace(/\r?\n/g, '\r\n'), 'latin1');
    const { results } = await dkimVerify(crlf, { resolver: () => Promise.resolve([[`v=DKIM1; p=${published}`]]) });
    if (results[0]?.status.result === 'pass') passed += 1;
  }
  return passed;
}

const register = await openRegister(join(folder, 'register.sqlite'));
const postfix = await startPostfix();
const random = xoroshiro128plus(SEED);
const relay = await cuttingRelay({
  to: postfix.port,
  nextCut: () => uniformInt(random, 1, 2 * ANSWERS_A_CUT - 1),
});
try {
  await fillRegister(register, { fences: [] });
  await queueNotices(register);
  const transport = smtpTransport(mailServerAddress(`smtp://127.0.0.1:${relay.port}`, postfix.certificateFile));
  // what waits for its next try is due once the clock says so: the run does not wait for hours, it puts the clock forward
  let aheadMinutes = 0;
  const now = (): DateTime => systemClock().plus({ minutes: aheadMinutes });
  const begun = performance.now();
  for (;;) {
    await drainOutbox(register, { now, transport });
    const { left } = await register.db
      .selectFrom('outbox')
      .select((eb) => eb.fn.countAll<number>().as('left'))
      .where('state', 'in', ['queued', 'leased'])
      .executeTakeFirstOrThrow();
    if (left === 0) break;
    aheadMinutes += 16;
  }
  const seconds = (performance.now() - begun) / 1000;
  await postfix.settled();

  const rows = await register.db.selectFrom('outbox').select(['id', 'message_id', 'sha256', 'state']).execute();
  const unsure = await register.db
    .selectFrom('mail_tries')
    .innerJoin('outbox', 'outbox.id', 'mail_tries.outbox_id')
    .select('message_id')
    .where('may_have_arrived', '=', 1)
    .execute();
  const mayRepeat = new Map<string, number>();
  for (const { message_id: id } of unsure) mayRepeat.set(id, (mayRepeat.get(id) ?? 0) + 1);
  const files = postfix.delivered();
  const arrived = new Map<string, number>();
  const digests = new Map(rows.map((row) => [row.sha256, row.message_id]));
  let changed = 0;
  for (const file of files) {
    const id = digests.get(sha256(asSent(file)));
    if (id === undefined) changed += 1;
    else arrived.set(id, (arrived.get(id) ?? 0) + 1);
  }
  const missing = rows.filter((row) => !arrived.has(row.message_id)).length;
  const repeats = [...arrived.values()].reduce((sum, times) => sum + times - 1, 0);
  const unexplained = [...arrived].filter(([id, times]) => times - 1 > (mayRepeat.get(id) ?? 0)).length;
  const sent = rows.filter(({ state }) => state === 'sent').length;
  const passed = await verifiedSignatures(files.slice(0, VERIFIED));
  writeResult('postfix', [
    `Postfix ${postfix.version}, STARTTLS required and its certificate checked, on ${cpus().length} cores; seed ${SEED}.`,
    '',
    '| | |',
    '| --- | ---: |',
    `| notices queued | ${rows.length} |`,
    `| sent, by the register | ${sent} |`,
    `| different ones received, byte for byte | ${arrived.size} |`,
    `| lost | ${missing} |`,
    `| received with other bytes | ${changed} |`,
    `| conversations cut, the server's answer withheld | ${relay.cuts()} |`,
    `| tries after which the server may have had the mail | ${unsure.length} |`,
    `| repeats | ${repeats} |`,
    `| repeats where no answer was lost | ${unexplained} |`,
    `| signatures verified behind Postfix | ${passed} of ${Math.min(VERIFIED, files.length)} |`,
    `| sent a second | ${Math.round(sent / seconds)} |`,
  ]);
  const wrong =
    missing + changed + unexplained > 0 || sent !== rows.length || passed < Math.min(VERIFIED, files.length);
  process.exitCode = wrong ? 1 : 0;
} finally {
  relay.close();
  postfix.close();
  await register.close();
  rmSync(folder, { recursive: true, force: true });
}
