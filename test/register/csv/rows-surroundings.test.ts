import { beforeAll, describe, expect, it } from 'vitest';
import { fencesCsv, surroundings } from '../../../bench/made-up-fences.ts';
import { importCsv } from '../../../src/register/csv/import-csv.ts';
import { openImportFile } from '../../../src/register/csv/import-file.ts';
import type { ImportReport } from '../../../src/register/csv/import-report.ts';
import { surroundingsOfRows } from '../../../src/register/csv/rows-surroundings.ts';
import { openRegister, type Register } from '../../../src/register/database.ts';
import {
  EVIDENCE_FILES,
  faultLines,
  importFiles,
  type NamedText,
  SEASON_FILES,
  SOUND_FILES,
} from '../made-up-register.ts';

/** More fences than a register has that is read whole. */
const MANY = 2_100;
/** More rows than are judged by what lies around them; as they are stored, so that they change nothing. */
const UNCHANGED = { name: 'unchanged-fences.csv', text: fencesCsv(250) };

/** Files of a few rows, sound and not, of every kind that is judged by others. */
const FEW_ROWS: readonly (readonly [string, readonly NamedText[]])[] = [
  [
    'an owner changed and one made',
    [
      {
        name: 'owners.csv',
        text: 'ref,name,kind,channel,email\noda,Oda Dale,person,mail,o@example.org\nnew,New,person,mail,n@example.org\n',
      },
    ],
  ],
  [
    'a fence that its posts no longer fit',
    [{ name: 'fences.csv', text: SOUND_FILES[2].text.replace('72,80,8,house', '72,16,8,house') }],
  ],
  [
    'a fence that its evidence no longer fits',
    [{ name: 'fences.csv', text: SOUND_FILES[2].text.replace('2014-05-03', '2025-12-01') }],
  ],
  [
    'a fence of an unknown owner and site',
    [
      {
        name: 'fences.csv',
        text: SOUND_FILES[2].text.replaceAll(',oda,', ',nobody,').replace('F-2,quill', 'F-2,nowhere'),
      },
    ],
  ],
  [
    'posts, one shared with a fence that ends elsewhere',
    [{ name: 'posts.csv', text: 'fence,post,shared_with,shared_end\nF-1,1,F-2,B\nF-2,1,B-0000003,A\nF-1,40,,\n' }],
  ],
  [
    'works moved to another fence',
    [{ name: 'works.csv', text: 'ref,fence,day,kind,posts\nW-1,F-2,2024-03-01,groundline-treatment,all\n' }],
  ],
  [
    'works before the fence, and of an unknown one',
    [
      {
        name: 'works.csv',
        text: 'ref,fence,day,kind,posts\nW-8,F-1,2001-03-01,liner,all\nW-9,F-77,2024-03-01,liner,all\n',
      },
    ],
  ],
  [
    'an inspection moved, with the readings that it had',
    [{ name: 'inspections.csv', text: 'ref,fence,day,inspector,method\nI-2,F-2,2026-05-02,Nell Fox,caliper\n' }],
  ],
  [
    'readings of stored inspections, smaller than before, and of none',
    [{ name: 'readings.csv', text: 'inspection,post,depth_in,broken\nI-1,8,0.1,\nI-2,9,,yes\nno-such,2,0.1,\n' }],
  ],
  [
    'an inspection with its readings at a post that broke',
    [
      { name: 'inspections.csv', text: 'ref,fence,day,inspector,method\nI-9,F-2,2026-06-02,Nell Fox,awl-or-probe\n' },
      { name: 'readings.csv', text: 'inspection,post,depth_in,broken\nI-9,2,0.1,\nI-9,3,,yes\n' },
    ],
  ],
  [
    'outcomes that are answered otherwise already',
    [
      {
        name: 'outcomes.csv',
        text: 'ref,storm,fence,day,gust_mph,posts,result,reported_by\nO-9,March gale,F-1,2025-03-14,71,9,stood,Oda\nO-3,Ice storm,F-1,2024-01-05,70,2,stood,Oda\n',
      },
    ],
  ],
  [
    'a site of an unknown zone, and one changed',
    [
      {
        name: 'sites.csv',
        text: SOUND_FILES[3].text
          .replace('quill,Quillback Commons', 'quill,Quillback Green')
          .concat(
            SOUND_FILES[3].text.split('\n')[1]?.replace('quill,', 'reed,').replace(',gulf,', ',tundra,') ?? '',
            '\n',
          ),
      },
    ],
  ],
  ['crews and days off', SEASON_FILES],
];

const said = (report: ImportReport, leftOut: string) => ({
  faults: faultLines(report),
  warnings: report.warnings,
  changes: report.changes,
  files: report.files.filter(({ name }) => name !== leftOut),
  replaced: report.replaced,
});

describe('a few rows for a large register', { timeout: 120_000 }, () => {
  let register: Register;
  beforeAll(async () => {
    register = await openRegister(':memory:');
    const options = { acceptValid: false, dryRun: false, today: '2026-11-25', now: '2026-11-25T12:00:00Z' } as const;
    await importCsv(register, surroundings(), options);
    await importCsv(register, [{ name: 'fences.csv', text: fencesCsv(MANY) }], options);
    expect(faultLines(await importFiles(register, SOUND_FILES))).toEqual([]);
    expect(faultLines(await importFiles(register, EVIDENCE_FILES))).toEqual([]);
  }, 120_000);

  it.each(FEW_ROWS)('are judged by what lies around them as by the whole: %s', async (_what, files) => {
    const opened = files.map(openImportFile).flatMap((file) => ('kind' in file ? [file] : []));
    expect(await surroundingsOfRows(register.db, opened)).not.toBeNull();
    const few = await importFiles(register, files, { dryRun: true, acceptValid: true });
    const whole = await importFiles(register, [...files, UNCHANGED], { dryRun: true, acceptValid: true });
    expect(said(few, UNCHANGED.name)).toEqual(said(whole, UNCHANGED.name));
    expect(few.changes.length + few.faults.length).toBeGreaterThan(0);
  });
});
