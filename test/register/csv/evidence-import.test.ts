import { beforeAll, describe, expect, test } from 'vitest';
import { exportCsv } from '../../../src/register/csv/export-csv.ts';
import { importCsv } from '../../../src/register/csv/import-csv.ts';
import { remarkText } from '../../../src/register/csv/import-report.ts';
import type { Register } from '../../../src/register/database.ts';
import { openRegister } from '../../../src/register/database.ts';
import { listRecords, readRecord } from '../../../src/register/record-store.ts';
import {
  EVIDENCE_FILES,
  faultLines,
  importFiles,
  NOW,
  rowCsv,
  SOUND_FILES,
  seenRegister,
  soundRegister,
  TODAY,
} from '../made-up-register.ts';

type Cells = Readonly<Record<string, string>>;

const STEEL_FENCE = `ref,site,owner,style,height_in,run_length_ft,post_spacing_ft,named_end,section,species,treatment_class,moment_capacity_lbft,installed
F-3,quill,oda,solid-board,72,40,8,house,round 3.5 in,unknown,does-not-rot,6200,2018
F-4,quill,oda,solid-board,72,40,8,house,round 5 in,southern-pine,round-pine-cca,,2010
`;
const INSPECTIONS = `ref,fence,day,inspector,method
steel,F-3,2026-01-05,Nell,awl-or-probe
round,F-4,2026-01-05,Nell,circumference-tape
awl,F-1,2026-01-05,Nell,awl-or-probe
caliper,F-1,2026-01-05,Nell,caliper
drill,F-1,2026-01-05,Nell,drill-resistance
tape,F-1,2026-01-05,Nell,circumference-tape
level,F-1,2026-01-05,Nell,level
eye,F-1,2026-01-05,Nell,eye
early,F-1,2019-06-01,Nell,awl-or-probe
before-added,F-2,2023-06-07,Nell,level
`;

const INSPECTION: Cells = { ref: 'n', fence: 'F-1', day: '2026-02-03', inspector: 'Nell', method: 'awl-or-probe' };
const READING: Cells = { inspection: 'awl', post: '2' };
const OUTCOME: Cells = {
  ref: 'n',
  storm: 'Squall',
  fence: 'F-1',
  day: '2026-02-03',
  gust_mph: '60',
  posts: '2',
  result: 'stood',
  reported_by: 'Nell',
};

let register: Register;
beforeAll(async () => {
  register = await openRegister(':memory:');
  const files = [
    { name: 'more-fences.csv', text: STEEL_FENCE },
    { name: 'inspections.csv', text: INSPECTIONS },
    { name: 'outcomes.csv', text: rowCsv({ ...OUTCOME, ref: 'known', storm: 'Gale', posts: '3 4' }) },
  ];
  expect(faultLines(await importFiles(register, [...SOUND_FILES, ...files]))).toEqual([]);
  return () => register.close();
});

const ALL_METHODS_TAKE = {
  broken: 'yes',
  collar_cracked: 'no',
  trimmer_cut_mm: '3',
  rail_connection: '0.4',
  lean_degrees: '3',
  closed_off: 'yes',
};

test.each([
  ['awl', { depth_mm: '6' }],
  ['awl', { sound_to_in: '0.1' }],
  ['awl', { soft_to_mm: '12' }],
  ['caliper', { residual_width_in: '3.1' }],
  ['tape', { residual_circumference_in: '12.9' }],
  ['round', { residual_circumference_mm: '390' }],
  ['drill', { depth_mm: '6', cavity_mm: '20' }],
  ['drill', { sound_to_mm: '9', cavity_mm: '0' }],
  ['drill', { soft_to_mm: '9' }],
  ['level', { lean_degrees: '0' }],
  ['steel', { lean_degrees: '4', collar_cracked: 'yes', rail_connection: '0.9' }],
  ...['awl', 'caliper', 'drill', 'tape', 'level', 'eye'].map((method) => [method, ALL_METHODS_TAKE] as const),
] as const)('an inspection by %s takes %o', async (inspection, cells) => {
  const text = rowCsv({ inspection, post: '2', ...cells });
  const report = await importFiles(register, [{ name: 'readings.csv', text }], { dryRun: true });
  expect(report.faults.map(remarkText)).toEqual([]);
  expect(report.warnings.map(remarkText)).toEqual([]);
  expect(report.records.readings).toHaveLength(1);
});

