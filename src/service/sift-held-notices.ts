import { isOfVisit } from '../notify/matter-rules.ts';
import type { Register } from '../register/database.ts';
import { listOwnersToWriteTo, loadUnwrittenNotices } from '../register/notice-store.ts';
import { readRecord } from '../register/record-store.ts';
import { voidNotices } from '../register/void-notices.ts';
import type { Clock } from './clock.ts';
import { currentFences } from './current-fences.ts';
import { sift } from './sift-notices.ts';
import { siftVisits } from './sift-visits.ts';

/**
 * Makes void what waits for the office and is no longer so by the newest forecasts, so that the office releases nothing that is
 * not true. Returns how many notices became void. One transaction an owner.
 */
export async function siftHeldNotices(
  register: Register,
  options: { readonly now: Clock; readonly signal?: AbortSignal | undefined },
): Promise<number> {
  let voided = 0;
  for (const ownerRef of await listOwnersToWriteTo(register, 'held')) {
    if (options.signal?.aborted) break;
    const owner = await readRecord(register.db, 'owners', ownerRef);
    if (!owner) continue;
    const all = await loadUnwrittenNotices(register, ownerRef, 'held');
    const held = all.filter(({ matter }) => !isOfVisit(matter));
    const fences = await currentFences(register, [...new Set(held.map(({ fenceRef }) => fenceRef))]);
    const { voids } = sift(held, { owner, now: options.now }, fences);
    const ofVisits = await siftVisits(
      register,
      owner,
      all.filter(({ matter }) => isOfVisit(matter)),
      options.now,
    );
    await voidNotices(register, [...voids, ...ofVisits.voids]);
    voided += voids.length + ofVisits.voids.length;
  }
  return voided;
}
