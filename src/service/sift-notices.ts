import type { FenceForecast, FenceStanding } from '../forecast/fence-forecast.ts';
import type { Matter } from '../notify/matters.ts';
import { isStandingMatter, stillHolds } from '../notify/matters.ts';
import type { FenceParties } from '../register/fence-parties-store.ts';
import type { StoredNotice } from '../register/notice-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import type { VoidNotice } from '../register/void-notices.ts';

/** How one fence stands now, and whom it concerns. */
export interface CurrentFence {
  readonly forecast: FenceForecast;
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  readonly place: FenceParties;
  /** Which build of the fence it is. */
  readonly generation: string;
}

/** Why a notice is not to be told any more, or null where it is. */
function voidReason(notice: StoredNotice, owner: OwnerRecord, fence: CurrentFence): string | null {
  const matter = notice.matter as Matter;
  if (!fence.place.owners.some(({ ref }) => ref === owner.ref)) return 'the fence has another owner by now';
  if (!stillHolds(matter, fence)) return `it is no longer so: the fence is ${fence.standing} by now`;
  return matter === 'better' && notice.first ? 'the owner was never told that it was anything but clear' : null;
}

/** Parts the notices that are to be told from those that the register no longer supports. */
export function sift(
  notices: readonly StoredNotice[],
  owner: OwnerRecord,
  fences: ReadonlyMap<string, CurrentFence>,
): { readonly told: readonly StoredNotice[]; readonly voids: readonly VoidNotice[] } {
  const told: StoredNotice[] = [];
  const voids: VoidNotice[] = [];
  for (const notice of notices) {
    const fence = fences.get(notice.fenceRef);
    const reason = fence ? voidReason(notice, owner, fence) : null;
    const introduceAnew = notice.first || isStandingMatter(notice.matter as Matter);
    if (reason) voids.push({ notice, reason, introduceAnew });
    else told.push(notice);
  }
  return { told, voids };
}