const by = (inspection: string, cells: Cells): Cells => ({ ...READING, inspection, ...cells });

const refusals: readonly (readonly [name: string, file: string, row: Cells, said: string])[] = [
  [
    'an inspection of an unknown fence',
    'inspections',
    { ...INSPECTION, fence: 'F-9x' },
    'line 2, fence "F-9x": no fence of that ref, neither in the register nor among the rows taken; did you mean F-1?',
  ],
  [
    'an inspection before the fence stood',
    'inspections',
    { ...INSPECTION, day: '2014-05-02' },
    'line 2, day "2014-05-02": before fence F-1 was installed (2014-05-03 at the earliest); correct one of them',
  ],
  [
    'an inspection to come',
    'inspections',
    { ...INSPECTION, day: '2026-11-26' },
    'line 2, day "2026-11-26": in the future (today is 2026-11-25); enter an inspection once it is made',
  ],
  [
    'a method that there is not',
    'inspections',
    { ...INSPECTION, method: 'hammer' },
    'line 2, method "hammer": not one of the words it can be; write one of awl-or-probe, caliper, drill-resistance, circumference-tape, level, eye',
  ],
  [
    'a ref that cannot be one',
    'inspections',
    { ...INSPECTION, ref: 'F 1' },
    'line 2, ref "F 1": such a ref is 1 to 120 letters (A to Z), digits, points, hyphens, underscores and slashes, and begins with a letter or digit',
  ],
  [
    'a reading of an unknown inspection',
    'readings',
    by('nowhere-to-be-found', { depth_mm: '4' }),
    'line 2, inspection "nowhere-to-be-found": no inspection of that ref, neither in the register nor among the rows taken; enter the inspection first, or in the same import',
  ],
  [
    'a reading that says nothing',
    'readings',
    by('awl', { broken: 'no' }),
    'line 2, post "2": nothing was found on this row; fill in what was, or leave the row out',
  ],
  [
    'a depth beside a width',
    'readings',
    by('awl', { depth_mm: '4', residual_width_mm: '81' }),
    'line 2, residual_width_mm "81": given beside depth_mm; a reading says one thing of the groundline: a depth lost, a width or girth left, sound or soft to a depth, or broken. Fill in one of them',
  ],
  [
    'a depth of a broken post',
    'readings',
    by('awl', { depth_in: '0.5', broken: 'yes' }),
    'line 2, broken "yes": given beside depth_in; a reading says one thing of the groundline: a depth lost, a width or girth left, sound or soft to a depth, or broken. Fill in one of them',
  ],
  [
    'a width that is a depth',
    'readings',
    by('awl', { depth_in: '3.1' }),
    'line 2, depth_in "3.1": deeper than half of the post as installed, 44.4 mm (1.75 in); did you mean the width left? that is a residual width',
  ],
  [
    'a width wider than the post',
    'readings',
    by('caliper', { residual_width_mm: '92' }),
    'line 2, residual_width_mm "92": wider than the post as installed, 88.9 mm (3.5 in); correct the number, or the section',
  ],
  [
    'a girth longer than round the post',
    'readings',
    by('round', { residual_circumference_mm: '409' }),
    'line 2, residual_circumference_mm "409": longer than round the post as installed, 399 mm (15.71 in); correct the number, or the section',
  ],
  [
    'a soft depth past the middle',
    'readings',
    by('awl', { soft_to_mm: '60' }),
    'line 2, soft_to_mm "60": deeper than half of the post as installed, 44.4 mm (1.75 in); measure from one face',
  ],
  [
    'a hollow that leaves nothing',
    'readings',
    by('drill', { depth_mm: '20', cavity_mm: '50' }),
    'line 2, cavity_mm "50": with 40 mm (1.57 in) of width lost it leaves nothing of the post, 88.9 mm (3.5 in) as installed; correct it, or write broken',
  ],
  [
    'a cut through the post',
    'readings',
    by('awl', { trimmer_cut_in: '4' }),
    'line 2, trimmer_cut_in "4": deeper than the post, 88.9 mm (3.5 in); give the depth of the cut',
  ],
  [
    'a width by an awl',
    'readings',
    by('awl', { residual_width_mm: '80' }),
    'line 2, residual_width_mm "80": a residual width, but an inspection by awl-or-probe gives depth lost, sound-to depth, soft-to depth; enter it with an inspection by caliper, or correct the column',
  ],
  [
    'a depth by a caliper',
    'readings',
    by('caliper', { depth_mm: '5' }),
    'line 2, depth_mm "5": a depth lost, but an inspection by caliper gives residual width; enter it with an inspection by awl-or-probe or drill-resistance, or correct the column',
  ],
  [
    'a depth by eye',
    'readings',
    by('eye', { depth_mm: '5' }),
    'line 2, depth_mm "5": a depth lost, but an inspection by eye gives no number at the groundline; enter it with an inspection by awl-or-probe or drill-resistance, or correct the column',
  ],
  [
    'a depth by a level',
    'readings',
    by('level', { sound_to_mm: '5' }),
    'line 2, sound_to_mm "5": a sound-to depth, but an inspection by level gives no number at the groundline; enter it with an inspection by awl-or-probe or drill-resistance, or correct the column',
  ],
  [
    'a hollow by an awl',
    'readings',
    by('awl', { cavity_in: '1' }),
    'line 2, cavity_in "1": a hollow is measured by drill-resistance, not by awl-or-probe; enter it with an inspection by drill-resistance',
  ],
  [
    'a post that the fence has not',
    'readings',
    by('awl', { post: '12', depth_mm: '5' }),
    'line 2, post "12": fence F-1 had posts 1 to 11 on 2026-01-05; correct the number, or the day',
  ],
  [
    'a post added on the day itself',
    'readings',
    by('before-added', { post: '7', lean_degrees: '5' }),
    'line 2, post "7": fence F-2 had posts 1 to 6 on 2023-06-07; correct the number, or the day',
  ],
  [
    'a post that was set later',
    'readings',
    by('early', { post: '3', depth_mm: '5' }),
    'line 2, post "3": post 3 of fence F-1 was set on 2020-04-01 at the earliest, after the inspection of 2019-06-01; correct one of them',
  ],
  [
    'rot of a steel post',
    'readings',
    by('steel', { depth_mm: '2' }),
    'line 2, depth_mm "2": post 2 of fence F-3 does not rot, so its groundline tells nothing; leave it empty and give its lean, collar or rail connection',
  ],
  [
    'a lean past the ground',
    'readings',
    by('level', { lean_degrees: '95' }),
    'line 2, lean_degrees "95": outside the allowed 0 to 90; correct it',
  ],
  [
    'an outcome of posts the fence has not',
    'outcomes',
    { ...OUTCOME, posts: '2 12' },
    'line 2, posts "2 12": fence F-1 had posts 1 to 11 on that day, and no post 12; correct the numbers',
  ],
  [
    'an outcome before the fence stood',
    'outcomes',
    { ...OUTCOME, day: '2013-01-01' },
    'line 2, day "2013-01-01": before fence F-1 was installed (2014-05-03 at the earliest); correct one of them',
  ],
  [
    'a storm to come',
    'outcomes',
    { ...OUTCOME, day: '2027-01-01' },
    'line 2, day "2027-01-01": in the future (today is 2026-11-25); enter what a storm did once it has passed',
  ],
  [
    'a post with two results in one storm',
    'outcomes',
    { ...OUTCOME, storm: 'Gale', posts: '4 5', result: 'leaned' },
    'line 2, posts "4 5": post 4: known has the result stood of storm "Gale" at fence F-1 already; keep one',
  ],
  [
    'two gusts of one storm',
    'outcomes',
    { ...OUTCOME, storm: 'Gale', gust_mph: '61' },
    'line 2, gust_mph "61": known has storm "Gale" at fence F-1 with another gust; outcomes of one storm at one fence share its wind',
  ],
  [
    'two spreads of one gust',
    'outcomes',
    { ...OUTCOME, storm: 'Gale', gust_spread_percent: '20' },
    'line 2, gust_spread_percent "20": known has storm "Gale" at fence F-1 with another gust; outcomes of one storm at one fence share its wind',
  ],
  [
    'two days of one storm',
    'outcomes',
    { ...OUTCOME, storm: 'Gale', day: '2026-02-04' },
    'line 2, day "2026-02-04": known has storm "Gale" at fence F-1 on 2026-02-03; correct the day, or give a storm of another day another name',
  ],
  [
    'a gust known too well',
    'outcomes',
    { ...OUTCOME, gust_spread_percent: '0' },
    'line 2, gust_spread_percent "0": outside the allowed 1 to 50 percent; 10 where the gust was measured near the fence',
  ],
];

