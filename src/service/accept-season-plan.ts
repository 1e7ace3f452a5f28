import type { Register } from '../register/database.ts';
import { markAccepted, readPlan, type StoredPlan } from '../register/plan-store.ts';
import { listRecords, type RegisterDb } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { countOwnersToTell } from '../register/visit-notices.ts';
import { storeVisit, type VisitAct } from '../register/visit-store.ts';
import type { AcceptedVisits } from '../season/visit/accept-plan.ts';
import type { Visit } from '../season/visit/visit.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { type Clock, dayInZone, isoUtc } from './clock.ts';
import { acceptanceOf } from './plan-visits.ts';
import { tellOfVisit } from './tell-of-visit.ts';

/** What came of accepting a plan. */
export type AcceptResult =
  | { readonly kind: 'no such plan' }
  | { readonly kind: 'accepted before'; readonly plan: StoredPlan }
  | { readonly kind: 'begun already'; readonly plan: StoredPlan; readonly today: CalendarDay }
  | { readonly kind: 'accepted'; readonly plan: StoredPlan; readonly visits: AcceptedVisits };

/** What would become of the visits, or why the plan cannot be accepted. */
async function looked(db: RegisterDb, number: number, now: Clock): Promise<AcceptResult> {
  const plan = await readPlan(db, number);
  if (!plan) return { kind: 'no such plan' };
  if (plan.state !== 'made') return { kind: 'accepted before', plan };
  const today = dayInZone(now(), (await readSettings(db)).timeZone);
  if (plan.firstWeek < today) return { kind: 'begun already', plan, today };
  const visits = await acceptanceOf(db, { ...plan, visits: plan.content.visits }, { today, at: isoUtc(now()) });
  return { kind: 'accepted', plan, visits };
}

/** What accepting a season plan would come to, and how many owners would be told of it; nothing is stored. */
export async function previewAcceptance(
  { db }: Register,
  { number, now }: { readonly number: number; readonly now: Clock },
): Promise<{ readonly result: AcceptResult; readonly ownersToTell: number }> {
  const result = await looked(db, number, now);
  if (result.kind !== 'accepted') return { result, ownersToTell: 0 };
  const { created, moved, cancelled } = result.visits;
  const fences = [...created, ...moved, ...cancelled].flatMap(({ items }) => items.map(({ fenceRef }) => fenceRef));
  return { result, ownersToTell: await countOwnersToTell(db, [...new Set(fences)]) };
}

/**
 * Accepts a season plan, in one transaction: its visits become proposed ones, laid out on days; those that the plan before
 * proposed and this one has no longer are cancelled; what owners are to be told of it is queued with it. Refused where it was accepted before or its first week has begun.
 */
export const acceptSeasonPlan = (
  register: Register,
  { number, now, ...act }: VisitAct & { readonly number: number; readonly now: Clock },
): Promise<AcceptResult> =>
  register.db.transaction().execute(async (tx): Promise<AcceptResult> => {
    const result = await looked(tx, number, now);
    if (result.kind !== 'accepted') return result;
    const { visits } = result;
    const { timeZone } = await readSettings(tx);
    const at = isoUtc(now());
    await markAccepted(tx, number, { ...act, at });
    const inTx = { ...register, db: tx };
    const zones = new Map((await listRecords(tx, 'sites')).map((site) => [site.ref, site.timeZone]));
    const store = async (visit: Visit, because: string): Promise<void> => {
      await storeVisit(tx, visit, { ...act, because });
      await tellOfVisit(inTx, visit, {
        today: dayInZone(now(), zones.get(visit.siteRef) ?? timeZone),
        at,
        planNumber: number,
      });
    };
    for (const visit of visits.cancelled) await store(visit, `season plan ${number} has it no longer`);
    const recosted = visits.kept.filter(({ changedAt }) => changedAt === at);
    for (const visit of [...recosted, ...visits.moved, ...visits.created]) {
      await store(visit, act.because === '' ? `season plan ${number}` : act.because);
    }
    return result;
  });
