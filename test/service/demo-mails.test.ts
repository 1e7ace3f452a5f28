import { join } from 'node:path';
import { DateTime } from 'luxon';
import { simpleParser } from 'mailparser';
import { expect, it } from 'vitest';
import { openRegister } from '../../src/register/database.ts';
import { listHeldNotices } from '../../src/register/held-notices.ts';
import { listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { importDemo } from '../../src/service/import-demo.ts';
import { sweepRegister } from '../../src/service/sweep-register.ts';
import { temporaryFolder } from './fence-register.ts';

const CATCHING = {
  officeName: null,
  officePhone: null,
  officeEmail: null,
  mailFrom: null,
  smtpUrl: null,
  publicUrl: 'https://fences.example.org',
};
const LARGEST_MAIL_BYTES = 100_000;

it('mails the demo at once, each mail under 100 kB, the digests with their three pictures too', {
  timeout: 180_000,
}, async () => {
  const register = await openRegister(join(temporaryFolder(), 'register.sqlite'));
  const now = () => DateTime.fromISO('2026-11-26T12:00:00Z', { zone: 'utc' });
  await importDemo(register, { now, onProgress: () => undefined });
  await sweepRegister(register, { now, sender: CATCHING });
  expect(await listHeldNotices(register)).toEqual([]);
  let digests = 0;
  const sizes: number[] = [];
  for (const { id, channel } of await listOutbox(register, { limit: 100 })) {
    const raw = Buffer.from((await loadOutboxBytes(register, id))?.raw ?? []);
    sizes.push(raw.byteLength);
    if (channel === 'letter') continue;
    const mail = await simpleParser(raw);
    if (mail.attachments.filter(({ related }) => related).length === 3) digests += 1;
    // its longest part is a picture, and it is one
    expect(mail.attachments[0]?.content.subarray(1, 4).toString()).toBe('PNG');
  }
  await register.close();
  expect(digests).toBeGreaterThanOrEqual(2);
  expect(sizes.length).toBeGreaterThan(8);
  expect(Math.max(...sizes)).toBeLessThan(LARGEST_MAIL_BYTES);
});
