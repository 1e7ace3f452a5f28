import { describe, expect, it } from 'vitest';
import type { EndFacts, FenceFacts, RunFacts } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { type Demand, governingDemand, type LoadedPost, loadedPosts } from '../../src/forecast/post-demand.ts';
import { EXAMPLE_FENCE } from './example-fence.ts';

const posts = (facts: FenceFacts): readonly LoadedPost[] => loadedPosts(facts.site, fenceStates(facts)[0]!.state);
const withRun = (run: Partial<RunFacts>): FenceFacts => ({ ...EXAMPLE_FENCE, run: { ...EXAMPLE_FENCE.run, ...run } });
const withSite = (site: Partial<FenceFacts['site']>): FenceFacts => ({
  ...EXAMPLE_FENCE,
  site: { ...EXAMPLE_FENCE.site, ...site },
});
const middle = (facts: FenceFacts): Demand => posts(facts)[5]!.demands[0]!;

describe('what the wind asks of a post', () => {
  it('is 1.1357 N at 1 m/s of a middle post of the example, worked by hand, at 0.55 of the height', () => {
    // Kz 2.01 (6/1200)^(2/7) = 0.44234; 0.613 x 0.44234 x 0.85 x 0.85 x Cf 1.3 x 2.4384 m x 1.8288 m
    expect(middle(EXAMPLE_FENCE).forcePerV2).toBeCloseTo(1.1357, 4);
    expect(middle(EXAMPLE_FENCE).armM).toBeCloseTo(1.00584, 10);
  });

  it('is by the code that of 15 ft: (15/6)^(2/7) times as much in exposure B', () => {
    const { forcePerV2, codeForcePerV2 } = middle(EXAMPLE_FENCE);
    expect(codeForcePerV2 / forcePerV2).toBeCloseTo(1.2993, 4);
  });

  it('is more over a hill and less on high ground', () => {
    const plain = middle(EXAMPLE_FENCE).forcePerV2;
    expect(middle(withSite({ topographicFactor: 1.3 })).forcePerV2 / plain).toBeCloseTo(1.3, 10);
    // e^(-0.000119 x 1600) = 0.8266
    expect(middle(withSite({ elevationM: 1600 })).forcePerV2 / plain).toBeCloseTo(0.8266, 4);
    expect(middle(withSite({ exposure: 'C' })).forcePerV2).toBeGreaterThan(1.5 * plain);
  });

  it('acts on the infill alone where there is a gap under it', () => {
    const raised = middle(withRun({ bottomGapM: 0.3288 }));
    expect(raised.armM).toBeCloseTo(0.3288 + 0.75, 10);
    expect(raised.forcePerV2).toBeLessThan(middle(EXAMPLE_FENCE).forcePerV2);
  });
});

describe('line posts', () => {
  const lineNumbers = (facts: FenceFacts): readonly number[] =>
    posts(facts)
      .filter((post) => post.isLinePost)
      .map(({ post }) => post.number);

  it('are of the example posts 4 to 8: Case C asks 19 % more of post 3 and less of post 4', () => {
    expect(lineNumbers(EXAMPLE_FENCE)).toEqual([4, 5, 6, 7, 8]);
    const ratio = (index: number): number => posts(EXAMPLE_FENCE)[index]!.load.governingM / (1.3 * 2.4384);
    expect(ratio(2)).toBeCloseTo(1.19, 1.5);
    expect(ratio(5)).toBeCloseTo(1, 10);
  });

  it('are never the first and the last, little though these carry', () => {
    // A stub under twice its height has no Case C: its outer posts carry half a bay.
    const stub = withRun({ runLengthM: 3, postSpacingM: 1 });
    expect(lineNumbers(stub)).toEqual([2, 3]);
  });

  it('are none on a run of two posts', () => {
    expect(lineNumbers(withRun({ runLengthM: 2, postSpacingM: 2.4 }))).toEqual([]);
  });
});

describe('the end of a run', () => {
  const firstPost = (end: EndFacts): number => posts(withRun({ ends: [end, { kind: 'free' }] }))[0]!.load.governingM;
  const lastPost = (end: EndFacts): number => posts(withRun({ ends: [{ kind: 'free' }, end] })).at(-1)!.load.governingM;

  it('is relieved by a return, the more the longer it is up to twice the height', () => {
    const free = firstPost({ kind: 'free' });
    const short = firstPost({ kind: 'return', returnLengthM: 1 });
    const long = firstPost({ kind: 'return', returnLengthM: 2 * 1.8288 });
    expect(short).toBeLessThan(free);
    expect(long).toBeLessThan(short);
    expect(firstPost({ kind: 'return', returnLengthM: 20 })).toBeCloseTo(long, 10);
  });

  it('is a free edge at a gate, fully relieved at a building, and taken as returned by twice the height where not recorded', () => {
    const long = firstPost({ kind: 'return', returnLengthM: 2 * 1.8288 });
    expect(firstPost({ kind: 'gate' })).toBe(firstPost({ kind: 'free' }));
    expect(firstPost({ kind: 'building' })).toBeCloseTo(long, 10);
    expect(firstPost({ kind: 'unknown' })).toBeCloseTo(long, 10);
  });

  it('is the same at either end', () => {
    for (const end of [{ kind: 'free' }, { kind: 'building' }, { kind: 'return', returnLengthM: 1 }] as const) {
      expect(lastPost(end)).toBeCloseTo(firstPost(end), 10);
    }
  });
});

describe('a corner post', () => {
  /** The other run: taller, free at its end A, tied to a building at its end B. */
  const other: RunFacts = {
    ...EXAMPLE_FENCE.run,
    heightM: 2.4,
    runLengthM: 20,
    ends: [{ kind: 'free' }, { kind: 'building' }],
  };
  const corner = (end: 0 | 1): readonly LoadedPost[] =>
    posts({
      ...EXAMPLE_FENCE,
      posts: [
        { number: 1, positionM: null, installed: null, wood: null, sharedRun: { fenceRef: 'EX-2', run: other, end } },
      ],
    });
  const alone = (): readonly LoadedPost[] => posts({ ...EXAMPLE_FENCE, run: other });

  it('has the demands of both its runs: its own, and that of the end at which they meet', () => {
    expect(corner(0)[0]!.demands).toEqual([posts(EXAMPLE_FENCE)[0]!.demands[0], alone()[0]!.demands[0]]);
    expect(corner(1)[0]!.demands[1]).toEqual(alone().at(-1)!.demands[0]);
    expect(corner(0)[0]!.demands[1]!.forcePerV2).toBeGreaterThan(corner(1)[0]!.demands[1]!.forcePerV2);
    expect(
      corner(0)
        .slice(1)
        .map(({ demands }) => demands.length),
    ).toEqual(Array.from({ length: 10 }, () => 1));
  });

  it('is governed by the run that bends it most, its own where both bend it alike', () => {
    const demand = (forcePerV2: number, armM: number): Demand => ({ forcePerV2, armM, codeForcePerV2: 0 });
    const [light, high, alike] = [demand(1, 1), demand(0.6, 2), demand(1.2, 1)];
    expect(governingDemand([light, high])).toBe(high);
    expect(governingDemand([high, light])).toBe(high);
    expect(governingDemand([high, alike])).toBe(high);
    expect(governingDemand([alike, high])).toBe(alike);
  });
});
