import { displaySpeed, speedUnit } from '../../drawing/speed-text.ts';
import { writeCsv } from '../../register/csv/csv-text.ts';
import { guardText } from '../../register/csv/text-cell.ts';
import type { FenceRow } from '../../register/fence-list.ts';

/** Columns of the list as CSV; speeds are in the unit that the row names. */
const HEADER = [
  'fence',
  'site',
  'site_name',
  'owner',
  'owner_name',
  'second_owner_name',
  'standing',
  'ends_standing',
  'short_season',
  'speed_unit',
  'snap_speed',
  'lean_speed',
  'design_gust',
  'share_of_gust',
  'once_in_years',
  'installed_earliest',
  'installed_latest',
  'treatment_class',
] as const;

function cellsOf(row: FenceRow): readonly string[] {
  const { swept, units } = row;
  const speed = (speedMps: number | undefined): string =>
    speedMps === undefined ? '' : displaySpeed(speedMps, units).toFixed(1);
  return [
    guardText(row.ref),
    guardText(row.siteRef),
    guardText(row.siteName),
    guardText(row.ownerRef),
    guardText(row.ownerName),
    guardText(row.secondOwnerName ?? ''),
    swept?.standing ?? '',
    swept?.endsStanding ?? '',
    swept?.shortSeason ?? '',
    speedUnit(units),
    speed(swept?.snapMps),
    speed(swept?.leanMps),
    speed(swept?.designGustMps),
    swept ? (swept.snapMps / swept.designGustMps).toFixed(3) : '',
    swept?.onceInYears == null ? '' : String(swept.onceInYears),
    row.installedEarliest,
    row.installedLatest,
    row.treatmentClass,
  ];
}

/** Rows of the list as CSV text, chunk by chunk, the names of the columns first; no cell runs as a formula. */
export async function* fenceCsv(chunks: AsyncIterable<readonly FenceRow[]>): AsyncGenerator<string> {
  yield writeCsv([HEADER]);
  for await (const rows of chunks) yield writeCsv(rows.map(cellsOf));
}
