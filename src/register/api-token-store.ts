import type { Selectable } from 'kysely';
import type { AccountTables } from './account-tables.ts';
import type { RegisterDb } from './record-store.ts';

/** A token with which a program reads, without its secret. Moments are ISO 8601, UTC. */
export interface ApiToken {
  readonly id: number;
  readonly name: string;
  readonly scopes: readonly string[];
  readonly createdAt: string;
  readonly expiresAt: string;
  /** Null while it answers. */
  readonly revokedAt: string | null;
}

const tokenOf = (row: Selectable<AccountTables['api_tokens']>): ApiToken => ({
  id: row.id,
  name: row.name,
  scopes: row.scopes.split(' '),
  createdAt: row.created_at,
  expiresAt: row.expires_at,
  revokedAt: row.revoked_at,
});

/**
 * Stores a token that answers from now on.
 * @param tokenSha256 SHA-256 of its secret, in hexadecimal
 */
export async function addApiToken(
  db: RegisterDb,
  token: Omit<ApiToken, 'id' | 'revokedAt'>,
  tokenSha256: string,
): Promise<ApiToken> {
  const row = await db
    .insertInto('api_tokens')
    .values({
      name: token.name,
      token_sha256: tokenSha256,
      scopes: token.scopes.join(' '),
      created_at: token.createdAt,
      expires_at: token.expiresAt,
      revoked_at: null,
    })
    .returningAll()
    .executeTakeFirstOrThrow();
  return tokenOf(row);
}

/** Every token ever made, the first made first. */
export async function listApiTokens(db: RegisterDb): Promise<readonly ApiToken[]> {
  return (await db.selectFrom('api_tokens').selectAll().orderBy('id').execute()).map(tokenOf);
}

/** The token of a secret that answers; null where there never was one, or it is revoked or over. */
export async function answeringApiToken(db: RegisterDb, tokenSha256: string, now: string): Promise<ApiToken | null> {
  const row = await db
    .selectFrom('api_tokens')
    .selectAll()
    .where('token_sha256', '=', tokenSha256)
    .where('revoked_at', 'is', null)
    .where('expires_at', '>', now)
    .executeTakeFirst();
  return row ? tokenOf(row) : null;
}

/** Ends a token for good and returns it; one that was revoked before stays as it is. Null where there is no such token. */
export async function revokeApiToken(db: RegisterDb, id: number, now: string): Promise<ApiToken | null> {
  await db
    .updateTable('api_tokens')
    .set({ revoked_at: now })
    .where('id', '=', id)
    .where('revoked_at', 'is', null)
    .execute();
  const row = await db.selectFrom('api_tokens').selectAll().where('id', '=', id).executeTakeFirst();
  return row ? tokenOf(row) : null;
}
