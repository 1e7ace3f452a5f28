import { setTimeout as pause } from 'node:timers/promises';
import type { Register } from '../register/database.ts';
import { changeCount } from '../register/register-changes.ts';
import { NO_MONEY } from '../season/money/money.ts';
import type { Clock } from './clock.ts';
import { type OwnerMoneyResult, ownerMoney } from './owner-money.ts';

/** How an owner's money is planned where the office said nothing else; the command line takes the same. Source: judgement. */
const TERMS = {
  years: 20,
  openingBalance: NO_MONEY,
  contribution: { kind: 'find', course: 'flat', cover: 'expected' },
  inflation: 0.03,
  interest: 0.02,
  floor: NO_MONEY,
  dependence: 'independent',
  rule: 'cheapest',
  longestServiceYears: 25,
  inspectEveryYears: 5,
  sharedPart: 0.5,
} as const;

/** Plans that are kept at most, the one asked for longest ago going first. */
const MOST_KEPT = 40;

/** The plan of an owner, or that it is still being worked out. */
export type MoneyAhead = OwnerMoneyResult | { readonly kind: 'being worked out' };

/** Asks for the plan of an owner's fences. @param waitMs how long an answer is waited for [ms] */
export type AskMoney = (ownerRef: string, waitMs: number) => Promise<MoneyAhead>;

/**
 * Works out the money of owners when a page asks for it, which takes a third of a second a fence, and keeps it until a record
 * changes or the day does. A page that will not wait so long is told, and the work goes on.
 */
export function moneyAhead(register: Register, now: Clock): AskMoney {
  const kept = new Map<string, { readonly state: string; readonly plan: Promise<OwnerMoneyResult> }>();
  const planOf = async (ownerRef: string): Promise<OwnerMoneyResult> => {
    const state = `${now().toISODate()} ${await changeCount(register.db)}`;
    const known = kept.get(ownerRef);
    const plan =
      known?.state === state
        ? known.plan
        : ownerMoney(register, { ...TERMS, ownerRef, now, onProgress: () => undefined });
    kept.delete(ownerRef);
    kept.set(ownerRef, { state, plan });
    // a plan that failed is worked out anew the next time it is asked for
    plan.catch(() => kept.delete(ownerRef));
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    return plan;
  };
  return (ownerRef, waitMs) =>
    Promise.race([planOf(ownerRef), pause(waitMs, { kind: 'being worked out' } as const, { ref: false })]);
}
