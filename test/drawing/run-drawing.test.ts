import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawRun } from '../../src/drawing/run-drawing.ts';
import { runRows } from '../../src/drawing/run-rows.ts';
import { marksOf, type RunView, runSummary } from '../../src/drawing/run-words.ts';
import { SOUND_CONDITION } from '../../src/forecast/post-state.ts';
import { faultsOf, shapesOf } from './drawn-shapes.ts';
import { drawnTexts } from './drawn-text.ts';
import { anyPost, madeUpMoment, madeUpRun } from './made-up-posts.ts';

const OPTIONS = { units: 'us', language: 'en', widthPx: 1080 } as const;
const view = (changes: Partial<RunView> = {}): RunView => {
  const posts = changes.posts ?? madeUpRun(11);
  return {
    fenceRef: 'NR-07',
    runLengthM: posts.at(-1)!.positionM,
    designGustMps: 42,
    posts,
    decidingPosts: [],
    ...changes,
  };
};
const weak = { moments: [madeUpMoment({ snapMps: { p10: 30, p50: 38, p90: 46 } })] };

/** Left edge of each post's part in the ground. */
const postXs = (svg: string): readonly number[] =>
  [...shapesOf(svg, 'run-post'), ...shapesOf(svg, 'run-post-short')]
    .map((element) => / d="M([\d.]+) ([\d.]+)h/.exec(element))
    .flatMap((found) => (found ? [Number(found[1])] : []))
    .sort((a, b) => a - b);

describe('the drawing of a run', () => {
  it('puts the posts where they stand, to scale along the run', () => {
    const at = [0, 2.4, 4.8, 6, 9.6];
    const posts = madeUpRun(5, (number) => ({ positionM: at[number - 1]! }));
    const xs = postXs(drawRun(view({ posts }), OPTIONS));
    expect(xs).toHaveLength(5);
    const pxPerM = (xs[4]! - xs[0]!) / 9.6;
    for (const [index, x] of xs.entries()) expect((x - xs[0]!) / pxPerM).toBeCloseTo(at[index]!, 2);
  });

  it('fills the posts that snap below the design gust, and names them', () => {
    const posts = madeUpRun(11, (number) => (number >= 4 && number <= 6 ? weak : {}));
    const svg = drawRun(view({ posts }), OPTIONS);
    // each post is drawn in two pieces, above and below the ground
    expect(shapesOf(svg, 'run-post-short')).toHaveLength(6);
    expect(drawnTexts(svg).map(({ text }) => text)).toContain('4–6 short');
    expect(svg).toContain('Filled: snaps below the design gust.');
  });

  it('draws and names a post that is broken, leaning, hollow, with a cracked collar, or closed off', () => {
    const conditions = new Map([
      [2, { broken: true }],
      [4, { leaning: true }],
      [6, { cavityDiameterMm: 20 }],
      [8, { collarCracked: true }],
      [10, { closedOff: true }],
    ]);
    const posts = madeUpRun(11, (number) => ({ condition: { ...SOUND_CONDITION, ...conditions.get(number) } }));
    const svg = drawRun(view({ posts }), OPTIONS);
    const words = drawnTexts(svg).map(({ text }) => text);
    expect(words).toEqual(
      expect.arrayContaining(['2 broken', '4 leaning', '6 hollow', '8 collar cracked', '10 closed off']),
    );
    for (const name of ['run-cross', 'run-ring', 'run-crack', 'run-bars']) expect(shapesOf(svg, name)).toHaveLength(1);
  });

  it('does not call a broken post short as well', () => {
    const [post] = madeUpRun(1, () => ({ ...weak, condition: { ...SOUND_CONDITION, broken: true } }));
    expect(marksOf(post!, { designGustMps: 42, decidingPosts: [] })).toEqual(['broken']);
  });

  it('lets a long run go on in rows of one scale on a narrow page, with every post once', () => {
    const posts = madeUpRun(60);
    const { rows, pxPerM } = runRows(posts, 330);
    expect(rows.length).toBeGreaterThan(1);
    expect(rows.flatMap((row) => row.posts)).toEqual(posts);
    for (const row of rows) expect((row.toM - row.fromM) * pxPerM).toBeLessThanOrEqual(330 + 1e-6);
    expect(rows.slice(1).every(({ openLeft }) => openLeft)).toBe(true);
    expect(runRows(posts, 1050).rows).toHaveLength(1);
  });

  it('says all of it in words, in either language', () => {
    const posts = madeUpRun(11, (number) => (number === 3 ? { condition: { ...SOUND_CONDITION, broken: true } } : {}));
    expect(runSummary(view({ posts, decidingPosts: [5, 6] }), OPTIONS)).toBe(
      '11 posts on 78.74 ft. 3 broken; 5–6 decide.',
    );
    expect(runSummary(view(), OPTIONS)).toBe(
      '11 posts on 78.74 ft. Nothing was found at its posts, and none is short.',
    );
    const spanish = drawRun(view({ posts }), { ...OPTIONS, language: 'es' });
    expect(spanish).toContain('3 roto');
    expect(spanish).not.toMatch(/broken|Along the run/);
  });

  it('never draws outside its frame, nor a number that is none, nor a label over a label', () => {
    const runs = fc
      .array(anyPost, { minLength: 1, maxLength: 70 })
      .map((posts) => posts.toSorted((a, b) => a.positionM - b.positionM))
      .map((posts) => posts.map((post, index) => ({ ...post, number: index + 1 })));
    fc.assert(
      fc.property(
        runs,
        fc.constantFrom(300, 358, 680, 1080),
        fc.constantFrom('en' as const, 'es' as const),
        (posts, widthPx, language) => {
          const svg = drawRun(view({ posts, decidingPosts: [1, 2, 3, 9] }), { ...OPTIONS, widthPx, language });
          expect(faultsOf(svg)).toEqual([]);
          const labels = drawnTexts(svg).filter(({ className }) => className === 'fy-ink-text');
          for (const [index, one] of labels.entries()) {
            for (const other of labels.slice(index + 1)) {
              const apart =
                one.box.right <= other.box.left ||
                other.box.right <= one.box.left ||
                one.box.bottom <= other.box.top + 1 ||
                other.box.bottom <= one.box.top + 1;
              if (!apart) expect(`${one.text} over ${other.text}`).toBe('');
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
