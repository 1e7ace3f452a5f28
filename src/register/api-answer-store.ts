import type { RegisterDb } from './record-store.ts';

/** One keyed write of a program. */
export interface KeyedWrite {
  readonly tokenId: number;
  /** Made up by the program, one for each thing that it wants done. */
  readonly key: string;
  /** SHA-256 over method, path and body, in hexadecimal. */
  readonly requestSha256: string;
}

/** What a write was answered. */
export interface KeptAnswer {
  readonly status: number;
  readonly contentType: string;
  readonly body: string;
}

/** What is known of a write as it comes in. */
export type KeyedWriteState =
  | { readonly kind: 'begun' }
  | { readonly kind: 'answered'; readonly answer: KeptAnswer }
  /** The key was used for something else. */
  | { readonly kind: 'other request' }
  | { readonly kind: 'at work' };

/**
 * Notes that a write begins, unless it was answered, is at work, or its key was used for something else. One that was begun and
 * never answered, for its process ended, is begun again once it is old.
 * @param times ISO 8601, UTC: now, what was begun before is given up, what was begun before is forgotten
 */
export const beginKeyedWrite = (
  db: RegisterDb,
  { tokenId, key, requestSha256 }: KeyedWrite,
  times: { readonly now: string; readonly givenUpBefore: string; readonly forgottenBefore: string },
): Promise<KeyedWriteState> =>
  db.transaction().execute(async (tx): Promise<KeyedWriteState> => {
    await tx.deleteFrom('api_answers').where('begun_at', '<', times.forgottenBefore).execute();
    const known = await tx
      .selectFrom('api_answers')
      .selectAll()
      .where('token_id', '=', tokenId)
      .where('key', '=', key)
      .executeTakeFirst();
    if (!known) {
      await tx
        .insertInto('api_answers')
        .values({
          token_id: tokenId,
          key,
          request_sha256: requestSha256,
          begun_at: times.now,
          status: null,
          content_type: null,
          body: null,
        })
        .execute();
      return { kind: 'begun' };
    }
    if (known.request_sha256 !== requestSha256) return { kind: 'other request' };
    if (known.status !== null) {
      const { status, content_type, body } = known;
      return { kind: 'answered', answer: { status, contentType: content_type ?? '', body: body ?? '' } };
    }
    if (known.begun_at >= times.givenUpBefore) return { kind: 'at work' };
    await tx
      .updateTable('api_answers')
      .set({ begun_at: times.now })
      .where('token_id', '=', tokenId)
      .where('key', '=', key)
      .execute();
    return { kind: 'begun' };
  });

/** Keeps what a write was answered; null where it failed, so that a repeat tries again. */
export async function endKeyedWrite(
  db: RegisterDb,
  { tokenId, key }: Pick<KeyedWrite, 'tokenId' | 'key'>,
  answer: KeptAnswer | null,
): Promise<void> {
  if (answer === null) {
    await db.deleteFrom('api_answers').where('token_id', '=', tokenId).where('key', '=', key).execute();
    return;
  }
  await db
    .updateTable('api_answers')
    .set({ status: answer.status, content_type: answer.contentType, body: answer.body })
    .where('token_id', '=', tokenId)
    .where('key', '=', key)
    .execute();
}
