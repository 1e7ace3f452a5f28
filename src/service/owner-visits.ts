import type { Register } from '../register/database.ts';
import { addOwnerAnswer } from '../register/owner-answer-store.ts';
import { fencesOfOwner } from '../register/owner-fences.ts';
import type { OwnerLink } from '../register/owner-link-store.ts';
import { recordsWhereIn } from '../register/record-store.ts';
import type { SiteRecord } from '../register/site-record.ts';
import { listVisits } from '../register/visit-store.ts';
import { changedVisit } from '../season/visit/change-visit.ts';
import type { Visit } from '../season/visit/visit.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import { canonicalJson } from './canonical-json.ts';
import { confirmVisit } from './change-visit.ts';
import { type Clock, dayInZone, isoUtc } from './clock.ts';
import { visitHours } from './plan-visits.ts';
import { loadCrews } from './season-register.ts';
import { lastDayOf, visitDayDoubts } from './visit-day-doubts.ts';

/** Days of a week on which crews go out: Monday to Friday. */
const WORK_DAYS = [0, 1, 2, 3, 4];

/** A visit as the owner of a fence of it sees it. */
export interface OwnerVisit {
  readonly visit: Visit;
  readonly site: SiteRecord;
  /** What it does at the owner's fences. */
  readonly items: Visit['items'];
  /** Days to choose among; none where the visit is not proposed any more, or nothing is left in its week. */
  readonly offered: readonly CalendarDay[];
  /** True where it goes to fences of others too: then the office sets the day. */
  readonly withOthers: boolean;
}

/** Days of a proposed visit's week on which its crew has hours and no rule of its works is broken, from tomorrow on. */
async function offeredDays(register: Register, visit: Visit, today: CalendarDay): Promise<readonly CalendarDay[]> {
  const crew = (await loadCrews(register.db)).find(({ ref }) => ref === visit.crewRef);
  if (!crew) return [];
  const monday = mondayOf(visit.firstDay);
  const offered: CalendarDay[] = [];
  for (const day of WORK_DAYS.map((index) => addDays(monday, index)).filter((each) => each > today)) {
    const lastDay = lastDayOf(crew, day, visitHours(visit));
    const moved = changedVisit(visit, { state: 'confirmed', firstDay: day, lastDay }, visit.changedAt);
    if ((await visitDayDoubts(register, moved, { crew, today })).length === 0) offered.push(day);
  }
  return offered;
}

/** The visits to an owner's fences that are proposed or confirmed and not over, with the days to choose among. */
export async function visitsOfOwner(register: Register, ownerRef: string, now: Clock): Promise<readonly OwnerVisit[]> {
  const refs = new Set((await fencesOfOwner(register.db, ownerRef)).map(({ ref }) => ref));
  const standing = (await listVisits(register.db, { states: ['proposed', 'confirmed'] })).filter(({ items }) =>
    items.some(({ fenceRef }) => refs.has(fenceRef)),
  );
  const sites = await recordsWhereIn(register.db, 'sites', 'ref', [...new Set(standing.map(({ siteRef }) => siteRef))]);
  const siteOf = new Map(sites.map((site) => [site.ref, site]));
  const found: OwnerVisit[] = [];
  for (const visit of standing) {
    const site = siteOf.get(visit.siteRef);
    if (!site) continue;
    const today = dayInZone(now(), site.timeZone);
    if (visit.lastDay < today) continue;
    const items = visit.items.filter(({ fenceRef }) => refs.has(fenceRef));
    const withOthers = items.length < visit.items.length;
    const offered = visit.state === 'proposed' && !withOthers ? await offeredDays(register, visit, today) : [];
    found.push({ visit, site, items, offered, withOthers });
  }
  return found;
}

/** What came of choosing a day. */
export type DayChoice =
  | { readonly kind: 'chosen' | 'already'; readonly visit: Visit }
  /** The day is not, or not any more, among those offered. */
  | { readonly kind: 'not offered' }
  | { readonly kind: 'no such visit' };

/**
 * Promises a proposed visit on a day that its owner chose among those offered: from then on no plan moves it. Choosing the same
 * day again changes nothing; another day, once one is promised, is for the office.
 */
export async function chooseDay(
  register: Register,
  link: Pick<OwnerLink, 'id' | 'ownerRef'>,
  { uid, day }: { readonly uid: string; readonly day: string },
  now: Clock,
): Promise<DayChoice> {
  const known = (await visitsOfOwner(register, link.ownerRef, now)).find(({ visit }) => visit.uid === uid);
  if (!known) return { kind: 'no such visit' };
  const { visit } = known;
  if (visit.state === 'confirmed' && visit.firstDay === day) return { kind: 'already', visit };
  if (!known.offered.includes(day)) return { kind: 'not offered' };
  const result = await confirmVisit(register, {
    uid,
    day,
    startsAt: null,
    crewRef: null,
    sure: false,
    onlyProposed: true,
    now,
    by: `owner ${link.ownerRef}`,
    because: `chosen by link ${link.id}`,
  });
  if (result.kind !== 'changed') return { kind: 'not offered' };
  await addOwnerAnswer(register.db, {
    ownerRef: link.ownerRef,
    linkId: link.id,
    kind: 'day chosen',
    subject: uid,
    detail: canonicalJson({ day, siteRef: visit.siteRef, proposed: visit.firstDay, offered: known.offered }),
    once: `day chosen|${uid}|${result.visit.sequence}`,
    at: isoUtc(now()),
    open: false,
  });
  return { kind: 'chosen', visit: result.visit };
}
