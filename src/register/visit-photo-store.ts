import type { CrewEntryTables } from './crew-entry-tables.ts';
import type { RegisterDb } from './record-store.ts';

/** Kinds of pictures that are kept. */
export type PhotoType = CrewEntryTables['visit_photos']['media_type'];

/** A picture that a crew took on a visit, without its bytes. */
export interface VisitPhoto {
  readonly id: number;
  readonly uid: string;
  readonly fenceRef: string;
  /** Null: of the fence as a whole. */
  readonly post: number | null;
  /** By the phone's clock, ISO 8601. */
  readonly takenAt: string;
  readonly storedAt: string;
  readonly takenBy: string;
  readonly mediaType: PhotoType;
  /** Of its bytes, in hexadecimal digits. */
  readonly sha256: string;
}

/** Stores a picture and returns its number. Works within a transaction of the caller. */
export async function storeVisitPhoto(
  tx: RegisterDb,
  photo: Omit<VisitPhoto, 'id'> & { readonly bytes: Uint8Array },
): Promise<number> {
  const row = await tx
    .insertInto('visit_photos')
    .values({
      uid: photo.uid,
      fence_ref: photo.fenceRef,
      post: photo.post,
      taken_at: photo.takenAt,
      stored_at: photo.storedAt,
      taken_by: photo.takenBy,
      media_type: photo.mediaType,
      sha256: photo.sha256,
      bytes: photo.bytes,
    })
    .returning('id')
    .executeTakeFirstOrThrow();
  return row.id;
}

const WITHOUT_BYTES = [
  'id',
  'uid',
  'fence_ref as fenceRef',
  'post',
  'taken_at as takenAt',
  'stored_at as storedAt',
  'taken_by as takenBy',
  'media_type as mediaType',
  'sha256',
] as const;

/** The pictures of a fence, those of one visit where it is named, in the order in which they came. */
export const photosOfFence = (db: RegisterDb, fenceRef: string, uid?: string): Promise<readonly VisitPhoto[]> => {
  let query = db.selectFrom('visit_photos').select(WITHOUT_BYTES).where('fence_ref', '=', fenceRef);
  if (uid !== undefined) query = query.where('uid', '=', uid);
  return query.orderBy('id').execute();
};

/** Pictures behind a number: of a fence, of a visit, or of a fence on a visit; in the order in which they came, at most so many. */
export const photosAfter = (
  db: RegisterDb,
  { fenceRef, uid }: { readonly fenceRef?: string; readonly uid?: string },
  { after, limit }: { readonly after: number; readonly limit: number },
): Promise<readonly VisitPhoto[]> => {
  let query = db.selectFrom('visit_photos').select(WITHOUT_BYTES).where('id', '>', after);
  if (fenceRef !== undefined) query = query.where('fence_ref', '=', fenceRef);
  if (uid !== undefined) query = query.where('uid', '=', uid);
  if (uid !== undefined && fenceRef === undefined) {
    // by the fences of the visit: the index of pictures begins with them
    query = query.where('fence_ref', 'in', (eb) =>
      eb.selectFrom('visit_items').select('fence_ref').where('visit_items.uid', '=', uid),
    );
  }
  return query.orderBy('id').limit(limit).execute();
};

/** A picture with its bytes; null where there is none of that number. */
export async function readVisitPhoto(
  db: RegisterDb,
  id: number,
): Promise<{ readonly photo: VisitPhoto; readonly bytes: Uint8Array } | null> {
  const row = await db
    .selectFrom('visit_photos')
    .select([...WITHOUT_BYTES, 'bytes'])
    .where('id', '=', id)
    .executeTakeFirst();
  if (!row) return null;
  const { bytes, ...photo } = row;
  return { photo, bytes };
}