describe('a row of evidence is refused with its place, its value, the reason and the way out', () => {
  test.each(refusals)('%s', async (_name, kind, row, said) => {
    const report = await importFiles(register, [{ name: `${kind}.csv`, text: rowCsv(row) }]);
    expect(faultLines(report)).toEqual([`${kind}.csv ${said}`]);
    expect(report.applied).toBe(false);
  });

  test('the plain rows that these faults were put into are taken', async () => {
    const sound = { inspections: INSPECTION, readings: by('awl', { depth_mm: '4' }), outcomes: OUTCOME };
    for (const [kind, row] of Object.entries(sound)) {
      const report = await importFiles(register, [{ name: `${kind}.csv`, text: rowCsv(row) }], { dryRun: true });
      expect(faultLines(report)).toEqual([]);
    }
  });

  test('two readings of one post in one inspection', async () => {
    const text = 'inspection,post,depth_mm\nawl,2,4\nawl,02,5\n';
    expect(faultLines(await importFiles(register, [{ name: 'readings.csv', text }]))).toEqual([
      'readings.csv line 3, post "02": the post is already on line 2 of readings.csv; keep one of the rows',
    ]);
  });

  test('two outcomes that both speak of all posts', async () => {
    const columns = 'ref,storm,fence,day,gust_mph,posts,result,reported_by';
    const text = `${columns}\na,Squall,F-1,2026-02-03,60,all,stood,Nell\nb,Squall,F-1,2026-02-03,60,,leaned,Nell\n`;
    expect(faultLines(await importFiles(register, [{ name: 'outcomes.csv', text }]))).toEqual([
      'outcomes.csv line 3, posts: a speaks of all posts of storm "Squall" at fence F-1 already; name the posts in one of them',
    ]);
  });
});

