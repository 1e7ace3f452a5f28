import { readFile } from 'node:fs/promises';
import { simpleParser } from 'mailparser';
import { describe, expect, it } from 'vitest';
import type { FenceForecast } from '../../src/forecast/fence-forecast.ts';
import type { Register } from '../../src/register/database.ts';
import { listNoticesOfFence } from '../../src/register/notice-store.ts';
import { cancelMessage, listOutbox, loadOutboxBytes, markLetterPosted } from '../../src/register/outbox.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import {
  changeFences,
  changeOwner,
  fenceRegister,
  forecastWith,
  JANUARY,
  manyFences,
  SENDER,
} from './fence-register.ts';

const now = () => JANUARY;
const compose = (register: Register) => composeNotices(register, { now, sender: SENDER });
/** An owner of the demo. */
async function demoOwner(): Promise<{ readonly ref: string; readonly name: string }> {
  const [, first = ''] = (await readFile(new URL('../../seeds-demo/owners.csv', import.meta.url), 'utf8')).split('\n');
  const [ref = '', name = ''] = first.split(',');
  return { ref, name };
}

/** Old fences: every one of them is short. */
const old = { installedEarliest: '2005-04-15', installedLatest: '2005-04-15' };

async function rawMail(register: Register, id: number): Promise<Buffer> {
  return Buffer.from((await loadOutboxBytes(register, id))?.raw ?? []);
}

