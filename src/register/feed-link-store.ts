import type { Selectable } from 'kysely';
import type { FeedLinkTables } from './feed-link-tables.ts';
import type { RegisterDb } from './record-store.ts';

/** Whose visits a feed shows. */
export interface FeedSubject {
  readonly kind: 'crew' | 'site';
  readonly ref: string;
}

/** A link to a calendar feed, without its secret. */
export interface FeedLink extends FeedSubject {
  readonly id: number;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  /** Null while the link answers. */
  readonly revokedAt: string | null;
}

const linkOf = (row: Selectable<FeedLinkTables['feed_links']>): FeedLink => ({
  id: row.id,
  kind: row.kind,
  ref: row.ref,
  createdAt: row.created_at,
  revokedAt: row.revoked_at,
});

/**
 * Stores a link that answers from now on.
 * @param tokenSha256 SHA-256 of its secret, in hexadecimal
 * @param now moment of writing, ISO 8601
 */
export async function addFeedLink(
  db: RegisterDb,
  subject: FeedSubject,
  tokenSha256: string,
  now: string,
): Promise<FeedLink> {
  const { kind, ref } = subject;
  const row = await db
    .insertInto('feed_links')
    .values({ kind, ref, token_sha256: tokenSha256, created_at: now, revoked_at: null })
    .returningAll()
    .executeTakeFirstOrThrow();
  return linkOf(row);
}

/** Every link ever made, the first made first. */
export async function listFeedLinks(db: RegisterDb): Promise<readonly FeedLink[]> {
  return (await db.selectFrom('feed_links').selectAll().orderBy('id').execute()).map(linkOf);
}

/** The link of a secret that answers; null where there never was one or it was revoked. */
export async function answeringFeedLink(db: RegisterDb, tokenSha256: string): Promise<FeedLink | null> {
  const row = await db
    .selectFrom('feed_links')
    .selectAll()
    .where('token_sha256', '=', tokenSha256)
    .where('revoked_at', 'is', null)
    .executeTakeFirst();
  return row ? linkOf(row) : null;
}

/**
 * Ends a link for good and returns it; one that was revoked before stays as it is. Null where there is no such link.
 * @param now moment of writing, ISO 8601
 */
export async function revokeFeedLink(db: RegisterDb, id: number, now: string): Promise<FeedLink | null> {
  await db
    .updateTable('feed_links')
    .set({ revoked_at: now })
    .where('id', '=', id)
    .where('revoked_at', 'is', null)
    .execute();
  const row = await db.selectFrom('feed_links').selectAll().where('id', '=', id).executeTakeFirst();
  return row ? linkOf(row) : null;
}
