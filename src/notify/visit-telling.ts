import type { Visit } from '../season/visit/visit.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import type { VisitMatter } from './matter-rules.ts';

/** A visit that was missed is told of for so long after its day [d]; model choice. */
const MISSED_FOR_DAYS = 30;

/** What of a visit decides whether its owners are told, and is kept with each notice of it. */
export type VisitFacts = Pick<Visit, 'state' | 'sequence' | 'firstDay' | 'lastDay' | 'startsAt' | 'crewRef'>;

/** What a message last told an owner of a visit. */
export interface ToldVisit extends VisitFacts {
  readonly matter: string;
}

/** True where the last day of a visit is before today, at its site. */
export const isPastVisit = ({ lastDay }: Pick<Visit, 'lastDay'>, today: CalendarDay): boolean => lastDay < today;

/**
 * What an owner is to be told of a visit as it is now; null for nothing. Visits in the past are not told, a missed one for thirty
 * days; that a visit fell through is told only to owners who knew of it.
 * @param told what messages last told this owner of it; null where nothing did
 * @param isTheirs false where no fence of this owner is on the visit any more
 */
export function decideVisitMatter(parts: {
  readonly visit: VisitFacts;
  readonly told: ToldVisit | null;
  readonly isTheirs: boolean;
  readonly today: CalendarDay;
}): VisitMatter | null {
  const { visit, told, isTheirs, today } = parts;
  const knows = told !== null && told.matter !== 'visit cancelled' && told.matter !== 'visit missed';
  const isOff = visit.state === 'cancelled' || (!isTheirs && visit.state !== 'missed' && visit.state !== 'done');
  if (isOff) return knows && !isPastVisit(told, today) ? 'visit cancelled' : null;
  if (!isTheirs) return null;
  if (visit.state === 'missed')
    return knows && addDays(visit.lastDay, MISSED_FOR_DAYS) >= today ? 'visit missed' : null;
  if (visit.state === 'done' || isPastVisit(visit, today)) return null;
  if (!knows) return visit.state === 'proposed' ? 'visit proposed' : 'visit confirmed';
  if (told.sequence === visit.sequence) return null;
  return visit.state === 'confirmed' && told.state === 'proposed' ? 'visit confirmed' : 'visit changed';
}

/** What a notice of a visit is kept under: each change of it that a calendar must see is told once. */
export const visitOccasion = ({ uid, sequence }: Pick<Visit, 'uid' | 'sequence'>): string =>
  `visit ${uid}, change ${sequence}`;
