import { DateTime } from 'luxon';

/** Where the time comes from: a parameter everywhere, so that a test sets it. */
export type Clock = () => DateTime;

/** The real clock, in UTC. */
export const systemClock: Clock = () => DateTime.utc();

/** An instant as ISO text in UTC with milliseconds, as the register stores it; such texts sort by time. */
export function isoUtc(instant: DateTime): string {
  const text = instant.toUTC().toISO();
  if (!text) throw new RangeError(`not an instant: ${instant.invalidExplanation ?? 'invalid date'}`);
  return text;
}

/** The calendar day of an instant in a zone, `YYYY-MM-DD`. Throws RangeError for a zone nobody knows. */
export function dayInZone(instant: DateTime, zone: string): string {
  const day = instant.setZone(zone).toISODate();
  if (!day) throw new RangeError(`unknown time zone ${JSON.stringify(zone)}: write one as America/Chicago`);
  return day;
}

/**
 * A stored moment (ISO text in UTC) as people of a zone read it, with the zone's short name: `2027-05-31 09:05 CDT`.
 * Throws RangeError for a moment or a zone that is none.
 */
export function momentInZone(iso: string, zone: string): string {
  const moment = DateTime.fromISO(iso, { zone, locale: 'en-US' });
  if (!moment.isValid)
    throw new RangeError(`no moment ${JSON.stringify(iso)} in ${zone}: ${moment.invalidExplanation}`);
  return moment.toFormat('yyyy-LL-dd HH:mm ZZZZ');
}
