import type { Selectable } from 'kysely';
import type { AccountTables } from './account-tables.ts';
import type { RegisterDb } from './record-store.ts';

/** A link with which an owner sees what is theirs, without its signature. Moments are ISO 8601, UTC. */
export interface OwnerLink {
  readonly id: number;
  readonly ownerRef: string;
  readonly scopes: readonly string[];
  readonly createdAt: string;
  readonly expiresAt: string;
  /** Null while it answers. */
  readonly revokedAt: string | null;
}

const linkOf = (row: Selectable<AccountTables['owner_links']>): OwnerLink => ({
  id: row.id,
  ownerRef: row.owner_ref,
  scopes: row.scopes.split(' '),
  createdAt: row.created_at,
  expiresAt: row.expires_at,
  revokedAt: row.revoked_at,
});

/** Stores a link. */
export async function addOwnerLink(db: RegisterDb, link: Omit<OwnerLink, 'id' | 'revokedAt'>): Promise<OwnerLink> {
  const row = await db
    .insertInto('owner_links')
    .values({
      owner_ref: link.ownerRef,
      scopes: link.scopes.join(' '),
      created_at: link.createdAt,
      expires_at: link.expiresAt,
      revoked_at: null,
    })
    .returningAll()
    .executeTakeFirstOrThrow();
  return linkOf(row);
}

/** Every link ever made, or those of one owner, the first made first. */
export async function listOwnerLinks(db: RegisterDb, ownerRef: string | null = null): Promise<readonly OwnerLink[]> {
  let query = db.selectFrom('owner_links').selectAll().orderBy('id');
  if (ownerRef !== null) query = query.where('owner_ref', '=', ownerRef);
  return (await query.execute()).map(linkOf);
}

/** The link of a number, whether it answers or not; null where there never was one. */
export async function readOwnerLink(db: RegisterDb, id: number): Promise<OwnerLink | null> {
  const row = await db.selectFrom('owner_links').selectAll().where('id', '=', id).executeTakeFirst();
  return row ? linkOf(row) : null;
}

/** The link of a number that answers; null where there never was one, or it is revoked or over. */
export async function answeringOwnerLink(db: RegisterDb, id: number, now: string): Promise<OwnerLink | null> {
  const row = await db
    .selectFrom('owner_links')
    .selectAll()
    .where('id', '=', id)
    .where('revoked_at', 'is', null)
    .where('expires_at', '>', now)
    .executeTakeFirst();
  return row ? linkOf(row) : null;
}

/** Ends a link for good and returns it; one that was revoked before stays as it is. Null where there is no such link. */
export async function revokeOwnerLink(db: RegisterDb, id: number, now: string): Promise<OwnerLink | null> {
  await db
    .updateTable('owner_links')
    .set({ revoked_at: now })
    .where('id', '=', id)
    .where('revoked_at', 'is', null)
    .execute();
  return readOwnerLink(db, id);
}

/** The key that signs owner links; null before the first was made. */
export async function readLinkKey(db: RegisterDb): Promise<Uint8Array | null> {
  return (await db.selectFrom('link_key').select('key').executeTakeFirst())?.key ?? null;
}

/** The key that signs owner links: the one offered, unless the register has one already. */
export async function linkKeyOr(db: RegisterDb, offered: Uint8Array, now: string): Promise<Uint8Array> {
  await db
    .insertInto('link_key')
    .values({ id: 1, key: offered, created_at: now })
    .onConflict((conflict) => conflict.column('id').doNothing())
    .execute();
  return (await db.selectFrom('link_key').select('key').executeTakeFirstOrThrow()).key;
}
