import type { Generated } from 'kysely';

interface EntryReceiptsTable {
  readonly holder: string;
  readonly id: string;
  readonly kind: string;
  readonly content_sha256: string;
  readonly answer: string;
  readonly stored_at: string;
}

interface VisitPhotosTable {
  readonly id: Generated<number>;
  readonly uid: string;
  readonly fence_ref: string;
  readonly post: number | null;
  readonly taken_at: string;
  readonly stored_at: string;
  readonly taken_by: string;
  readonly media_type: 'image/jpeg' | 'image/png' | 'image/webp';
  readonly sha256: string;
  readonly bytes: Uint8Array;
}

/** Tables of what phones and programs sent, and of pictures from the field. */
export interface CrewEntryTables {
  readonly entry_receipts: EntryReceiptsTable;
  readonly visit_photos: VisitPhotosTable;
}
