import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { WorksCandidate } from './candidates.ts';
import { type PlannedFence, serves } from './season-problem.ts';

/** What a rebuild would come to at a fence that no works of the catalogue bring to where it must be. */
export interface MustRemedy {
  /** Key of the rebuild that leaves it best off, what else is done with it included; null where none makes sense there. */
  readonly rebuild: {
    readonly key: string;
    readonly price: number;
    readonly standing: FenceStanding;
    readonly endsStanding: FenceStanding | null;
    /** Posts that stay broken, leaning or closed off with it. */
    readonly dangerPosts: readonly number[];
  } | null;
}

const WORST_FIRST: readonly FenceStanding[] = ['short from new', 'short', 'closing', 'clear'];

/** The higher, the better the fence stands after works: first its weakest part, then the other one. */
function ranked({ standing, endsStanding }: WorksCandidate): number {
  const ranks = [standing, endsStanding ?? standing].map((each) => WORST_FIRST.indexOf(each));
  return Math.min(...ranks) * WORST_FIRST.length + Math.max(...ranks);
}

/**
 * Why nothing serves a fence that must be served: what a rebuild, the most that can be done, would leave. Null where some works
 * of the catalogue do serve it, so that something else stands in their way.
 */
export function mustRemedy(fence: PlannedFence): MustRemedy | null {
  const { candidates } = fence.candidates;
  if (candidates.some((candidate) => serves(candidate, fence))) return null;
  const rebuilds = candidates.filter(
    (candidate): candidate is WorksCandidate =>
      candidate.kind === 'works' && candidate.option.parts.some(({ kind }) => kind === 'rebuild'),
  );
  const best = rebuilds.reduce<WorksCandidate | null>((most, each) => {
    if (most === null) return each;
    const better = ranked(each) - ranked(most);
    return better > 0 || (better === 0 && each.cost.price < most.cost.price) ? each : most;
  }, null);
  if (best === null) return { rebuild: null };
  const { key, cost, standing, endsStanding, mends } = best;
  const dangerPosts = fence.dangerPosts.filter((post) => !mends.includes(post));
  return { rebuild: { key, price: cost.price, standing, endsStanding, dangerPosts } };
}
