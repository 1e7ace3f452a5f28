import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { simpleParser } from 'mailparser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listOutbox, loadOutboxBytes } from '../../src/register/outbox.ts';
import { listOwnerAnswers } from '../../src/register/owner-answer-store.ts';
import { type OwnerRecord, ownerSchema } from '../../src/register/owner-record.ts';
import { readRecord, upsertRecords } from '../../src/register/record-store.ts';
import { type SiteRecord, siteSchema } from '../../src/register/site-record.ts';
import { answerSentence } from '../../src/service/answer-sentence.ts';
import { composeNotices } from '../../src/service/compose-notices.ts';
import { answeringSample, ownerPathOf } from '../web/owner/answering-sample.ts';
import { ownerBrowser } from '../web/owner/owner-browser.ts';
import { SAMPLE_NOW } from '../web/sample-register.ts';

const PUBLIC_URL = 'https://fences.example.org';
const NOW = '2026-11-24T12:00:00.000Z';

/** Pieces that break out of a header, a page, an address or a cell where somebody forgot about them. */
const PIECES = [
  'Marsh',
  'O’Neil & Sons',
  '\n',
  '\r\n',
  '\r\nBcc: thief@example.org',
  '\n\n<p>',
  '\t',
  '%0d%0aBcc:thief@example.org',
  'مرحبا بكم',
  'שלום',
  '\u200f',
  '\u202e',
  '👩‍👩‍👧‍👦',
  'e\u0301\u0302\u0303',
  '=HYPERLINK("https://x.example","y")',
  '+1-555',
  '-2+3',
  '@SUM(A1:A9)',
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "' onmouseover='x",
  '</title></head><body>',
  '&lt;b&gt;',
  '"',
  ',',
  ';',
  ' , <thief@example.org>',
  '=?utf-8?q?=0D=0ABcc:_thief?=',
  'Ñandú, São, ß',
  'w'.repeat(90),
  '\u2028',
  '\u0000',
] as const;

const fuzzed = fc.array(fc.constantFrom(...PIECES), { minLength: 1, maxLength: 7 }).map((pieces) => pieces.join(''));

