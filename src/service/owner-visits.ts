import type { Register } from '../register/database.ts';
import { addDayWish, listDayWishes } from '../register/day-wish-store.ts';
import { loadFenceParties } from '../register/fence-parties-store.ts';
import { addOwnerAnswer } from '../register/owner-answer-store.ts';
import { fencesOfOwner } from '../register/owner-fences.ts';
import type { OwnerLink } from '../register/owner-link-store.ts';
import { recordsWhereIn } from '../register/record-store.ts';
import type { SiteRecord } from '../register/site-record.ts';
import { listVisits } from '../register/visit-store.ts';
import type { Visit } from '../season/visit/visit.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { canonicalJson } from './canonical-json.ts';
import { confirmVisit } from './change-visit.ts';
import { type Clock, dayInZone, isoUtc } from './clock.ts';
import { isShared, type OfferedDay, offeredDays } from './visit-days.ts';

/** A visit as the owner of a fence of it sees it. */
export interface OwnerVisit {
  readonly visit: Visit;
  readonly site: SiteRecord;
  /** What it does at the owner's fences. */
  readonly items: Visit['items'];
  /** Days to choose among for its beginning, with the last that it then takes; none where the visit is not proposed any more, or nothing is left in its week. */
  readonly offered: readonly OfferedDay[];
  /** True where it goes to fences of others too: then each marks the days that suit, and the office confirms one. */
  readonly withOthers: boolean;
  /** Days of that week which the owner marked as suiting, none of them where none does; null where nothing was marked. */
  readonly marked: readonly CalendarDay[] | null;
}

/** The visits to an owner's fences that are proposed or confirmed and not over, with the days to choose among. */
export async function visitsOfOwner(register: Register, ownerRef: string, now: Clock): Promise<readonly OwnerVisit[]> {
  const refs = new Set((await fencesOfOwner(register.db, ownerRef)).map(({ ref }) => ref));
  const standing = (await listVisits(register.db, { states: ['proposed', 'confirmed'] })).filter(({ items }) =>
    items.some(({ fenceRef }) => refs.has(fenceRef)),
  );
  const sites = await recordsWhereIn(register.db, 'sites', 'ref', [...new Set(standing.map(({ siteRef }) => siteRef))]);
  const siteOf = new Map(sites.map((site) => [site.ref, site]));
  const parties = await loadFenceParties(
    register,
    standing.flatMap((visit) => visit.items.map(({ fenceRef }) => fenceRef)),
  );
  const uids = standing.map(({ uid }) => uid);
  const wishes = (await listDayWishes(register.db, uids)).filter((wish) => wish.ownerRef === ownerRef);
  const found: OwnerVisit[] = [];
  for (const visit of standing) {
    const site = siteOf.get(visit.siteRef);
    if (!site) continue;
    const today = dayInZone(now(), site.timeZone);
    if (visit.lastDay < today) continue;
    const items = visit.items.filter(({ fenceRef }) => refs.has(fenceRef));
    const withOthers = isShared(visit.items.flatMap(({ fenceRef }) => parties.get(fenceRef) ?? []));
    const week = mondayOf(visit.firstDay);
    const wish = wishes.find((each) => each.visitUid === visit.uid && each.week === week);
    const offered = await offeredDays(register, visit, today);
    found.push({ visit, site, items, offered, withOthers, marked: wish?.suits ?? null });
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
  const offered = known.offered.map(({ firstDay }) => firstDay);
  if (visit.state === 'confirmed' && visit.firstDay === day) return { kind: 'already', visit };
  if (known.withOthers || !offered.includes(day)) return { kind: 'not offered' };
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
    detail: canonicalJson({ day, siteRef: visit.siteRef, proposed: visit.firstDay, offered }),
    once: `day chosen|${uid}|${result.visit.sequence}`,
    at: isoUtc(now()),
    open: false,
  });
  return { kind: 'chosen', visit: result.visit };
}

/**
 * Notes which days of a proposed visit that goes to fences of others too suit one of its owners; the office sees how many each
 * suits and confirms one. Marked again before that, the newest counts.
 * @param days of those offered; empty where none suits
 */
export async function markDays(
  register: Register,
  link: Pick<OwnerLink, 'id' | 'ownerRef'>,
  { uid, days }: { readonly uid: string; readonly days: readonly string[] },
  now: Clock,
): Promise<'marked' | 'already' | 'not offered' | 'no such visit'> {
  const known = (await visitsOfOwner(register, link.ownerRef, now)).find(({ visit }) => visit.uid === uid);
  if (!known) return 'no such visit';
  const { visit, withOthers, marked } = known;
  const offered = known.offered.map(({ firstDay }) => firstDay);
  if (!withOthers || offered.length === 0 || !days.every((day) => offered.includes(day))) return 'not offered';
  const suits = offered.filter((day) => days.includes(day));
  if (marked !== null && canonicalJson(marked) === canonicalJson(suits)) return 'already';
  await addDayWish(register.db, {
    visitUid: uid,
    ownerRef: link.ownerRef,
    linkId: link.id,
    week: mondayOf(visit.firstDay),
    offered,
    suits,
    at: isoUtc(now()),
  });
  return 'marked';
}
