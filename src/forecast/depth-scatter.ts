import { NORMAL_QUADRATURE } from './normal-distribution.ts';
import { medianByCount, type PostGroup } from './post-group.ts';
import type { StateModel } from './state-model.ts';

/** Rot depth of the posts of one group at each belief point [mm]: of the median post, the mean over posts and its scatter. */
export interface DepthScatter {
  /** Depth of a post of median scatter; of the ends the deepest. */
  readonly medianMm: Float64Array;
  /** Mean depth of a post picked from the group. */
  readonly meanMm: Float64Array;
  /** Standard deviation from post to post, the point being given. */
  readonly spreadMm: Float64Array;
}

/**
 * Depth and post-to-post scatter of depth in a group of posts, the scatter of pace (0.54) integrated by quadrature [mm].
 * @param dayNumber day counted from 1970-01-01 [d]
 * Source: depth law of decay/; scatter see `POST_PACE_SPREAD` (derived).
 */
export function depthScatter(model: StateModel, group: PostGroup, dayNumber: number): DepthScatter {
  const { classes } = model.classes;
  const { weights } = NORMAL_QUADRATURE;
  const counts = new Map<number, number>();
  for (const index of group.members) {
    const { kind, numbers } = classes[index]!;
    counts.set(kind, (counts.get(kind) ?? 0) + numbers.length);
  }
  const posts = [...counts.values()];
  const total = posts.reduce((sum, count) => sum + count, 0);
  const { count } = model.points;
  const scatter = {
    medianMm: new Float64Array(count),
    meanMm: new Float64Array(count),
    spreadMm: new Float64Array(count),
  };
  for (let point = 0; point < count; point += 1) {
    let mean = 0;
    let variance = 0;
    const medians: number[] = [];
    for (const [kind, ofKind] of counts) {
      const rot = model.rots[kind]!;
      const at = rot.moment(point, dayNumber);
      medians.push(rot.depthMm(point, at, null));
      const depths = weights.map((_, node) => rot.depthMm(point, at, node));
      const own = depths.reduce((sum, depth, node) => sum + weights[node]! * depth, 0);
      const scattered = depths.reduce((sum, depth, node) => sum + weights[node]! * (depth - own) ** 2, 0);
      mean += (ofKind / total) * own;
      variance += (ofKind / total) * scattered;
    }
    scatter.medianMm[point] = group.name === 'line' ? medianByCount(medians, posts) : Math.max(...medians);
    scatter.meanMm[point] = mean;
    scatter.spreadMm[point] = Math.sqrt(variance);
  }
  return scatter;
}
