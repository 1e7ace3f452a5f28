import { simpleParser } from 'mailparser';
import { describe, expect, it } from 'vitest';
import type { Register } from '../../src/register/database.ts';
import { listOutbox, loadOutboxBytes, markLetterPosted } from '../../src/register/outbox.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { changeOwner, fenceRegister, JANUARY, manyFences, SENDER } from './fence-register.ts';

const now = () => JANUARY;
const compose = (register: Register) => composeNotices(register, { now, sender: SENDER });
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
    const mail = await simpleParser(await rawMail(register, 1));
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
    expect(mail.text?.replace(/\s+/g, ' ')).toMatch(/^Your fence holds a gust of \d+ mph/);
    const [picture] = mail.attachments;
    expect(picture).toMatchObject({ contentType: 'image/png', related: true, contentDisposition: 'inline' });
    expect(picture?.content.subarray(1, 4).toString()).toBe('PNG');
    // drawn at twice the width it is shown at
    expect(picture?.content.readUInt32BE(16)).toBe(1120);
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
    expect(await markLetterPosted(register, 1, '2027-01-16T09:00:00.000Z')).toBe(true);
    expect(await markLetterPosted(register, 1, '2027-01-16T09:00:00.000Z')).toBe(false);
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
