import type { PostClass } from './post-classes.ts';

/** Line posts, many and alike, or the end-zone posts, few and unlike in load. */
export type GroupName = 'line' | 'ends';

/** Classes of posts that make up a group, as indices into the model's classes. */
export interface PostGroup {
  readonly name: GroupName;
  readonly members: readonly number[];
  readonly counts: readonly number[];
  readonly numbers: readonly number[];
}

/** The line posts and the ends of a set of classes; null where a group has no posts. */
export function postGroups(classes: readonly PostClass[]): {
  readonly line: PostGroup | null;
  readonly ends: PostGroup | null;
} {
  const group = (name: GroupName, isLine: boolean): PostGroup | null => {
    const members = classes.flatMap((postClass, index) => (postClass.isLinePost === isLine ? [index] : []));
    if (members.length === 0) return null;
    return {
      name,
      members,
      counts: members.map((index) => classes[index]!.numbers.length),
      numbers: members.flatMap((index) => classes[index]!.numbers).sort((a, b) => a - b),
    };
  };
  return { line: group('line', true), ends: group('ends', false) };
}

/** Median over posts of values given by class with counts, in the unit of the values; the mean of the middle two where they are even in number. */
export function medianByCount(values: readonly number[], counts: readonly number[]): number {
  const order = values.map((_, index) => index).sort((a, b) => values[a]! - values[b]!);
  const total = counts.reduce((sum, count) => sum + count, 0);
  const at = (rank: number): number => {
    let seen = 0;
    for (const index of order) {
      seen += counts[index]!;
      if (rank < seen) return values[index]!;
    }
    throw new RangeError('median by count: no values');
  };
  return (at(Math.floor((total - 1) / 2)) + at(Math.floor(total / 2))) / 2;
}

/**
 * The value that speaks for a group at each belief point, in the unit of the values: for line posts, many and alike, the
 * median post; for the ends, few and unlike in load, the worst-placed post, by `worst`.
 */
export function groupValue(
  group: PostGroup,
  byClass: readonly Float64Array[],
  worst: 'lowest' | 'highest',
): Float64Array {
  const members = group.members.map((index) => byClass[index]!);
  const first = members[0]!;
  if (members.length === 1) return first;
  return first.map((_, point) => {
    const values = members.map((array) => array[point]!);
    if (group.name === 'line') return medianByCount(values, group.counts);
    return worst === 'lowest' ? Math.min(...values) : Math.max(...values);
  });
}
