import { randomBytes } from 'node:crypto';
import { addFeedLink, type FeedLink, type FeedSubject } from '../register/feed-link-store.ts';
import type { RegisterDb } from '../register/record-store.ts';
import { sha256 } from './canonical-json.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';

/** Length of a link's secret [bytes]: 256 bits. */
const SECRET_BYTES = 32;
/** What a secret looks like: 32 bytes in base64url. Anything else is no link, and the register is not asked. */
const SECRET_SHAPE = /^[A-Za-z0-9_-]{43}$/;

/** A link that was just made, with the address that is shown this once. */
export interface NewFeedLink {
  readonly link: FeedLink;
  readonly url: string;
}

/** What the register keeps of a secret; null for a text that cannot be one. */
export const storedSecret = (secret: string): string | null => (SECRET_SHAPE.test(secret) ? sha256(secret) : null);

/**
 * Makes a secret link to the feed of a crew or a site. The register keeps a digest of it only.
 * @param publicUrl where the pages are reached from
 */
export async function newFeedLink(
  db: RegisterDb,
  subject: FeedSubject,
  options: { readonly publicUrl: string; readonly now: Clock },
): Promise<NewFeedLink> {
  const secret = randomBytes(SECRET_BYTES).toString('base64url');
  const link = await addFeedLink(db, subject, sha256(secret), isoUtc(options.now()));
  return { link, url: `${options.publicUrl.replace(/\/+$/, '')}/feed/${secret}.ics` };
}
