import type { DateTime } from 'luxon';

/** Hours in which no ordinary mail is sent, on the owner's clock, `HH:MM`; over midnight where they end before they begin. */
export interface QuietHours {
  readonly from: string;
  readonly to: string;
}

const SHAPE = /^([01]\d|2[0-3]):([0-5]\d)-([01]\d|2[0-3]):([0-5]\d)$/;

/** Why a text says no quiet hours, with the way out; null where it does. */
export function quietHoursReason(text: string): string | null {
  if (text === 'none') return null;
  if (!SHAPE.test(text)) return 'write the hours as 20:00-08:00, or none';
  const { from, to } = quietHoursOf(text) ?? { from: '', to: '' };
  return from === to
    ? 'the hours begin and end at the same time; write none where there are to be no quiet hours'
    : null;
}

/** The hours that a text says; null for `none`. The text must be one that `quietHoursReason` has nothing against. */
export function quietHoursOf(text: string): QuietHours | null {
  const [from = '', to = ''] = text.split('-');
  return text === 'none' ? null : { from, to };
}

/** When the quiet hours end that it now is in a zone; null where it is none. */
export function quietUntil(now: DateTime, zone: string, hours: QuietHours): DateTime | null {
  const local = now.setZone(zone);
  const clock = local.toFormat('HH:mm');
  const { from, to } = hours;
  const isQuiet = from < to ? clock >= from && clock < to : clock >= from || clock < to;
  if (!isQuiet) return null;
  const [hour = '0', minute = '0'] = to.split(':');
  const end = local.startOf('day').set({ hour: Number(hour), minute: Number(minute) });
  // a day later by the calendar, so that the night in which clocks change ends at the same time of day
  return end > local ? end : end.plus({ days: 1 });
}
