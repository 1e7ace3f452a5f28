import type { FenceStanding } from '../forecast/fence-forecast.ts';
import { openingDay, type SeasonWindow, seasonLabel, seasonOneYear } from '../forecast/season-calendar.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { addDays } from '../units/calendar-day.ts';
import type { NoticeDraft } from './matters.ts';

/** For so many days after an owner was told of a standing it is not repeated by a reminder [d]; model choice. */
const FRESH_NEWS_DAYS = 90;

/** A notice that an owner got about a fence not long ago. */
export interface LateNotice {
  readonly ownerRef: string;
  readonly matter: string;
  readonly occasion: string;
  /** The day on which it was decided. */
  readonly day: CalendarDay;
}

/** A season that is about to open. */
interface OpeningSeason {
  readonly label: string;
  readonly opens: CalendarDay;
}

/**
 * The season that opens within so many days, or null. The day on which it opens is past reminding.
 * @param today the calendar day in the site's own time zone
 * @param days how long before its opening a season is reminded of [d]; 0: never
 */
export function seasonToRemindOf(window: SeasonWindow, today: CalendarDay, days: number): OpeningSeason | null {
  const one = seasonOneYear(window, today);
  const year = openingDay(window, one) > today ? one : one + 1;
  const opens = openingDay(window, year);
  return addDays(today, days) < opens ? null : { label: seasonLabel(window, year), opens };
}

/**
 * The reminder that an owner is to get of a fence that is short when a season is about to open; null where none is due: it was
 * given, or the owner was told of a standing lately.
 */
export function reminderDraft(fence: {
  readonly standing: FenceStanding;
  readonly season: OpeningSeason;
  readonly today: CalendarDay;
  /** What this owner was told of the fence lately. */
  readonly told: readonly LateNotice[];
}): NoticeDraft | null {
  if (fence.standing !== 'short') return null;
  const occasion = `season ${fence.season.label}`;
  const fresh = addDays(fence.today, -FRESH_NEWS_DAYS);
  const known = fence.told.some((notice) =>
    notice.matter === 'reminder' ? notice.occasion === occasion : notice.day >= fresh,
  );
  return known ? null : { matter: 'reminder', occasion };
}
