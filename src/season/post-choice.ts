import type { PointRisks } from '../forecast/point-risks.ts';
import type { WorksKind } from '../forecast/works.ts';

/** Which posts of a fence works are done to. */
export type PostChoice =
  /** Every post. */
  | 'all'
  | 'line'
  | 'ends'
  /** Those at which something was found that works of the kind mend: broken, closed off, leaning, or with a cracked collar. */
  | 'found'
  /** Those that hold less than the design gust in season 1, or where none does the weakest. */
  | 'weak'
  /** Those that are not weak. */
  | 'others';

/** Posts whose snap speed is within this share of the lowest are among the weakest [-]; judgement. */
const WEAKEST_WITHIN = 0.02;

const numbersWhere = (risks: PointRisks, is: (post: PointRisks['posts'][number]) => boolean): readonly number[] =>
  risks.posts.filter(is).map(({ number }) => number);

/** The weak posts: middle snap speed in season 1 under the design gust; where none is, those within 2 % of the lowest. */
export function weakPosts(risks: PointRisks): readonly number[] {
  const short = numbersWhere(risks, ({ snapMps }) => snapMps < risks.designGustMps);
  if (short.length > 0) return short;
  const lowest = Math.min(...risks.posts.map(({ snapMps }) => snapMps));
  return numbersWhere(risks, ({ snapMps }) => snapMps <= lowest * (1 + WEAKEST_WITHIN));
}

function foundFor(kind: WorksKind, { found }: PointRisks): readonly number[] {
  const { broken, leaning, crackedCollars, closedOff } = found;
  if (kind === 'footing-reset') return [...new Set([...leaning, ...crackedCollars])].sort((a, b) => a - b);
  // of one closed off that neither leans nor is broken nobody said why: a new post ends whatever it was
  if (kind === 'post-swap')
    return [...new Set([...broken, ...closedOff.filter((post) => !leaning.includes(post))])].sort((a, b) => a - b);
  return kind === 'steel-sleeve' ? broken : [];
}

/**
 * The numbers of the posts that a choice means at a fence, ascending; none where there are no such posts.
 * @param risks the fence as it is, without works ahead
 */
export function chosenPosts(choice: PostChoice, kind: WorksKind, risks: PointRisks): readonly number[] {
  switch (choice) {
    case 'all':
      return numbersWhere(risks, () => true);
    case 'line':
      return numbersWhere(risks, ({ isLinePost }) => isLinePost);
    case 'ends':
      return numbersWhere(risks, ({ isLinePost }) => !isLinePost);
    case 'found':
      return foundFor(kind, risks);
    case 'weak':
      return weakPosts(risks);
    case 'others': {
      const weak = new Set(weakPosts(risks));
      return numbersWhere(risks, ({ number }) => !weak.has(number));
    }
  }
}
