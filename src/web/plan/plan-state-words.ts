import { dayWords } from '../../drawing/day-words.ts';
import type { PlanHead } from '../../register/plan-store.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';

type Stated = Pick<PlanHead, 'state' | 'acceptedAt' | 'by' | 'because' | 'firstWeek'>;

/** Where a plan stands: not accepted, in force, or in force once; with who accepted it and why. */
export function planStateWords({ state, acceptedAt, by, because, firstWeek }: Stated, today: CalendarDay): string {
  if (state === 'made') return firstWeek < today ? 'not accepted, and its first week has begun' : 'not accepted';
  const when = acceptedAt === null ? '' : ` ${dayWords(acceptedAt.slice(0, 10), today)}`;
  const who = by === '' ? '' : ` by ${by}`;
  const why = because === '' ? '' : `: ${because}`;
  return state === 'accepted'
    ? `in force, accepted${when}${who}${why}`
    : `accepted${when}${who}${why}; another is in force`;
}
