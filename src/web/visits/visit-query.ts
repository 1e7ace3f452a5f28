import type { VisitQuery } from '../../register/visit-page.ts';
import { VISIT_STATES, type VisitState } from '../../season/visit/visit.ts';
import { mondayOf } from '../../season/visit/week-of-day.ts';
import { addDays, type CalendarDay, isCalendarDay } from '../../units/calendar-day.ts';

/** What the list of visits can be narrowed to: a state, those to come, those nobody has said anything about, or all. */
export const STATE_CHOICES: readonly (readonly [value: string, text: string])[] = [
  ['', 'to come: proposed and confirmed'],
  ...VISIT_STATES.map((state) => [state, state] as const),
  ['overdue', 'past, and nobody said what became of them'],
  ['all', 'all'],
];

const REST_OF_WEEK = 6;

/** What the list of visits was asked for. */
export interface AskedVisits {
  readonly state: string;
  readonly crew: string;
  readonly site: string;
  /** Monday of a week; null: every week. */
  readonly week: CalendarDay | null;
  readonly page: number;
}

/** Reads what an address asks for; what makes no sense is left out. */
export function askedVisits(query: Readonly<Record<string, string | undefined>>): AskedVisits {
  const { state = '', crew = '', site = '', week = '', page = '1' } = query;
  return {
    state: STATE_CHOICES.some(([value]) => value === state) ? state : '',
    crew,
    site,
    week: isCalendarDay(week) ? mondayOf(week) : null,
    page: /^[1-9]\d{0,6}$/.test(page) ? Number(page) : 1,
  };
}

const OPEN: readonly VisitState[] = ['proposed', 'confirmed'];

/** The same for the register. Where neither week nor state is asked for, visits of days that are past are left out. */
export function visitQueryOf({ state, crew, site, week, page }: AskedVisits, today: CalendarDay): VisitQuery {
  const states =
    state === 'overdue'
      ? (['confirmed'] as const)
      : state === 'all' || (state === '' && week !== null)
        ? VISIT_STATES
        : state === ''
          ? OPEN
          : VISIT_STATES.filter((each) => each === state);
  return {
    states,
    crewRef: crew === '' ? null : crew,
    siteRef: site === '' ? null : site,
    from: week ?? (state === '' ? today : null),
    to: week === null ? null : addDays(week, REST_OF_WEEK),
    endedBefore: state === 'overdue' ? today : null,
    page,
  };
}

/** Path of the list with something asked for otherwise. */
export function visitsPath(asked: AskedVisits, change: Partial<AskedVisits>): string {
  const { state, crew, site, week, page } = { ...asked, page: 1, ...change };
  const given = Object.entries({ state, crew, site, week: week ?? '', page: page > 1 ? String(page) : '' });
  const text = new URLSearchParams(given.filter(([, value]) => value !== '')).toString();
  return text === '' ? '/visits' : `/visits?${text}`;
}
