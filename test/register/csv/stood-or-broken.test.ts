import { describe, expect, test } from 'vitest';
import { remarkText } from '../../../src/register/csv/import-report.ts';
import type { Register } from '../../../src/register/database.ts';
import { listRecords } from '../../../src/register/record-store.ts';
import { importFiles, soundRegister } from '../made-up-register.ts';

const INSPECTIONS = 'ref,fence,day,inspector,method';
const OUTCOMES = 'ref,storm,fence,day,gust_mph,posts,result,reported_by';

const inspection = (ref: string, day: string, method = 'eye') => ({
  name: 'inspections.csv',
  text: `${INSPECTIONS}\n${ref},F-1,${day},Nell,${method}\n`,
});
const broken = (ref: string, posts: readonly number[]) => ({
  name: 'readings.csv',
  text: `inspection,post,broken\n${posts.map((post) => `${ref},${post},yes\n`).join('')}`,
});
const storms = (...rows: readonly (readonly [ref: string, day: string, posts: string, result: string])[]) => ({
  name: 'outcomes.csv',
  text: `${OUTCOMES}\n${rows.map(([ref, day, posts, result]) => `${ref},gale of ${day},F-1,${day},60,${posts},${result},Nell\n`).join('')}`,
});
const works = (day: string, kind: string, posts: string) => ({
  name: 'works.csv',
  text: `ref,fence,day,kind,posts,section,species,treatment_class,moment_capacity_lbft\nW-9,F-1,${day},${kind},${posts},${kind === 'post-swap' ? '4x4,southern-pine,heavy-duty,' : ',,,3000'}\n`,
});

async function remarks(
  register: Register,
  files: Parameters<typeof importFiles>[1],
  options: Parameters<typeof importFiles>[2] = {},
): Promise<{ readonly faults: readonly string[]; readonly warnings: readonly string[] }> {
  const report = await importFiles(register, files, options);
  return { faults: report.faults.map(remarkText), warnings: report.warnings.map(remarkText) };
}

const CANNOT =
  'before this storm, and no swap is recorded between: a broken post cannot have stood; leave it out of the posts that stood, enter the swap as works, or correct what says that it was broken';
const MAY =
  'and nothing is recorded of it in between: it may well have broken in this storm; name it as snapped, leave it out where nobody looked, or keep it where it was seen standing';

describe('a post that was broken before a storm', () => {
  test('cannot have stood in it: all of the posts is refused', async () => {
    const register = await soundRegister();
    const files = [inspection('I', '2024-05-02'), broken('I', [6, 7]), storms(['S', '2025-03-14', 'all', 'stood'])];
    expect(await remarks(register, files)).toEqual({
      faults: [
        `outcomes.csv line 2, posts "all": post 6 was found broken at inspection I of 2024-05-02, ${CANNOT}`,
        `outcomes.csv line 2, posts "all": post 7 was found broken at inspection I of 2024-05-02, ${CANNOT}`,
      ],
      warnings: [],
    });
    expect(await listRecords(register.db, 'outcomes')).toEqual([]);
  });

  test('may be left out of the posts, also by ranges', async () => {
    const register = await soundRegister();
    const files = [inspection('I', '2024-05-02'), broken('I', [6]), storms(['S', '2025-03-14', '1-5 7-11', 'stood'])];
    expect(await remarks(register, files)).toEqual({ faults: [], warnings: [] });
    expect(await listRecords(register.db, 'outcomes')).toMatchObject([{ posts: [1, 2, 3, 4, 5, 7, 8, 9, 10, 11] }]);
  });

  test('cannot have stood either where an earlier storm snapped it', async () => {
    const register = await soundRegister();
    await importFiles(register, [storms(['A', '2024-05-02', '6', 'snapped'])]);
    expect((await remarks(register, [storms(['B', '2025-03-14', 'all', 'stood'])])).faults).toEqual([
      `outcomes.csv line 2, posts "all": post 6 was snapped by A on 2024-05-02, ${CANNOT}`,
    ]);
  });

  test.each([
    ['swapped in between', works('2024-08-01', 'post-swap', '6'), true],
    ['swapped on the day it was found', works('2024-05-02', 'post-swap', '6'), true],
    ['sleeved in between', works('2024-08-01', 'steel-sleeve', '6'), true],
    ['swapped after the storm', works('2025-03-14', 'post-swap', '6'), false],
    ['swapped beside it', works('2024-08-01', 'post-swap', '7'), false],
  ])('and %s', async (_name, done, fine) => {
    const files = [inspection('I', '2024-05-02'), broken('I', [6]), storms(['S', '2025-03-14', '6', 'stood']), done];
    expect((await remarks(await soundRegister(), files)).faults).toHaveLength(fine ? 0 : 1);
  });
});

