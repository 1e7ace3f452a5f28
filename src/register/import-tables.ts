import type { Generated } from 'kysely';

interface ImportDraftsTable {
  readonly id: string;
  readonly made_at: string;
  readonly made_by: string;
  readonly expires_at: string;
  readonly files: string | null;
  readonly imported_at: string | null;
  readonly imported_by: string | null;
  readonly done: string | null;
}

interface RecordEditsTable {
  readonly id: Generated<number>;
  readonly at: string;
  readonly by: string;
  readonly kind: string;
  readonly ref: string;
  readonly before: string | null;
  readonly after: string;
}

/** The tables of files that wait to be imported, and of edits. */
export interface ImportTables {
  readonly import_drafts: ImportDraftsTable;
  readonly record_edits: RecordEditsTable;
}
