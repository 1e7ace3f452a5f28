import type { PlanContent, StoredLeftOut } from '../register/plan-store.ts';
import { mustRemedy } from '../season/must-remedy.ts';
import type { LeftOutReason, UnservedJob } from '../season/plan/season-plan.ts';
import { worksOf } from '../season/visit/visits-of-plan.ts';
import type { MadePlan } from './make-season-plan.ts';

/** Reasons that are told with the numbers of the works that came nearest. */
const WITH_NUMBERS: readonly LeftOutReason[] = [
  'locate-notice-too-late',
  'cure-time-too-late',
  'ground-frozen',
  'weeks-closed',
  'too-far-for-any-crew',
  'longer-than-any-crew-week',
  'no-crew-hours',
];

function leftOutOf({ jobRef, reason, mustRank, nearest }: UnservedJob, { fences }: MadePlan): StoredLeftOut {
  const fence = fences.get(jobRef);
  const isTold = nearest !== null && WITH_NUMBERS.includes(reason);
  const candidate = fence?.candidates.candidates.find(({ key }) => key === nearest?.optionKey);
  const remedy = fence && mustRank > 0 ? mustRemedy(fence) : null;
  return {
    jobRef,
    reason,
    ...(isTold ? { nearest, works: candidate ? worksOf(candidate) : [] } : {}),
    ...(remedy ? { remedy } : {}),
  };
}

/** What a plan keeps of the fences for which it does nothing: those that must be served, then the others by reason, the most frequent first. */
export function leftOutToKeep(made: MadePlan): Required<Pick<PlanContent, 'unservedMusts' | 'unservedOthers'>> {
  const { unserved } = made.plan;
  const byReason = new Map<LeftOutReason, StoredLeftOut[]>();
  for (const job of unserved) {
    if (job.mustRank > 0) continue;
    byReason.set(job.reason, [...(byReason.get(job.reason) ?? []), leftOutOf(job, made)]);
  }
  return {
    unservedMusts: unserved
      .filter(({ mustRank }) => mustRank > 0)
      .map((job) => ({ mustRank: job.mustRank, ...leftOutOf(job, made) })),
    unservedOthers: [...byReason]
      .map(([reason, named]) => ({ reason, fences: named.length, named }))
      .sort((a, b) => b.fences - a.fences || (a.reason < b.reason ? -1 : 1)),
  };
}

/** Fences that a plan visits, not to rebuild them, though their rails and boards count as worn out, with their age [a]. */
export const wornOutToKeep = ({ plan, fences }: MadePlan): NonNullable<PlanContent['wornOut']> =>
  plan.visits
    .flatMap(({ items }) => items)
    .flatMap(({ jobRef, optionKey }) => {
      const fence = fences.get(jobRef);
      const candidate = fence?.candidates.candidates.find(({ key }) => key === optionKey);
      const rebuilds = candidate ? worksOf(candidate).some(({ kind }) => kind === 'rebuild') : false;
      const ageYears = fence?.wornOutYears ?? null;
      return ageYears === null || rebuilds ? [] : [{ fenceRef: jobRef, ageYears }];
    })
    .sort((a, b) => (a.fenceRef < b.fenceRef ? -1 : 1));
