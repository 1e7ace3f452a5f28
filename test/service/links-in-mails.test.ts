import { simpleParser } from 'mailparser';
import { describe, expect, it } from 'vitest';
import type { Register } from '../../src/register/database.ts';
import { noteLinkVisit } from '../../src/register/link-visit-store.ts';
import { listMessageLinks } from '../../src/register/message-link-store.ts';
import { listNoticesOfFence } from '../../src/register/notice-store.ts';
import { listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { checkProof, historyText, mailProof } from '../../src/service/mail-proof.ts';
import { linksForMessage } from '../../src/service/message-links.ts';
import { acknowledge } from '../../src/service/owner-answers.ts';
import { OWNER_SCOPES, ownerLinkShown } from '../../src/service/owner-links.ts';
import { runSweep } from '../../src/service/run-sweep.ts';
import { importFiles } from '../register/made-up-register.ts';
import { fenceRegister, JANUARY, manyFences, type RegisterPlan, SENDER } from './fence-register.ts';

const now = () => JANUARY;
const PUBLIC_URL = 'https://fences.example.org';
const old = { installedEarliest: '2005-04-15', installedLatest: '2005-04-15' };

/** A post of F-1 that was found broken. */
const FOUND = [
  { name: 'inspections.csv', text: 'ref,fence,day,inspector,method\nI,F-1,2026-11-20,Nell Fox,awl-or-probe\n' },
  { name: 'readings.csv', text: 'inspection,post,broken\nI,3,yes\n' },
] as const;

async function mailed(plan: RegisterPlan, publicUrl: string | null): Promise<Register> {
  const register = await fenceRegister(plan);
  await runSweep(register, { now });
  await composeNotices(register, { now, sender: { ...SENDER, publicUrl } });
  return register;
}

async function mailOf(register: Register, index = 0) {
  const entries = await listOutbox(register, { limit: 9 });
  const raw = Buffer.from((await loadOutboxBytes(register, entries[index]!.id))!.raw);
  return { raw, parsed: await simpleParser(raw) };
}

const header = (raw: Buffer, name: string): string | null => {
  const head = raw
    .toString('latin1')
    .split('\r\n\r\n')[0]!
    .replace(/\r\n[ \t]+/g, ' ');
  return new RegExp(`^${name}: (.*)$`, 'im').exec(head)?.[1] ?? null;
};

const tokenIn = (url: string): string => /\/owner\/([^/#]+)/.exec(url)?.[1] ?? '';

describe('the links of a mail', () => {
  it('stand in both parts, lead to the fence, and are good for every answer', async () => {
    const register = await mailed({ fences: [{ ref: 'F-1', ...old }] }, PUBLIC_URL);
    const { parsed } = await mailOf(register);
    const urls = [...(parsed.text ?? '').matchAll(/^https:\S+$/gm)].map(([url]) => url);
    const [first = ''] = urls;
    expect(urls).toEqual([
      first,
      `${first}#read`,
      first.replace('/fences/F-1', '/visits'),
      first.replace('/fences/F-1', '/call'),
      first.replace('/fences/F-1', '/preferences'),
    ]);
    expect(first).toMatch(/^https:\/\/fences\.example\.org\/owner\/[0-9a-z]+\.[\w-]{43}\/fences\/F-1$/);
    const html = parsed.html || '';
    expect([...html.matchAll(/<a href="([^"]+)"/g)].map(([, url]) => url)).toEqual(urls);
    const link = await ownerLinkShown(register.db, tokenIn(first), now);
    expect(link).toMatchObject({ ownerRef: 'ANN', scopes: OWNER_SCOPES, expiresAt: '2027-07-14T12:00:00.000Z' });
    expect(parsed.text?.replace(/\s+/g, ' ')).toContain('They open until July 14, 2027.');
  });

  it('are in the proof of the message, with what was asked for by them and what was answered', async () => {
    const register = await mailed({ fences: [{ ref: 'F-1', ...old }] }, PUBLIC_URL);
    const { parsed } = await mailOf(register);
    const [url = ''] = /https:\S+/.exec(parsed.text ?? '') ?? [];
    const link = (await ownerLinkShown(register.db, tokenIn(url), now))!;
    await noteLinkVisit(register.db, { linkId: link.id, page: 'fence', way: 'head' }, '2027-01-16T08:00:00.000Z');
    await noteLinkVisit(register.db, { linkId: link.id, page: 'fence', way: 'get' }, '2027-01-16T09:00:00.000Z');
    expect(await acknowledge(register, link, 'F-1', now)).toBe('noted');
    const [entry] = await listOutbox(register, { limit: 1 });
    const { history } = (await mailProof(register, { id: entry!.id }, { now }))!;
    expect(history.visits.map(({ page, way, visits }) => [page, way, visits])).toEqual([
      ['fence', 'head', 1],
      ['fence', 'get', 1],
    ]);
    expect(history.answers).toMatchObject([{ kind: 'read', subject: 'F-1' }]);
    const text = historyText(history);
    expect(text).toContain('fence: looked up, as scanners do, 1 time');
    expect(text).toContain('read (F-1): {');
    const raw = (await loadOutboxBytes(register, entry!.id))!.raw;
    for (const { ok, what } of await checkProof(raw, history, register)) expect(ok, what).toBe(true);
  });

  it('of a digest lead to all fences, in the language of the owner', async () => {
    const register = await mailed({ owners: [{ language: 'es' }], fences: manyFences(5, old) }, PUBLIC_URL);
    const { parsed } = await mailOf(register);
    expect(parsed.text).toContain('Responder sin cuenta');
    expect(parsed.text).toMatch(/^https:\/\/fences\.example\.org\/owner\/[\w.-]+$/m);
    expect(parsed.text?.replace(/\s+/g, ' ')).toContain('Se abren hasta el 14 de julio de 2027.');
  });

  it('are left out of letters, and of mails where owners reach no pages', async () => {
    const letters = await mailed(
      { owners: [{ channel: 'letter', email: null, postalAddress: '1 Lane' }], fences: [old] },
      PUBLIC_URL,
    );
    expect(Buffer.from((await loadOutboxBytes(letters, 1))!.raw).toString('utf8')).not.toContain('/owner/');
    const mails = await mailed({ fences: [old] }, null);
    const { raw, parsed } = await mailOf(mails);
    expect(parsed.text).not.toContain('/owner/');
    expect(header(raw, 'List-Unsubscribe')).toBe('<mailto:office@example.org?subject=unsubscribe>');
  });

  it('are the same when a mail is written again, so that the same notices have the same bytes', async () => {
    const register = await fenceRegister({ fences: [{ ref: 'F-1', ...old }] });
    await runSweep(register, { now });
    const options = { publicUrl: PUBLIC_URL, now };
    const message = { owner: { ref: 'ANN', language: 'en' as const }, messageId: '<a@example.org>' };
    const first = await linksForMessage(register, message, options);
    const later = await linksForMessage(register, message, { ...options, now: () => JANUARY.plus({ days: 3 }) });
    expect(later).toEqual(first);
    const bytes: string[] = [];
    for (let round = 0; round < 2; round += 1) {
      await composeNotices(register, { now, sender: { ...SENDER, publicUrl: PUBLIC_URL } });
      const [entry] = await listOutbox(register, { limit: 1 });
      bytes.push(entry!.sha256);
      // as if the writing had been killed before its end
      await register.db.updateTable('notices').set({ outbox_id: null }).execute();
      await register.db.deleteFrom('outbox').execute();
    }
    expect(bytes[1]).toBe(bytes[0]);
  });

  it('can be told from the notice, with how often they were opened', async () => {
    const register = await mailed({ fences: [{ ref: 'F-1', ...old }] }, PUBLIC_URL);
    const { parsed, raw } = await mailOf(register);
    const [notice] = await listNoticesOfFence(register, 'F-1');
    const links = await listMessageLinks(register.db, { noticeId: notice!.id });
    expect(links.map(({ purpose }) => purpose)).toEqual(['pages', 'unsubscribe']);
    expect(links[0]).toMatchObject({ ownerRef: 'ANN', opened: 0, firstOpenedAt: null });
    expect(links[0]!.noticeIds).toContain(notice!.id);
    const numberIn = (url: string): number => Number.parseInt(tokenIn(url).split('.')[0] ?? '', 36);
    expect(numberIn(/https:\S+/.exec(parsed.text ?? '')![0])).toBe(links[0]!.linkId);
    expect(numberIn(header(raw, 'List-Unsubscribe') ?? '')).toBe(links[1]!.linkId);
    expect(await listMessageLinks(register.db, { noticeId: 999 })).toEqual([]);
  });
});

describe('the list headers', () => {
  it('let a mail program stop ordinary mails by one click, by a link that can do nothing else', async () => {
    const register = await mailed({ fences: [{ ref: 'F-1', ...old }] }, PUBLIC_URL);
    const { raw } = await mailOf(register);
    expect(header(raw, 'List-Unsubscribe')).toMatch(
      /^<https:\/\/fences\.example\.org\/owner\/[\w.-]+\/unsubscribe>, <mailto:office@example\.org\?subject=unsubscribe>$/,
    );
    expect(header(raw, 'List-Unsubscribe-Post')).toBe('List-Unsubscribe=One-Click');
    const link = await ownerLinkShown(register.db, tokenIn(header(raw, 'List-Unsubscribe') ?? ''), now);
    expect(link?.scopes).toEqual(['preferences']);
  });

  it('name no page, and no click, where the pages are not reached over HTTPS', async () => {
    const register = await mailed({ fences: [old] }, 'http://127.0.0.1:8480');
    const { raw, parsed } = await mailOf(register);
    expect(header(raw, 'List-Unsubscribe')).toBe('<mailto:office@example.org?subject=unsubscribe>');
    expect(header(raw, 'List-Unsubscribe-Post')).toBeNull();
    // the demo's mails, read on this machine, lead to its pages all the same
    expect(parsed.text).toContain('http://127.0.0.1:8480/owner/');
  });

  it('let nobody stop news of danger by one click: that is a page which asks again', async () => {
    const register = await mailed({ fences: [{ ref: 'F-1', ...old }] }, PUBLIC_URL);
    const found = await importFiles(register, FOUND);
    expect(found.faults).toEqual([]);
    await runSweep(register, { now });
    await composeNotices(register, { now, sender: { ...SENDER, publicUrl: PUBLIC_URL } });
    const { raw, parsed } = await mailOf(register);
    expect(parsed.subject).toContain('keep away');
    expect(header(raw, 'List-Unsubscribe')).toContain('/unsubscribe>');
    expect(header(raw, 'List-Unsubscribe-Post')).toBeNull();
  });
});
