import type { Register } from '../register/database.ts';
import { changeCount } from '../register/register-changes.ts';
import type { Clock } from './clock.ts';
import { inTime } from './in-time.ts';
import type { LongWork } from './long-work.ts';
import type { OwnerMoneyResult } from './owner-money.ts';

/** Plans that are kept at most, the one asked for longest ago going first. */
const MOST_KEPT = 40;

/** The plan of an owner, or that it is still being worked out. */
export type MoneyAhead = OwnerMoneyResult | { readonly kind: 'being worked out' };

/** Asks for the plan of an owner's fences, and waits as long as a page does. */
export type AskMoney = (ownerRef: string) => Promise<MoneyAhead>;

/**
 * Works out the money of owners when a page asks for it, which takes a third of a second a fence in a thread beside the pages, and keeps it until a record
 * changes or the day does. A page that will not wait so long is told, and the work goes on.
 */
export function moneyAhead({
  register,
  clock: now,
  work,
}: {
  readonly register: Register;
  readonly clock: Clock;
  readonly work: Pick<LongWork, 'finish' | 'patienceMs'>;
}): AskMoney {
  const kept = new Map<string, { readonly state: string; readonly plan: Promise<OwnerMoneyResult> }>();
  const planOf = async (ownerRef: string): Promise<OwnerMoneyResult> => {
    const state = `${now().toISODate()} ${await changeCount(register.db)}`;
    const known = kept.get(ownerRef);
    const plan = known?.state === state ? known.plan : work.finish('plan money of owner', { ownerRef });
    kept.delete(ownerRef);
    kept.set(ownerRef, { state, plan });
    // a plan that failed is worked out anew the next time it is asked for
    plan.catch(() => kept.delete(ownerRef));
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    return plan;
  };
  return async (ownerRef) => (await inTime(planOf(ownerRef), work.patienceMs)) ?? { kind: 'being worked out' };
}
