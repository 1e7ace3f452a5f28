import { createHmac, randomBytes } from 'node:crypto';
import {
  addOwnerLink,
  answeringOwnerLink,
  linkKeyOr,
  type OwnerLink,
  readLinkKey,
} from '../register/owner-link-store.ts';
import type { RegisterDb } from '../register/record-store.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import { isSameSecret } from './secret-token.ts';

const KEY_BYTES = 32;
/** What a link's token looks like: its number, a point, its signature. Anything else is none, and the register is not asked. */
const TOKEN_SHAPE = /^([0-9a-z]{1,10})\.([A-Za-z0-9_-]{43})$/;

/** What a link may let its owner do. */
export const OWNER_SCOPES = ['see', 'acknowledge', 'book', 'accept', 'call', 'preferences'] as const;
export type OwnerScope = (typeof OWNER_SCOPES)[number];

/** The signature of a link over everything that it says: HMAC-SHA-256 in base64url. */
function signatureOf(key: Uint8Array, { id, ownerRef, scopes, createdAt, expiresAt }: OwnerLink): string {
  const said = JSON.stringify(['owner-link', id, ownerRef, scopes, createdAt, expiresAt]);
  return createHmac('sha256', key).update(said).digest('base64url');
}

/** Where an owner's pages lie under a token. */
export const ownerPath = (token: string): string => `/owner/${token}`;

/** The key that signs links; made where there was none. */
export const linkKey = (db: RegisterDb, now: Clock): Promise<Uint8Array> =>
  linkKeyOr(db, randomBytes(KEY_BYTES), isoUtc(now()));

/** The token of a link: its number and its signature. */
export const ownerToken = (key: Uint8Array, link: OwnerLink): string =>
  `${link.id.toString(36)}.${signatureOf(key, link)}`;

/** The address of an owner's pages. @param publicUrl where the pages are reached from */
export const ownerUrl = (publicUrl: string, token: string): string =>
  `${publicUrl.replace(/\/+$/, '')}${ownerPath(token)}`;

/**
 * Makes a signed link with which an owner does what its scopes say until it is over or revoked.
 * @param publicUrl where the pages are reached from
 */
export async function newOwnerLink(
  db: RegisterDb,
  wanted: { readonly ownerRef: string; readonly scopes: readonly OwnerScope[]; readonly days: number },
  options: { readonly publicUrl: string; readonly now: Clock },
): Promise<{ readonly link: OwnerLink; readonly token: string; readonly url: string }> {
  const now = options.now();
  const key = await linkKey(db, options.now);
  const link = await addOwnerLink(db, {
    ownerRef: wanted.ownerRef,
    scopes: wanted.scopes,
    createdAt: isoUtc(now),
    expiresAt: isoUtc(now.plus({ days: wanted.days })),
  });
  const token = ownerToken(key, link);
  return { link, token, url: ownerUrl(options.publicUrl, token) };
}

/** The link of a token; null where it is not signed by this register, says something else, is over, or was revoked. */
export async function ownerLinkShown(db: RegisterDb, token: string, clock: Clock): Promise<OwnerLink | null> {
  const [, number, signature] = TOKEN_SHAPE.exec(token) ?? [];
  if (number === undefined || signature === undefined) return null;
  const id = Number.parseInt(number, 36);
  const [key, link] = await Promise.all([readLinkKey(db), answeringOwnerLink(db, id, isoUtc(clock()))]);
  return key && link && id.toString(36) === number && isSameSecret(signature, signatureOf(key, link)) ? link : null;
}
