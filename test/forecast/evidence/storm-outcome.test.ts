import { describe, expect, it } from 'vitest';
import { postsOfOutcome, STORM_RESULTS, type StormOutcome } from '../../../src/forecast/evidence/storm-outcome.ts';

const outcome = (storm: string, posts: StormOutcome['posts'], result: StormOutcome['result']): StormOutcome => ({
  ref: `${storm} ${result}`,
  storm,
  day: '2024-09-01',
  gustMps: 30,
  gustSpread: 0.1,
  posts,
  result,
});
const STATE = { posts: [1, 2, 3, 4, 5].map((number) => ({ number })) };

it('a storm leaves a post standing, leaning or snapped', () => {
  expect(STORM_RESULTS).toEqual(['stood', 'leaned', 'snapped']);
});

describe('the posts an outcome speaks of', () => {
  it('are those it names, in its order', () => {
    const named = outcome('A', [4, 2], 'leaned');
    expect(postsOfOutcome(named, [named, outcome('A', [2], 'snapped')], STATE)).toEqual([4, 2]);
  });

  it('are all posts where it says so and no other outcome names one', () => {
    const all = outcome('A', 'all', 'stood');
    expect(postsOfOutcome(all, [all], STATE)).toEqual([1, 2, 3, 4, 5]);
  });

  it('are, of "all", those that no other outcome of the same storm names', () => {
    const all = outcome('A', 'all', 'stood');
    const others = [outcome('A', [2], 'leaned'), all, outcome('A', [5, 3], 'snapped'), outcome('B', [1], 'snapped')];
    expect(postsOfOutcome(all, others, STATE)).toEqual([1, 4]);
  });

  it('are none where the others name them all', () => {
    const all = outcome('A', 'all', 'stood');
    expect(postsOfOutcome(all, [all, outcome('A', [1, 2, 3, 4, 5], 'leaned')], STATE)).toEqual([]);
  });
});