describe('what is doubtful is taken and said', () => {
  const doubts = async (rows: string, works = ''): Promise<readonly string[]> => {
    const other = await soundRegister();
    const inspections =
      'ref,fence,day,inspector,method\na,F-1,2024-01-05,Nell,awl-or-probe\nb,F-1,2026-01-05,Nell,caliper\n';
    const report = await importFiles(other, [
      { name: 'inspections.csv', text: inspections },
      { name: 'readings.csv', text: `inspection,post,depth_mm,residual_width_mm\n${rows}` },
      ...(works === ''
        ? []
        : [{ name: 'works.csv', text: `ref,fence,day,kind,posts,section,species,treatment_class\n${works}` }]),
    ]);
    expect(report.applied, faultLines(report).join('\n')).toBe(true);
    return report.warnings.map(remarkText);
  };

  test('less rot later than earlier, beyond what the errors of both methods allow', async () => {
    expect(await doubts('a,6,9,\nb,6,,81.9\n')).toEqual([
      'readings.csv line 3, residual_width_mm "81.9": post 6: 3.5 mm of depth on 2026-01-05 (inspection b), but 9.0 mm of depth on 2024-01-05 (inspection a), more than the errors of both allow, and no swap is recorded between; check both, or enter the swap',
    ]);
    expect(await doubts('a,6,7,\nb,6,,81.9\n')).toEqual([]);
  });

  test('unless the post was swapped in between', async () => {
    const swap = (day: string, posts: string): string =>
      `W-9,F-1,${day},post-swap,${posts},4x4,southern-pine,heavy-duty\n`;
    expect(await doubts('a,6,9,\nb,6,,81.9\n', swap('2025-01-05', '6 7'))).toEqual([]);
    expect(await doubts('a,6,9,\nb,6,,81.9\n', swap('2025-01-05', '7'))).toHaveLength(1);
    expect(await doubts('a,6,9,\nb,6,,81.9\n', swap('2023-01-05', '6'))).toHaveLength(1);
    expect(await doubts('a,6,9,\nb,6,,81.9\n', 'W-9,F-1,2025-01-05,liner,6,,,\n')).toHaveLength(1);
  });

  test('an old reading that is entered late, beside the later one that is stored', async () => {
    const other = await soundRegister();
    const enter = async (ref: string, day: string, columns: string, cells: string): Promise<readonly string[]> => {
      const report = await importFiles(other, [
        { name: 'inspections.csv', text: `ref,fence,day,inspector,method\n${ref},F-1,${day},Nell,awl-or-probe\n` },
        { name: 'readings.csv', text: `inspection,post,${columns}\n${ref},6,${cells}\n` },
      ]);
      expect(faultLines(report)).toEqual([]);
      return report.warnings.map(remarkText);
    };
    expect(await enter('new', '2026-01-05', 'sound_to_mm', '3')).toEqual([]);
    expect(await enter('old', '2024-01-05', 'depth_mm', '10')).toEqual([
      'readings.csv line 2, depth_mm "10": post 6: sound to 3.0 mm on 2026-01-05 (inspection new), but 10.0 mm of depth on 2024-01-05 (inspection old), more than the errors of both allow, and no swap is recorded between; check both, or enter the swap',
    ]);
    expect(await enter('middle', '2025-01-05', 'soft_to_mm', '5')).toEqual([]);
  });

  test('a width left that looks like a depth', async () => {
    expect(await doubts('b,6,,26\n')).toEqual([
      'readings.csv line 2, residual_width_mm "26": less than a third of the installed width, 88.9 mm (3.5 in); if it is the depth lost, it belongs under depth',
    ]);
  });
});

