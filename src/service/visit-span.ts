import { DateTime } from 'luxon';
import type { Visit } from '../season/visit/visit.ts';
import { addDays, dayNumber } from '../units/calendar-day.ts';

/** When a visit is: whole days, the end not in it, or two moments in UTC. */
export type VisitSpan =
  | { readonly kind: 'days'; readonly firstDay: string; readonly dayAfter: string }
  | { readonly kind: 'time'; readonly start: Date; readonly end: Date };

/** Spans are rounded up to this, and are never shorter [min]. */
const STEP_MINUTES = 15;

/**
 * When a visit is, for a calendar: whole days where no time is agreed, else from the time at which the crew comes (local time
 * at the site) for as long as its people need; a visit of several days ends on the last of them, each day as long as the
 * others. Never past the midnight that ends the last day.
 * @param zone time zone of the site
 * @param people how many of the crew go out, at least one
 */
export function visitSpan(
  visit: Pick<Visit, 'firstDay' | 'lastDay' | 'startsAt' | 'items'>,
  zone: string,
  people: number,
): VisitSpan {
  const { firstDay, lastDay, startsAt, items } = visit;
  if (startsAt === null) return { kind: 'days', firstDay, dayAfter: addDays(lastDay, 1) };
  const days = dayNumber(lastDay) - dayNumber(firstDay) + 1;
  const personHours = items.reduce((sum, item) => sum + item.personHours, 0);
  const steps = Math.max(1, Math.ceil((personHours / Math.max(1, people) / days) * (60 / STEP_MINUTES) - 1e-9));
  const at = (day: string, time: string): DateTime => {
    const moment = DateTime.fromISO(`${day}T${time}`, { zone });
    if (!moment.isValid) throw new RangeError(`visit: ${day} ${time} in ${JSON.stringify(zone)} is no moment`);
    return moment;
  };
  const midnight = at(addDays(lastDay, 1), '00:00');
  const end = DateTime.min(at(lastDay, startsAt).plus({ minutes: steps * STEP_MINUTES }), midnight);
  return { kind: 'time', start: at(firstDay, startsAt).toJSDate(), end: end.toJSDate() };
}
