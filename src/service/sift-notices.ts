import type { FenceForecast, FenceStanding } from '../forecast/fence-forecast.ts';
import type { Matter } from '../notify/matter-rules.ts';
import { isStandingMatter, stillHolds } from '../notify/matters.ts';
import type { FenceParties } from '../register/fence-parties-store.ts';
import type { StoredNotice } from '../register/notice-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import type { VoidNotice } from '../register/void-notices.ts';
import type { Clock } from './clock.ts';
import { dayInZone } from './clock.ts';

/** How one fence stands now, and whom it concerns. */
export interface CurrentFence {
  readonly forecast: FenceForecast;
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  readonly place: FenceParties;
  /** Which build of the fence it is. */
  readonly generation: string;
}

/** Who is to be told, and the time. */
interface Telling {
  readonly owner: OwnerRecord;
  readonly now: Clock;
}

/** The season that a reminder is about, as its occasion names it; null for other matters. */
export const remindedSeason = ({ matter, occasion }: Pick<StoredNotice, 'matter' | 'occasion'>): string | null =>
  matter === 'reminder' ? occasion.replace(/^season /, '') : null;

function isPast(notice: StoredNotice, { forecast, place }: CurrentFence, now: Clock): boolean {
  const label = remindedSeason(notice);
  const season = forecast.seasons.find((each) => each.label === label);
  return label !== null && (season === undefined || season.day <= dayInZone(now(), place.site.timeZone));
}

/** Why a notice is not to be told any more, or null where it is. */
function voidReason(notice: StoredNotice, { owner, now }: Telling, fence: CurrentFence): string | null {
  const matter = notice.matter as Matter;
  if (!fence.place.owners.some(({ ref }) => ref === owner.ref)) return 'the fence has another owner by now';
  if (!stillHolds(matter, fence)) return `it is no longer so: the fence is ${fence.standing} by now`;
  if (isPast(notice, fence, now)) return 'the season it reminded of has opened';
  return matter === 'better' && notice.first ? 'the owner was never told that it was anything but clear' : null;
}

/** Parts the notices that are to be told from those that the register no longer supports. */
export function sift(
  notices: readonly StoredNotice[],
  telling: Telling,
  fences: ReadonlyMap<string, CurrentFence>,
): { readonly told: readonly StoredNotice[]; readonly voids: readonly VoidNotice[] } {
  const told: StoredNotice[] = [];
  const voids: VoidNotice[] = [];
  for (const notice of notices) {
    const fence = fences.get(notice.fenceRef);
    const reason = fence ? voidReason(notice, telling, fence) : null;
    const introduceAnew = notice.first || isStandingMatter(notice.matter as Matter);
    if (reason) voids.push({ notice, reason, introduceAnew });
    else told.push(notice);
  }
  return { told, voids };
}