describe('a reading that leaves less than a quarter of the post', () => {
  const enter = async (method: string, column: string, cell: string, sure = '') => {
    const other = await soundRegister();
    const report = await importFiles(other, [
      { name: 'inspections.csv', text: `ref,fence,day,inspector,method\na,F-1,2024-01-05,Nell,${method}\n` },
      { name: 'readings.csv', text: `inspection,post,${column},sure\na,6,${cell},${sure}\n` },
    ]);
    return { other, report };
  };

  test('is refused until it is confirmed, with what else it may be', async () => {
    const { report } = await enter('caliper', 'residual_width_mm', '9');
    expect(faultLines(report)).toEqual([
      'readings.csv line 2, residual_width_mm "9": leaves 9 mm (0.35 in) of 88.9 mm (3.5 in) sound, less than a quarter, and such a post seldom still stands; if it is the depth lost, it belongs under depth; if it gave way, write broken; if it is so, confirm it: yes in the column sure, or --sure of inspect',
    ]);
    expect(report.faults[0]?.question).toBe(true);
  });

  test.each([
    ['caliper', 'residual_width_mm', '22', '22.3'],
    ['awl-or-probe', 'depth_mm', '33.4', '33.3'],
    ['awl-or-probe', 'soft_to_mm', '33.4', '33.3'],
    ['circumference-tape', 'residual_circumference_mm', '88', '90'],
  ])('by %s, %s: %s is refused and %s is not', async (method, column, refused, taken) => {
    expect((await enter(method, column, refused)).report.faults).toHaveLength(1);
    expect(faultLines((await enter(method, column, taken)).report)).toEqual([]);
  });

  test('is stored as confirmed, and an export of it can be imported again', async () => {
    const { other, report } = await enter('caliper', 'residual_width_mm', '9', 'yes');
    expect(faultLines(report)).toEqual([]);
    expect(report.warnings).toEqual([]);
    expect(await listRecords(other.db, 'readings')).toMatchObject([{ post: 6, groundlineMm: 9, sure: true }]);
    const exported = await exportCsv(other, 'readings', { units: 'us' });
    expect(exported).toContain('sure');
    const again = await importFiles(other, [{ name: 'readings.csv', text: exported }]);
    expect(faultLines(again)).toEqual([]);
    expect(again.counts.readings).toMatchObject({ unchanged: 1 });
  });
});

