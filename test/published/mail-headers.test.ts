import { generateKeyPairSync } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { fenceRegister, JANUARY, manyFences, SENDER, temporaryFolder } from '../service/fence-register.ts';
import { mailFaults } from './mail-headers.ts';

const TODAY = JANUARY.toJSDate();

/** The mails of owners whose names are hard to write in a header, some alone and one a digest, signed or not. */
async function writtenMails(signed: boolean): Promise<readonly string[]> {
  const names = [
    'Ann Tidewell',
    'Zoë "Zed" O’Neill, Jr.',
    'Asociación de Propietarios de la Bahía de las Golondrinas y de los Pelícanos del Sur, Sección Tercera'.repeat(2),
    'Bell; <script@example.org>, (comment) \\ back',
    '山田 太郎 山田 太郎 山田 太郎 山田 太郎 山田 太郎 山田 太郎',
  ].map((name) => name.slice(0, 200));
  const owners = names.map((name, index) => ({
    ref: `O-${index}`,
    name,
    email: `owner.${index}+fence@example.net`,
    language: index === 2 ? ('es' as const) : ('en' as const),
  }));
  const fences = manyFences(9, { installedEarliest: '2004-04-15', installedLatest: '2004-04-15' }).map(
    (fence, index) => ({
      ...fence,
      ownerRef: `O-${Math.min(index, owners.length - 1)}`,
    }),
  );
  const register = await fenceRegister({ owners, fences });
  await runSweep(register, { now: () => JANUARY });
  const keyFile = join(temporaryFolder(), 'dkim.pem');
  const { privateKey } = generateKeyPairSync('rsa', { modulusLength: 2048 });
  writeFileSync(keyFile, privateKey.export({ type: 'pkcs8', format: 'pem' }));
  const dkim = signed ? { domain: 'example.org', selector: 'fences2027', keyFile } : null;
  const office = { ...SENDER.office, name: 'Gale & Rail Fence Care, „Zäune am Meer“' };
  await composeNotices(register, { now: () => JANUARY, sender: { ...SENDER, office, dkim } });
  const entries = await listOutbox(register, { limit: 20 });
  expect(entries).toHaveLength(owners.length);
  const raws = await Promise.all(entries.map(({ id }) => loadOutboxBytes(register, id)));
  return raws.map((each) => Buffer.from(each?.raw ?? []).toString('latin1'));
}

describe('the mails that are sent', () => {
  for (const signed of [false, true]) {
    it(`keep to the standards of mail${signed ? ', signed' : ''}`, async () => {
      for (const raw of await writtenMails(signed)) expect(mailFaults(raw, TODAY)).toEqual([]);
    });
  }
});

describe('the check of a mail', () => {
  const GOOD = [
    'DKIM-Signature: v=1; a=rsa-sha256; d=example.org; h=from:list-unsubscribe:',
    ' list-unsubscribe-post; b=x',
    'Date: Fri, 15 Jan 2027 12:00:00 +0000',
    'From: "Gale, Rail" <notices@example.org>',
    'To: =?UTF-8?Q?Zo=C3=AB?= <zoe@example.net>',
    'Message-ID: <1@example.org>',
    'Subject: Your',
    ' fence',
    'MIME-Version: 1.0',
    'Content-Type: multipart/mixed; boundary="x"',
    'Auto-Submitted: auto-generated',
    'List-Unsubscribe: <mailto:office@example.org?subject=unsubscribe>, <https://example.org/u/1>',
    'List-Unsubscribe-Post: List-Unsubscribe=One-Click',
    '',
    'Text',
    '',
  ].join('\r\n');

  it('has nothing against a good one', () => {
    expect(mailFaults(GOOD, TODAY)).toEqual([]);
  });

  it.each([
    ['RFC 5322, 2.1:', (raw: string) => raw.replace('\r\n\r\n', '\r\n')],
    ['RFC 5322, 2.1.1', (raw: string) => `${raw}${'x'.repeat(999)}\r\n`],
    ['RFC 5322, 2.3: a CR', (raw: string) => raw.replace('Text\r\n', 'Text\n')],
    ['RFC 5322, 2.3 and 4', (raw: string) => raw.replace('Text', '\0')],
    ['RFC 5322, 2.2: "Sub ject"', (raw: string) => raw.replace('Subject', 'Sub ject')],
    ['beyond US-ASCII', (raw: string) => raw.replace('Your', 'Yoür')],
    ['RFC 5322, 3.2.2', (raw: string) => raw.replace('\r\n fence', '\r\n \r\n fence')],
    ['RFC 2047, 2', (raw: string) => raw.replace('Zo=C3=AB', 'Z'.repeat(70))],
    ['subject stands more than once', (raw: string) => raw.replace('Subject:', 'Subject: a\r\nSubject:')],
    ['date is missing', (raw: string) => raw.replace(/Date:.*\r\n/, '')],
    ['RFC 5322, 3.3: the date', (raw: string) => raw.replace('15 Jan 2027', '2027-01-15')],
    ['RFC 5322, 3.3: the weekday', (raw: string) => raw.replace('Fri,', 'Sat,')],
    ['RFC 5322, 3.6.1', (raw: string) => raw.replace('12:00:00', '12:00:09')],
    ['RFC 5322, 3.6.4', (raw: string) => raw.replace('<1@example.org>', '1@example.org')],
    ['RFC 5322, 3.4: from', (raw: string) => raw.replace('"Gale, Rail"', 'Gale, Rail')],
    ['RFC 2045, 4', (raw: string) => raw.replace('MIME-Version: 1.0\r\n', '')],
    ['RFC 2046, 5.1.1', (raw: string) => raw.replace('; boundary="x"', '')],
    ['RFC 3834, 5', (raw: string) => raw.replace('auto-generated', 'no')],
    ['RFC 2369, 2: List', (raw: string) => raw.replace('<mailto:', 'mailto:')],
    ['RFC 2369, 2 and 3.2', (raw: string) => raw.replace('<mailto:', '<ftp:')],
    ['RFC 6068, 2', (raw: string) => raw.replace('mailto:office@example.org', 'mailto:office')],
    ['RFC 8058, 3.1: List', (raw: string) => raw.replace('=One-Click', '=Yes')],
    ['RFC 8058, 3.1: no https', (raw: string) => raw.replace(', <https://example.org/u/1>', '')],
    ['RFC 8058, 4', (raw: string) => raw.replace(':\r\n list-unsubscribe-post', '')],
  ])('finds what breaks %s', (section, spoil) => {
    const spoilt = spoil(GOOD);
    expect(spoilt).not.toBe(GOOD);
    expect(mailFaults(spoilt, TODAY).join('\n')).toContain(section);
  });
});
