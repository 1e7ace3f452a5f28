import { describe, expect, it } from 'vitest';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { type PostClass, postClasses } from '../../src/forecast/post-classes.ts';
import { loadedPosts } from '../../src/forecast/post-demand.ts';
import { groupValue, medianByCount, type PostGroup, postGroups } from '../../src/forecast/post-group.ts';
import { EXAMPLE_FENCE } from './example-fence.ts';

const classes = (): readonly PostClass[] =>
  postClasses(loadedPosts(EXAMPLE_FENCE.site, fenceStates(EXAMPLE_FENCE)[0]!.state), () => false).classes;
const group = (name: PostGroup['name'], counts: readonly number[], members = counts.map((_, i) => i)): PostGroup => ({
  name,
  members,
  counts,
  numbers: [],
});
const points = (...values: readonly (readonly number[])[]): readonly Float64Array[] =>
  values.map((each) => Float64Array.from(each));

describe('the groups of a fence', () => {
  it('are its line posts and its ends, each with the classes it is made of', () => {
    const [first, second, third, line] = classes();
    const shuffled = [line!, third!, first!, second!];
    expect(postGroups(shuffled)).toEqual({
      line: { name: 'line', members: [0], counts: [5], numbers: [4, 5, 6, 7, 8] },
      ends: { name: 'ends', members: [1, 2, 3], counts: [2, 2, 2], numbers: [1, 2, 3, 9, 10, 11] },
    });
  });

  it('are null where there are no posts of the kind', () => {
    const [first, , , line] = classes();
    expect(postGroups([first!]).line).toBeNull();
    expect(postGroups([line!]).ends).toBeNull();
  });
});

describe('the median over posts counted by class', () => {
  it('is that of the posts written out one by one', () => {
    // 1 1 2 3 3 3 -> between 2 and 3; 1 1 2 3 3 -> 2; one post alone is its own median
    expect(medianByCount([3, 1, 2], [3, 2, 1])).toBe(2.5);
    expect(medianByCount([3, 1, 2], [2, 2, 1])).toBe(2);
    expect(medianByCount([7], [1])).toBe(7);
    expect(medianByCount([5, 4, 3, 2, 1], [1, 1, 1, 1, 1])).toBe(3);
    expect(medianByCount([4, 1], [1, 1])).toBe(2.5);
    expect(medianByCount([4, 1], [3, 1])).toBe(4);
  });

  it('is of no values refused', () => {
    expect(() => medianByCount([], [])).toThrow(/no values/);
  });
});

describe('the value that speaks for a group', () => {
  it('is for line posts the median post at each belief point, however the order changes from one to the next', () => {
    const values = points([1, 9, 5], [2, 1, 7], [3, 4, 6]);
    // Counts 2, 1, 2: 1 1 2 3 3 | 1 4 4 9 9 | 5 5 6 6 7
    expect([...groupValue(group('line', [2, 1, 2]), values, 'lowest')]).toEqual([2, 4, 6]);
  });

  it('is for the ends the worst-placed post, which of speeds is the lowest and of depths the highest', () => {
    const values = points([100, 100, 100], [1, 9, 5], [2, 1, 7]);
    const ends = group('ends', [1, 3], [1, 2]);
    expect([...groupValue(ends, values, 'lowest')]).toEqual([1, 1, 5]);
    expect([...groupValue(ends, values, 'highest')]).toEqual([2, 9, 7]);
  });

  it('is the values themselves where all classes share them', () => {
    const [shared] = points([4, 5]);
    expect(groupValue(group('ends', [1, 1]), [shared!, shared!], 'lowest')).toBe(shared);
    expect(groupValue(group('line', [1]), [shared!], 'highest')).toBe(shared);
  });
});
