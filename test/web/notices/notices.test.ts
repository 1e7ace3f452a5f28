import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listHeldNotices } from '../../../src/register/held-notices.ts';
import { holdMatter, listHeldMatters } from '../../../src/register/holding.ts';
import { readRecord, upsertRecords } from '../../../src/register/record-store.ts';
import { writeSettings } from '../../../src/register/settings-store.ts';
import { runSweep } from '../../../src/service/run-sweep.ts';
import { hiddenIn, officeForms, wordsOf } from '../records/office-forms.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';

const AT = '2026-11-24T12:00:00.000Z';

describe('the page of notices', () => {
  let sample: SampleApp;
  let office: ReturnType<typeof officeForms>;
  beforeEach(async () => {
    sample = await sampleApp({ swept: false });
    await writeSettings(sample.register.db, { holdFirstSweep: 'yes' }, AT);
    await runSweep(sample.register, { now: SAMPLE_NOW });
    office = officeForms(sample);
  });
  afterEach(() => sample.close());

  const held = () => listHeldNotices(sample.register);

  it('says how much waits, by owner, and releases only what is ticked', async () => {
    const all = await held();
    const owners = new Set(all.map(({ ownerRef }) => ownerRef)).size;
    expect(all.length).toBeGreaterThan(3);
    const words = wordsOf(await office.text('/notices'));
    expect(words).toContain(`${all.length} notices to ${owners} owners wait until you release them.`);
    const [first] = all;
    if (!first) throw new Error('nothing is held');
    const told = await office.sendAndFollow('/notices', '/notices/release', { act: 'ticked', id: String(first.id) });
    expect(wordsOf(told)).toContain('Released 1 notice to 1 owner.');
    expect((await held()).map(({ id }) => id)).not.toContain(first.id);
    expect(await held()).toHaveLength(all.length - 1);
  });

  it('releases nothing where nothing is ticked', async () => {
    const all = await held();
    const response = await office.send('/notices', '/notices/release', { act: 'ticked' });
    expect(response.status).toBe(400);
    expect(wordsOf(await response.text())).toContain('Nothing was released: tick what is to go out.');
    expect(await held()).toEqual(all);
  });

  it('releases a whole list with the office’s sentence, which every message then carries', async () => {
    const newest = hiddenIn(await office.text('/notices?owner=HOA'), 'newest');
    const sentence = 'We looked at all of them <together>.';
    const fields = { act: 'all', owner: 'HOA', newest, sentence, sure: 'yes' };
    const told = await office.sendAndFollow('/notices?owner=HOA', '/notices/release', fields);
    expect(wordsOf(told)).toMatch(/Released \d+ notices to 1 owner\./);
    expect((await held()).filter(({ ownerRef }) => ownerRef === 'HOA')).toEqual([]);
    expect((await held()).length).toBeGreaterThan(0);
    await sample.sendMail();
    const message = /href="(\/outbox\/\d+)">/.exec(await office.text('/outbox?owner=HOA'))?.[1] ?? '';
    const html = await office.text(`${message}/message`);
    expect(html).toContain('We looked at all of them &lt;together&gt;.');
  });

  it('asks before a whole list is released, with how much it is and one of the messages', async () => {
    const all = await held();
    const newest = hiddenIn(await office.text('/notices'), 'newest');
    const sentence = 'We come by in spring.';
    const asking = await office.send('/notices', '/notices/release', { act: 'all', newest, sentence });
    const place = asking.headers.get('location') ?? '';
    expect(asking.status).toBe(303);
    expect(await held()).toEqual(all);
    const html = await office.text(place);
    const owners = new Set(all.map(({ ownerRef }) => ownerRef)).size;
    expect(wordsOf(html)).toContain(`Release ${all.length} notices to ${owners} owners?`);
    expect(wordsOf(html)).toContain('They can be taken back until they are written');
    const source = (/src="(\/notices\/message[^"]+)"/.exec(html)?.[1] ?? '').replaceAll('&amp;', '&');
    expect(await office.text(source)).toContain(sentence);
    const said = /That is (?:(\d+) mails? to \d+ owners?)?(?: and )?(?:(\d+) letters? to \d+ owners?)?\./.exec(
      wordsOf(html),
    );
    await office.sendAndFollow(place, '/notices/release', { act: 'all', newest, sentence, sure: 'yes' });
    expect(await held()).toEqual([]);
    await sample.sendMail();
    const written = await sample.register.db.selectFrom('outbox').select('channel').execute();
    const of = (channel: string) => written.filter((message) => message.channel === channel).length;
    expect([Number(said?.[1] ?? 0), Number(said?.[2] ?? 0)]).toEqual([of('mail'), of('letter')]);
    expect((await office.get(place)).status).toBe(400);
  });

  it('says who reads Spanish where a sentence goes out, and nothing of it where none does', async () => {
    await sample.register.db.updateTable('owners').set({ language: 'es' }).where('ref', '=', 'HOA').execute();
    const newest = hiddenIn(await office.text('/notices'), 'newest');
    const asked = (sentence: string) =>
      `/notices/release?${new URLSearchParams({ owner: 'HOA', newest, sentence }).toString()}`;
    expect(wordsOf(await office.text(asked('We come by in spring.')))).toMatch(
      /into Spanish messages too: .+ Spanish\./,
    );
    expect(wordsOf(await office.text(asked('')))).not.toContain('into Spanish messages too');
  });

  it('does not release what came after the page was opened', async () => {
    const all = await held();
    const middle = all.map(({ id }) => id).toSorted((a, b) => a - b)[2] ?? 0;
    await office.send('/notices', '/notices/release', { act: 'all', newest: String(middle), sure: 'yes' });
    expect((await held()).map(({ id }) => id).toSorted((a, b) => a - b)).toEqual(
      all
        .map(({ id }) => id)
        .filter((id) => id > middle)
        .toSorted((a, b) => a - b),
    );
  });

  it('shows the message as its owner would get it, and stores nothing of it', async () => {
    const all = await held();
    const page = await office.text('/notices/preview?owner=HOA&sentence=See%20you%20soon.');
    expect(wordsOf(page)).toContain('What');
    expect(page).toContain('<iframe');
    const source = (/src="(\/notices\/message[^"]+)"/.exec(page)?.[1] ?? '').replaceAll('&amp;', '&');
    const message = await office.get(source);
    expect(message.headers.get('content-security-policy')).toContain('sandbox');
    expect(await message.text()).toContain('See you soon.');
    expect(await held()).toEqual(all);
    expect(await sample.register.db.selectFrom('outbox').select('id').execute()).toEqual([]);
  });

  it('refuses a sentence that is too long and keeps what was written', async () => {
    const sentence = `${'long '.repeat(130)}end`;
    const response = await office.send('/notices', '/notices/release', { act: 'all', newest: '999', sentence });
    expect(response.status).toBe(400);
    const html = await response.text();
    expect(wordsOf(html)).toContain('write at most 600');
    expect(html).toContain('long end');
  });

  it('holds again what is released and has no message yet', async () => {
    const all = await held();
    const newest = hiddenIn(await office.text('/notices'), 'newest');
    await office.send('/notices', '/notices/release', { act: 'all', newest, sure: 'yes' });
    expect(await held()).toEqual([]);
    const page = await office.text('/notices');
    expect(wordsOf(page)).toContain('Released, not written yet');
    const ids = [...page.matchAll(/name="id" value="(\d+)"/g)].map(([, id]) => id ?? '');
    expect(ids).toHaveLength(all.length);
    await office.send('/notices', '/notices/hold-again', { id: ids });
    expect((await held()).map(({ id }) => id)).toEqual(all.map(({ id }) => id));
  });

  it('sets which matters are held from now on, and never the dangerous', async () => {
    await holdMatter(sample.register, 'closing', true, AT);
    await office.send('/notices', '/notices/matters', { held: ['short', 'two thirds', 'dangerous', 'nonsense'] });
    expect(await listHeldMatters(sample.register)).toEqual(['short', 'two thirds']);
  });

  it('shows the name of an owner as text, whatever it is', async () => {
    const owner = await readRecord(sample.register.db, 'owners', 'HOA');
    if (!owner) throw new Error('the sample has no HOA');
    await upsertRecords(sample.register.db, 'owners', [{ ...owner, name: '<script>alert(1)</script>' }], AT);
    for (const path of ['/notices', '/notices/preview?owner=HOA&sentence=%3Cscript%3E', '/owners', '/owners/HOA']) {
      const html = await office.text(path);
      expect(html, path).not.toContain('<script>');
      expect(html, path).toContain('&lt;script&gt;');
    }
  });
});
