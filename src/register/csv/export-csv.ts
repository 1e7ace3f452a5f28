import type { Register } from '../database.ts';
import type { FenceRecord } from '../fence-record.ts';
import { listRecords, type RecordKind, type RecordOf, type RegisterDb } from '../record-store.ts';
import type { SiteRecord } from '../site-record.ts';
import type { Draft, ExportUnits } from './csv-field.ts';
import { writeCsv } from './csv-text.ts';
import { recordCells } from './record-cells.ts';
import { RECORD_FIELDS } from './record-columns.ts';

/** In which units to export: one for all rows, or those of each row's site. */
export interface ExportOptions {
  readonly units: ExportUnits | 'site';
}

/** Kinds of which each record belongs to a site, whose units it is exported in. */
const AT_SITES: ReadonlySet<RecordKind> = new Set([
  'sites',
  'fences',
  'posts',
  'works',
  'inspections',
  'readings',
  'outcomes',
]);

/** In which units each record of a kind is written: those of its site, metric where it has none. */
export async function unitsOfRow(db: RegisterDb, kind: RecordKind): Promise<(record: Draft) => ExportUnits> {
  if (!AT_SITES.has(kind)) return () => 'metric';
  if (kind === 'sites') return (record) => (record as unknown as SiteRecord).units;
  const ofSite = new Map((await listRecords(db, 'sites')).map((site) => [site.ref, site.units]));
  const siteUnits = (fence: FenceRecord | undefined): ExportUnits => ofSite.get(fence?.siteRef ?? '') ?? 'metric';
  if (kind === 'fences') return (record) => siteUnits(record as unknown as FenceRecord);
  const fences = new Map((await listRecords(db, 'fences')).map((fence) => [fence.ref, fence]));
  if (kind !== 'readings') return (record) => siteUnits(fences.get(String(record.fenceRef)));
  const inspections = new Map((await listRecords(db, 'inspections')).map(({ ref, fenceRef }) => [ref, fenceRef]));
  return (record) => siteUnits(fences.get(inspections.get(String(record.inspectionRef)) ?? ''));
}

/**
 * All records of a kind as CSV, ordered by ref, for `importCsv` to read back exactly: an import of it changes nothing, and
 * an export of what was imported from it has the same bytes. A value that the wanted unit cannot say exactly in 12
 * digits stands in the column of its SI unit. Texts that a spreadsheet would run as formulas begin with an apostrophe.
 */
export async function exportCsv(
  register: Register,
  kind: RecordKind,
  options: ExportOptions = { units: 'site' },
): Promise<string> {
  const { db } = register;
  const records: readonly RecordOf[RecordKind][] = await listRecords(db, kind);
  const { units } = options;
  const unitsOf = units === 'site' ? await unitsOfRow(db, kind) : () => units;
  const fields = RECORD_FIELDS[kind];
  const rows = records.map((record) => recordCells(kind, record, unitsOf(record as unknown as Draft)));
  const header = fields.flatMap((field) => {
    const used = field.columns.filter((column) => rows.some((row) => (row[column] ?? '') !== ''));
    return used.length > 0 ? used : [field.column(units === 'us' ? 'us' : 'metric')];
  });
  return writeCsv([header, ...rows.map((row) => header.map((column) => row[column] ?? ''))]);
}

/** The header of a kind's file alone, to be filled in: the columns that an export would write in these units. */
export const emptyCsv = (kind: RecordKind, units: ExportUnits): string =>
  writeCsv([RECORD_FIELDS[kind].map((field) => field.column(units))]);
