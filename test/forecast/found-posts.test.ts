import { describe, expect, it } from 'vitest';
import type { PostReading } from '../../src/forecast/evidence/inspection.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { foundPosts, foundRemarks } from '../../src/forecast/found-posts.ts';
import type { FenceState, PostCondition } from '../../src/forecast/post-state.ts';
import type { Works } from '../../src/forecast/works.ts';
import { groundlineOf } from './evidence/read-fence.ts';
import { EXAMPLE_FENCE } from './example-fence.ts';

const NOTHING = { broken: [], leaning: [], closedOff: [], crackedCollars: [], hollow: [] };

/** The example fence with something found at some of its posts; posts in another order than their numbers. */
function found(conditions: Readonly<Record<number, Partial<PostCondition>>>): FenceState {
  const { state } = fenceStates(EXAMPLE_FENCE)[0]!;
  const posts = [...state.posts]
    .reverse()
    .map((post) => ({ ...post, condition: { ...post.condition, ...conditions[post.number] } }));
  return { ...state, posts };
}

describe('the posts at which something was found', () => {
  it('are none in a sound fence', () => {
    expect(foundPosts(found({}))).toEqual(NOTHING);
    expect(foundRemarks(found({}))).toEqual([]);
  });

  it('are listed by what was found, in the order of their numbers, whatever their places', () => {
    expect(
      foundPosts(
        found({
          2: { broken: true },
          10: { broken: true, leaning: true },
          9: { leaning: true },
          4: { closedOff: true },
          3: { closedOff: true },
          5: { collarCracked: true },
          7: { cavityDiameterMm: 1 },
          6: { cavityDiameterMm: 0 },
          8: { railConnection: 0.5 },
        }),
      ),
    ).toEqual({ broken: [2, 10], leaning: [9, 10], closedOff: [3, 4], crackedCollars: [5], hollow: [7] });
  });
});

describe('the remarks on them', () => {
  const remarks = (conditions: Readonly<Record<number, Partial<PostCondition>>>): readonly string[] =>
    foundRemarks(found(conditions));

  it('speak of one post as of one', () => {
    expect(remarks({ 4: { closedOff: true } })).toEqual([
      'Post 4 is recorded dangerous and closed off: keep people away.',
    ]);
    expect(remarks({ 4: { broken: true } })).toEqual([
      'Post 4 is recorded broken and holds nothing; what the posts beside take over is not counted.',
    ]);
    expect(remarks({ 4: { leaning: true } })).toEqual(['Post 4 is recorded leaning: stay away in wind.']);
    expect(remarks({ 4: { collarCracked: true } })).toEqual([
      'The collar of post 4 is cracked: its footing counts no wider than the post.',
    ]);
    expect(remarks({ 4: { cavityDiameterMm: 30 } })).toEqual([
      'Post 4 is hollow; the cavity is taken to stay as wide as found.',
    ]);
  });

  it('speak of several as of several', () => {
    const at = (condition: Partial<PostCondition>) => remarks({ 4: condition, 11: condition });
    expect(at({ closedOff: true })[0]).toMatch(/^Posts 4, 11 are recorded dangerous/);
    expect(at({ broken: true })[0]).toMatch(/^Posts 4, 11 are recorded broken and hold nothing;/);
    expect(at({ leaning: true })[0]).toMatch(/^Posts 4, 11 are recorded leaning/);
    expect(at({ collarCracked: true })).toEqual([
      'The collars of posts 4, 11 are cracked: their footings count no wider than the posts.',
    ]);
    expect(at({ cavityDiameterMm: 30 })[0]).toMatch(/^Posts 4, 11 are hollow;/);
  });

  it('name the most pressing first', () => {
    const all = remarks({
      1: { cavityDiameterMm: 30 },
      2: { collarCracked: true },
      3: { leaning: true },
      4: { broken: true },
      5: { closedOff: true },
    });
    expect(all.map((remark) => remark.match(/\d+/)![0])).toEqual(['5', '4', '3', '2', '1']);
  });
});

describe('what works mend', () => {
  const reading = (post: number, parts: Partial<PostReading>): PostReading => ({
    ...groundlineOf(post, null),
    ...parts,
  });
  const foundAfter = (readings: readonly PostReading[], works: readonly Works[]) => {
    const facts: FenceFacts = {
      ...EXAMPLE_FENCE,
      inspections: [{ ref: 'I', day: '2024-03-01', method: 'eye', readings }],
      works,
    };
    return foundPosts(fenceStates(facts).at(-1)!.state);
  };
  const sleeve = (post: number): Works => ({
    ref: 'W1',
    day: '2024-04-01',
    kind: 'steel-sleeve',
    posts: [post],
    momentCapacityNm: 4000,
  });
  const reset = (post: number): Works => ({
    ref: 'W2',
    day: '2024-05-01',
    kind: 'footing-reset',
    posts: [post],
    embedmentM: 0.8,
    footing: 'concrete',
    footingDiameterM: 0.3,
  });

  it('is no longer listed, and the post is opened again once it neither lies broken nor leans', () => {
    const closed = [reading(3, { groundline: { kind: 'broken' }, leanDegrees: 20, closedOff: true })];
    expect(foundAfter(closed, [])).toEqual({ ...NOTHING, broken: [3], leaning: [3], closedOff: [3] });
    expect(foundAfter(closed, [sleeve(3)])).toEqual({ ...NOTHING, leaning: [3], closedOff: [3] });
    expect(foundAfter(closed, [reset(3)])).toEqual({ ...NOTHING, broken: [3], closedOff: [3] });
    expect(foundAfter(closed, [sleeve(3), reset(3)])).toEqual(NOTHING);
  });

  it('stays listed at the posts that were left alone', () => {
    const closed = [3, 4].map((post) => reading(post, { leanDegrees: 20, closedOff: true }));
    expect(foundAfter(closed, [reset(4)])).toEqual({ ...NOTHING, leaning: [3], closedOff: [3] });
  });
});
