import type { Register } from './database.ts';
import type { RegisterDb } from './record-store.ts';

/** What failed tries are counted by: a name from one address, or an address whatever the name. */
export interface FailureKey {
  readonly kind: 'account' | 'address';
  readonly key: string;
}

/** Failed tries of a key. Moments are ISO 8601, UTC. */
export interface FailureCount {
  readonly count: number;
  readonly lastAt: string;
  readonly waitUntil: string;
}

const countOf = async (db: RegisterDb, { kind, key }: FailureKey): Promise<FailureCount | null> => {
  const row = await db
    .selectFrom('sign_in_failures')
    .selectAll()
    .where('kind', '=', kind)
    .where('key', '=', key)
    .executeTakeFirst();
  return row ? { count: row.count, lastAt: row.last_at, waitUntil: row.wait_until } : null;
};

/**
 * Counts a try by each of its keys before it is looked at, in one transaction, so that tries at once do not slip through
 * together. Where one of the keys has to wait, nothing is counted and the end of the longest wait is returned.
 * @param next what a key comes to with this try
 */
export async function countTry(
  register: Register,
  keys: readonly FailureKey[],
  now: string,
  next: (key: FailureKey, before: FailureCount | null) => FailureCount,
): Promise<string | null> {
  return register.db.transaction().execute(async (tx) => {
    const before = await Promise.all(keys.map((key) => countOf(tx, key)));
    const waits = before.flatMap((each) => (each && each.waitUntil > now ? [each.waitUntil] : []));
    const longest = waits.sort().at(-1);
    if (longest !== undefined) return longest;
    for (const [index, key] of keys.entries()) {
      const { count, lastAt, waitUntil } = next(key, before[index] ?? null);
      const set = { count, last_at: lastAt, wait_until: waitUntil };
      await tx
        .insertInto('sign_in_failures')
        .values({ ...key, ...set })
        .onConflict((conflict) => conflict.columns(['kind', 'key']).doUpdateSet(set))
        .execute();
    }
    return null;
  });
}

/** Takes a try back that turned out right: the name's count from this address is cleared, the address's one lower. */
export async function takeTryBack(register: Register, keys: readonly FailureKey[]): Promise<void> {
  await register.db.transaction().execute(async (tx) => {
    for (const { kind, key } of keys) {
      const found = await countOf(tx, { kind, key });
      if (!found) continue;
      if (kind === 'account' || found.count === 1) {
        await tx.deleteFrom('sign_in_failures').where('kind', '=', kind).where('key', '=', key).execute();
      } else {
        await tx
          .updateTable('sign_in_failures')
          .set({ count: found.count - 1, wait_until: found.lastAt })
          .where('kind', '=', kind)
          .where('key', '=', key)
          .execute();
      }
    }
  });
}

/** Forgets failures before a moment, ISO 8601. */
export async function forgetFailuresBefore(db: RegisterDb, before: string): Promise<void> {
  await db.deleteFrom('sign_in_failures').where('last_at', '<', before).execute();
}
