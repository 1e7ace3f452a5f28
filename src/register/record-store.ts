import { type Kysely, sql } from 'kysely';
import type { z } from 'zod';
import { type CatalogueRecord, catalogueSchema } from './catalogue-record.ts';
import { type ClimateZoneRecord, climateZoneSchema } from './climate-zone-record.ts';
import { type CrewMemberRecord, crewMemberSchema } from './crew-member-record.ts';
import { type CrewRecord, crewSchema } from './crew-record.ts';
import { type DayOffRecord, dayOffSchema } from './day-off-record.ts';
import { type FenceRecord, fenceSchema } from './fence-record.ts';
import { type InspectionRecord, inspectionSchema } from './inspection-record.ts';
import { type MaterialRecord, materialSchema } from './material-record.ts';
import { type OwnerRecord, ownerSchema } from './owner-record.ts';
import { type PostRecord, postSchema } from './post-record.ts';
import { type ReadingRecord, readingSchema } from './reading-record.ts';
import {
  type FlatRow,
  outcomeFromRow,
  outcomeToRow,
  recordFromRow,
  rowFromRecord,
  worksFromRow,
  worksToRow,
} from './record-row.ts';
import { type SiteRecord, siteSchema } from './site-record.ts';
import { type StormOutcomeRecord, stormOutcomeSchema } from './storm-outcome-record.ts';
import { type StormSeasonRecord, stormSeasonSchema } from './storm-season-record.ts';
import type { RegisterTables } from './tables.ts';
import { type WorksRecord, worksSchema } from './works-record.ts';

/** The kinds of records, each after those it refers to. */
export const RECORD_KINDS = [
  'owners',
  'climate-zones',
  'storm-seasons',
  'sites',
  'fences',
  'posts',
  'works',
  'inspections',
  'readings',
  'outcomes',
  'catalogue',
  'materials',
  'crews',
  'crew-members',
  'days-off',
] as const;
export type RecordKind = (typeof RECORD_KINDS)[number];

/** The record of each kind. */
export interface RecordOf {
  readonly owners: OwnerRecord;
  readonly 'climate-zones': ClimateZoneRecord;
  readonly 'storm-seasons': StormSeasonRecord;
  readonly sites: SiteRecord;
  readonly fences: FenceRecord;
  readonly posts: PostRecord;
  readonly works: WorksRecord;
  readonly inspections: InspectionRecord;
  readonly readings: ReadingRecord;
  readonly outcomes: StormOutcomeRecord;
  readonly catalogue: CatalogueRecord;
  readonly materials: MaterialRecord;
  readonly crews: CrewRecord;
  readonly 'crew-members': CrewMemberRecord;
  readonly 'days-off': DayOffRecord;
}

interface KindStore<R> {
  readonly table: keyof RegisterTables;
  readonly key: readonly string[];
  readonly schema: { parse(value: unknown): R };
  readonly toRow: (record: R) => FlatRow;
  readonly fromRow: (row: FlatRow) => R;
}

const flat = <R extends object>(
  table: keyof RegisterTables,
  schema: { parse(value: unknown): R },
  booleans: readonly (keyof R & string)[] = [],
  key: readonly string[] = ['ref'],
): KindStore<R> => ({
  table,
  key,
  schema,
  toRow: rowFromRecord,
  fromRow: (row) => recordFromRow(row, booleans) as R,
});

const STORES: { readonly [K in RecordKind]: KindStore<RecordOf[K]> } = {
  owners: flat('owners', ownerSchema, ['enrolled']),
  'climate-zones': flat('climate_zones', climateZoneSchema, ['irrigated']),
  'storm-seasons': flat('storm_seasons', stormSeasonSchema),
  sites: flat('sites', siteSchema, ['soilSaturated', 'lateralBearingDoubled', 'hurricane']),
  fences: flat('fences', fenceSchema, ['incised']),
  posts: flat('posts', postSchema, ['incised'], ['fence_ref', 'number']),
  works: { table: 'works', key: ['ref'], schema: worksSchema, toRow: worksToRow, fromRow: worksFromRow },
  inspections: flat('inspections', inspectionSchema),
  readings: flat('readings', readingSchema, ['collarCracked', 'closedOff', 'sure'], ['inspection_ref', 'post']),
  outcomes: {
    table: 'storm_outcomes',
    key: ['ref'],
    schema: stormOutcomeSchema,
    toRow: outcomeToRow,
    fromRow: outcomeFromRow,
  },
  catalogue: flat('catalogue_lines', catalogueSchema, ['notOnFrozenGround', 'licensedApplicator', 'permit'], ['kind']),
  materials: flat('catalogue_materials', materialSchema, [], ['kind', 'name']),
  crews: flat('crews', crewSchema),
  'crew-members': flat('crew_members', crewMemberSchema),
  'days-off': flat('days_off', dayOffSchema),
};

/** Either the register's connection or a transaction on it. */
export type RegisterDb = Kysely<RegisterTables>;

/** All rows of a kind in the order of their key, byte by byte. */
const rowsInOrder = (db: RegisterDb, kind: RecordKind) => {
  const { table, key } = STORES[kind];
  return key.reduce((query, column) => query.orderBy(column as never, 'asc'), db.selectFrom(table).selectAll());
};

