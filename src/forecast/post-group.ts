import type { PostClass } from './post-classes.ts';

/** Line posts, many and alike, or the end-zone posts, few and unlike in load. */
type GroupName = 'line' | 'ends';

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

/**
 * Median over posts of values given by class with counts, in the unit of the values; the mean of the middle two where they
 * are even in number. Sorts both arrays together in place: they are the caller's scratch.
 */
function medianInPlace(values: Float64Array, counts: Float64Array): number {
  let total = 0;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    const count = counts[i]!;
    total += count;
    let at = i;
    while (at > 0 && values[at - 1]! > value) {
      values[at] = values[at - 1]!;
      counts[at] = counts[at - 1]!;
      at -= 1;
    }
    values[at] = value;
    counts[at] = count;
  }
  const at = (rank: number): number => {
    let seen = 0;
    let index = 0;
    while (seen + counts[index]! <= rank) {
      seen += counts[index]!;
      index += 1;
    }
    return values[index]!;
  };
  return (at(Math.floor((total - 1) / 2)) + at(Math.floor(total / 2))) / 2;
}

/** Median over posts of values given by class with counts, in the unit of the values; at least one class, counts of 1 or more. */
export const medianByCount = (values: readonly number[], counts: readonly number[]): number =>
  medianInPlace(Float64Array.from(values), Float64Array.from(counts));

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
  const result = Float64Array.from(first);
  const values = new Float64Array(members.length);
  const counts = new Float64Array(members.length);
  for (let point = 0; point < result.length; point += 1) {
    for (let m = 0; m < members.length; m += 1) values[m] = members[m]![point]!;
    if (group.name === 'line') {
      counts.set(group.counts);
      result[point] = medianInPlace(values, counts);
    } else {
      result[point] = worst === 'lowest' ? Math.min(...values) : Math.max(...values);
    }
  }
  return result;
}
