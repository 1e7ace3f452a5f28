import type { RegisterDb } from './record-store.ts';
import { readSettings } from './settings-store.ts';
import { finishedBefore } from './sweep-store.ts';

/**
 * Has the first notices of fences wait that came with one large import into a register that was swept before, within the import's
 * transaction. What is brought in small before those were swept, such as corrected rows, waits with them. Returns how many fences are
 * meant; 0 where the import is not large, or nothing was swept yet.
 * @param refs fences that the import created
 * @param at moment of the import (ISO 8601)
 */
export async function holdLargeImport(tx: RegisterDb, refs: readonly string[], at: string): Promise<number> {
  const { largeImportFences } = await readSettings(tx);
  if (refs.length === 0) return 0;
  const unswept = await tx.selectFrom('large_import_fences').select('fence_ref').limit(1).executeTakeFirst();
  if (refs.length < largeImportFences && !unswept) return 0;
  if (!(await finishedBefore({ db: tx }, Number.MAX_SAFE_INTEGER))) return 0;
  for (const ref of refs) {
    await tx
      .insertInto('large_import_fences')
      .values({ fence_ref: ref, imported_at: at })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
  return refs.length;
}
