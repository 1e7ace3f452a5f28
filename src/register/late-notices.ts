import type { Register } from './database.ts';

/** A notice that was decided lately and not made void since. */
export interface StoredLateNotice {
  readonly fenceRef: string;
  readonly ownerRef: string;
  readonly matter: string;
  readonly occasion: string;
  /** ISO text in UTC. */
  readonly createdAt: string;
}

/** The notices of some matters about the fences named that were decided since a moment (ISO text in UTC), by number. */
export async function loadLateNotices(
  { db }: Register,
  refs: readonly string[],
  asked: { readonly matters: readonly string[]; readonly since: string },
): Promise<readonly StoredLateNotice[]> {
  if (refs.length === 0) return [];
  return db
    .selectFrom('notices')
    .select(['fence_ref as fenceRef', 'owner_ref as ownerRef', 'matter', 'occasion', 'created_at as createdAt'])
    .where('fence_ref', 'in', refs)
    .where('matter', 'in', asked.matters)
    .where('created_at', '>=', asked.since)
    .where('void_reason', 'is', null)
    .orderBy('id')
    .execute();
}