describe('changes that stored evidence would no longer fit are refused', () => {
  const faults = async (kind: string, row: Cells): Promise<readonly string[]> =>
    faultLines(await importFiles(await seenRegister(), [{ name: `${kind}.csv`, text: rowCsv(row) }]));

  test('an inspection whose method could not have given its readings', async () => {
    expect(await faults('inspections', { ...INSPECTION, ref: 'I-2', method: 'eye' })).toEqual([
      'inspections.csv line 2, method "eye": does not fit the reading of post 6 in the register: a residual width, but an inspection by eye gives no number at the groundline; enter it with an inspection by caliper, or correct the column',
    ]);
  });

  test('a fence of another date, length or section than was inspected', async () => {
    const other = await soundRegister();
    const files = [
      { name: 'more-fences.csv', text: STEEL_FENCE },
      {
        name: 'inspections.csv',
        text: rowCsv({ ...INSPECTION, fence: 'F-4', method: 'circumference-tape', day: '2020-01-05' }),
      },
      { name: 'readings.csv', text: 'inspection,post,residual_circumference_mm\nn,6,390\n' },
      { name: 'outcomes.csv', text: rowCsv({ ...OUTCOME, fence: 'F-4', day: '2021-02-03', posts: '5' }) },
    ];
    expect(faultLines(await importFiles(other, files))).toEqual([]);
    const changed = async (from: string, to: string): Promise<readonly string[]> => {
      const text = STEEL_FENCE.split('\n')
        .filter((line) => !line.startsWith('F-3'))
        .join('\n')
        .replace(from, to);
      return faultLines(await importFiles(other, [{ name: 'fences.csv', text }], { dryRun: true }));
    };
    expect(await changed('2010', '2021-02-04')).toEqual([
      'fences.csv line 2, installed "2021-02-04": does not fit inspection n in the register: before fence F-4 was installed (2021-02-04 at the earliest); correct one of them',
      'fences.csv line 2, run_length_ft "40": does not fit the reading of post 6 in inspection n in the register: post 6 of fence F-4 was set on 2021-02-04 at the earliest, after the inspection of 2020-01-05; correct one of them',
      'fences.csv line 2, installed "2021-02-04": does not fit storm outcome n in the register: before fence F-4 was installed (2021-02-04 at the earliest); correct one of them',
    ]);
    expect(await changed('72,40', '72,24')).toEqual([
      'fences.csv line 2, run_length_ft "24": does not fit the reading of post 6 in inspection n in the register: fence F-4 had posts 1 to 4 on 2020-01-05; correct the number, or the day',
      'fences.csv line 2, run_length_ft "24": does not fit storm outcome n in the register: fence F-4 had posts 1 to 4 on that day, and no post 5; correct the numbers',
    ]);
    expect(await changed('round 5 in', 'round 4 in')).toEqual([
      'fences.csv line 2, section "round 4 in": does not fit the reading of post 6 in inspection n in the register: longer than round the post as installed, 319.2 mm (12.57 in); correct the number, or the section',
    ]);
    expect(await changed('72,40', '71,40')).toEqual([]);
  });

  test('works that leave fewer posts than were inspected', async () => {
    const register_ = await seenRegister();
    const text =
      'ref,fence,day,kind,section,species,treatment_class,post_spacing_ft\nW-8,F-1,2022-06-01,rebuild,4x4,southern-pine,heavy-duty,16\n';
    const lines = faultLines(await importFiles(register_, [{ name: 'works.csv', text }]));
    expect(lines).toContain(
      'works.csv line 2, kind "rebuild": does not fit the reading of post 10 in inspection F-1/2024-05-02/awl-or-probe in the register: fence F-1 had posts 1 to 6 on 2024-05-02; correct the number, or the day',
    );
    expect(lines).toContain(
      'works.csv line 2, kind "rebuild": does not fit storm outcome O-1 in the register: fence F-1 had posts 1 to 6 on that day, and no post 9; correct the numbers',
    );
    expect(await readRecord(register_.db, 'works', 'W-8')).toBeNull();
  });

  test('a post that was set after it was read', async () => {
    expect(await faults('posts', { fence: 'F-1', post: '2', installed: '2025-02' })).toEqual([
      'posts.csv line 2, post "2": does not fit the reading of post 2 in inspection F-1/2024-05-02/awl-or-probe in the register: post 2 of fence F-1 was set on 2025-02-01 at the earliest, after the inspection of 2024-05-02; correct one of them',
    ]);
  });
});

