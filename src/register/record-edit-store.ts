import type { RecordKind, RecordOf, RegisterDb } from './record-store.ts';

/** One edit of a record. */
export interface RecordEdit<K extends RecordKind = RecordKind> {
  /** ISO 8601, UTC. */
  readonly at: string;
  /** Name of the account, or of the program that did it. */
  readonly by: string;
  readonly kind: K;
  /** The record's name within its kind. */
  readonly ref: string;
  /** How it was before (null: it was made) and after. */
  readonly before: RecordOf[K] | null;
  readonly after: RecordOf[K];
}

/** Notes who changed a record, and how it was before. */
export async function noteEdit<K extends RecordKind>(db: RegisterDb, edit: RecordEdit<K>): Promise<void> {
  const { before, after, ...rest } = edit;
  await db
    .insertInto('record_edits')
    .values({ ...rest, before: before && JSON.stringify(before), after: JSON.stringify(after) })
    .execute();
}

/** The newest edits of a record, newest first. */
export const listEdits = async <K extends RecordKind>(
  db: RegisterDb,
  kind: K,
  ref: string,
  limit: number,
): Promise<readonly RecordEdit<K>[]> => editsBefore(db, { kind, ref }, { before: null, limit });

/** Edits of a record older than the one of a number, newest first, at most so many, each with its number. */
export async function editsBefore<K extends RecordKind>(
  db: RegisterDb,
  { kind, ref }: { readonly kind: K; readonly ref: string },
  { before: older, limit }: { readonly before: number | null; readonly limit: number },
): Promise<readonly (RecordEdit<K> & { readonly id: number })[]> {
  let query = db.selectFrom('record_edits').selectAll().where('kind', '=', kind).where('ref', '=', ref);
  if (older !== null) query = query.where('id', '<', older);
  const rows = await query.orderBy('id', 'desc').limit(limit).execute();
  return rows.map(({ id, at, by, before, after }) => ({
    id,
    at,
    by,
    kind,
    ref,
    before: before === null ? null : (JSON.parse(before) as RecordOf[K]),
    after: JSON.parse(after) as RecordOf[K],
  }));
}
