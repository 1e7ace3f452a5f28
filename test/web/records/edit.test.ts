import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readRecord, upsertRecords } from '../../../src/register/record-store.ts';
import { readSettings, writeSettings } from '../../../src/register/settings-store.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { hiddenIn, officeForms, wordsOf } from './office-forms.ts';

const AT = '2026-11-24T12:00:00.000Z';
const NASTY = '"><script>alert(1)</script>';

/** What a form of a page would send if nothing were touched. */
function filledIn(html: string): Record<string, string> {
  const form = /<form class="tall" method="post">[\s\S]*?<\/form>/.exec(html)?.[0] ?? '';
  const plain = (text: string): string => wordsOf(text).trim();
  const fields: Record<string, string> = {};
  for (const [, name, value] of form.matchAll(/<input[^>]* name="([^"]+)"[^>]*? value="([^"]*)"/g)) {
    if (name && name !== 'form_token') fields[name] = plain(value ?? '');
  }
  for (const [, name, value] of form.matchAll(/<textarea[^>]* name="([^"]+)"[^>]*>([\s\S]*?)<\/textarea>/g)) {
    if (name) fields[name] = plain(value ?? '');
  }
  for (const [, name, options] of form.matchAll(/<select[^>]* name="([^"]+)"[^>]*>([\s\S]*?)<\/select>/g)) {
    if (name) fields[name] = plain(/<option value="([^"]*)" selected/.exec(options ?? '')?.[1] ?? '');
  }
  return fields;
}

describe('the forms of records', () => {
  let sample: SampleApp;
  let office: ReturnType<typeof officeForms>;
  beforeEach(async () => {
    sample = await sampleApp({ swept: false });
    office = officeForms(sample);
  });
  afterEach(() => sample.close());

  it('adds an owner, and says beside each field what cannot be taken', async () => {
    const page = '/records/owners/new';
    const bad = await office.send(page, page, {
      ref: 'A B',
      name: 'Ann',
      kind: 'person',
      channel: 'mail',
      email: 'no',
    });
    expect(bad.status).toBe(400);
    const html = await bad.text();
    expect(html).toMatch(/id="ref-fault">a ref is 1 to 40 letters/);
    expect(html).toContain('value="A B"');
    const good = {
      ref: 'ANN',
      name: 'Ann Tide',
      kind: 'person',
      channel: 'mail',
      email: 'ann@example.org',
      language: 'es',
    };
    const words = wordsOf(await office.sendAndFollow(page, page, good));
    expect(words).toContain('Saved.');
    expect(words).toMatch(/2026-11-24 12:00 UTC office made/);
    expect(await readRecord(sample.register.db, 'owners', 'ANN')).toMatchObject({ name: 'Ann Tide', language: 'es' });
  });

  it('saves an untouched site as it was, to the last digit', async () => {
    const before = await readRecord(sample.register.db, 'sites', 'PELICAN');
    const page = '/records/sites/PELICAN/edit';
    const fields = filledIn(await office.text(page));
    expect(Object.keys(fields).length).toBeGreaterThan(25);
    await office.sendAndFollow(page, page, fields);
    expect(await readRecord(sample.register.db, 'sites', 'PELICAN')).toEqual(before);
    expect(await sample.register.db.selectFrom('record_edits').selectAll().execute()).toEqual([]);
  });

  it('changes a site and shows what was changed by whom', async () => {
    const page = '/records/sites/PELICAN/edit';
    const fields = { ...filledIn(await office.text(page)), exposure: 'C', design_gust_mph: '110' };
    const words = wordsOf(await office.sendAndFollow(page, page, fields));
    expect(words).toContain('office Exposure: B → C');
    expect(words).toContain('Design gust [mph]: 105 → 110');
    expect(await readRecord(sample.register.db, 'sites', 'PELICAN')).toMatchObject({ exposure: 'C' });
  });

  it('refuses what an import would refuse, and changes nothing', async () => {
    const before = await readRecord(sample.register.db, 'sites', 'PELICAN');
    const page = '/records/sites/PELICAN/edit';
    const fields = { ...filledIn(await office.text(page)), design_gust_mph: '900', climate_zone: 'NOWHERE' };
    const response = await office.send(page, page, fields);
    expect(response.status).toBe(400);
    expect(await response.text()).toMatch(/id="design_gust_mph-fault">outside the allowed/);
    expect(await readRecord(sample.register.db, 'sites', 'PELICAN')).toEqual(before);
  });

  it('shows both versions where somebody changed the record meanwhile, and loses neither', async () => {
    const page = '/records/owners/QUINN/edit';
    const fields = { ...filledIn(await office.text(page)), name: 'What I wrote' };
    const quinn = await readRecord(sample.register.db, 'owners', 'QUINN');
    if (!quinn) throw new Error('the sample has no QUINN');
    await upsertRecords(sample.register.db, 'owners', [{ ...quinn, name: 'What they wrote' }], AT);
    const response = await office.send(page, page, fields);
    expect(response.status).toBe(409);
    const html = await response.text();
    expect(wordsOf(html)).toContain('Name What they wrote What I wrote');
    expect(html).toContain('value="What I wrote"');
    expect(await readRecord(sample.register.db, 'owners', 'QUINN')).toMatchObject({ name: 'What they wrote' });
    const opened = hiddenIn(html, 'opened_print');
    await office.sendAndFollow(page, page, { ...fields, opened_print: opened });
    expect(await readRecord(sample.register.db, 'owners', 'QUINN')).toMatchObject({ name: 'What I wrote' });
  });

  it('does not put a new record in place of one of the same name', async () => {
    const page = '/records/owners/new';
    const fields = { ref: 'QUINN', name: 'Another', kind: 'person', channel: 'mail', email: 'a@example.org' };
    const response = await office.send(page, page, fields);
    expect(response.status).toBe(409);
    expect(wordsOf(await response.text())).toContain('there is a record of that name already');
    expect(await readRecord(sample.register.db, 'owners', 'QUINN')).toMatchObject({ name: 'Rosa Quinn' });
  });

  it('keeps every text as text, and gives back what was written', async () => {
    const page = '/records/owners/new';
    const fields = {
      ref: 'XSS',
      name: `=${NASTY}`,
      kind: 'person',
      channel: 'letter',
      postal_address: `${NASTY}\nTown`,
    };
    const html = await office.sendAndFollow(page, page, fields);
    expect(html).not.toContain('<script>');
    expect(await readRecord(sample.register.db, 'owners', 'XSS')).toMatchObject({
      name: `=${NASTY}`,
      postalAddress: `${NASTY}\nTown`,
    });
    for (const path of [
      '/owners',
      '/owners/XSS',
      '/records/owners/XSS/edit',
      `/owners?q=${encodeURIComponent(NASTY)}`,
    ]) {
      expect(await office.text(path), path).not.toContain('<script>');
    }
  });

  it('enters what a fence is, works done, crews and prices by the same form', async () => {
    const works = '/records/works/new?fence=PR-02&ref=W-1&day=2026-11-20';
    const made = await office.sendAndFollow(works, works, {
      ref: 'W-1',
      fence: 'PR-02',
      day: '2026-11-20',
      kind: 'trimmer-guard',
      posts: 'all',
    });
    expect(wordsOf(made)).toContain('Saved.');
    expect(await readRecord(sample.register.db, 'works', 'W-1')).toMatchObject({ kind: 'trimmer-guard' });
    const line = '/records/catalogue/new';
    const words = wordsOf(
      await office.sendAndFollow(line, line, { kind: 'liner', price_per_post: '61', source: 'our own books' }),
    );
    expect(words).toContain('Price per post 61');
    expect(wordsOf(await office.text('/catalogue'))).toContain('liner');
    const crew = '/records/crews/new';
    await office.sendAndFollow(crew, crew, { ref: 'C1', name: 'First crew', speed_mph: '40' });
    const member = '/records/crew-members/new';
    await office.sendAndFollow(member, member, { ref: 'M1', crew: 'C1', name: 'Bea', hours_per_week: '38' });
    expect(wordsOf(await office.text('/crews'))).toContain('First crew');
    const fence = '/records/fences/PR-02/edit';
    const changed = { ...filledIn(await office.text(fence)), note: 'Behind the shed' };
    expect(wordsOf(await office.sendAndFollow(fence, fence, changed))).toContain('→ Behind the shed');
  });

  it('knows no kind and no record that is not there', async () => {
    for (const path of [
      '/records/nothing/new',
      '/records/posts/new',
      '/records/owners/NONE/edit',
      '/owners/NONE',
      '/sites/NONE',
    ]) {
      expect((await office.get(path)).status, path).toBe(404);
    }
  });
});