test('a reading is changed by its inspection and post, and a column that is not there leaves it as it was', async () => {
  const other = await seenRegister();
  const text = 'inspection,post,depth_mm\nI-1,8,8.1\n';
  const report = await importFiles(other, [{ name: 'readings.csv', text }]);
  expect(report.changes).toEqual([
    { kind: 'readings', ref: 'I-1 post 8', change: 'changed', columns: ['groundline_mm'] },
  ]);
  expect((await listRecords(other.db, 'readings')).find(({ post }) => post === 8)).toMatchObject({
    groundlineKind: 'depth',
    groundlineMm: 8.1,
    cavityMm: 25.4,
  });
});

test('rows that follow a refused one are left out with one message a file and parent', async () => {
  const report = await importFiles(await soundRegister(), [
    {
      name: 'inspections.csv',
      text: 'ref,fence,day,inspector,method\nA,F-1,2013-05-02,Nell,awl-or-probe\nB,F-9,2024-05-02,Nell,level\n',
    },
    {
      name: 'readings.csv',
      text: 'inspection,post,depth_mm,lean_degrees\nA,1,3,\nA,2,4,\nB,1,,3\nA,3,5,\n',
    },
  ]);
  expect(faultLines(report)).toEqual([
    'inspections.csv line 2, day "2013-05-02": before fence F-1 was installed (2014-05-03 at the earliest); correct one of them',
    'inspections.csv line 3, fence "F-9": no fence of that ref, neither in the register nor among the rows taken; did you mean F-1?',
    'readings.csv line 2, inspection "A": 3 readings of inspection A are left out because line 2 of inspections.csv was refused; correct that row',
    'readings.csv line 4, inspection "B": 1 reading of inspection B is left out because line 3 of inspections.csv was refused; correct that row',
  ]);
  expect(report.counts.readings.refused).toBe(4);
  const rejected = report.rejected.find(({ name }) => name === 'readings.csv')?.text ?? '';
  expect(rejected.match(/are left out because/g)).toHaveLength(3);
});

test('good rows are kept without those of a refused inspection', async () => {
  const other = await soundRegister();
  const files = EVIDENCE_FILES.map((file) => ({
    ...file,
    text: file.text.replace('I-1,F-1,2026-05-02', 'I-1,F-1,2013-05-02'),
  }));
  const report = await importFiles(other, files, { acceptValid: true, today: TODAY, now: NOW });
  expect(report.counts.inspections).toMatchObject({ created: 3, refused: 1 });
  expect(report.counts.readings).toMatchObject({ created: 5, refused: 2 });
  expect(report.counts.outcomes).toMatchObject({ created: 3, refused: 0 });
  expect(report.rejected.map(({ name }) => name).toSorted()).toEqual(['inspections.csv', 'readings.csv']);
});

test.each([
  { depth_mm: '6' },
  { residual_width_in: '3.1' },
  { depth_mm: '400' },
  { depth_mm: '40' },
  { post: '99', depth_mm: '6' },
  {},
])('a reading of %j is judged alike where only its fence is read', async (cells) => {
  const files = [
    { name: 'inspections.csv', text: rowCsv(INSPECTION) },
    { name: 'readings.csv', text: rowCsv({ ...READING, inspection: 'n', ...cells }) },
  ];
  const options = { acceptValid: false, dryRun: true, today: TODAY, now: NOW, questions: 'refuse' } as const;
  const whole = await importCsv(register, files, options);
  const narrow = await importCsv(register, files, { ...options, evidenceOf: ['F-1'] });
  expect(narrow).toEqual(whole);
  expect(whole.faults.length > 0).toBe(!('depth_mm' in cells && cells.depth_mm === '6' && !('post' in cells)));
});
