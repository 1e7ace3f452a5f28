import type { Register } from '../register/database.ts';
import { listPlanHeads } from '../register/plan-store.ts';
import { listRecords } from '../register/record-store.ts';
import { readVisit, storeVisit, type VisitAct } from '../register/visit-store.ts';
import type { WeekChoice } from '../season/plan/week-choices.ts';
import { changedVisit, whyNotNow } from '../season/visit/change-visit.ts';
import type { LaidOut } from '../season/visit/lay-out-days.ts';
import type { Visit, VisitItem } from '../season/visit/visit.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { canonicalJson, sha256 } from './canonical-json.ts';
import { dayAtSite } from './change-visit.ts';
import { type Clock, isoUtc } from './clock.ts';
import { layingOut, visitHours } from './plan-visits.ts';
import { placeOf } from './season-inputs.ts';
import { type CrewInRegister, loadCrews } from './season-register.ts';
import { tellOfVisit } from './tell-of-visit.ts';
import { lastDayOf } from './visit-day-doubts.ts';
import { choicesFor, type WeekChoices } from './week-choices-of.ts';

/** Characters of the hash in the uid of a visit that the office split off. */
const MARK_LENGTH = 8;

/** Which fence of which visit is to be given to which week of which crew. */
export interface GiveRequest extends VisitAct {
  readonly uid: string;
  readonly fenceRef: string;
  readonly week: CalendarDay;
  readonly crewRef: string;
  readonly now: Clock;
}

/** What becomes of the visits. */
export interface GivenWeek {
  readonly choice: WeekChoice;
  /** The visit that brings the fence in its new week: the old one where it had no other fence. */
  readonly visit: Visit;
  /** What is left of the visit that had it; null where nothing is. */
  readonly rest: Visit | null;
}

/** What came of giving a fence a week. */
export type GiveResult =
  | { readonly kind: 'refused'; readonly reason: string }
  | ({ readonly kind: 'given' | 'preview' } & GivenWeek);

const refused = (reason: string): GiveResult => ({ kind: 'refused', reason });

/** Why a choice cannot be taken; null where it can. */
function faultOf(choice: WeekChoice | undefined, { crewRef, week }: GiveRequest): string | null {
  if (!choice) return `crew ${crewRef} cannot do these works there in the week of ${week}`;
  if (choice.isNow) return 'the fence is in that week already';
  if (choice.bars.length > 0) return `the rules of its works forbid the week of ${week}`;
  if (choice.hoursLeft < 0)
    return `crew ${crewRef} has not the hours in the week of ${week}: ${(-choice.hoursLeft).toFixed(1)} are missing; give another fence of that week away first`;
  return null;
}

/** Days in the new week beside whatever stands there; null where none hold the works. */
async function daysIn(
  { db }: Register,
  { crewRef, week }: GiveRequest,
  parts: {
    readonly item: VisitItem;
    readonly siteRef: string;
    readonly travelPersonHours: number;
    readonly beside: readonly Visit[];
    readonly crews: readonly CrewInRegister[];
  },
): Promise<LaidOut | null> {
  const { item, siteRef, travelPersonHours, beside, crews } = parts;
  const places = new Map((await listRecords(db, 'sites')).map((site) => [site.ref, placeOf(site)]));
  const laid = layingOut(crews, places)({ crewRef, monday: week, beside }, [
    {
      key: item.fenceRef,
      siteRef,
      workPersonHours: item.personHours,
      travelPersonHours,
      mustRank: item.mustRank,
      standing: null,
    },
  ]);
  return laid.get(item.fenceRef) ?? null;
}

