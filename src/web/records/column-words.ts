import type { CsvField } from '../../register/csv/csv-field.ts';
import { RECORD_FIELDS } from '../../register/csv/record-columns.ts';
import type { RecordKind } from '../../register/record-store.ts';

/** Units as they end the name of a column, and as people write them. The longer ends stand first. */
const UNITS: readonly (readonly [suffix: string, label: string])[] = [
  ['_kg_m3', 'kg/m³'],
  ['_percent', '%'],
  ['_lbft', 'lbf ft'],
  ['_mph', 'mph'],
  ['_mps', 'm/s'],
  ['_kmh', 'km/h'],
  ['_pcf', 'pcf'],
  ['_kt', 'knots'],
  ['_nm', 'N m'],
  ['_mm', 'mm'],
  ['_in', 'in'],
  ['_ft', 'ft'],
  ['_m', 'm'],
  ['_c', '°C'],
  ['_f', '°F'],
];

const fieldOf = (kind: RecordKind, column: string): CsvField | undefined =>
  RECORD_FIELDS[kind].find(({ columns }) => columns.includes(column));

const words = (name: string): string => {
  const text = name.replaceAll('_', ' ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
};

/** A column as a form names it: `postal_address` is `Postal address`, `height_in` is `Height [in]`. */
export function columnLabel(kind: RecordKind, column: string): string {
  const field = fieldOf(kind, column);
  const measured = column.endsWith('_percent') || (field !== undefined && field.columns.length > 1);
  const unit = measured ? UNITS.find(([suffix]) => column.endsWith(suffix)) : undefined;
  return unit ? `${words(column.slice(0, -unit[0].length))} [${unit[1]}]` : words(column);
}
