import { mkdirSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { listStoppedAddresses } from '../../src/register/delivery-reports.ts';
import { loadMailHistory } from '../../src/register/mail-history.ts';
import { takeBounceFolder } from '../../src/service/bounce-folder.ts';
import { isoUtc } from '../../src/service/clock.ts';
import { deliveryReport } from './delivery-reports.ts';
import { fenceRegister, JANUARY, temporaryFolder } from './fence-register.ts';
import { queueMails } from './queued-mails.ts';

const now = () => JANUARY;
const LONG_AGO = JANUARY.minus({ hours: 1 }).toJSDate();

async function mailbox() {
  const register = await fenceRegister({ fences: [] });
  await queueMails(register, 2, isoUtc(JANUARY));
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'new'));
  const put = (name: string, content: string | Buffer, at = LONG_AGO): void => {
    writeFileSync(join(folder, name), content);
    utimesSync(join(folder, name), at, at);
  };
  const look = () => takeBounceFolder(register, { folder, now });
  const names = (of: string) => readdirSync(join(folder, of)).sort();
  return { register, folder, put, look, names };
}

const reportOn = (number: number): Buffer =>
  deliveryReport({ to: 'office@example.org', messageId: `<mail-${number}@example.org>` });

it('takes reports from new/ and .eml files beside it, moves them, and keeps aside what it cannot use with the reason', async () => {
  const { register, folder, put, look, names } = await mailbox();
  put('new/1800000000.M1P1.mx', reportOn(1));
  put('second.eml', reportOn(2));
  put('away.eml', 'Subject: Away\r\n\r\nI am on holiday.\r\n');
  put('new/stranger', reportOn(3));
  put('notes.txt', 'not a mail');
  const { noted, aside, stopped } = await look();
  expect(noted).toBe(2);
  expect(aside).toEqual([
    { file: 'stranger', reason: 'it names no mail of this register' },
    { file: 'away.eml', reason: 'it is no delivery report (multipart/report)' },
  ]);
  expect(stopped).toEqual([]);
  expect(names('processed')).toEqual(['1800000000.M1P1.mx', 'second.eml']);
  expect(names('aside')).toEqual(['away.eml', 'away.eml.reason.txt', 'stranger', 'stranger.reason.txt']);
  expect(readFileSync(join(folder, 'aside', 'away.eml.reason.txt'), 'utf8')).toContain('no delivery report');
  expect(names('.')).toEqual(['aside', 'new', 'notes.txt', 'processed']);
  expect((await loadMailHistory(register, 2)).reports).toHaveLength(1);
  expect(await listStoppedAddresses(register)).toEqual([]);
  expect(await look()).toEqual({ noted: 0, aside: [], stopped: [] });
});

it('notes nothing twice where it was killed before it moved the file, and overwrites no file of the same name', async () => {
  const { register, put, look, names } = await mailbox();
  put('one.eml', reportOn(1));
  await look();
  put('one.eml', reportOn(1));
  await look();
  expect((await loadMailHistory(register, 1)).reports).toHaveLength(1);
  expect(names('processed')).toEqual(['2-one.eml', 'one.eml']);
});

it('leaves a file alone that may still be written', async () => {
  const { put, look, names } = await mailbox();
  put('half.eml', 'Subject: ha', JANUARY.minus({ seconds: 3 }).toJSDate());
  expect(await look()).toEqual({ noted: 0, aside: [], stopped: [] });
  expect(names('.')).toContain('half.eml');
});

it('says so where the folder is not there', async () => {
  const { register, folder } = await mailbox();
  await expect(takeBounceFolder(register, { folder: join(folder, 'gone'), now })).rejects.toThrow(/ENOENT/);
});
