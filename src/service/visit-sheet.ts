import type { FenceFacts } from '../forecast/fence-facts.ts';
import type { Register } from '../register/database.ts';
import { listVisits } from '../register/visit-store.ts';
import { type CheckList, checkList } from '../season/visit/check-list.ts';
import {
  type DaySheet,
  daySheet,
  type SheetFenceFacts,
  type SheetSite,
  type SheetStop,
} from '../season/visit/day-sheet.ts';
import { type MaterialNeed, materialNeeds } from '../season/visit/load-list.ts';
import type { Visit } from '../season/visit/visit.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import { dayAtSite } from './change-visit.ts';
import type { Clock } from './clock.ts';
import { crewSheets, officeToday } from './crew-sheets.ts';
import { visitInspectionRef } from './crew-visit.ts';
import { type CrewInRegister, loadCatalogue, loadCrews } from './season-register.ts';
import { sheetSurroundings, visitSurroundings } from './visit-surroundings.ts';

/** How far a crew looks ahead, and back for visits that nobody finished [d]. */
const DAYS_AHEAD = 14;
const DAYS_BACK = 14;

/** A visit of another day, in short. */
export interface VisitAhead {
  readonly visit: Visit;
  readonly siteName: string;
}

/** What one crew goes to. */
export interface CrewDay {
  readonly crew: Pick<CrewInRegister, 'ref' | 'name'>;
  /** Null on a day without visits. */
  readonly sheet: DaySheet | null;
  /** Visits of days past that are neither done, missed nor cancelled. */
  readonly left: readonly VisitAhead[];
  readonly ahead: readonly VisitAhead[];
}

/** The day at the register's office, and what each of some crews goes to that day, before and after. */
export async function crewDays(
  register: Register,
  crewRefs: readonly string[] | null,
  now: Clock,
): Promise<{ readonly today: CalendarDay; readonly days: readonly CrewDay[] }> {
  const today = await officeToday(register, now);
  const crews = (await loadCrews(register.db)).filter(({ ref }) => crewRefs === null || crewRefs.includes(ref));
  const days: CrewDay[] = [];
  for (const crew of crews) {
    const found = await crewSheets(register, crew.ref, [today]);
    const near = await listVisits(register.db, {
      crewRef: crew.ref,
      from: addDays(today, -DAYS_BACK),
      to: addDays(today, DAYS_AHEAD),
      states: ['proposed', 'confirmed'],
    });
    const { sites } = await visitSurroundings(register, near);
    const named = (visits: readonly Visit[]): readonly VisitAhead[] =>
      visits.map((visit) => ({ visit, siteName: sites.get(visit.siteRef)?.name ?? visit.siteRef }));
    days.push({
      crew: { ref: crew.ref, name: crew.name },
      sheet: found.kind === 'sheets' ? (found.sheets[0] ?? null) : null,
      left: named(near.filter(({ lastDay }) => lastDay < today)),
      ahead: named(near.filter(({ firstDay }) => firstDay > today)),
    });
  }
  return { today, days };
}

/** One visit as whoever goes on it sees it. */
export interface VisitSheet {
  readonly visit: Visit;
  readonly stop: SheetStop;
  readonly load: readonly MaterialNeed[];
  /** The day it is at the site. */
  readonly today: CalendarDay;
}

/** What whoever goes on a visit sees of it. Throws where its site or a fence went from the register. */
export async function visitSheet(register: Register, visit: Visit, now: Clock): Promise<VisitSheet> {
  const today = await dayAtSite(register, visit.siteRef, now);
  const catalogue = await loadCatalogue(register.db);
  const surroundings = await sheetSurroundings(register, [visit]);
  const day = today < visit.firstDay ? visit.firstDay : today > visit.lastDay ? visit.lastDay : today;
  const crew = { ref: visit.crewRef, name: visit.crewRef, base: null };
  // one that was called off is shown as it would have been
  const shown: Visit =
    visit.state === 'missed' || visit.state === 'cancelled' ? { ...visit, state: 'proposed' } : visit;
  const sheet = daySheet({ crew, day, people: [], visits: [shown], ...surroundings, catalogue });
  const [stop] = sheet.stops;
  if (!stop) throw new Error(`visit ${visit.uid} has no day sheet`);
  const load = materialNeeds(
    visit.items.flatMap(({ works }) => works),
    catalogue,
  );
  return { visit, stop: { ...stop, state: visit.state }, load, today };
}

/** One fence of a visit, post by post, as it is known today. */
export interface FenceSheet extends Omit<SheetFenceFacts, 'facts'> {
  readonly facts: FenceFacts;
  readonly site: SheetSite;
  readonly today: CalendarDay;
  readonly works: Visit['items'][number]['works'];
  readonly checks: CheckList;
}

/** One fence of a visit as whoever looks at its posts sees it; null where the fence is not on the visit. */
export async function fenceSheet(
  register: Register,
  visit: Visit,
  fenceRef: string,
  clock: Clock,
): Promise<FenceSheet | null> {
  const item = visit.items.find((each) => each.fenceRef === fenceRef);
  if (!item) return null;
  const { sites, fences } = await sheetSurroundings(register, [{ ...visit, items: [item] }]);
  const site = sites.get(visit.siteRef);
  const fence = fences.get(fenceRef);
  if (!site || !fence) return null;
  const today = await dayAtSite(register, visit.siteRef, clock);
  const own = visitInspectionRef(visit.uid, fenceRef);
  const inspections = fence.facts.inspections.filter(({ ref }) => ref !== own);
  const now = checkList(fence.facts, item.works, today);
  if (inspections.length === fence.facts.inspections.length) {
    return { ...fence, site, today, works: item.works, checks: now };
  }
  // what this visit reads stands beside what was known before it
  const before = checkList({ ...fence.facts, inspections }, item.works, today);
  const posts = now.posts.map((post, index) => {
    const { lastReading = null, believedWidthMm = null } = before.posts[index] ?? {};
    return { ...post, lastReading, believedWidthMm };
  });
  return { ...fence, site, today, works: item.works, checks: { ...now, posts } };
}
