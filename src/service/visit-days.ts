import type { Register } from '../register/database.ts';
import { listDayWishes } from '../register/day-wish-store.ts';
import { type FenceParties, loadFenceParties } from '../register/fence-parties-store.ts';
import { changedVisit } from '../season/visit/change-visit.ts';
import { type DayTally, tallyDays } from '../season/visit/day-tally.ts';
import type { Visit } from '../season/visit/visit.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import { loadCrews } from './season-register.ts';
import { lastDayBeside, visitDayDoubts } from './visit-day-doubts.ts';

/** Days of a week on which crews go out: Monday to Friday. */
const WORK_DAYS = [0, 1, 2, 3, 4];

/** A day on which a visit may begin, and the last of the days that it then takes. */
export type OfferedDay = Pick<Visit, 'firstDay' | 'lastDay'>;

/**
 * Days of a proposed visit's week on which it may begin, from tomorrow on, with the days that it then takes: on all of them its
 * crew has the hours beside its other visits, and no rule of its works is broken.
 */
export async function offeredDays(
  register: Register,
  visit: Visit,
  today: CalendarDay,
): Promise<readonly OfferedDay[]> {
  const crew = (await loadCrews(register.db)).find(({ ref }) => ref === visit.crewRef);
  if (!crew || visit.state !== 'proposed') return [];
  const monday = mondayOf(visit.firstDay);
  const offered: OfferedDay[] = [];
  for (const day of WORK_DAYS.map((index) => addDays(monday, index)).filter((each) => each > today)) {
    const lastDay = await lastDayBeside(register, { ...visit, firstDay: day }, { crew, today });
    const moved = changedVisit(visit, { state: 'confirmed', firstDay: day, lastDay }, visit.changedAt);
    if ((await visitDayDoubts(register, moved, { crew, today })).length === 0) offered.push({ firstDay: day, lastDay });
  }
  return offered;
}

/** True where somebody owns a part of these fences only: whoever chose a day would choose it for others. */
export function isShared(parties: readonly Pick<FenceParties, 'owners'>[]): boolean {
  const refs = new Set(parties.flatMap(({ owners }) => owners.map(({ ref }) => ref)));
  return [...refs].some((ref) => parties.some(({ owners }) => owners.every((owner) => owner.ref !== ref)));
}

/** Which day of a proposed visit suits the owners of its fences for its beginning, and what they are called. */
export interface VisitDays extends DayTally {
  readonly ownerNames: ReadonlyMap<string, string>;
  /** The days that the visit takes from each on which it may begin. */
  readonly offered: readonly OfferedDay[];
}

/** What the owners of a proposed visit's fences said of its days; null for a visit that is not proposed or goes to one owner alone. */
export async function daysOfVisit(register: Register, visit: Visit, today: CalendarDay): Promise<VisitDays | null> {
  if (visit.state !== 'proposed') return null;
  const refs = visit.items.map(({ fenceRef }) => fenceRef);
  const parties = [...(await loadFenceParties(register, refs)).values()];
  const ownerNames = new Map(parties.flatMap(({ owners }) => owners.map(({ ref, name }) => [ref, name] as const)));
  if (!isShared(parties)) return null;
  const week = mondayOf(visit.firstDay);
  const said = (await listDayWishes(register.db, [visit.uid])).filter((wish) => wish.week === week);
  const offered = await offeredDays(register, visit, today);
  const owners = [...ownerNames.keys()].sort();
  const days = offered.map(({ firstDay }) => firstDay);
  return { ...tallyDays({ offered: days, proposed: visit.firstDay, owners, said }), ownerNames, offered };
}
