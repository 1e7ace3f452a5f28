import type { Register } from './database.ts';
import type { StoredNotice } from './notice-store.ts';

/** A notice that is not to be told, and why. */
export interface VoidNotice {
  readonly notice: StoredNotice;
  readonly reason: string;
  /** True where the owner is to hear of the fence anew, as of one never told, once there is something to tell. */
  readonly introduceAnew: boolean;
}

/**
 * Marks notices as void, in one transaction; those that a message carries by now are left as they are. A mark that is
 * void no longer counts as told, so that it can be told when it is crossed again.
 */
export async function voidNotices(register: Register, voids: readonly VoidNotice[]): Promise<void> {
  if (voids.length === 0) return;
  await register.db.transaction().execute(async (tx) => {
    for (const { notice, reason, introduceAnew } of voids) {
      const marked = await tx
        .updateTable('notices')
        .set({ void_reason: reason })
        .where('id', '=', notice.id)
        .where('outbox_id', 'is', null)
        .executeTakeFirst();
      if (marked.numUpdatedRows === 0n) continue;
      if (introduceAnew) {
        await tx
          .deleteFrom('introductions')
          .where('fence_ref', '=', notice.fenceRef)
          .where('owner_ref', '=', notice.ownerRef)
          .execute();
      }
      const forecast = await tx
        .selectFrom('forecasts')
        .select('told_marks')
        .where('fence_ref', '=', notice.fenceRef)
        .executeTakeFirst();
      if (!forecast) continue;
      const told = JSON.parse(forecast.told_marks) as readonly string[];
      if (!told.includes(notice.matter)) continue;
      await tx
        .updateTable('forecasts')
        .set({ told_marks: JSON.stringify(told.filter((mark) => mark !== notice.matter)) })
        .where('fence_ref', '=', notice.fenceRef)
        .execute();
    }
  });
}
