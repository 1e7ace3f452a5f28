import type { FenceCandidate } from '../candidates.ts';
import type { PlannedVisit } from '../plan/season-plan.ts';
import type { PlannedFence } from '../season-problem.ts';
import type { Visit, VisitItem, VisitWorks } from './visit.ts';

/** A visit of a plan: its week is known, its days are not laid out yet. */
export interface WeekVisit extends Pick<Visit, 'crewRef' | 'siteRef' | 'travelPersonHours' | 'items'> {
  /** Monday of its week. */
  readonly week: string;
}

/** What a candidate does: kinds in their order, each with its posts. */
export const worksOf = (candidate: FenceCandidate): readonly VisitWorks[] =>
  candidate.kind === 'inspect'
    ? [{ kind: 'inspect', posts: candidate.posts, postCount: candidate.posts.length }]
    : candidate.option.parts.map(({ kind, posts, postCount }) => ({ kind, posts, postCount }));

/**
 * The visits of a plan with what is done at each fence. Fences whose date was promised are left out: they have their visits,
 * which no plan touches; a visit of none but such fences is none of the plan's.
 */
export const visitsOfPlan = (
  visits: readonly PlannedVisit[],
  fences: ReadonlyMap<string, PlannedFence>,
): readonly WeekVisit[] =>
  visits.flatMap(({ week, crewRef, siteRef, travelPersonHours, items }) => {
    const own = items.flatMap(({ jobRef, optionKey, personHours, cost, mustRank, promised }): readonly VisitItem[] => {
      const candidate = fences.get(jobRef)?.candidates.candidates.find(({ key }) => key === optionKey);
      return promised || !candidate
        ? []
        : [{ fenceRef: jobRef, optionKey, works: worksOf(candidate), personHours, price: cost, mustRank }];
    });
    return own.length === 0 ? [] : [{ week, crewRef, siteRef, travelPersonHours, items: own }];
  });
