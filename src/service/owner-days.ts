import type { Register } from '../register/database.ts';
import { proposedWithWishes } from '../register/day-wish-store.ts';
import { listOwnerAnswers } from '../register/owner-answer-store.ts';
import { recordsWhereIn } from '../register/record-store.ts';
import { listVisits } from '../register/visit-store.ts';
import type { Visit } from '../season/visit/visit.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { daysOfVisit, type VisitDays } from './visit-days.ts';

/** Choices that are looked at, the newest: of more than a season's nothing is still to come. */
const MOST_ANSWERS = 1_000;

/** A day that an owner chose, of a visit that is still to come on it. */
export interface ChosenDay {
  readonly visit: Visit;
  readonly ownerName: string;
  /** The day that was proposed. */
  readonly proposed: CalendarDay;
  /** When it was chosen (ISO 8601, UTC). */
  readonly at: string;
}

/** A proposed visit whose owners have marked days: the office confirms one. */
export interface MarkedVisit {
  readonly visit: Visit;
  readonly days: VisitDays;
}

/** What owners said of the days of visits that are still to come. */
export interface OwnerDays {
  readonly siteNames: ReadonlyMap<string, string>;
  /** Those that come first first. */
  readonly chosen: readonly ChosenDay[];
  readonly marked: readonly MarkedVisit[];
}

/** What owners chose and marked of the days of visits that are proposed or confirmed and not over. */
export async function ownerDaysAhead(register: Register, today: CalendarDay): Promise<OwnerDays> {
  const { db } = register;
  const answers = await listOwnerAnswers(db, { kind: 'day chosen', limit: MOST_ANSWERS });
  const marks = await proposedWithWishes(db, today);
  const ahead = await listVisits(db, {
    uids: [...new Set([...answers.map(({ subject }) => subject), ...marks])],
    from: today,
    states: ['proposed', 'confirmed'],
  });
  const byUid = new Map(ahead.map((visit) => [visit.uid, visit]));
  const taken = new Set<string>();
  const chosen = answers.flatMap(({ subject, detail, ownerName, ownerRef, at }): readonly ChosenDay[] => {
    const visit = byUid.get(subject);
    const { day, proposed } = JSON.parse(detail) as { readonly day: string; readonly proposed: string };
    // the newest answer comes first; a day that the office has changed since is nobody's choice any more
    if (visit?.state !== 'confirmed' || visit.firstDay !== day || taken.has(subject)) return [];
    taken.add(subject);
    return [{ visit, ownerName: ownerName ?? ownerRef, proposed, at }];
  });
  const marked: MarkedVisit[] = [];
  for (const visit of ahead.filter(({ uid }) => marks.includes(uid))) {
    const days = await daysOfVisit(register, visit, today);
    if (days && days.answered.length > 0) marked.push({ visit, days });
  }
  const refs = [...chosen, ...marked].map(({ visit }) => visit.siteRef);
  const sites = await recordsWhereIn(db, 'sites', 'ref', [...new Set(refs)]);
  return {
    siteNames: new Map(sites.map(({ ref, name }) => [ref, name])),
    chosen: chosen.sort((a, b) => (a.visit.firstDay < b.visit.firstDay ? -1 : 1)),
    marked,
  };
}
