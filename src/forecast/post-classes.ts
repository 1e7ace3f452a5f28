import { dayNumber } from '../units/calendar-day.ts';
import { governingDemand, type LoadedPost } from './post-demand.ts';

/** Posts that rot and resist alike: same wood, install date, clock, cuts, sleeve and condition; a post that was read stands alone. */
export interface PostKind {
  readonly sample: LoadedPost;
  readonly earliestDay: number;
  readonly latestDay: number;
}

/** Posts of one kind and one demand: computed once, counted so many times. */
export interface PostClass {
  readonly kind: number;
  readonly sample: LoadedPost;
  readonly numbers: readonly number[];
  readonly isLinePost: boolean;
  /** Largest moment at the groundline at 1 m/s over the demands [N m/(m/s)^2]. */
  readonly momentPerV2: number;
  /** Largest force at 1 m/s over the demands [N/(m/s)^2]. */
  readonly forcePerV2: number;
}

/** The kinds and classes of a state's posts; the sum of the classes' counts is the number of posts. */
export interface PostClasses {
  readonly kinds: readonly PostKind[];
  readonly classes: readonly PostClass[];
}

/** Twelve significant digits: loads of mirrored posts that differ by rounding count as equal. */
const key = (value: number): string => value.toPrecision(12);

/**
 * Sorts the posts of a state into kinds (what rots alike) and classes (what also is loaded alike).
 * @param isRead whether a piece of wood has been read, and so has a pace of its own
 */
export function postClasses(posts: readonly LoadedPost[], isRead: (piece: string) => boolean): PostClasses {
  const kinds: PostKind[] = [];
  const kindIndex = new Map<string, number>();
  const classes = new Map<string, { -readonly [K in keyof PostClass]: PostClass[K] } & { numbers: number[] }>();
  for (const loaded of posts) {
    const { post, demands, isLinePost } = loaded;
    const kindKey = JSON.stringify([
      post.wood,
      post.installed,
      post.clock,
      post.cuts,
      post.sleeveNm,
      post.condition,
      post.condition.railConnection === null ? null : post.bays,
      isRead(post.piece) ? post.piece : null,
    ]);
    let kind = kindIndex.get(kindKey);
    if (kind === undefined) {
      kind = kinds.length;
      kindIndex.set(kindKey, kind);
      kinds.push({
        sample: loaded,
        earliestDay: dayNumber(post.installed.earliest),
        latestDay: dayNumber(post.installed.latest),
      });
    }
    const demandKey = demands.map((demand) => [demand.forcePerV2, demand.armM].map(key).join(',')).join(';');
    const classKey = `${kind}|${demandKey}|${JSON.stringify(post.ground)}|${isLinePost}`;
    const governing = governingDemand(demands);
    const found = classes.get(classKey);
    if (found) found.numbers.push(post.number);
    else {
      classes.set(classKey, {
        kind,
        sample: loaded,
        numbers: [post.number],
        isLinePost,
        momentPerV2: governing.forcePerV2 * governing.armM,
        forcePerV2: Math.max(...demands.map((demand) => demand.forcePerV2)),
      });
    }
  }
  return { kinds, classes: [...classes.values()] };
}
