import { MODEL_VERSION } from '../forecast/model-version.ts';
import type { Register } from '../register/database.ts';
import { type NewPlan, newestPlanNumber, storePlan } from '../register/plan-store.ts';
import type { LeftOutReason } from '../season/plan/season-plan.ts';
import type { AcceptedVisits } from '../season/visit/accept-plan.ts';
import { visitsOfPlan } from '../season/visit/visits-of-plan.ts';
import { type Clock, isoUtc } from './clock.ts';
import type { MadePlan } from './make-season-plan.ts';
import { acceptanceOf } from './plan-visits.ts';

/** Fences counted by why nothing is done at them, the most frequent first. */
function countedReasons(unserved: MadePlan['plan']['unserved']): NonNullable<NewPlan['content']['unservedOthers']> {
  const counts = new Map<LeftOutReason, number>();
  for (const { reason } of unserved) counts.set(reason, (counts.get(reason) ?? 0) + 1);
  return [...counts]
    .map(([reason, fences]) => ({ reason, fences }))
    .sort((a, b) => b.fences - a.fences || (a.reason < b.reason ? -1 : 1));
}

/** What is kept of a plan. */
function planToKeep({ asOf, problem, plan, risk, fences, hours, standing }: MadePlan, madeAt: string): NewPlan {
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
      unservedMusts: plan.unserved.filter(({ mustRank }) => mustRank > 0),
      unservedOthers: countedReasons(plan.unserved.filter(({ mustRank }) => mustRank === 0)),
      hours,
    },
  };
}

/** A plan that was made, its number where it is stored, and what accepting it would make of the visits that stand. */
export interface KeptPlan {
  readonly number: number | null;
  readonly changes: AcceptedVisits;
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
    return { number, changes: await acceptanceOf(tx, toAccept, { today: made.asOf, at }) };
  });
