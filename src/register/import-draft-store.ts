import type { KindCounts } from './csv/import-report.ts';
import type { RecordKind, RegisterDb } from './record-store.ts';

/** A file as it was handed in. */
export interface DraftFile {
  readonly name: string;
  readonly text: string;
}

/** What an import did. */
export interface ImportDone {
  readonly files: readonly string[];
  readonly counts: Readonly<Partial<Record<RecordKind, KindCounts>>>;
  /** How many rows were left out because they were refused. */
  readonly refusedRows: number;
  /** Id of the draft in which they are kept for a time; absent where none were left out. */
  readonly refusedIn?: string;
}

/** Files between their preview and their import, or what became of them. Moments are ISO 8601, UTC. */
export interface ImportDraft {
  readonly id: string;
  readonly madeAt: string;
  readonly madeBy: string;
  readonly expiresAt: string;
  /** Null once they are imported, put away or too old. */
  readonly files: readonly DraftFile[] | null;
  readonly importedAt: string | null;
  readonly importedBy: string | null;
  readonly done: ImportDone | null;
}

/** A draft whose files wait to be imported. */
export type WaitingDraft = ImportDraft & { readonly files: readonly DraftFile[] };

/** True while the files of a draft wait to be imported. */
export const isWaiting = (draft: ImportDraft): draft is WaitingDraft => draft.files !== null;

/** Keeps files until they are imported or too old; drafts of anybody that are too old lose their files. */
export async function addImportDraft(
  db: RegisterDb,
  draft: Pick<ImportDraft, 'id' | 'madeAt' | 'madeBy' | 'expiresAt'> & { readonly files: readonly DraftFile[] },
): Promise<void> {
  await db
    .updateTable('import_drafts')
    .set({ files: null })
    .where('files', 'is not', null)
    .where('expires_at', '<=', draft.madeAt)
    .execute();
  await db
    .insertInto('import_drafts')
    .values({
      id: draft.id,
      made_at: draft.madeAt,
      made_by: draft.madeBy,
      expires_at: draft.expiresAt,
      files: JSON.stringify(draft.files),
      imported_at: null,
      imported_by: null,
      done: null,
    })
    .execute();
}

/** The draft of that id; null where there is none. One that is too old at `now` has no files. */
export async function readImportDraft(db: RegisterDb, id: string, now: string): Promise<ImportDraft | null> {
  const row = await db.selectFrom('import_drafts').selectAll().where('id', '=', id).executeTakeFirst();
  if (!row) return null;
  return {
    id: row.id,
    madeAt: row.made_at,
    madeBy: row.made_by,
    expiresAt: row.expires_at,
    files: row.files === null || row.expires_at <= now ? null : (JSON.parse(row.files) as readonly DraftFile[]),
    importedAt: row.imported_at,
    importedBy: row.imported_by,
    done: row.done === null ? null : (JSON.parse(row.done) as ImportDone),
  };
}

/** Forgets the files of a draft that was not imported. */
export async function putImportDraftAway(db: RegisterDb, id: string): Promise<void> {
  await db.updateTable('import_drafts').set({ files: null }).where('id', '=', id).execute();
}

/** Marks a draft as imported and forgets its files. Throws where it was imported or put away before. */
export async function markDraftImported(
  db: RegisterDb,
  id: string,
  imported: { readonly at: string; readonly by: string; readonly done: ImportDone },
): Promise<void> {
  const { at, by, done } = imported;
  const result = await db
    .updateTable('import_drafts')
    .set({ files: null, imported_at: at, imported_by: by, done: JSON.stringify(done) })
    .where('id', '=', id)
    .where('files', 'is not', null)
    .executeTakeFirst();
  if (result.numUpdatedRows !== 1n) throw new Error('these files were imported or put away already');
}

/** The newest imports that were made on the pages, newest first. */
export async function listImports(db: RegisterDb, limit: number): Promise<readonly Omit<ImportDraft, 'files'>[]> {
  const rows = await db
    .selectFrom('import_drafts')
    .select(['id', 'made_at', 'made_by', 'expires_at', 'imported_at', 'imported_by', 'done'])
    .where('imported_at', 'is not', null)
    .orderBy('imported_at', 'desc')
    .limit(limit)
    .execute();
  return rows.map((row) => ({
    id: row.id,
    madeAt: row.made_at,
    madeBy: row.made_by,
    expiresAt: row.expires_at,
    importedAt: row.imported_at,
    importedBy: row.imported_by,
    done: JSON.parse(row.done ?? 'null') as ImportDone | null,
  }));
}