/** The visits as they are once a fence has been given to a week. */
async function given(register: Register, request: GiveRequest, found: WeekChoices): Promise<GiveResult> {
  const { uid, fenceRef, week, crewRef, now } = request;
  const { visit, item, choices, travelPersonHours, open } = found;
  const choice = choices.find((each) => each.week === week && each.crewRef === crewRef);
  const fault = faultOf(choice, request);
  if (fault !== null || !choice) return refused(fault ?? 'there is no such week');
  const crews = await loadCrews(register.db);
  const beside = open.filter((other) => {
    const touches = mondayOf(other.firstDay) <= week && other.lastDay >= week;
    return other.uid !== uid && other.crewRef === crewRef && touches;
  });
  const days = await daysIn(register, request, {
    item,
    siteRef: visit.siteRef,
    travelPersonHours: travelPersonHours(crewRef),
    beside,
    crews,
  });
  if (!days) {
    return refused(
      `no days in the week of ${week} hold the ${item.personHours.toFixed(1)} hours of fence ${fenceRef} in one piece; give another fence of that week away first`,
    );
  }
  const at = isoUtc(now());
  const place = { crewRef, ...days, startsAt: null, planId: null };
  const others = visit.items.filter((each) => each.fenceRef !== fenceRef);
  if (others.length === 0) return { kind: 'preview', choice, visit: changedVisit(visit, place, at), rest: null };
  const mark = sha256(canonicalJson({ uid, fenceRef, at })).slice(0, MARK_LENGTH);
  const split: Visit = { ...visit, ...place, uid: `G-${mark}`, sequence: 0, items: [item], note: '', changedAt: at };
  const owner = crews.find(({ ref }) => ref === visit.crewRef);
  const lastDay = owner ? lastDayOf(owner, visit.firstDay, visitHours({ ...visit, items: others })) : visit.lastDay;
  const shorter = lastDay < visit.lastDay ? lastDay : visit.lastDay;
  return {
    kind: 'preview',
    choice,
    visit: split,
    rest: changedVisit(visit, { items: others, lastDay: shorter }, at),
  };
}

/** What giving a fence to a week would make of the visits; nothing is stored. */
export async function previewGiven(register: Register, request: GiveRequest): Promise<GiveResult> {
  const found = await choicesFor(register, request);
  return found.kind === 'refused' ? found : given(register, request, found);
}

/**
 * Gives a fence of a proposed visit to a week of a crew, in one transaction: it gets a visit of the office's own there, which
 * no plan moves, laid out on days beside what stands, and owners are told of what changed. Refused where the rules forbid that week or its hours do not hold it.
 */
export async function giveWeek(register: Register, request: GiveRequest): Promise<GiveResult> {
  // looked at outside of the transaction: the forecast of the fence takes its time
  const looked = await choicesFor(register, request);
  if (looked.kind === 'refused') return looked;
  return register.db.transaction().execute(async (tx): Promise<GiveResult> => {
    const inTx = { ...register, db: tx };
    const now = await readVisit(tx, request.uid);
    if (now?.changedAt !== looked.visit.changedAt)
      return refused('the visit was changed in the meantime; look at it again');
    const result = await given(inTx, request, looked);
    if (result.kind !== 'preview') return result;
    const { by } = request;
    const because = request.because === '' ? `fence ${request.fenceRef} given to this week` : request.because;
    if (result.rest)
      await storeVisit(tx, result.rest, { by, because: `fence ${request.fenceRef} given to another week` });
    await storeVisit(tx, result.visit, { by, because });
    const telling = {
      today: await dayAtSite(inTx, result.visit.siteRef, request.now),
      at: isoUtc(request.now()),
      planNumber: null,
    };
    if (result.rest) await tellOfVisit(inTx, result.rest, telling);
    await tellOfVisit(inTx, result.visit, telling);
    return { ...result, kind: 'given' };
  });
}

/** What came of leaving a visit to the plans again. */
export type LeaveResult =
  | { readonly kind: 'left'; readonly visit: Visit }
  | { readonly kind: 'refused'; readonly reason: string };

/** Leaves a visit that the office laid to the plans again: the next one that is accepted may move it. */
export const leaveToPlans = (
  register: Register,
  { uid, now, ...act }: VisitAct & { readonly uid: string; readonly now: Clock },
): Promise<LeaveResult> =>
  register.db.transaction().execute(async (tx): Promise<LeaveResult> => {
    const visit = await readVisit(tx, uid);
    if (!visit) return { kind: 'refused', reason: 'there is no such visit' };
    const never = whyNotNow(visit, 'confirmed');
    if (never !== null) return { kind: 'refused', reason: never };
    if (visit.state !== 'proposed' || visit.planId !== null)
      return { kind: 'refused', reason: 'it is not a proposed visit of the office’s own' };
    const inForce = (await listPlanHeads(tx)).find(({ state }) => state === 'accepted');
    if (!inForce) return { kind: 'refused', reason: 'no plan is in force that could have it; accept one first' };
    const after = changedVisit(visit, { planId: inForce.number }, isoUtc(now()));
    await storeVisit(tx, after, { ...act, because: act.because === '' ? 'left to the plans again' : act.because });
    return { kind: 'left', visit: after };
  });