describe('composeNotices', () => {
  it('writes one mail a fence for up to three fences of an owner', async () => {
    const register = await fenceRegister({ fences: manyFences(3, old) });
    await runSweep(register, { now });
    expect(await compose(register)).toEqual({ mails: 3, letters: 0, failures: [] });
    const subjects = (await listOutbox(register, { limit: 9 })).map((entry) => entry.subject);
    expect(subjects.sort().map((subject) => subject.slice(0, 11))).toEqual([
      'Fence F-000',
      'Fence F-001',
      'Fence F-002',
    ]);
  });

  it('writes one digest with a CSV for more', async () => {
    const register = await fenceRegister({ fences: manyFences(5, old) });
    await runSweep(register, { now });
    expect(await compose(register)).toEqual({ mails: 1, letters: 0, failures: [] });
    const raw = await rawMail(register, 1);
    expect(raw.byteLength).toBeLessThan(100_000);
    const mail = await simpleParser(raw);
    const csv = mail.attachments.find((file) => file.filename === 'fences.csv');
    expect(csv?.contentType).toBe('text/csv');
    expect(csv?.content.toString('utf8').trim().split('\r\n')).toHaveLength(6);
    expect(mail.attachments.filter((file) => file.related)).toHaveLength(3);
  });

  it('writes nothing twice', async () => {
    const register = await fenceRegister({ fences: manyFences(2, old) });
    await runSweep(register, { now });
    await compose(register);
    expect(await compose(register)).toEqual({ mails: 0, letters: 0, failures: [] });
    await runSweep(register, { now: () => JANUARY.plus({ days: 1 }) });
    expect(await compose(register)).toEqual({ mails: 0, letters: 0, failures: [] });
  });

  it('writes each message once when two programs write at the same time', async () => {
    const register = await fenceRegister({ fences: manyFences(3, old) });
    await runSweep(register, { now });
    await Promise.all([compose(register), compose(register)]);
    expect(await listOutbox(register, { limit: 9 })).toHaveLength(3);
    const open = await register.db.selectFrom('notices').select('id').where('outbox_id', 'is', null).execute();
    expect(open).toEqual([]);
  });

  it('makes a mail with both parts, the picture inline and the headers that mail programs look for', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await runSweep(register, { now });
    await compose(register);
    const [entry] = await listOutbox(register, { limit: 1 });
    const raw = await rawMail(register, 1);
    const mail = await simpleParser(raw, { keepCidLinks: true });
    expect(mail.messageId).toBe(entry?.messageId);
    expect(mail.subject).toBe(entry?.subject);
    expect(mail.from?.value).toEqual([{ name: 'Gale & Rail Fence Care', address: 'notices@example.org' }]);
    expect(mail.replyTo?.value[0]?.address).toBe('office@example.org');
    expect(mail.date?.toISOString()).toBe('2027-01-15T12:00:00.000Z');
    expect(raw.toString()).toContain('List-Unsubscribe: <mailto:office@example.org?subject=unsubscribe>');
    expect(mail.text?.replace(/\s+/g, ' ')).toMatch(/^Its posts hold a gust of \d+ mph/);
    const [picture] = mail.attachments;
    expect(picture).toMatchObject({ contentType: 'image/png', related: true, contentDisposition: 'inline' });
    expect(picture?.content.subarray(1, 4).toString()).toBe('PNG');
    // drawn with more pixels than it is shown with, for fine screens
    expect(picture?.content.readUInt32BE(16)).toBe(896);
    expect(raw.byteLength).toBeLessThan(100_000);
    expect(mail.html).toContain(`src="cid:${picture?.cid}"`);
    expect(
      raw
        .toString('latin1')
        .split('\r\n')
        .every((line) => line.length <= 998),
    ).toBe(true);
    expect(raw.toString('latin1')).not.toMatch(/[^\r]\n/);
  });

  it('lets no name add a header', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await changeOwner(register, { name: 'Ann Tidewell\r\nBcc: everyone@example.org\r\nX-Evil: yes' });
    await register.db.updateTable('sites').set({ name: 'Heron\r\nBcc: all@example.org' }).execute();
    await runSweep(register, { now });
    expect(await compose(register)).toMatchObject({ mails: 1, failures: [] });
    const mail = await simpleParser(await rawMail(register, 1));
    expect(mail.bcc).toBeUndefined();
    expect(mail.headers.has('x-evil')).toBe(false);
    expect(mail.subject).toContain('Heron Bcc: all@example.org');
    expect([mail.to].flat().flatMap((each) => each?.value ?? [])).toHaveLength(1);
    const [entry] = await listOutbox(register, { limit: 1 });
    expect(entry?.envelopeTo).toBe('ann@example.net');
  });

  it('prints a letter, pictures inside, for an owner without mail', async () => {
    const owner = { channel: 'letter', email: null, postalAddress: '1 Quill Lane\nQuillback', language: 'es' } as const;
    const register = await fenceRegister({ owners: [owner], fences: manyFences(1, old) });
    await runSweep(register, { now });
    expect(await compose(register)).toEqual({ mails: 0, letters: 1, failures: [] });
    const [letter] = await listOutbox(register, { state: 'to print', limit: 1 });
    expect(letter).toMatchObject({ channel: 'letter', envelopeTo: null, dueAt: null });
    const html = (await rawMail(register, 1)).toString('utf8');
    expect(html).toContain('1 Quill Lane, Quillback');
    expect(html).toContain('src="data:image/png;base64,');
    expect(html).not.toContain('cid:');
    expect(html).toContain('<html lang="es">');
    const posting = { by: 'Nell', on: '2027-01-15', at: '2027-01-16T09:00:00.000Z' };
    expect(await markLetterPosted(register, 1, posting)).toBe(true);
    expect(await markLetterPosted(register, 1, { ...posting, by: 'somebody else' })).toBe(false);
    expect(await listOutbox(register, { limit: 1 })).toMatchObject([{ postedBy: 'Nell', postedOn: '2027-01-15' }]);
  });

  it('writes to nobody whom a message would reach until the office has said who it is', async () => {
    const gap = 'the office has no name: set it';
    const letter = { channel: 'letter', postalAddress: '1 Quill Lane', email: null } as const;
    for (const [owner, mailReachesOwners, written] of [
      [{}, true, 0],
      [{}, false, 1],
      [letter, false, 0],
      [{ ...letter, ...(await demoOwner()) }, false, 1],
    ] as const) {
      const { ref = 'ANN' } = owner as { ref?: string };
      const fences = [{ ...old, ownerRef: ref }];
      const register = await fenceRegister({ owners: [owner], fences });
      await runSweep(register, { now });
      const report = await composeNotices(register, { now, sender: { ...SENDER, gap, mailReachesOwners } });
      expect(report.mails + report.letters).toBe(written);
      expect(report.failures).toEqual(written === 1 ? [] : [{ ownerRef: ref, message: gap }]);
      expect(await compose(register)).toMatchObject({ failures: [] });
      expect(await listOutbox(register, { limit: 9 })).toHaveLength(1);
    }
  });

  it('writes to the other owners where one cannot be written to, and says who', async () => {
    const owners = [{ ref: 'ANN' }, { ref: 'BO', name: 'Bo Fenn', email: 'bo@example.net' }];
    const fences = [
      { ref: 'F-1', ownerRef: 'ANN', ...old },
      { ref: 'F-2', ownerRef: 'BO', ...old },
    ];
    const register = await fenceRegister({ owners, fences });
    await runSweep(register, { now });
    await register.db.updateTable('forecasts').set({ detail: '{' }).where('fence_ref', '=', 'F-1').execute();
    const report = await compose(register);
    expect(report).toMatchObject({ mails: 1, failures: [{ ownerRef: 'ANN' }] });
    expect((await listOutbox(register, { limit: 9 })).map((entry) => entry.ownerRef)).toEqual(['BO']);
  });
});

const CLEAR = {
  standing: 'clear',
  standingWithMargin: 'clear',
  shortSeason: null,
  marksCrossed: [],
} as const;
const SHORT = { ...CLEAR, standing: 'short', standingWithMargin: 'short' } as const;
const CROSSED = { ...CLEAR, marksCrossed: [{ mark: 'once in 25', season: '2027' }] } as const;

