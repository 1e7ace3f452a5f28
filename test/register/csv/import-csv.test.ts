import { describe, expect, test } from 'vitest';
import { listRecords, readRecord } from '../../../src/register/record-store.ts';
import {
  FENCES,
  faultLines,
  importFiles,
  NOW,
  OWNERS,
  SITES,
  SOUND_FILES,
  soundRegister,
  temporaryRegister,
  ZONES,
} from '../made-up-register.ts';

const tableSizes = async (register: Awaited<ReturnType<typeof temporaryRegister>>): Promise<readonly number[]> => [
  (await listRecords(register.db, 'owners')).length,
  (await listRecords(register.db, 'fences')).length,
];

describe('import of sound files', () => {
  test('takes all kinds in one call and in any order', async () => {
    const register = await temporaryRegister();
    const seen: string[] = [];
    const report = await importFiles(register, SOUND_FILES, {
      onProgress: (done, total) => void seen.push(`${done} of ${total}`),
    });
    expect(faultLines(report)).toEqual([]);
    expect(report.applied).toBe(true);
    expect(Object.values(report.counts).map(({ created }) => created)).toEqual([
      2, 1, 0, 1, 2, 2, 4, 0, 0, 0, 0, 0, 0, 0, 0,
    ]);
    expect(seen).toEqual(['12 of 12']);
    expect(report.rejected).toEqual([]);
  });

  test('stores SI values, defaults and unknowns', async () => {
    const { db } = await soundRegister();
    const fence = await readRecord(db, 'fences', 'F-1');
    expect(fence).toMatchObject({
      heightM: 1.8288,
      solidity: 1,
      bottomGapM: 0,
      grade: 'no-2',
      incised: false,
      boards: 'unknown',
      trimmerGuards: 'unknown',
      consequence: 'ordinary',
      installedEarliest: '2014-05-03',
      installedLatest: '2014-05-03',
      secondOwnerRef: null,
    });
    expect(fence?.endAReturnM).toBeCloseTo(7.3152, 10);
    expect(fence?.retentionKgM3).toBeCloseTo(2.4028, 4);
    expect(await readRecord(db, 'fences', 'F-2')).toMatchObject({
      installedEarliest: '2008-01-01',
      installedLatest: '2012-12-31',
      embedmentM: null,
      footing: null,
    });
    expect(await readRecord(db, 'sites', 'quill')).toMatchObject({
      units: 'us',
      topographicFactor: 1,
      seasonOpens: '01-01',
      seasonCloses: '12-31',
      seasonShare: 1,
      hurricane: false,
    });
    expect(await readRecord(db, 'works', 'W-1')).toMatchObject({
      yearsEffective: 5,
      posts: 'all',
      treatmentClass: null,
    });
    expect(await readRecord(db, 'works', 'W-2')).toMatchObject({ posts: [4, 5], grade: 'unknown', incised: false });
    expect((await readRecord(db, 'works', 'W-3'))?.positionsM).toEqual([1.2192, 3.6576]);
    expect((await readRecord(db, 'climate-zones', 'gulf'))?.rainMmPerYear).toBeCloseTo(1600.2, 8);
    expect((await readRecord(db, 'owners', 'hoa'))?.postalAddress).toBe('1 Quill Lane\nQuillback');
  });

  test('takes a byte order mark, CRLF line ends, semicolons and blank lines', async () => {
    const register = await temporaryRegister();
    const text = `\uFEFF${ZONES.replaceAll(',', ';').replaceAll('\n', '\r\n\r\n')}`;
    const report = await importFiles(register, [{ name: 'anything.csv', text }]);
    expect(faultLines(report)).toEqual([]);
    expect(report.counts['climate-zones'].created).toBe(1);
  });

  test('takes ten thousand fences and tells how far it is', async () => {
    const register = await temporaryRegister();
    const [header, row] = FENCES.split('\n');
    if (!header || !row) throw new Error('the sound fences are empty');
    const rows = Array.from({ length: 10_000 }, (_, index) => row.replace('F-1', `F-${index}`));
    const fences = { name: 'fences.csv', text: `${[header, ...rows].join('\n')}\n` };
    const places = SOUND_FILES.filter(({ name }) => /^(owners|sites|climate)/.test(name));
    const progress: number[] = [];
    const report = await importFiles(register, [...places, fences], {
      onProgress: (done, total) => void progress.push(done / total),
    });
    expect(report.counts.fences).toEqual({ created: 10_000, changed: 0, unchanged: 0, refused: 0 });
    expect(progress.length).toBeGreaterThan(20);
    expect(progress.at(-1)).toBe(1);
    expect([...progress].sort((a, b) => a - b)).toEqual(progress);
  });

  test('changes what a second import says and leaves the rest', async () => {
    const register = await soundRegister();
    const later = '2027-01-01T00:00:00.000Z';
    const report = await importFiles(
      register,
      [{ name: 'owners.csv', text: OWNERS.replace('Oda Marlowe', 'Oda Marlowe-Finch') }],
      { now: later },
    );
    expect(report.counts.owners).toEqual({ created: 0, changed: 1, unchanged: 1, refused: 0 });
    expect(report.changes).toEqual([{ kind: 'owners', ref: 'oda', change: 'changed', columns: ['name'] }]);
    const rows = await register.db.selectFrom('owners').selectAll().orderBy('ref').execute();
    expect(rows.map((row) => [row.ref, row.created_at, row.updated_at])).toEqual([
      ['hoa', NOW, NOW],
      ['oda', NOW, later],
    ]);
  });

  test('keeps the value of a column that the file does not have, and empties an empty cell', async () => {
    const register = await soundRegister();
    const withoutFooting = FENCES.split('\n')
      .map((line) => line.split(',').slice(0, 17).join(','))
      .join('\n')
      .replace('2014-05-03,24', '2014-05-03,');
    const report = await importFiles(register, [{ name: 'fences.csv', text: withoutFooting }]);
    expect(faultLines(report)).toEqual([]);
    const fence = await readRecord(register.db, 'fences', 'F-1');
    expect(fence).toMatchObject({ embedmentM: null, footing: 'concrete' });
  });

  test('says in a dry run what it would do and does nothing', async () => {
    const register = await temporaryRegister();
    const report = await importFiles(register, SOUND_FILES, { dryRun: true });
    expect(report).toMatchObject({ applied: false, dryRun: true, faults: [] });
    expect(report.changes.map(({ change, ref }) => `${change} ${ref}`)).toEqual([
      'created oda',
      'created hoa',
      'created gulf',
      'created quill',
      'created F-1',
      'created F-2',
      'created F-1 post 3',
      'created F-2 post 1',
      'created W-1',
      'created W-2',
      'created W-3',
      'created W-4',
    ]);
    expect(await tableSizes(register)).toEqual([0, 0]);
  });
});

