import type { Register } from '../register/database.ts';
import { readRecord, recordsWhereIn } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { readVisit, storeVisit, type VisitAct } from '../register/visit-store.ts';
import { changedVisit, whyNotNow } from '../season/visit/change-visit.ts';
import type { Visit } from '../season/visit/visit.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { type Clock, dayInZone, isoUtc } from './clock.ts';
import { planCrews } from './season-inputs.ts';
import { type CrewInRegister, loadCrews } from './season-register.ts';
import { tellOfVisit } from './tell-of-visit.ts';
import { lastDayBeside, visitDayDoubts } from './visit-day-doubts.ts';

/** What came of a change; where it is `asked`, it holds once it is confirmed. */
export type VisitChangeResult =
  | { readonly kind: 'no such visit' }
  | { readonly kind: 'refused'; readonly visit: Visit; readonly reasons: readonly string[] }
  | { readonly kind: 'asked'; readonly visit: Visit; readonly reasons: readonly string[] }
  | {
      readonly kind: 'changed';
      readonly visit: Visit;
      readonly before: Visit;
      /** What speaks against it, and was confirmed. */
      readonly doubts: readonly string[];
    };

/** The site's day: visits are days at the site. */
export async function dayAtSite(register: Register, siteRef: string, now: Clock): Promise<CalendarDay> {
  const site = await readRecord(register.db, 'sites', siteRef);
  return dayInZone(now(), site?.timeZone ?? (await readSettings(register.db)).timeZone);
}

/** Who changes which visit, when. */
export interface VisitRequest extends VisitAct {
  readonly uid: string;
  readonly now: Clock;
  /** True where only what it would come to is asked: nothing is stored. */
  readonly onlyLook?: boolean;
}

/** Changes a visit within one transaction: read, judge, store. */
const change = (
  register: Register,
  { uid, now, onlyLook = false, by, because }: VisitRequest,
  work: (
    inTx: Register,
    visit: Visit,
    today: CalendarDay,
  ) => Promise<
    { readonly after: Visit; readonly doubts: readonly string[] } | Exclude<VisitChangeResult, { kind: 'changed' }>
  >,
): Promise<VisitChangeResult> =>
  register.db.transaction().execute(async (tx): Promise<VisitChangeResult> => {
    const inTx = { ...register, db: tx };
    const visit = await readVisit(tx, uid);
    if (!visit) return { kind: 'no such visit' };
    const today = await dayAtSite(inTx, visit.siteRef, now);
    const result = await work(inTx, visit, today);
    if ('kind' in result) return result;
    if (!onlyLook) {
      await storeVisit(tx, result.after, { by, because });
      await tellOfVisit(inTx, result.after, { today, at: isoUtc(now()), planNumber: null });
    }
    return { kind: 'changed', visit: result.after, before: visit, doubts: result.doubts };
  });

/** The way of a crew to the site of a visit [h]. */
async function travelOf(register: Register, visit: Visit, crew: CrewInRegister, day: CalendarDay): Promise<number> {
  const sites = await recordsWhereIn(register.db, 'sites', 'ref', [visit.siteRef]);
  const [planned] = planCrews([crew], sites, [mondayOf(day)]);
  return planned?.travel[0]?.personHours ?? visit.travelPersonHours;
}

/** What a visit is confirmed for. */
export interface ConfirmRequest extends VisitRequest {
  readonly day: CalendarDay;
  /** Local time at the site; null: some time that day. */
  readonly startsAt: string | null;
  /** Null: the crew that the plan chose. */
  readonly crewRef: string | null;
  /** Takes it though rules or hours speak against it. */
  readonly sure: boolean;
  /** True where it is promised only if nobody has promised it yet. */
  readonly onlyProposed?: boolean;
}

/** Promises a visit on a day: from then on no plan moves it. It may be confirmed again for another day. */
export const confirmVisit = (register: Register, request: ConfirmRequest): Promise<VisitChangeResult> => {
  const { day, startsAt, crewRef, sure, onlyProposed, ...rest } = request;
  return change(register, rest, async (inTx, visit, today) => {
    const never = whyNotNow(visit, 'confirmed');
    if (never !== null) return { kind: 'refused', visit, reasons: [never] };
    if (onlyProposed && visit.state !== 'proposed')
      return { kind: 'refused', visit, reasons: [`it is ${visit.state}`] };
    if (day < today) return { kind: 'refused', visit, reasons: [`${day} is past: at the site it is ${today}`] };
    const crews = await loadCrews(inTx.db);
    const crew = crews.find(({ ref }) => ref === (crewRef ?? visit.crewRef));
    if (!crew) {
      const known = crews.map(({ ref }) => ref).join(', ');
      return {
        kind: 'refused',
        visit,
        reasons: [`there is no crew ${JSON.stringify(crewRef ?? visit.crewRef)}; there are ${known}`],
      };
    }
    const travelPersonHours =
      crew.ref === visit.crewRef ? visit.travelPersonHours : await travelOf(inTx, visit, crew, day);
    const begun = { ...visit, crewRef: crew.ref, firstDay: day, travelPersonHours };
    const lastDay = await lastDayBeside(inTx, begun, { crew, today });
    const after = changedVisit(
      visit,
      { state: 'confirmed', crewRef: crew.ref, firstDay: day, lastDay, startsAt, travelPersonHours },
      isoUtc(request.now()),
    );
    const doubts = await visitDayDoubts(inTx, after, { crew, today });
    return doubts.length > 0 && !sure ? { kind: 'asked', visit, reasons: doubts } : { after, doubts };
  });
};

/** Notes that a visit did not take place: its fences go back to the plan. */
export const missVisit = (register: Register, request: VisitRequest): Promise<VisitChangeResult> =>
  change(register, request, (_, visit, today) => {
    const never = whyNotNow(visit, 'missed');
    const reasons = [
      ...(never === null ? [] : [never]),
      ...(never === null && visit.firstDay > today
        ? [`its day, ${visit.firstDay}, is still to come: confirm it for another day, or cancel it`]
        : []),
    ];
    return Promise.resolve(
      reasons.length > 0
        ? { kind: 'refused', visit, reasons }
        : { after: changedVisit(visit, { state: 'missed' }, isoUtc(request.now())), doubts: [] },
    );
  });

/** Calls a visit off: its fences go back to the plan. */
export const cancelVisit = (register: Register, request: VisitRequest): Promise<VisitChangeResult> =>
  change(register, request, (_, visit) => {
    const never = whyNotNow(visit, 'cancelled');
    return Promise.resolve(
      never === null
        ? { after: changedVisit(visit, { state: 'cancelled' }, isoUtc(request.now())), doubts: [] }
        : { kind: 'refused', visit, reasons: [never] },
    );
  });
