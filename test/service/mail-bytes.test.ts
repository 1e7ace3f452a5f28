import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DateTime } from 'luxon';
import { simpleParser } from 'mailparser';
import { describe, expect, it } from 'vitest';
import { digestMessage } from '../../src/notify/digest-message.ts';
import { mailBytes } from '../../src/service/mail-bytes.ts';
import { ANN, noticedFence, OFFICE } from '../notify/noticed-fence.ts';
import { temporaryFolder } from './fence-register.ts';

const AT = DateTime.fromISO('2027-01-15T12:00:00Z', { zone: 'utc' });
const OFFER = {
  currency: 'USD',
  works: [{ kind: 'post-swap' as const, postCount: 11, cost: { low: 1200, high: 2300 } }],
  nextOpening: '2027-06-01',
  latestDay: '2027-05-24',
  waiting: { chance: 0.25, extra: 2000 },
};

describe('the bytes of a mail', () => {
  it('stay under 100 kB for a digest of 500 fences at 40 sites, its pictures and its file with all of them', async () => {
    const kinds = ['2004-04-15', '2009-04-15', '2013-04-15', '2016-04-15'].map((installed) =>
      noticedFence({ installed, offer: OFFER, matters: ['short', 'once in 10', 'two thirds'] }),
    );
    const fences = Array.from({ length: 500 }, (_, index) => {
      const fence = kinds[index % kinds.length] ?? noticedFence();
      const siteName = `Heron Landing, court ${index % 40}`;
      return { ...fence, siteName, forecast: { ...fence.forecast, fenceRef: `HERON-${1000 + index}` } };
    });
    const message = digestMessage({ fences, recipient: ANN, office: OFFICE });
    const raw = await mailBytes({
      message,
      messageId: '<a@example.org>',
      at: AT,
      from: 'notices@example.org',
      to: { name: 'Ann Tidewell', address: 'ann@example.net' },
      office: { name: 'Gale & Rail Fence Care', email: 'office@example.org' },
      invitation: null,
    });
    expect(raw.byteLength).toBeLessThan(100_000);
    const mail = await simpleParser(raw);
    const archive = mail.attachments.find(({ filename }) => filename === 'fences.csv.zip');
    const path = join(temporaryFolder(), 'fences.zip');
    writeFileSync(path, archive?.content ?? '');
    // opened by a program that shares no code with what packed it
    const csv = spawnSync('python3', [
      '-c',
      'import sys, zipfile; z = zipfile.ZipFile(sys.argv[1]); assert z.testzip() is None; sys.stdout.buffer.write(z.read("fences.csv"))',
      path,
    ]);
    expect(csv.stderr.toString()).toBe('');
    expect(csv.stdout.toString('utf8')).toBe(message.files[0]?.text);
    expect(csv.stdout.toString('utf8').trim().split('\r\n')).toHaveLength(501);
    expect(mail.attachments.filter(({ related }) => related)).toHaveLength(3);
  });
});