describe('import of files with faults', () => {
  const faulty = FENCES.replace('solid-board,72,80', 'solid-board,72 in,80');

  test('writes nothing of the whole set for one fault', async () => {
    const register = await temporaryRegister();
    const files = SOUND_FILES.map((file) => (file.name === 'fences.csv' ? { ...file, text: faulty } : file));
    const report = await importFiles(register, files);
    expect(report.applied).toBe(false);
    expect(await tableSizes(register)).toEqual([0, 0]);
  });

  test('keeps the good rows where asked and hands the bad ones back with their reasons', async () => {
    const register = await temporaryRegister();
    const files = [
      { name: 'owners.csv', text: OWNERS },
      { name: 'climate-zones.csv', text: ZONES },
      { name: 'sites.csv', text: SITES },
      { name: 'fences.csv', text: faulty },
      { name: 'posts.csv', text: 'fence,post,section\nF-1,2,6x6\nF-2,2,6x6\n' },
    ];
    const report = await importFiles(register, files, { acceptValid: true });
    expect(report.applied).toBe(true);
    expect((await listRecords(register.db, 'fences')).map(({ ref }) => ref)).toEqual(['F-2']);
    expect((await listRecords(register.db, 'posts')).map(({ fenceRef }) => fenceRef)).toEqual(['F-2']);
    expect(report.counts.fences).toEqual({ created: 1, changed: 0, unchanged: 0, refused: 1 });
    expect(report.rejected.map(({ name }) => name)).toEqual(['fences.csv', 'posts.csv']);
    expect(report.rejected[1]?.text).toBe(
      'fence,post,section,reasons\nF-1,2,6x6,"fence: 1 post of fence F-1 is left out because line 2 of fences.csv was refused; correct that row"\n',
    );
    const mended = report.rejected.map(({ name, text }) => ({ name, text: text.replace('72 in', '72') }));
    const again = await importFiles(register, mended);
    expect(faultLines(again)).toEqual([]);
    expect(again.counts.fences.created + again.counts.posts.created).toBe(2);
  });

  test('gives a dozen exact messages for a dozen different faults and changes nothing', async () => {
    const register = await soundRegister();
    const before = await listRecords(register.db, 'fences');
    const header =
      'ref,site,owner,style,height_in,height_m,run_length_ft,post_spacing_ft,named_end,end_a,end_a_return_ft,section,species,treatment_class,incised,installed';
    const rows = [
      'N 1,quill,oda,picket,72,,80,8,gate,free,,4x4,southern-pine,ground-contact,no,2014',
      'N-2,quil,oda,picket,72,,80,8,gate,free,,4x4,southern-pine,ground-contact,no,2014',
      'N-3,quill,oda,lattice,72,,80,8,gate,free,,4x4,southern-pine,ground-contact,no,2014',
      'N-4,quill,oda,picket,720,,80,8,gate,free,,4x4,southern-pine,ground-contact,no,2014',
      'N-5,quill,oda,picket,72,1.8,80,8,gate,free,,4x4,southern-pine,ground-contact,no,2014',
      'N-6,quill,oda,picket,72,,80 ft,8,gate,free,,4x4,southern-pine,ground-contact,no,2014',
      'N-7,quill,oda,picket,72,,"1,200",8,"the\nlong end",free,,4x4,southern-pine,ground-contact,no,2014',
      'N-8,quill,oda,picket,72,,80,8,gate,gate,12,4x4,southern-pine,ground-contact,no,2014',
      'N-9,quill,oda,picket,72,,80,8,gate,free,,4 by 4,southern-pine,ground-contact,no,2014',
      'N-10,quill,oda,picket,72,,80,8,gate,free,,4x4,southern-pine,redcedar-redwood-heartwood,no,2014',
      'N-11,quill,oda,picket,72,,80,8,gate,free,,4x4,southern-pine,ground-contact,TRUE,2014',
      'N-12,quill,oda,picket,72,,80,8,gate,free,,4x4,southern-pine,ground-contact,no,2027-01-01',
      'N-13,quill,oda,picket,72,,80,8,gate,free,,4x4,southern-pine,ground-contact,no,5/3/2014',
      'F-1,quill,oda,picket,,,80,8,gate,free,,4x4,southern-pine,ground-contact,no,2014',
    ];
    const report = await importFiles(register, [{ name: 'new.csv', text: `${header}\n${rows.join('\n')}\n` }]);
    expect(report.applied).toBe(false);
    expect(faultLines(report)).toEqual([
      'new.csv line 2, ref "N 1": a ref is 1 to 40 letters (A to Z), digits, points, hyphens and underscores, and begins with a letter or digit',
      'new.csv line 3, site "quil": no site of that ref, neither in the register nor among the rows taken; did you mean quill?',
      'new.csv line 4, style "lattice": not one of the words it can be; write one of solid-board, board-on-board, shadowbox, picket, open-rail',
      `new.csv line 5, height_in "720": outside the allowed 11.81 to 181.1 in; check the number and the unit in the column's name`,
      'new.csv line 6, height_m "1.8": given twice, also as height_in; fill in one of them',
      `new.csv line 7, run_length_ft "80 ft": a unit is written in the cell; write the number only, the unit is in the column's name`,
      'new.csv line 8, run_length_ft "1,200": thousands are separated; write the digits only, as 1200',
      'new.csv line 10, end_a_return_ft "12": a length for an end of kind gate; leave it empty, or write return as the kind of end',
      'new.csv line 11, section "4 by 4": not a section; write a nominal size (4x4, 4x6, 6x4, 5x5, 6x6, 8x8), or as round 5 in, round 125 mm, or 89x89 mm',
      'new.csv line 12, treatment_class "redcedar-redwood-heartwood": redcedar-redwood-heartwood does not go with southern-pine; correct one of them (it goes with western-redcedar, redwood or unknown)',
      'new.csv line 13, incised "TRUE": neither yes nor no; write yes or no',
      'new.csv line 14, installed "2027-01-01": in the future (today is 2026-11-25); enter a fence once it stands',
      'new.csv line 15, installed "5/3/2014": not a date; looks rewritten by a spreadsheet, format the column as text and write 2014-05-03, 2014-05, 2014 or a range as 2008/2012',
      'new.csv line 16, height_in: missing; fill it in',
    ]);
    expect(await listRecords(register.db, 'fences')).toEqual(before);
  });

  test('refuses text in which bytes that are not UTF-8 were lost', async () => {
    const report = await importFiles(await temporaryRegister(), [
      { name: 'owners.csv', text: 'ref,name\na,Jos\uFFFD\n' },
    ]);
    expect(faultLines(report)).toEqual([
      'owners.csv line 2: holds bytes that are not UTF-8; save the file again as CSV UTF-8',
    ]);
  });
});