describe('the settings on the pages', () => {
  let sample: SampleApp;
  let office: ReturnType<typeof officeForms>;
  beforeEach(async () => {
    sample = await sampleApp({ swept: false });
    office = officeForms(sample);
  });
  afterEach(() => sample.close());

  it('are set together or not at all, and show what was changed', async () => {
    const values = await readSettings(sample.register.db);
    const opened_print = hiddenIn(await office.text('/settings'), 'opened_print');
    const fields = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, String(value)]));
    const bad = await office.send('/settings', '/settings', {
      ...fields,
      opened_print,
      reminderDays: '999',
      lookAheadSeasons: '3',
    });
    expect(bad.status).toBe(400);
    expect(await bad.text()).toMatch(/id="reminderDays-fault"/);
    expect(await readSettings(sample.register.db)).toEqual(values);
    const good = await office.send('/settings', '/settings', { ...fields, opened_print, companyName: '<b>Fences</b>' });
    const html = await good.text();
    expect(wordsOf(html)).toContain(`Name of the office ${values.companyName} <b>Fences</b>`);
    expect(html).not.toContain('<b>Fences');
    expect((await readSettings(sample.register.db)).companyName).toBe('<b>Fences</b>');
  });

  it('are not set over somebody else’s', async () => {
    const opened_print = hiddenIn(await office.text('/settings'), 'opened_print');
    const values = await readSettings(sample.register.db);
    await writeSettings(sample.register.db, { lookAheadSeasons: 5 }, AT);
    const fields = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, String(value)]));
    const response = await office.send('/settings', '/settings', { ...fields, opened_print });
    expect(response.status).toBe(409);
    expect((await readSettings(sample.register.db)).lookAheadSeasons).toBe(5);
  });
});
