import type { Register } from '../register/database.ts';
import { newestPlanNumber, readPlan } from '../register/plan-store.ts';
import { listVisits } from '../register/visit-store.ts';
import type { VisitItem, VisitWorks } from '../season/visit/visit.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { mendsPosts } from './works-meanwhile.ts';

/** What a season plan does at a fence that money says to replace now. */
export type PlanBesideMoney =
  | {
      readonly kind: 'mends';
      readonly works: readonly VisitWorks[];
      /** What the owner is asked for, before tax, in the register's currency. */
      readonly price: number;
      /** Day of its visit; null where it is in a plan only that was made and not accepted. */
      readonly day: CalendarDay | null;
    }
  /** The plan of that number has nothing for it. */
  | { readonly kind: 'left out'; readonly plan: number }
  | { readonly kind: 'rebuilds' }
  /** No plan, or one that only looks at it. */
  | { readonly kind: 'not known' };

function ofItem({ works, price }: Pick<VisitItem, 'works' | 'price'>, day: CalendarDay | null): PlanBesideMoney {
  if (works.some(({ kind }) => kind === 'rebuild')) return { kind: 'rebuilds' };
  return mendsPosts(works) ? { kind: 'mends', works, price, day } : { kind: 'not known' };
}

/**
 * What the season does at a fence: its next visit, else what the newest plan says.
 * @param plans whether plans that were made count too, which only the office sees
 */
export async function planBesideMoney(
  { db }: Pick<Register, 'db'>,
  fenceRef: string,
  { today, plans }: { readonly today: CalendarDay; readonly plans: boolean },
): Promise<PlanBesideMoney> {
  const visits = await listVisits(db, { fenceRefs: [fenceRef], from: today, states: ['proposed', 'confirmed'] });
  for (const { items, firstDay } of visits) {
    const item = items.find((one) => one.fenceRef === fenceRef);
    if (item) return ofItem(item, firstDay);
  }
  const number = plans ? await newestPlanNumber(db) : null;
  const plan = number === null ? null : await readPlan(db, number);
  if (!plan) return { kind: 'not known' };
  const { visits: planned, unservedMusts, unservedOthers = [] } = plan.content;
  const item = planned.flatMap(({ items }) => items).find((one) => one.fenceRef === fenceRef);
  if (item) return ofItem(item, null);
  const leftOut = [...unservedMusts, ...unservedOthers.flatMap(({ named = [] }) => named)];
  return leftOut.some(({ jobRef }) => jobRef === fenceRef)
    ? { kind: 'left out', plan: plan.number }
    : { kind: 'not known' };
}
