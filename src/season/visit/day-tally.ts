import type { CalendarDay } from '../../units/calendar-day.ts';

/** What one owner said of the days offered for a visit. */
export interface DaysSaid {
  readonly ownerRef: string;
  /** Days on which the owner was asked, and those of them that suit. */
  readonly offered: readonly CalendarDay[];
  readonly suits: readonly CalendarDay[];
}

/** A day of a visit with the owners whom it suits and does not. */
interface DayCount {
  readonly day: CalendarDay;
  readonly suits: readonly string[];
  readonly doesNotSuit: readonly string[];
}

/** Which day of a visit suits its owners. Owners by ref. */
export interface DayTally {
  /** The days that are offered now, in their order. */
  readonly days: readonly DayCount[];
  /** The day that suits most owners; of equals the proposed one, else the earliest. Null where none suits anybody. */
  readonly best: DayCount | null;
  readonly answered: readonly string[];
  /** Owners of its fences who have said nothing yet. */
  readonly silent: readonly string[];
}

/**
 * Counts the days of a visit that goes to the fences of several owners: one owner is one voice, whatever they own there. A day on
 * which an owner was not asked counts neither way for that owner. What somebody said who owns none of its fences any more counts
 * for nothing.
 * @param said the newest of each owner
 */
export function tallyDays({
  offered,
  proposed,
  owners,
  said,
}: {
  readonly offered: readonly CalendarDay[];
  readonly proposed: CalendarDay;
  readonly owners: readonly string[];
  readonly said: readonly DaysSaid[];
}): DayTally {
  const voices = said.filter(({ ownerRef }) => owners.includes(ownerRef));
  const days = offered.map((day): DayCount => {
    const asked = voices.filter((voice) => voice.offered.includes(day));
    const refs = (suits: boolean): readonly string[] =>
      asked.filter((voice) => voice.suits.includes(day) === suits).map(({ ownerRef }) => ownerRef);
    return { day, suits: refs(true), doesNotSuit: refs(false) };
  });
  const rank = ({ day, suits }: DayCount): number => 2 * suits.length + Number(day === proposed);
  const best = days
    .filter(({ suits }) => suits.length > 0)
    .reduce<DayCount | null>((most, each) => (most === null || rank(each) > rank(most) ? each : most), null);
  const answered = owners.filter((ref) => voices.some(({ ownerRef }) => ownerRef === ref));
  return { days, best, answered, silent: owners.filter((ref) => !answered.includes(ref)) };
}