describe('a post that is found broken after a storm', () => {
  const files = [inspection('I', '2025-05-02'), broken('I', [6, 8]), storms(['S', '2025-03-14', 'all', 'stood'])];

  test('may have broken in it: a warning a post', async () => {
    expect(await remarks(await soundRegister(), files)).toEqual({
      faults: [],
      warnings: [
        `outcomes.csv line 2, posts "all": post 6 was found broken at inspection I of 2025-05-02, ${MAY}`,
        `outcomes.csv line 2, posts "all": post 8 was found broken at inspection I of 2025-05-02, ${MAY}`,
      ],
    });
  });

  test('is refused where questions are to be answered first', async () => {
    const register = await soundRegister();
    const report = await importFiles(register, files, { questions: 'refuse' });
    expect(report.faults.map(({ question }) => question)).toEqual([true, true]);
    expect(await listRecords(register.db, 'outcomes')).toEqual([]);
  });

  test('is no question to a storm that another one came after', async () => {
    const later = [
      ...files.slice(0, 2),
      storms(['S', '2025-03-14', 'all', 'stood'], ['T', '2025-04-14', '6 8', 'stood']),
    ];
    expect((await remarks(await soundRegister(), later)).warnings).toEqual([
      `outcomes.csv line 3, posts "6 8": post 6 was found broken at inspection I of 2025-05-02, ${MAY}`,
      `outcomes.csv line 3, posts "6 8": post 8 was found broken at inspection I of 2025-05-02, ${MAY}`,
    ]);
  });

  test('is none where it was found whole in between', async () => {
    const register = await soundRegister();
    await importFiles(register, [
      inspection('W', '2025-04-01', 'awl-or-probe'),
      { name: 'readings.csv', text: 'inspection,post,sound_to_mm\nW,6,3\n' },
    ]);
    expect((await remarks(register, files)).warnings).toEqual([expect.stringContaining('post 8 was found broken')]);
  });
});

describe('an inspection that finds a post broken', () => {
  test.each([
    ['2025-02-01', 'says that it stood later; check both'],
    ['2025-05-02', 'says that it stood before, and nothing is recorded of it in between; check both'],
  ])('on %s is warned of the stored storm that says it stood', async (day, said) => {
    const register = await soundRegister();
    await importFiles(register, [storms(['S', '2025-03-14', 'all', 'stood'])]);
    expect(await remarks(register, [inspection('I', day), broken('I', [6])])).toEqual({
      faults: [],
      warnings: [
        `readings.csv line 2, broken "yes": post 6 is found broken, but storm outcome S (storm "gale of 2025-03-14", 2025-03-14) ${said}`,
      ],
    });
  });

  test('is not, where a storm in between snapped it', async () => {
    const register = await soundRegister();
    await importFiles(register, [storms(['S', '2025-03-14', 'all', 'stood'], ['T', '2025-04-14', '6', 'snapped'])]);
    expect((await remarks(register, [inspection('I', '2025-05-02'), broken('I', [6])])).warnings).toEqual([]);
  });
});

test('a storm that is entered late and snapped a post that stood in a later one is warned of', async () => {
  const register = await soundRegister();
  await importFiles(register, [storms(['S', '2025-03-14', 'all', 'stood'])]);
  expect((await remarks(register, [storms(['R', '2024-03-14', '6', 'snapped'])])).warnings).toEqual([
    'outcomes.csv line 2, posts "6": post 6: storm outcome S (storm "gale of 2025-03-14", 2025-03-14) says that it stood after that; check both',
  ]);
});
