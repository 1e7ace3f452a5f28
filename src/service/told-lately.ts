import { DateTime } from 'luxon';
import type { Matter } from '../notify/matter-rules.ts';
import type { LateNotice } from '../notify/pre-season-reminder.ts';
import type { Register } from '../register/database.ts';
import type { FenceListing } from '../register/fence-facts-store.ts';
import { loadLateNotices } from '../register/late-notices.ts';
import { dayInZone, isoUtc } from './clock.ts';

/** A reminder of a season is asked after for so long: it is given at most once [d]. */
const REMINDED_WITHIN_DAYS = 370;
/** What is not repeated by a reminder, and reminders themselves. */
const REPEATED: readonly Matter[] = ['short from new', 'short', 'closing', 'reminder'];

/** What owners were told of standings and seasons lately, by fence. */
export async function toldLately(
  register: Register,
  listed: readonly FenceListing[],
  asOf: DateTime,
): Promise<ReadonlyMap<string, readonly LateNotice[]>> {
  const zones = new Map(listed.map(({ ref, timeZone }) => [ref, timeZone]));
  const notices = await loadLateNotices(register, [...zones.keys()], {
    matters: REPEATED,
    since: isoUtc(asOf.minus({ days: REMINDED_WITHIN_DAYS })),
  });
  const found = new Map<string, LateNotice[]>();
  for (const { fenceRef, createdAt, ...notice } of notices) {
    const day = dayInZone(DateTime.fromISO(createdAt), zones.get(fenceRef) ?? 'utc');
    found.set(fenceRef, [...(found.get(fenceRef) ?? []), { ...notice, day }]);
  }
  return found;
}
