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

/** Order of classes by value, kept from one belief point to the next: it hardly ever changes, so sorting it again is cheap. */
class ClassOrder {
  private readonly counts: readonly number[];
  private readonly order: number[];
  private readonly lowRank: number;
  private readonly highRank: number;

  constructor(counts: readonly number[]) {
    const total = counts.reduce((sum, count) => sum + count, 0);
    this.counts = counts;
    this.order = counts.map((_, index) => index);
    this.lowRank = Math.floor((total - 1) / 2);
    this.highRank = Math.floor(total / 2);
  }

  median(values: ArrayLike<number>): number {
    const { order } = this;
    for (let i = 1; i < order.length; i += 1) {
      const moving = order[i]!;
      const value = values[moving]!;
      let at = i;
      while (at > 0 && values[order[at - 1]!]! > value) {
        order[at] = order[at - 1]!;
        at -= 1;
      }
      order[at] = moving;
    }
    return (this.atRank(values, this.lowRank) + this.atRank(values, this.highRank)) / 2;
  }

  private atRank(values: ArrayLike<number>, rank: number): number {
    let seen = 0;
    for (const index of this.order) {
      seen += this.counts[index]!;
      if (seen > rank) return values[index]!;
    }
    throw new RangeError('median by count: no values');
  }
}

/**
 * Median over posts of values given by class with counts, in the unit of the values; the mean of the middle two where they
 * are even in number. At least one class, counts of 1 or more.
 */
export const medianByCount = (values: readonly number[], counts: readonly number[]): number =>
  new ClassOrder(counts).median(values);

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
  // Classes of one kind share their depth and strength.
  if (members.every((member) => member === first)) return first;
  const result = new Float64Array(first.length);
  const values = new Float64Array(members.length);
  const order = new ClassOrder(group.counts);
  for (let point = 0; point < result.length; point += 1) {
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    for (let m = 0; m < members.length; m += 1) {
      const value = members[m]![point]!;
      values[m] = value;
      if (value < lowest) lowest = value;
      if (value > highest) highest = value;
    }
    if (group.name === 'line') result[point] = order.median(values);
    else result[point] = worst === 'lowest' ? lowest : highest;
  }
  return result;
}
