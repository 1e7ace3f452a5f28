import type { Register } from '../register/database.ts';
import { listVisitSpans } from '../register/visit-spans.ts';
import { hoursLedger, type LedgerCell, type LedgerWeek } from '../season/visit/hours-ledger.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import { crewHoursOn, loadCrews } from './season-register.ts';

const DAYS_PER_WEEK = 7;
const REST_OF_WEEK = 6;

/** The hours of the crews in the weeks to come. */
export interface HoursAhead {
  readonly crews: readonly { readonly ref: string; readonly name: string }[];
  readonly weeks: readonly LedgerWeek[];
}

/** The hours of every crew, from the week that runs on. @param weeks how many */
export async function hoursAhead(
  { db }: Register,
  { today, weeks }: { readonly today: CalendarDay; readonly weeks: number },
): Promise<HoursAhead> {
  const crews = await loadCrews(db);
  const first = mondayOf(today);
  const mondays = Array.from({ length: weeks }, (_, week) => addDays(first, week * DAYS_PER_WEEK));
  const visits = await listVisitSpans(db, {
    from: today,
    to: addDays(mondays.at(-1) ?? first, REST_OF_WEEK),
    states: ['proposed', 'confirmed'],
  });
  return {
    crews: crews.map(({ ref, name }) => ({ ref, name })),
    weeks: hoursLedger({ crews, weeks: mondays, visits, today, hoursOn: crewHoursOn(crews) }),
  };
}

/** The hours of all crews in one: where they are too many to stand side by side. */
export const crewsTogether = ({ crews, weeks }: HoursAhead): HoursAhead => ({
  crews: [{ ref: '', name: `All ${crews.length} crews` }],
  weeks: weeks.map(({ monday, cells }) => {
    const sum = (of: (cell: LedgerCell) => number): number => cells.reduce((all, cell) => all + of(cell), 0);
    return {
      monday,
      cells: [
        {
          crewRef: '',
          thereAre: sum(({ thereAre }) => thereAre),
          confirmed: sum(({ confirmed }) => confirmed),
          proposed: sum(({ proposed }) => proposed),
          left: sum(({ left }) => left),
        },
      ],
    };
  }),
});
