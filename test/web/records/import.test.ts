import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { exportCsv } from '../../../src/register/csv/export-csv.ts';
import { readRecord, upsertRecords } from '../../../src/register/record-store.ts';
import { type SampleApp, sampleApp } from '../sample-app.ts';
import { hiddenIn, officeForms, wordsOf } from './office-forms.ts';

const OWNERS = [
  'ref,name,kind,channel,email,postal_address,language',
  'NEW-1,Ida Marsh,person,mail,ida@example.org,,en',
  'NEW-2,No Mail,person,mail,,,en',
  'NEW-3,Odd Kind,persons,mail,odd@example.org,,en',
  'QUINN,Quinn Renamed,person,letter,,"4 Far Row',
  'Pelican Reach, South Carolina 00000",es',
  'NEW-1,Ida Again,person,mail,ida@example.org,,en',
].join('\n');

const file = (name: string, text: string): readonly File[] => [new File([text], name, { type: 'text/csv' })];

describe('the import on the pages', () => {
  let sample: SampleApp;
  let office: ReturnType<typeof officeForms>;
  beforeEach(async () => {
    sample = await sampleApp({ swept: false });
    office = officeForms(sample);
  });
  afterEach(() => sample.close());

  const bring = async (name: string, text: string): Promise<string> => {
    const response = await office.send('/import', '/import', { files: file(name, text) });
    expect(response.status).toBe(303);
    return response.headers.get('location') ?? '';
  };
  const everything = async (): Promise<string> => {
    const kinds = ['owners', 'sites', 'fences'] as const;
    return (await Promise.all(kinds.map((kind) => exportCsv(sample.register, kind)))).join('\n');
  };

  it('shows every refused row with its line, field, reason and way out, and has changed nothing', async () => {
    const before = await everything();
    const place = await bring('owners.csv', OWNERS);
    const html = await office.text(place);
    const words = wordsOf(html);
    expect(words).toContain(
      'Of 5 rows, 1 is new, 1 changes something, none is as the register has it, and 3 cannot be taken.',
    );
    expect(words).toContain(
      'owners.csv, line 3 email nothing an owner reached by mail needs a mail address give one, or set channel to letter',
    );
    expect(words).toContain(
      'owners.csv, line 4 kind persons not one of the words it can be write one of person, association, company',
    );
    expect(words).toContain(
      'owners.csv, line 7 ref NEW-1 the ref is already on line 2 of owners.csv keep one of the rows',
    );
    expect(await everything()).toBe(before);
  });

  it('shows old and new values, file by file', async () => {
    const place = await bring('owners.csv', OWNERS);
    const words = wordsOf(await office.text(place));
    expect(words).toContain('owners.csv owners 1 1 0 3');
    expect(words).toMatch(/QUINN owner Name .+ Quinn Renamed/);
    expect(words).toMatch(/1 owner NEW-1/);
  });

  it('imports nothing while refused rows are not said to be left out', async () => {
    const before = await everything();
    const place = await bring('owners.csv', OWNERS);
    const shown = hiddenIn(await office.text(place), 'shown');
    const response = await office.send(place, place, { act: 'import', shown });
    expect(response.status).toBe(409);
    expect(wordsOf(await response.text())).toContain('Nothing was changed: some rows cannot be taken.');
    expect(await everything()).toBe(before);
  });

  it('imports the good rows where that was said, once, and says who did what', async () => {
    const place = await bring('owners.csv', OWNERS);
    const shown = hiddenIn(await office.text(place), 'shown');
    const words = wordsOf(await office.sendAndFollow(place, place, { act: 'import', shown, leave_out: 'yes' }));
    expect(words).toContain('owners.csv: 1 owner made, 1 owner changed, 3 rows left out.');
    expect(words).toContain('By office,');
    expect(await readRecord(sample.register.db, 'owners', 'NEW-1')).toMatchObject({ name: 'Ida Marsh' });
    expect(await readRecord(sample.register.db, 'owners', 'QUINN')).toMatchObject({ name: 'Quinn Renamed' });
    expect(await readRecord(sample.register.db, 'owners', 'NEW-2')).toBeNull();
    const again = await office.send('/import', place, { act: 'import', shown, leave_out: 'yes' });
    expect(again.headers.get('location')).toBe(place);
    expect(wordsOf(await office.text('/import'))).toContain(
      'owners.csv 1 owner made, 1 owner changed, 3 rows left out',
    );
  });

  it('keeps the rows left out, and nothing else, reachable after the import until the time of its files is over', async () => {
    const place = await bring('owners.csv', OWNERS);
    const shown = hiddenIn(await office.text(place), 'shown');
    const html = await office.sendAndFollow(place, place, { act: 'import', shown, leave_out: 'yes' });
    const link = `${place}/refused/0`;
    expect(html).toContain(`href="${link}"`);
    const kept = await office.text(link);
    expect(kept).toContain('NEW-2,No Mail');
    expect(kept).toContain('give one, or set channel to letter');
    expect(kept).not.toContain('Quinn Renamed');
    expect((await office.get(`${place}/refused/1`)).status).toBe(404);
    const again = /href="(\/import\/[^"/]+)">look at them again/.exec(html)?.[1] ?? '';
    expect(wordsOf(await office.text(again))).toMatch(/Of 3 rows, .* and 2 cannot be taken/);
    await sample.register.db
      .updateTable('import_drafts')
      .set({ made_at: '2020-01-01T00:00:00.000Z', expires_at: '2020-01-01T02:00:00.000Z' })
      .execute();
    const over = await office.get(link);
    expect(over.status).toBe(404);
    expect(wordsOf(await over.text())).toContain('These rows are gone');
    expect(wordsOf(await office.text(place))).toContain('The rows left out are no longer kept');
  });

  it('keeps nothing where every row was taken', async () => {
    const place = await bring('owners.csv', 'ref,name,kind,channel,email\nP-9,Pia,person,mail,p@example.org\n');
    const shown = hiddenIn(await office.text(place), 'shown');
    await office.send(place, place, { act: 'import', shown });
    expect(await sample.register.db.selectFrom('import_drafts').select('files').execute()).toEqual([{ files: null }]);
  });

  it('shows the new state, and changes nothing, where the register changed since the preview', async () => {
    const place = await bring(
      'owners.csv',
      'ref,name,kind,channel,email\nQUINN,From the file,person,mail,q@example.org\n',
    );
    const shown = hiddenIn(await office.text(place), 'shown');
    const quinn = await readRecord(sample.register.db, 'owners', 'QUINN');
    if (!quinn) throw new Error('the sample has no QUINN');
    await upsertRecords(sample.register.db, 'owners', [{ ...quinn, name: 'By somebody else' }], '2026-11-24T12:00:00Z');
    const response = await office.send(place, place, { act: 'import', shown });
    expect(response.status).toBe(409);
    const html = await response.text();
    expect(wordsOf(html)).toContain('the register is no longer as it was when you looked');
    expect(wordsOf(html)).toContain('By somebody else From the file');
    expect(await readRecord(sample.register.db, 'owners', 'QUINN')).toMatchObject({ name: 'By somebody else' });
    const words = wordsOf(await office.sendAndFollow(place, place, { act: 'import', shown: hiddenIn(html, 'shown') }));
    expect(words).toContain('owners.csv: 1 owner changed.');
    expect(await readRecord(sample.register.db, 'owners', 'QUINN')).toMatchObject({ name: 'From the file' });
  });

  it('says which words a cell may hold, by the columns themselves', async () => {
    const words = wordsOf(await office.text('/import'));
    expect(words).toContain('kind person, association, company');
    expect(words).toMatch(/fences\.csv: fences .*treatment/);
  });

  it('forgets files that are put away', async () => {
    const place = await bring('owners.csv', OWNERS);
    await office.send(place, place, { act: 'put away' });
    expect((await office.get(place)).status).toBe(404);
    expect(await sample.register.db.selectFrom('import_drafts').select('files').execute()).toEqual([{ files: null }]);
  });

  it('takes pasted text and tells its kind by its columns', async () => {
    const response = await office.send('/import', '/import', {
      pasted: 'ref,name,kind,channel,email\nP-1,Pasted,person,mail,p@example.org\n',
    });
    const words = wordsOf(await office.text(response.headers.get('location') ?? ''));
    expect(words).toContain('pasted.csv owners 1 0 0 0');
  });

  it.each([
    ['nothing at all', {}, 'No file was chosen and nothing was pasted.'],
    [
      'bytes that are no text',
      { files: [new File([new Uint8Array([0xff, 0xfe, 0x41])], 'owners.csv')] },
      'is not UTF-8',
    ],
    ['more lines than it takes', { pasted: 'a\n'.repeat(30_001) }, 'one import here takes 30000'],
  ] as const)('says what is wrong with %s', async (_what, sent, said) => {
    const response = await office.send('/import', '/import', sent);
    expect(response.status).toBe(400);
    expect(wordsOf(await response.text())).toContain(said);
    expect(await sample.register.db.selectFrom('import_drafts').selectAll().execute()).toEqual([]);
  });

  it('reads 16 MiB of files and no more, while other forms stay small', async () => {
    const large = await office.send('/import', '/import', { pasted: 'x'.repeat(17 * 1024 * 1024) });
    expect(large.status).toBe(413);
    expect(wordsOf(await large.text())).toContain('16 MiB');
    const other = await office.send('/import', '/owners/HOA/links', { days: '9'.repeat(70 * 1024) });
    expect(other.status).toBe(413);
    expect(wordsOf(await other.text())).toContain('64 KiB');
  });

  it('hands the refused rows back as a file with their reasons', async () => {
    const place = await bring('owners.csv', OWNERS);
    const response = await office.get(`${place}/refused/0`);
    expect(response.headers.get('content-type')).toContain('text/csv');
    const lines = (await response.text()).trim().split('\n');
    expect(lines[0]).toBe('ref,name,kind,channel,email,postal_address,language,reasons');
    expect(lines).toHaveLength(4);
  });

  it('shows hostile text as text', async () => {
    const nasty = '"><script>alert(1)</script>';
    const text = `ref,name,kind,channel,email,${nasty.replaceAll('"', '')}\nX-1,${nasty.replaceAll('"', '""')},person,mail,x@example.org,1\n`;
    const place = await bring(`${nasty.replaceAll('/', '')}.csv`, text);
    const html = await office.text(place);
    expect(html).not.toContain('<script>');
    expect(html).toContain('&lt;script&gt;');
  });

  it('gives back by export what an import then finds unchanged', async () => {
    const text = await (await office.get('/export/fences.csv')).text();
    const words = wordsOf(await office.text(await bring('fences.csv', text)));
    expect(words).toContain('fences.csv fences 0 0 8 0');
    expect(words).toContain('The register has all of this already.');
    expect(await (await office.get('/export/columns/owners.csv')).text()).toBe(
      'ref,name,kind,channel,email,postal_address,language,enrolled\n',
    );
    expect((await office.get('/export/nothing.csv')).status).toBe(404);
  });
});
