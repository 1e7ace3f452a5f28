import { postsFromText, postsText } from './post-numbers.ts';
import type { StormOutcomeRecord } from './storm-outcome-record.ts';
import { WORKS_DETAIL_KEYS, type WorksRecord, worksSchema } from './works-record.ts';

/** A row as SQLite holds it: column names and plain values. */
export type FlatRow = Readonly<Record<string, string | number | null>>;

const columnOfKey = new Map<string, string>();
const keyOfColumn = new Map<string, string>();

function columnName(key: string): string {
  const known = columnOfKey.get(key);
  if (known !== undefined) return known;
  const column = key.replace(/[A-Z]/g, (capital) => `_${capital.toLowerCase()}`);
  columnOfKey.set(key, column);
  return column;
}

function keyName(column: string): string {
  const known = keyOfColumn.get(column);
  if (known !== undefined) return known;
  const key = column.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase());
  keyOfColumn.set(column, key);
  return key;
}

/** A flat record as a row: `heightM` becomes `height_m`, booleans 0 and 1. */
export const rowFromRecord = (record: object): FlatRow =>
  Object.fromEntries(
    Object.entries(record).map(([key, value]: [string, unknown]) => [
      columnName(key),
      (typeof value === 'boolean' ? Number(value) : value) as string | number | null,
    ]),
  );

/** The record that a row was made of; stamps left out. */
export function recordFromRow(row: FlatRow, booleans: readonly string[]): Record<string, unknown> {
  const record: Record<string, unknown> = {};
  for (const [column, value] of Object.entries(row)) {
    if (column === 'created_at' || column === 'updated_at') continue;
    const key = keyName(column);
    record[key] = booleans.includes(key) && value !== null ? value === 1 : value;
  }
  return record;
}

/** Works as a row: what the kind needs to say goes into `details`, in the order of the schema. */
export function worksToRow(works: WorksRecord): FlatRow {
  const details = Object.fromEntries(
    WORKS_DETAIL_KEYS.flatMap((key) => (works[key] === null ? [] : [[key, works[key]]])),
  );
  return {
    ref: works.ref,
    fence_ref: works.fenceRef,
    day: works.day,
    kind: works.kind,
    posts: postsText(works.posts),
    details: JSON.stringify(details),
  };
}

/** The works of a row. Throws (zod) where `details` are not what the kind needs. */
export function worksFromRow(row: FlatRow): WorksRecord {
  const details = JSON.parse(String(row.details)) as Record<string, unknown>;
  const absent = Object.fromEntries(WORKS_DETAIL_KEYS.map((key) => [key, null]));
  return worksSchema.parse({
    ref: row.ref,
    fenceRef: row.fence_ref,
    day: row.day,
    kind: row.kind,
    posts: postsFromText(String(row.posts)),
    ...absent,
    ...details,
  });
}

/** A storm outcome as a row: its posts as one text. */
export const outcomeToRow = (outcome: StormOutcomeRecord): FlatRow =>
  rowFromRecord({ ...outcome, posts: postsText(outcome.posts) });

/** The storm outcome of a row. */
export const outcomeFromRow = (row: FlatRow): StormOutcomeRecord => ({
  ...(recordFromRow(row, []) as unknown as StormOutcomeRecord),
  posts: postsFromText(String(row.posts)),
});
