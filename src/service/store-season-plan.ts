import { MODEL_VERSION } from '../forecast/model-version.ts';
import type { Register } from '../register/database.ts';
import { type NewPlan, newestPlanNumber, type PlanContent, storePlan } from '../register/plan-store.ts';
import { readSettings } from '../register/settings-store.ts';
import type { AcceptedVisits } from '../season/visit/accept-plan.ts';
import { visitsOfPlan } from '../season/visit/visits-of-plan.ts';
import { type Clock, isoUtc } from './clock.ts';
import type { MadePlan } from './make-season-plan.ts';
import { leftOutToKeep, wornOutToKeep } from './plan-left-out.ts';
import { acceptanceOf } from './plan-visits.ts';

/** What is kept of a plan. */
function planToKeep(made: MadePlan, madeAt: string): NewPlan {
  const { asOf, problem, plan, risk, fences, hours, standing } = made;
  return {
    madeAt,
    asOf,
    firstWeek: problem.weeks[0]!,
    weeks: problem.weeks.length,
    modelVersion: MODEL_VERSION,
    content: {
      visits: visitsOfPlan(plan.visits, fences),
      risk,
      stages: plan.stages,
      method: plan.method,
      safetyTimeStruck: plan.safetyTimeStruck,
      promised: [...standing.promised.keys()].sort(),
      brokenPromises: plan.brokenPromises,
      ...leftOutToKeep(made),
      wornOut: wornOutToKeep(made),
      hours,
    },
  };
}

/** A plan that was made, its number where it is stored, and what accepting it would make of the visits that stand. */
export interface KeptPlan {
  readonly number: number | null;
  readonly changes: AcceptedVisits;
  /** What is kept of it, or would be. */
  readonly content: PlanContent;
  readonly currency: string;
}

/** Stores a plan under the next number, unless it is only to be shown, and says what accepting it would change. */
export const storeSeasonPlan = (
  register: Register,
  made: MadePlan,
  { now, store }: { readonly now: Clock; readonly store: boolean },
): Promise<KeptPlan> =>
  register.db.transaction().execute(async (tx) => {
    const at = isoUtc(now());
    const plan = planToKeep(made, at);
    const number = store ? await storePlan(tx, plan) : null;
    const toAccept = {
      ...plan,
      number: number ?? ((await newestPlanNumber(tx)) ?? 0) + 1,
      visits: plan.content.visits,
    };
    const { currency } = await readSettings(tx);
    return {
      number,
      content: plan.content,
      currency,
      changes: await acceptanceOf(tx, toAccept, { today: made.asOf, at }),
    };
  });