/** Sweeps so many days on with a verdict put by hand, after a change that the forecast itself does not feel. */
async function sweepWith(register: Register, days: number, verdict: Partial<FenceForecast>): Promise<void> {
  await changeFences(register, [{ ref: 'F-000', ...old, trimmerGuards: 'no', yearlyTrimmerCutMm: (days + 1) / 1000 }]);
  await runSweep(register, { now: () => JANUARY.plus({ days }), forecast: forecastWith(verdict) });
}

async function texts(register: Register): Promise<readonly string[]> {
  const entries = (await listOutbox(register, { limit: 9 })).toReversed();
  return Promise.all(
    entries.map(async ({ id }) => ((await simpleParser(await rawMail(register, id))).text ?? '').replace(/\s+/g, ' ')),
  );
}

describe('the lean speed', () => {
  it('is told with the first mail, however late that comes, and never again', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await sweepWith(register, 0, CLEAR);
    expect(await compose(register)).toMatchObject({ mails: 0 });
    await sweepWith(register, 1, CROSSED);
    expect(await compose(register)).toMatchObject({ mails: 1 });
    await sweepWith(register, 2, SHORT);
    expect(await compose(register)).toMatchObject({ mails: 1 });
    const [first, second] = await texts(register);
    expect(first).toContain('The ground gives way');
    expect(second).not.toContain('The ground gives way');
    expect((await listNoticesOfFence(register, 'F-000')).map((notice) => notice.first)).toEqual([false, true]);
  });

  it('is told with the next mail where the first was cancelled', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await sweepWith(register, 0, CROSSED);
    await compose(register);
    expect(await cancelMessage(register, 1)).toBe(true);
    await sweepWith(register, 1, SHORT);
    await compose(register);
    expect((await texts(register))[1]).toContain('The ground gives way');
  });
});

describe('a notice that was not written in time', () => {
  it('is void once the fence is clear, stays in the history, and can be told when it is so again', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await sweepWith(register, 0, SHORT);
    await sweepWith(register, 1, CLEAR);
    expect(await compose(register)).toEqual({ mails: 0, letters: 0, failures: [] });
    // "short" is no longer so, and "better" would be the first that the owner hears
    expect(await listNoticesOfFence(register, 'F-000')).toMatchObject([
      { matter: 'better', outboxId: null, voidReason: 'the owner was never told that it was anything but clear' },
      { matter: 'short', outboxId: null, voidReason: 'it is no longer so: the fence is clear by now' },
    ]);
    await sweepWith(register, 2, SHORT);
    expect(await compose(register)).toMatchObject({ mails: 1 });
    expect(await listNoticesOfFence(register, 'F-000')).toMatchObject([
      { matter: 'short', voidReason: null },
      { matter: 'better' },
      { matter: 'short' },
    ]);
  });

  it('tells the milder standing instead where the fence got better without being clear', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await sweepWith(register, 0, SHORT);
    const closing = { ...CLEAR, standing: 'closing', standingWithMargin: 'closing', shortSeason: '2028' } as const;
    await sweepWith(register, 1, closing);
    expect(await compose(register)).toMatchObject({ mails: 0 });
    await sweepWith(register, 2, closing);
    expect(await compose(register)).toMatchObject({ mails: 1 });
    expect((await listOutbox(register, { limit: 1 }))[0]?.subject).toContain('goes short in season 2028');
  });

  it('can tell a mark again that was void', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await sweepWith(register, 0, CROSSED);
    await sweepWith(register, 1, CLEAR);
    expect(await compose(register)).toMatchObject({ mails: 0 });
    await sweepWith(register, 2, CROSSED);
    expect(await compose(register)).toMatchObject({ mails: 1 });
  });

  it('is void where the owner left, who gets a first notice of how it stands on coming back', async () => {
    const register = await fenceRegister({ fences: manyFences(1, old) });
    await sweepWith(register, 0, SHORT);
    await changeOwner(register, { enrolled: false });
    expect(await compose(register)).toMatchObject({ mails: 0 });
    expect(await listNoticesOfFence(register, 'F-000')).toMatchObject([
      { voidReason: 'the owner is not enrolled any more' },
    ]);
    await changeOwner(register, { enrolled: true });
    expect(await compose(register)).toMatchObject({ mails: 0 });
    await runSweep(register, { now: () => JANUARY.plus({ days: 1 }) });
    expect(await compose(register)).toMatchObject({ mails: 1 });
    expect((await texts(register))[0]).toContain('The ground gives way');
  });

  it('is void where the fence has another owner by now', async () => {
    const owners = [{ ref: 'ANN' }, { ref: 'BO', name: 'Bo Fenn', email: 'bo@example.net' }];
    const register = await fenceRegister({ owners, fences: manyFences(1, old) });
    await runSweep(register, { now });
    await changeFences(register, [{ ref: 'F-000', ownerRef: 'BO', ...old }]);
    await runSweep(register, { now: () => JANUARY.plus({ days: 1 }) });
    expect(await compose(register)).toMatchObject({ mails: 1, failures: [] });
    expect((await listOutbox(register, { limit: 9 })).map((entry) => entry.ownerRef)).toEqual(['BO']);
  });
});
