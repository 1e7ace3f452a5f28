import type { Register } from '../register/database.ts';
import { markAccepted, readPlan, type StoredPlan } from '../register/plan-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { storeVisit, type VisitAct } from '../register/visit-store.ts';
import type { AcceptedVisits } from '../season/visit/accept-plan.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { type Clock, dayInZone, isoUtc } from './clock.ts';
import { acceptanceOf } from './plan-visits.ts';

/** What came of accepting a plan. */
export type AcceptResult =
  | { readonly kind: 'no such plan' }
  | { readonly kind: 'accepted before'; readonly plan: StoredPlan }
  | { readonly kind: 'begun already'; readonly plan: StoredPlan; readonly today: CalendarDay }
  | { readonly kind: 'accepted'; readonly plan: StoredPlan; readonly visits: AcceptedVisits };

/**
 * Accepts a season plan, in one transaction: its visits become proposed ones, laid out on days; those that the plan before
 * proposed and this one has no longer are cancelled. Refused where it was accepted before or its first week has begun.
 */
export const acceptSeasonPlan = (
  register: Register,
  { number, now, ...act }: VisitAct & { readonly number: number; readonly now: Clock },
): Promise<AcceptResult> =>
  register.db.transaction().execute(async (tx): Promise<AcceptResult> => {
    const plan = await readPlan(tx, number);
    if (!plan) return { kind: 'no such plan' };
    if (plan.state !== 'made') return { kind: 'accepted before', plan };
    const { timeZone } = await readSettings(tx);
    const today = dayInZone(now(), timeZone);
    if (plan.firstWeek < today) return { kind: 'begun already', plan, today };
    const at = isoUtc(now());
    const visits = await acceptanceOf(tx, { ...plan, visits: plan.content.visits }, { today, at });
    await markAccepted(tx, number, { ...act, at });
    for (const visit of visits.cancelled)
      await storeVisit(tx, visit, { ...act, because: `season plan ${number} has it no longer` });
    const recosted = visits.kept.filter(({ changedAt }) => changedAt === at);
    for (const visit of [...recosted, ...visits.moved, ...visits.created]) {
      await storeVisit(tx, visit, { ...act, because: act.because === '' ? `season plan ${number}` : act.because });
    }
    return { kind: 'accepted', plan, visits };
  });