/** What an HTML text holds that nobody meant to write. */
function strays(html: string): readonly string[] {
  // what a browser takes for a tag, its attributes by their names
  const tags = [...html.matchAll(/<\/?([a-z][a-z0-9]*)((?:[^>"']|"[^"]*"|'[^']*')*)>/gi)];
  const names = tags.map(([tag, name = '']) => `${tag.startsWith('</') ? '/' : ''}${name.toLowerCase()}`);
  const attributes = tags
    .flatMap(([, , text = '']) => [...text.replace(/"[^"]*"/g, '""').matchAll(/([\w-]+)\s*=\s*([^\s"]?)/g)])
    .map(([, name = '', first = '']) => `${name.toLowerCase()}=${first}`);
  return [
    ...names.filter((name) => name === 'script'),
    ...['/head', 'body'].filter((once) => names.filter((name) => name === once).length > 1),
    // the pages and mails quote what they set, and run nothing
    ...attributes.filter((each) => /^on/.test(each) || !each.endsWith('=')),
  ];
}

describe('a name, an address or a note that somebody typed', () => {
  let sample: Awaited<ReturnType<typeof answeringSample>>;
  let owners: readonly OwnerRecord[];
  let site: SiteRecord;
  beforeAll(async () => {
    sample = await answeringSample();
    const { db } = sample.register;
    const read = async (ref: string): Promise<OwnerRecord> => {
      const owner = await readRecord(db, 'owners', ref);
      if (!owner) throw new Error(`the sample lacks owner ${ref}`);
      return owner;
    };
    owners = [await read('HOA'), await read('QUINN'), await read('MASON')];
    const found = await readRecord(db, 'sites', 'PELICAN');
    if (!found) throw new Error('the sample lacks its site');
    site = found;
  });
  afterAll(() => sample.close());

  /** Names what the register takes with the text, and writes the messages anew. Null where the register refuses the text. */
  async function messagesWith(
    text: string,
  ): Promise<readonly { channel: 'mail' | 'letter'; raw: Buffer; to: OwnerRecord }[] | null> {
    const { register } = sample;
    const named = owners.map((owner) =>
      ownerSchema.safeParse({ ...owner, name: text.slice(0, 200), postalAddress: text.slice(0, 500) }),
    );
    const place = siteSchema.safeParse({ ...site, name: text.slice(0, 60), place: text.slice(0, 60) });
    const taken = named.flatMap((result) => (result.success ? [result.data] : []));
    if (taken.length < owners.length || !place.success) return null;
    await upsertRecords(register.db, 'owners', taken, NOW);
    await upsertRecords(register.db, 'sites', [place.data], NOW);
    await register.db.updateTable('notices').set({ outbox_id: null }).execute();
    await register.db.deleteFrom('outbox').execute();
    const office = { name: text, phone: '555-0100', email: 'office@example.org', postalAddress: text };
    const sender = { office, from: 'notices@example.org', gap: null, mailReachesOwners: true, timeZone: 'UTC' };
    const report = await composeNotices(register, { now: SAMPLE_NOW, sender: { ...sender, publicUrl: PUBLIC_URL } });
    expect(report.failures).toEqual([]);
    expect(report.mails).toBeGreaterThan(1);
    expect(report.letters).toBeGreaterThan(0);
    const entries = await listOutbox(register, { limit: 20 });
    return Promise.all(
      entries.map(async ({ id, ownerRef }) => {
        const { channel, raw } = (await loadOutboxBytes(register, id))!;
        return { channel, raw: Buffer.from(raw), to: taken.find(({ ref }) => ref === ownerRef)! };
      }),
    );
  }

  async function mailIsWhole(raw: Buffer, to: OwnerRecord): Promise<void> {
    const head = raw.toString('latin1').split('\r\n\r\n')[0]!;
    // RFC 5322, 2.1.1; and every line is a header or goes on with one
    for (const line of head.split('\r\n')) {
      expect(line.length).toBeLessThanOrEqual(998);
      expect(line).toMatch(/^([A-Za-z-]+: ?|[ \t])[\x20-\x7e]*$/);
    }
    const names = [...head.matchAll(/^([A-Za-z-]+):/gm)].map(([, name = '']) => name.toLowerCase());
    expect(names.sort()).toEqual([
      'auto-submitted',
      'content-type',
      'date',
      'from',
      'list-unsubscribe',
      'list-unsubscribe-post',
      'message-id',
      'mime-version',
      'reply-to',
      'subject',
      'to',
    ]);
    const mail = await simpleParser(raw);
    const addresses = (field: typeof mail.to): readonly (string | undefined)[] =>
      [field].flat().flatMap((each) => each?.value.map(({ address }) => address) ?? []);
    expect(addresses(mail.to)).toEqual([to.email]);
    expect(addresses(mail.from)).toEqual(['notices@example.org']);
    expect(addresses(mail.replyTo)).toEqual(['office@example.org']);
    expect(mail.subject).not.toMatch(/[\r\n]/);
    const html = mail.html || '';
    expect(strays(html)).toEqual([]);
    const links = [...html.matchAll(/<a href="([^"]+)"/g)].map(([, url = '']) => url);
    expect(links).toHaveLength(5);
    for (const link of links) {
      expect(mail.text?.split('\n')).toContain(link);
      const { origin, pathname } = new URL(link);
      expect(origin).toBe(PUBLIC_URL);
      expect((await sample.pages.request(pathname)).status, link).toBe(200);
    }
    for (const file of mail.attachments.filter(({ filename }) => filename?.endsWith('.csv'))) {
      const rows = parse(file.content, { relax_column_count: false }) as readonly (readonly string[])[];
      expect(rows.length).toBeGreaterThan(3);
      for (const cell of rows.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
    }
  }

  it('never breaks a header, a link, a part or the CSV of a mail, nor a letter', { timeout: 240_000 }, async () => {
    let [taken, mails, files] = [0, 0, 0];
    await fc.assert(
      fc.asyncProperty(fuzzed, async (text) => {
        const messages = await messagesWith(text);
        if (messages === null) return;
        taken += 1;
        for (const { channel, raw, to } of messages) {
          if (channel === 'letter') expect(strays(raw.toString('utf8'))).toEqual([]);
          else {
            await mailIsWhole(raw, to);
            mails += 1;
            if (raw.includes('fences.csv')) files += 1;
          }
        }
      }),
      { numRuns: 14 },
    );
    // the examples are of no use if the register refuses them all
    expect(taken).toBeGreaterThan(4);
    expect(mails).toBeGreaterThan(taken);
    expect(files).toBeGreaterThan(0);
  });

  it('never breaks a page of an owner or of the office', { timeout: 240_000 }, async () => {
    const home = await ownerPathOf(sample, 'QUINN');
    const browser = ownerBrowser(sample, home);
    let asked = 0;
    await fc.assert(
      fc.asyncProperty(fuzzed, fuzzed, async (name, note) => {
        await messagesWith(name);
        await sample.register.db.updateTable('owner_answers').set({ settled_at: NOW }).execute();
        const called = await browser.send('/call', '/call', {
          phone: note.slice(0, 50),
          when: note.slice(0, 200),
          about: `${name} ${note}`.slice(0, 1000),
        });
        if (called.status === 200) asked += 1;
        for (const path of ['', '/fences/PR-04', '/visits', '/quotes', '/documents', '/call', '/preferences']) {
          const page = await browser.get(path);
          expect(page.status, path).toBe(200);
          expect(strays(page.text), path).toEqual([]);
        }
        for (const path of ['/answers', '/fences', '/outbox'])
          expect(strays(await sample.text(path)), path).toEqual([]);
        for (const answer of await listOwnerAnswers(sample.register.db, { kind: 'call wanted' })) {
          expect(answerSentence(answer)).not.toMatch(/[\r\n\t\u2028]/);
        }
      }),
      { numRuns: 8 },
    );
    expect(asked).toBeGreaterThan(4);
  });

  it('is caught by this test where it does break something', () => {
    expect(strays('<p><script>x</script></p>')).toEqual(['script']);
    expect(strays('<p onclick="x">')).toEqual(['onclick=']);
    expect(strays('<p title="a onclick=b">')).toEqual([]);
    expect(strays('<a title=""><img src=x onerror=alert(1)>">')).toEqual(['src=x', 'onerror=a']);
    expect(strays('</head><body></title></head><body>')).toEqual(['/head', 'body']);
  });
});
