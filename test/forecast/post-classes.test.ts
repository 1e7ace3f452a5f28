import { describe, expect, it } from 'vitest';
import type { FenceFacts, PostOverride } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { type PostClasses, postClasses } from '../../src/forecast/post-classes.ts';
import { loadedPosts } from '../../src/forecast/post-demand.ts';
import type { Works } from '../../src/forecast/works.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';

const classesOf = (facts: FenceFacts, isRead: (piece: string) => boolean = () => false): PostClasses =>
  postClasses(loadedPosts(facts.site, fenceStates(facts).at(-1)!.state), isRead);
const numbersOf = ({ classes }: PostClasses): readonly (readonly number[])[] => classes.map(({ numbers }) => numbers);
const withWorks = (works: Works): FenceFacts => ({ ...EXAMPLE_FENCE, works: [works] });
const override = (number: number, values: Partial<PostOverride>): PostOverride => ({
  number,
  positionM: null,
  installed: null,
  wood: null,
  sharedRun: null,
  ...values,
});
const MIRRORED = [
  [1, 11],
  [2, 10],
  [3, 9],
  [4, 5, 6, 7, 8],
];

describe('the classes of a fence', () => {
  it('are one kind of posts, in four loads mirrored about the middle', () => {
    const found = classesOf(EXAMPLE_FENCE);
    expect(numbersOf(found)).toEqual(MIRRORED);
    expect(found.kinds).toHaveLength(1);
    expect(found.classes.map(({ isLinePost }) => isLinePost)).toEqual([false, false, false, true]);
    expect(found.classes.map(({ kind }) => kind)).toEqual([0, 0, 0, 0]);
  });

  it('know the demand of their posts', () => {
    const line = classesOf(EXAMPLE_FENCE).classes[3]!;
    expect(line.forcePerV2).toBeCloseTo(1.1357, 4);
    expect(line.momentPerV2).toBeCloseTo(1.1357 * 1.00584, 4);
    expect(line.sample.post.number).toBe(4);
  });

  it('keep apart posts of the same load in other ground, which rot alike', () => {
    const found = classesOf(
      withWorks({
        ref: 'W',
        day: '2020-05-05',
        posts: [5],
        kind: 'footing-reset',
        embedmentM: 0.9,
        footing: 'concrete',
        footingDiameterM: 0.3,
      }),
    );
    expect(numbersOf(found)).toEqual([...MIRRORED.slice(0, 3), [4, 6, 7, 8], [5]]);
    expect(found.kinds).toHaveLength(1);
  });
});

describe('the kinds of a fence', () => {
  const kindOf = (found: PostClasses, number: number): number | undefined =>
    found.classes.find(({ numbers }) => numbers.includes(number))?.kind;
  const base = { ref: 'W', day: '2020-05-05', posts: [5] } as const;

  it.each([
    ['another wood', { ...EXAMPLE_FENCE, posts: [override(5, { wood: { ...PINE_4X4, species: 'redwood' } })] }],
    [
      'another install date',
      { ...EXAMPLE_FENCE, posts: [override(5, { installed: { earliest: '2018-01-01', latest: '2018-12-31' } })] },
    ],
    ['a stopped clock', withWorks({ ...base, kind: 'groundline-treatment', yearsEffective: 5 })],
    ['a guard against cuts', withWorks({ ...base, kind: 'trimmer-guard' })],
    ['a sleeve', withWorks({ ...base, kind: 'steel-sleeve', momentCapacityNm: 2000 })],
  ] as const)('keep apart a post with %s', (_, facts) => {
    const found = classesOf(facts);
    expect(found.kinds).toHaveLength(2);
    expect(kindOf(found, 5)).not.toBe(kindOf(found, 4));
    expect(kindOf(found, 6)).toBe(kindOf(found, 4));
  });

  it('keep apart a piece of wood that was read', () => {
    const piece = fenceStates(EXAMPLE_FENCE)[0]!.state.posts[4]!.piece;
    const found = classesOf(EXAMPLE_FENCE, (other) => other === piece);
    expect(found.kinds).toHaveLength(2);
    expect(numbersOf(found)).toContainEqual([5]);
  });

  it('keep posts at the ends apart, which one bay hangs on, where the rails were found loose', () => {
    const loose = loadedPosts(EXAMPLE_FENCE.site, fenceStates(EXAMPLE_FENCE)[0]!.state).map((loaded) => ({
      ...loaded,
      post: { ...loaded.post, condition: { ...loaded.post.condition, railConnection: 0.5 } },
    }));
    const found = postClasses(loose, () => false);
    expect(found.kinds).toHaveLength(2);
    expect(kindOf(found, 1)).toBe(kindOf(found, 11));
    expect(kindOf(found, 1)).not.toBe(kindOf(found, 2));
  });

  it('know the range of days in which their posts were set, from 1970 on', () => {
    const installed = { earliest: '1970-01-11', latest: '1971-01-01' };
    expect(classesOf({ ...EXAMPLE_FENCE, installed }).kinds[0]).toMatchObject({ earliestDay: 10, latestDay: 365 });
  });
});

describe('a corner post', () => {
  const corner = (heightM: number): PostClasses =>
    classesOf({
      ...EXAMPLE_FENCE,
      posts: [
        override(1, {
          sharedRun: { fenceRef: 'EX-2', run: { ...EXAMPLE_FENCE.run, heightM, runLengthM: 15 }, end: 0 },
        }),
      ],
    });

  it('stands alone, with the larger moment and the larger force of its two runs', () => {
    const alone = classesOf(EXAMPLE_FENCE).classes[0]!;
    const tall = corner(2.4);
    expect(numbersOf(tall)).toEqual([[1], [2, 10], [3, 9], [4, 5, 6, 7, 8], [11]]);
    const [own, other] = tall.classes[0]!.sample.demands;
    expect(tall.classes[0]!.momentPerV2).toBeCloseTo(other!.forcePerV2 * other!.armM, 12);
    expect(tall.classes[0]!.forcePerV2).toBe(other!.forcePerV2);
    const low = corner(0.9).classes[0]!;
    expect(low.momentPerV2).toBeCloseTo(alone.momentPerV2, 12);
    expect(low.forcePerV2).toBe(own!.forcePerV2);
  });
});
