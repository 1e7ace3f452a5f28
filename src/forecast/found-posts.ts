import type { FoundPosts } from './fence-forecast.ts';
import type { FenceState, PostCondition } from './post-state.ts';

/** Posts at which something was found that works have not mended, by their numbers, in ascending order. */
export function foundPosts(state: FenceState): FoundPosts {
  const where = (is: (condition: PostCondition) => boolean): readonly number[] =>
    state.posts
      .filter(({ condition }) => is(condition))
      .map(({ number }) => number)
      .sort((a, b) => a - b);
  return {
    broken: where(({ broken }) => broken),
    leaning: where(({ leaning }) => leaning),
    closedOff: where(({ closedOff }) => closedOff),
    crackedCollars: where(({ collarCracked }) => collarCracked),
    hollow: where(({ cavityDiameterMm }) => cavityDiameterMm > 0),
  };
}

const posts = (numbers: readonly number[]): string =>
  `${numbers.length === 1 ? 'Post' : 'Posts'} ${numbers.join(', ')}`;
const be = (numbers: readonly number[]): string => (numbers.length === 1 ? 'is' : 'are');

/** What was found at the posts, in plain words, the most pressing first. */
export function foundRemarks(state: FenceState): readonly string[] {
  const { broken, leaning, closedOff, crackedCollars, hollow } = foundPosts(state);
  const remarks: string[] = [];
  if (closedOff.length > 0) {
    remarks.push(`${posts(closedOff)} ${be(closedOff)} recorded dangerous and closed off: keep people away.`);
  }
  if (broken.length > 0) {
    const hold = broken.length === 1 ? 'holds' : 'hold';
    remarks.push(
      `${posts(broken)} ${be(broken)} recorded broken and ${hold} nothing; what the posts beside take over is not counted.`,
    );
  }
  if (leaning.length > 0) remarks.push(`${posts(leaning)} ${be(leaning)} recorded leaning: stay away in wind.`);
  if (crackedCollars.length > 0) {
    remarks.push(
      crackedCollars.length === 1
        ? `The collar of post ${crackedCollars.join(', ')} is cracked: its footing counts no wider than the post.`
        : `The collars of posts ${crackedCollars.join(', ')} are cracked: their footings count no wider than the posts.`,
    );
  }
  if (hollow.length > 0)
    remarks.push(`${posts(hollow)} ${be(hollow)} hollow; the cavity is taken to stay as wide as found.`);
  return remarks;
}
