import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SPECIES_KEYS } from '../../../src/capacity/wood-strength.ts';
import { exportCsv } from '../../../src/register/csv/export-csv.ts';
import type { Register } from '../../../src/register/database.ts';
import { openRegister } from '../../../src/register/database.ts';
import type { FenceRecord } from '../../../src/register/fence-record.ts';
import type { OwnerRecord } from '../../../src/register/owner-record.ts';
import { listRecords, RECORD_KINDS, readRecord, upsertRecords } from '../../../src/register/record-store.ts';
import { RANGES, type ValueRange } from '../../../src/register/value-ranges.ts';
import { textSchema } from '../../../src/register/value-schemas.ts';
import {
  faultLines,
  importFiles,
  type NamedText,
  NOW,
  seenRegister,
  soundRegister,
  temporaryRegister,
} from '../made-up-register.ts';

type Units = 'us' | 'metric' | 'site';

async function exportAll(register: Register, units: Units): Promise<readonly NamedText[]> {
  const files: NamedText[] = [];
  for (const kind of RECORD_KINDS)
    files.push({ name: `${kind}.csv`, text: await exportCsv(register, kind, { units }) });
  return files;
}

describe.each(['us', 'metric', 'site'] as const)('an export in %s units', (units) => {
  test('imports into an empty register and exports from there byte for byte', async () => {
    const files = await exportAll(await seenRegister(), units);
    const other = await temporaryRegister();
    expect(faultLines(await importFiles(other, files))).toEqual([]);
    expect(await exportAll(other, units)).toEqual(files);
  });

  test('changes nothing when it is imported where it came from', async () => {
    const register = await seenRegister();
    const report = await importFiles(register, await exportAll(register, units));
    expect(report.changes).toEqual([]);
    expect(Object.values(report.counts).map(({ unchanged }) => unchanged)).toEqual([
      2, 1, 6, 1, 2, 2, 4, 4, 7, 3, 0, 0, 0, 0, 0,
    ]);
  });
});

test('an export in US units says what was typed, and SI where inches cannot', async () => {
  const register = await soundRegister();
  const fence = await readRecord(register.db, 'fences', 'F-1');
  if (!fence) throw new Error('F-1 is missing');
  await upsertRecords(register.db, 'fences', [{ ...fence, ref: 'F-3', heightM: 1.8000000000000003 }], NOW);
  const text = await exportCsv(register, 'fences', { units: 'us' });
  const [header, first, , third] = text.split('\n').map((line) => line.split(','));
  const cell = (row: readonly string[] | undefined, column: string): string | undefined =>
    row?.[header?.indexOf(column) ?? -1];
  expect([cell(first, 'height_in'), cell(first, 'height_m')]).toEqual(['72', '']);
  expect([cell(third, 'height_in'), cell(third, 'height_m')]).toEqual(['', '1.8000000000000003']);
  expect(cell(first, 'section')).toBe('4x4');
  expect(cell(first, 'retention_pcf')).toBe('0.15');
});

test('a text that a spreadsheet would run begins with an apostrophe in the file and not in the register', async () => {
  const register = await soundRegister();
  const owner = await readRecord(register.db, 'owners', 'oda');
  if (!owner) throw new Error('oda is missing');
  await upsertRecords(register.db, 'owners', [{ ...owner, name: '=1+1' }], NOW);
  const text = await exportCsv(register, 'owners');
  expect(text).toContain("\noda,'=1+1,person");
  expect((await importFiles(register, [{ name: 'owners.csv', text }])).changes).toEqual([]);
});

const nastyText = (longest: number): fc.Arbitrary<string> =>
  fc
    .oneof(
      fc.string({ unit: 'grapheme', maxLength: longest / 8 }),
      fc
        .array(
          fc.constantFrom(',', '"', "'", '=', '+', '-', '@', '\n', '\r\n', ';', '😀', '#', '\t', ' ', 'a', '\\', 'é'),
          {
            maxLength: 12,
          },
        )
        .map((parts) => parts.join('')),
    )
    .filter((text) => textSchema(longest).safeParse(text).success)
    .map((text) => textSchema(longest).parse(text));

const within = ([min, max]: ValueRange): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true }).map((value) => (value === 0 ? 0 : value));
const orNull = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(arbitrary, { nil: null });

const fenceChanges = fc.record({
  heightM: within(RANGES.heightM),
  runLengthM: within([6, 1000]),
  postSpacingM: within(RANGES.postSpacingM),
  bottomGapM: within([0, 0.1]),
  endAReturnM: within(RANGES.returnLengthM),
  sectionWidthMm: within(RANGES.sectionMm),
  sectionDepthMm: within(RANGES.sectionMm),
  retentionKgM3: orNull(within(RANGES.retentionKgM3)),
  embedmentM: orNull(within(RANGES.embedmentM)),
  footingDiameterM: within([0.6, 1.2]),
  species: fc.constantFrom(...SPECIES_KEYS),
  trimmerGuards: fc.constantFrom('no', 'unknown'),
  yearlyTrimmerCutMm: within(RANGES.yearlyTrimmerCutMm),
  namedEnd: nastyText(100).filter((text) => text !== ''),
  accessNote: nastyText(2000),
  note: nastyText(4000),
});

test('any records, however nasty their texts and numbers, survive export and import exactly', async () => {
  const base = await soundRegister();
  const fence = await readRecord(base.db, 'fences', 'F-1');
  const owner = await readRecord(base.db, 'owners', 'hoa');
  if (!fence || !owner) throw new Error('the sound register is not sound');
  const files = (await exportAll(base, 'metric')).filter(
    ({ name }) => !/^(fences|posts|works|inspections|readings|outcomes)/.test(name),
  );
  await fc.assert(
    fc.asyncProperty(
      fenceChanges,
      nastyText(200).filter((text) => text !== ''),
      fc.constantFrom<Units>('us', 'metric', 'site'),
      async (changes, name, units) => {
        const source = await openRegister(':memory:');
        const target = await openRegister(':memory:');
        try {
          await importFiles(source, files);
          const changedFence = { ...fence, ...changes } as FenceRecord;
          const changedOwner: OwnerRecord = { ...owner, name, postalAddress: name };
          await upsertRecords(source.db, 'owners', [changedOwner], NOW);
          await upsertRecords(source.db, 'fences', [changedFence], NOW);
          const exported = await exportAll(source, units);
          expect(faultLines(await importFiles(target, exported))).toEqual([]);
          expect(await listRecords(target.db, 'fences')).toEqual([changedFence]);
          expect(await readRecord(target.db, 'owners', 'hoa')).toEqual(changedOwner);
          expect(await exportAll(target, units)).toEqual(exported);
          expect((await importFiles(source, exported)).changes).toEqual([]);
        } finally {
          await source.close();
          await target.close();
        }
      },
    ),
    { numRuns: 60 },
  );
});
