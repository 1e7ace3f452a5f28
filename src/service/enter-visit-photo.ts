import type { Register } from '../register/database.ts';
import { type PhotoType, storeVisitPhoto } from '../register/visit-photo-store.ts';
import { sha256 } from './canonical-json.ts';
import { type Clock, isoUtc } from './clock.ts';
import { type VisitingAccount, type VisitRefusal, visitToEnterOn } from './crew-visit.ts';
import { type EntryOutcome, enterOnce } from './enter-once.ts';

/** Largest picture that is kept [bytes]; a phone that makes it smaller first stays far below. */
export const LARGEST_PHOTO = 8 * 1024 * 1024;

/** A picture of a post or a fence that a crew sends. */
export interface SentPhoto {
  readonly entryId: string;
  readonly uid: string;
  readonly fenceRef: string;
  /** Null: of the fence as a whole. */
  readonly post: number | null;
  /** By the phone's clock, ISO 8601; null where it was not told: the moment at which it arrives. */
  readonly takenAt: string | null;
  readonly bytes: Uint8Array;
  readonly account: VisitingAccount;
}

/** Why a picture is refused. */
export type PhotoRefusal = VisitRefusal | { readonly kind: 'no picture' } | { readonly kind: 'too large' };

const ascii = (bytes: Uint8Array, from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));

/**
 * What kind of picture some bytes are by how they begin; null for none of those that are kept.
 * Source: ISO/IEC 10918-1 (JPEG), W3C PNG, Google WebP container; from memory.
 */
export function photoType(bytes: Uint8Array): PhotoType | null {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg';
  if (bytes[0] === 0x89 && ascii(bytes, 1, 4) === 'PNG') return 'image/png';
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 12) === 'WEBP') return 'image/webp';
  return null;
}

/** Stores a picture with its time and the digest of its bytes, once. */
export const enterVisitPhoto = (
  register: Register,
  photo: SentPhoto,
  now: Clock,
): Promise<EntryOutcome<{ readonly photo: number }, PhotoRefusal>> => {
  const { account, entryId, bytes, ...rest } = photo;
  const digest = sha256(bytes);
  const content = { ...rest, sha256: digest };
  const entry = { holder: `account:${account.id}`, id: entryId, kind: 'photo', content };
  return enterOnce<{ readonly photo: number }, PhotoRefusal>(register, entry, now, async ({ db }) => {
    const found = await visitToEnterOn(db, photo, account);
    if ('refused' in found) return found;
    if (bytes.length > LARGEST_PHOTO) return { refused: { kind: 'too large' } };
    const mediaType = photoType(bytes);
    if (mediaType === null) return { refused: { kind: 'no picture' } };
    const storedAt = isoUtc(now());
    const { uid, fenceRef, post, takenAt } = rest;
    const stored = { uid, fenceRef, post, takenAt: takenAt ?? storedAt, storedAt, takenBy: account.displayName };
    return { answer: { photo: await storeVisitPhoto(db, { ...stored, mediaType, sha256: digest, bytes }) } };
  });
};
