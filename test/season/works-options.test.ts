import { describe, expect, it } from 'vitest';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { DEFAULT_SETTINGS } from '../../src/forecast/forecast-fence.ts';
import { fenceOutlook } from '../../src/season/fence-outlook.ts';
import { chosenPosts, weakPosts } from '../../src/season/post-choice.ts';
import { SHIPPED_CATALOGUE } from '../../src/season/works-catalogue.ts';
import { RECIPES, worksOptions } from '../../src/season/works-options.ts';
import { groundlineOf } from '../forecast/evidence/read-fence.ts';
import { EXAMPLE_FENCE } from '../forecast/example-fence.ts';

const DAY = '2026-02-01';
const look = (facts: FenceFacts) => fenceOutlook(facts, DEFAULT_SETTINGS, DAY, 2026);
const optionsOf = (facts: FenceFacts) =>
  worksOptions({ facts, risks: look(facts).risks, catalogue: SHIPPED_CATALOGUE, day: DAY });

const FOUND: FenceFacts = {
  ...EXAMPLE_FENCE,
  trimmer: { guards: false, yearlyCutMm: 0.5 },
  inspections: [
    {
      ref: 'I',
      day: '2026-01-10',
      method: 'eye',
      readings: [
        groundlineOf(4, { kind: 'broken' }),
        { ...groundlineOf(6, null), leanDegrees: 20 },
        { ...groundlineOf(8, null), collarCracked: true },
      ],
    },
  ],
};

describe('chosen posts', () => {
  const { risks } = look(FOUND);

  it('are all, the line, the ends, and the others of the weak', () => {
    const all = chosenPosts('all', 'post-swap', risks);
    expect(all).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    const [line, ends] = [chosenPosts('line', 'post-swap', risks), chosenPosts('ends', 'post-swap', risks)];
    expect([...line, ...ends].sort((a, b) => a - b)).toEqual(all);
    expect(ends).toContain(1);
    expect(line).toContain(5);
    const weak = chosenPosts('weak', 'post-swap', risks);
    expect([...weak, ...chosenPosts('others', 'post-swap', risks)].sort((a, b) => a - b)).toEqual(all);
  });

  it('are of those found the ones that the kind of works mends', () => {
    expect(chosenPosts('found', 'post-swap', risks)).toEqual([4]);
    expect(chosenPosts('found', 'steel-sleeve', risks)).toEqual([4]);
    expect(chosenPosts('found', 'footing-reset', risks)).toEqual([6, 8]);
    expect(chosenPosts('found', 'liner', risks)).toEqual([]);
  });

  it('are of those found also the ones that were only closed off, for a swap alone', () => {
    const { risks: closed } = look({
      ...FOUND,
      inspections: [
        ...FOUND.inspections,
        {
          ref: 'J',
          day: '2026-01-11',
          method: 'eye',
          readings: [2, 4, 6].map((post) => ({ ...groundlineOf(post, null), closedOff: true })),
        },
      ],
    });
    expect(chosenPosts('found', 'post-swap', closed)).toEqual([2, 4]);
    expect(chosenPosts('found', 'steel-sleeve', closed)).toEqual([4]);
    expect(chosenPosts('found', 'footing-reset', closed)).toEqual([6, 8]);
  });

  it('are weak where they hold less than the design gust, a broken one first of all', () => {
    expect(weakPosts(risks)).toContain(4);
    for (const number of weakPosts(risks)) {
      expect(risks.posts.find((post) => post.number === number)!.snapMps).toBeLessThan(risks.designGustMps);
    }
  });

  it('are the weakest where every post holds the design gust', () => {
    const { risks: calm } = look({
      ...EXAMPLE_FENCE,
      site: { ...EXAMPLE_FENCE.site, wind: { ...EXAMPLE_FENCE.site.wind, speedMps: 25 } },
    });
    const lowest = Math.min(...calm.posts.map(({ snapMps }) => snapMps));
    expect(lowest).toBeGreaterThan(calm.designGustMps);
    const weak = weakPosts(calm);
    expect(weak.length).toBeGreaterThan(0);
    expect(weak.length).toBeLessThan(11);
    expect(weak).toContain(calm.posts.find(({ snapMps }) => snapMps === lowest)!.number);
  });
});

describe('works options', () => {
  it('are each there once, with parts, works and cost that belong together', () => {
    const { options } = optionsOf(FOUND);
    expect(new Set(options.map(({ key }) => key)).size).toBe(options.length);
    for (const { parts, works, cost, why } of options) {
      expect(works.map(({ kind }) => kind)).toEqual(parts.map(({ kind }) => kind));
      expect(cost.price).toBeGreaterThan(0);
      expect(cost.personHours).toBeGreaterThan(0);
      expect(why === null).toBe(parts.length === 1);
      expect([...works.map(({ ref }) => ref)].sort()).toEqual(works.map(({ ref }) => ref));
    }
  });

  it('hold the swap of the broken post, guards, and both with what goes with them', () => {
    const keys = optionsOf(FOUND).options.map(({ key }) => key);
    expect(keys).toEqual(
      expect.arrayContaining([
        'post-swap at 4',
        'steel-sleeve at 4',
        'footing-reset at 6 8',
        'trimmer-guard',
        'rebuild',
        'post-swap + footing-reset',
        'post-swap + liner',
        'post-swap at 4 + footing-reset at 6 8',
      ]),
    );
    expect(keys.some((key) => key.startsWith('post-swap') && key.includes('+ trimmer-guard'))).toBe(true);
    expect(keys.filter((key) => key.startsWith('liner'))).toEqual([]);
  });

  it('say why a kind makes no sense at all', () => {
    expect(
      optionsOf(EXAMPLE_FENCE)
        .leftOut.map(({ kind }) => kind)
        .sort(),
    ).toEqual(['drainage', 'liner', 'trimmer-guard']);
  });

  it('name every kind of works by itself, and a reason for each combination', () => {
    const alone = new Set(RECIPES.filter(({ parts }) => parts.length === 1).map(({ parts }) => parts[0]!.kind));
    expect(alone.size).toBe(9);
    for (const { parts, why } of RECIPES) if (parts.length > 1) expect(why!.length).toBeGreaterThan(20);
  });
});
