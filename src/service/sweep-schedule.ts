import type { DateTime } from 'luxon';

const CLOCK_TIME = /^([01]\d|2[0-3]):([0-5]\d)$/;

/** Why a text cannot be the time of the nightly sweep, or null where it can. */
export function clockTimeReason(text: string): string | null {
  if (!CLOCK_TIME.test(text)) return 'not a time of day; write one as 04:30';
  return text >= '01:00' && text <= '03:30'
    ? 'between 01:00 and 03:30 clocks are put forward and back, and a night could have no such time or two; write 04:30'
    : null;
}

/**
 * The last moment at or before an instant at which the nightly sweep was to run. The time of day is the zone's own: where
 * clocks are put forward or back the moments lie 23 or 25 hours apart.
 * @param at time of day, `HH:MM`
 */
export function lastScheduledMoment(now: DateTime, zone: string, at: string): DateTime {
  const [hour = 0, minute = 0] = at.split(':').map(Number);
  const local = now.setZone(zone);
  const onDay = (day: DateTime): DateTime => day.set({ hour, minute, second: 0, millisecond: 0 });
  const today = onDay(local);
  return today <= local ? today : onDay(local.minus({ days: 1 }));
}

/** What is known when it is asked whether a sweep is due. */
export interface ScheduleFacts {
  readonly now: DateTime;
  readonly zone: string;
  /** Time of day, `HH:MM`. */
  readonly at: string;
  readonly modelVersion: string;
  /** The last sweep that was finished; null where none ever was. */
  readonly last: { readonly asOf: DateTime; readonly modelVersion: string } | null;
  /** True where a sweep was begun and never finished. */
  readonly unfinished: boolean;
  /** True where records or settings changed since the last finished sweep began. */
  readonly changed: boolean;
}

/** Why a sweep is due. */
export type DueReason =
  | 'unfinished'
  | 'never swept'
  | 'model changed'
  | 'clock corrected'
  | 'scheduled'
  | 'register changed';

/**
 * Whether a sweep is due, and why; null where none is. However many nights were missed, one sweep is due. A clock that was
 * put back by hours makes none due: the last sweep is then later than any moment it was to run at. One that was put back by
 * more than a day had been wrong when the last sweep took its seasons from it, so that a new sweep is due.
 */
export function sweepDue(facts: ScheduleFacts): DueReason | null {
  if (facts.unfinished) return 'unfinished';
  if (!facts.last) return 'never swept';
  if (facts.last.modelVersion !== facts.modelVersion) return 'model changed';
  if (facts.last.asOf > facts.now.plus({ days: 1 })) return 'clock corrected';
  if (facts.last.asOf < lastScheduledMoment(facts.now, facts.zone, facts.at)) return 'scheduled';
  return facts.changed ? 'register changed' : null;
}