/** The row a record is stored as, without its stamps: two records are the same where their rows are. */
export const storedRow = <K extends RecordKind>(kind: K, record: RecordOf[K]): FlatRow => STORES[kind].toRow(record);

/**
 * All records of a kind, ordered byte by byte by ref; posts by fence and number, readings by inspection and post, the
 * catalogue by kind, materials by kind and name.
 */
export async function listRecords<K extends RecordKind>(db: RegisterDb, kind: K): Promise<readonly RecordOf[K][]> {
  const store: KindStore<RecordOf[K]> = STORES[kind];
  const rows = await rowsInOrder(db, kind).execute();
  return rows.map((row) => store.fromRow(row as unknown as FlatRow));
}

/** The record that stands first after a key, in the order of `listRecords`, and those after it: a page that a program reads on. */
export async function recordsAfter<K extends RecordKind>(
  db: RegisterDb,
  kind: K,
  page: { readonly after: readonly (string | number)[] | null; readonly limit: number },
): Promise<{ readonly rows: readonly RecordOf[K][]; readonly last: readonly (string | number)[] | null }> {
  const store: KindStore<RecordOf[K]> = STORES[kind];
  let query = rowsInOrder(db, kind).limit(page.limit);
  if (page.after !== null) {
    const columns = sql.join(store.key.map((column) => sql.ref(column)));
    query = query.where(sql<boolean>`(${columns}) > (${sql.join(page.after)})`);
  }
  const rows = (await query.execute()) as unknown as readonly FlatRow[];
  const last = rows.at(-1);
  return {
    rows: rows.map((row) => store.fromRow(row)),
    last: last === undefined ? null : store.key.map((column) => last[column] as string | number),
  };
}

/** How many parts the key of a kind has. */
export const keyLength = (kind: RecordKind): number => STORES[kind].key.length;

/** What a record of a kind must be. */
export const recordSchema = (kind: RecordKind): z.ZodType => STORES[kind].schema as unknown as z.ZodType;

/** Kinds whose records have no ref of their own. */
type WithoutRef = 'posts' | 'readings' | 'catalogue' | 'materials';

/** The record of that ref; null where there is none. Kinds without a ref of their own are listed instead. */
export async function readRecord<K extends Exclude<RecordKind, WithoutRef>>(
  db: RegisterDb,
  kind: K,
  ref: string,
): Promise<RecordOf[K] | null> {
  const store: KindStore<RecordOf[K]> = STORES[kind];
  const row = await db
    .selectFrom(store.table)
    .selectAll()
    .where('ref' as never, '=', ref as never)
    .executeTakeFirst();
  return row ? store.fromRow(row as unknown as FlatRow) : null;
}

/** All records of a kind whose column holds one of the values (at most some 10,000), ordered by their key. */
export async function recordsWhereIn<K extends RecordKind>(
  db: RegisterDb,
  kind: K,
  column: 'ref' | 'fence_ref' | 'site_ref',
  values: readonly string[],
): Promise<readonly RecordOf[K][]> {
  if (values.length === 0) return [];
  const store: KindStore<RecordOf[K]> = STORES[kind];
  const rows = await rowsInOrder(db, kind)
    .where(column as never, 'in', values as never)
    .execute();
  return rows.map((row) => store.fromRow(row as unknown as FlatRow));
}

/** The readings of all inspections of the fences (at most some 10,000), ordered by inspection and post. */
export async function readingsOfFences(
  db: RegisterDb,
  fenceRefs: readonly string[],
): Promise<readonly ReadingRecord[]> {
  if (fenceRefs.length === 0) return [];
  const rows = await db
    .selectFrom('readings')
    .selectAll()
    .where('inspection_ref', 'in', (query) =>
      query.selectFrom('inspections').select('ref').where('fence_ref', 'in', fenceRefs),
    )
    .orderBy('inspection_ref')
    .orderBy('post')
    .execute();
  return rows.map((row) => STORES.readings.fromRow(row));
}

/** Most bound values of one statement; SQLite takes 32,766. */
const MOST_BOUND_VALUES = 16_000;

/**
 * Creates the records or replaces those of the same ref; `created_at` of a replaced one stays.
 * Throws (zod) where a record breaks its rules and (SQLite) where it refers to what is not there.
 * @param now moment of writing, ISO 8601
 */
export async function upsertRecords<K extends RecordKind>(
  db: RegisterDb,
  kind: K,
  records: readonly RecordOf[K][],
  now: string,
): Promise<void> {
  const store: KindStore<RecordOf[K]> = STORES[kind];
  const rows = records.map((record) => ({
    ...store.toRow(store.schema.parse(record)),
    created_at: now,
    updated_at: now,
  }));
  const [first] = rows;
  if (!first) return;
  const columns = Object.keys(first);
  const replaced = columns.filter((column) => column !== 'created_at' && !store.key.includes(column));
  const perStatement = Math.floor(MOST_BOUND_VALUES / columns.length);
  for (let start = 0; start < rows.length; start += perStatement) {
    await db
      .insertInto(store.table)
      .values(rows.slice(start, start + perStatement))
      .onConflict((conflict) =>
        conflict
          .columns(store.key as never)
          .doUpdateSet((eb: { ref(name: string): unknown }) =>
            Object.fromEntries(replaced.map((column) => [column, eb.ref(`excluded.${column}`)])),
          ),
      )
      .execute();
  }
}
