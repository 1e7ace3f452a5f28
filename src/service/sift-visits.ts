import { isPastVisit } from '../notify/visit-telling.ts';
import type { Register } from '../register/database.ts';
import { type FenceParties, loadFenceParties } from '../register/fence-parties-store.ts';
import type { StoredNotice } from '../register/notice-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import { readVisit } from '../register/visit-store.ts';
import type { VoidNotice } from '../register/void-notices.ts';
import type { Visit } from '../season/visit/visit.ts';
import { type Clock, dayInZone } from './clock.ts';
import { CHANGED_AGAIN, keptFacts } from './tell-of-visit.ts';

/** Notices of one visit to one owner. */
export interface VisitNotices {
  readonly visit: Visit;
  /** The notices of the same matter about it: one a fence. */
  readonly notices: readonly StoredNotice[];
  readonly parties: ReadonlyMap<string, FenceParties>;
}

/** Why a notice of a visit is not to be told any more, or null where it is. */
function voidReason(
  notice: StoredNotice,
  parts: {
    readonly visit: Visit;
    readonly owner: OwnerRecord;
    readonly now: Clock;
    readonly place: FenceParties | undefined;
  },
): string | null {
  const { visit, owner, now, place } = parts;
  const facts = keptFacts(notice);
  if (facts.sequence !== visit.sequence) return CHANGED_AGAIN;
  if (!place?.owners.some(({ ref }) => ref === owner.ref)) return 'the fence has another owner by now';
  const last = facts.before ?? facts;
  const isPast = isPastVisit(facts.state === 'cancelled' ? last : visit, dayInZone(now(), place.site.timeZone));
  return isPast && facts.state !== 'missed' ? 'its day is past' : null;
}

/** Parts the notices of visits that are to be told, by visit, from those that the register no longer supports. */
export async function siftVisits(
  register: Register,
  owner: OwnerRecord,
  notices: readonly StoredNotice[],
  now: Clock,
): Promise<{ readonly told: readonly VisitNotices[]; readonly voids: readonly VoidNotice[] }> {
  const byVisit = new Map<string, StoredNotice[]>();
  for (const notice of notices) {
    const key = notice.visitUid ?? '';
    byVisit.set(key, [...(byVisit.get(key) ?? []), notice]);
  }
  const told: VisitNotices[] = [];
  const voids: VoidNotice[] = [];
  for (const [uid, ofVisit] of byVisit) {
    const visit = await readVisit(register.db, uid);
    if (!visit) throw new Error(`visit ${uid} has notices and is not in the register`);
    const parties = await loadFenceParties(
      register,
      ofVisit.map(({ fenceRef }) => fenceRef),
    );
    const kept: StoredNotice[] = [];
    for (const notice of ofVisit) {
      const reason = voidReason(notice, { visit, owner, now, place: parties.get(notice.fenceRef) });
      if (reason === null) kept.push(notice);
      else voids.push({ notice, reason, introduceAnew: false });
    }
    if (kept.length > 0) told.push({ visit, notices: kept, parties });
  }
  return { told, voids };
}
