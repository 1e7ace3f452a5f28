import { describe, expect, it } from 'vitest';
import { nominalSection } from '../../src/capacity/post-section.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import type { Works, WorksKind } from '../../src/forecast/works.ts';
import { newPostWood, type PlannedWorks, plannedWorks } from '../../src/season/planned-works.ts';
import { SHIPPED_CATALOGUE } from '../../src/season/works-catalogue.ts';
import { groundlineOf } from '../forecast/evidence/read-fence.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from '../forecast/example-fence.ts';

const DAY = '2026-02-01';
const BUILD = SHIPPED_CATALOGUE['post-swap'].build;

const plan = (
  kind: WorksKind,
  facts: FenceFacts = EXAMPLE_FENCE,
  posts: 'all' | readonly number[] = 'all',
  build = BUILD,
): PlannedWorks => plannedWorks({ kind, facts, day: DAY, posts, build, ref: 'P' });
const worksOf = (planned: PlannedWorks): Works => {
  if (planned.kind !== 'works') throw new Error(planned.reason);
  return planned.works;
};
const reasonOf = (planned: PlannedWorks): string => (planned.kind === 'no sense' ? planned.reason : 'works');
const withWorks = (...works: readonly Works[]): FenceFacts => ({ ...EXAMPLE_FENCE, works });
const STEEL: FenceFacts = {
  ...EXAMPLE_FENCE,
  wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 5000 },
};
const siteOf = (site: Partial<FenceFacts['site']>): FenceFacts => ({
  ...EXAMPLE_FENCE,
  site: { ...EXAMPLE_FENCE.site, ...site },
});
const BROKEN: FenceFacts = {
  ...EXAMPLE_FENCE,
  inspections: [
    {
      ref: 'I',
      day: '2026-01-10',
      method: 'eye',
      readings: [groundlineOf(4, { kind: 'broken' }), { ...groundlineOf(6, null), leanDegrees: 20 }],
    },
  ],
};

describe('planned works', () => {
  it('say what the forecast has to know of each kind', () => {
    expect(worksOf(plan('groundline-treatment'))).toEqual({
      kind: 'groundline-treatment',
      ref: 'P',
      day: DAY,
      posts: 'all',
      yearsEffective: 5,
    });
    expect(worksOf(plan('footing-reset'))).toMatchObject({
      embedmentM: 0.914,
      footing: 'concrete',
      footingDiameterM: 0.254,
    });
    expect(worksOf(plan('steel-sleeve', EXAMPLE_FENCE, [2, 3]))).toMatchObject({
      posts: [2, 3],
      momentCapacityNm: 4881,
    });
    expect(worksOf(plan('post-swap'))).toMatchObject({
      wood: { treatmentClass: 'heavy-duty', species: 'southern-pine' },
    });
    expect(worksOf(plan('rebuild'))).toMatchObject({
      posts: 'all',
      postSpacingM: null,
      wood: { section: PINE_4X4.section },
    });
    expect(worksOf(plan('drainage', siteOf({ soilSaturated: true })))).toMatchObject({
      kind: 'drainage',
      posts: 'all',
    });
    expect(
      worksOf(plan('trimmer-guard', { ...EXAMPLE_FENCE, trimmer: { guards: false, yearlyCutMm: 1 } })),
    ).toMatchObject({ kind: 'trimmer-guard' });
  });

  it('leave out the diameter of a footing that has none', () => {
    expect(worksOf(plan('footing-reset', EXAMPLE_FENCE, 'all', { ...BUILD, footing: 'gravel' }))).toMatchObject({
      footing: 'gravel',
      footingDiameterM: null,
    });
  });

  it('set added posts in the middle of each bay, and in none that is too short', () => {
    const added = plan('added-posts');
    expect(added).toMatchObject({ postCount: 10, posts: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] });
    const works = worksOf(added);
    if (works.kind !== 'added-posts') throw new Error(works.kind);
    const bayM = 8 * 0.3048;
    works.positionsM.forEach((positionM, index) => {
      expect(positionM).toBeCloseTo((index + 0.5) * bayM, 9);
    });
    const narrow: FenceFacts = { ...EXAMPLE_FENCE, run: { ...EXAMPLE_FENCE.run, postSpacingM: 1.5 } };
    expect(reasonOf(plan('added-posts', narrow))).toMatch(/no bay is as long as 1.8 m/);
  });

  it('make no sense where they can change nothing, and say why', () => {
    expect(reasonOf(plan('drainage'))).toMatch(/not recorded as saturated/);
    expect(reasonOf(plan('drainage', siteOf({ soilSaturated: true, soilClass: 'soft-clay' })))).toMatch(/in clay/);
    expect(reasonOf(plan('trimmer-guard'))).toMatch(/no yearly trimmer cut/);
    expect(reasonOf(plan('trimmer-guard', { ...EXAMPLE_FENCE, trimmer: { guards: true, yearlyCutMm: 1 } }))).toMatch(
      /no yearly trimmer cut/,
    );
    expect(reasonOf(plan('liner'))).toMatch(/before a post is set/);
    expect(reasonOf(plan('groundline-treatment', STEEL))).toMatch(/none of these posts rots on/);
    expect(reasonOf(plan('steel-sleeve', STEEL))).toMatch(/not wood/);
    expect(reasonOf(plan('post-swap', STEEL))).toMatch(/none is broken/);
    expect(
      reasonOf(plan('footing-reset', EXAMPLE_FENCE, 'all', { ...BUILD, embedmentM: 0.5, footingDiameterM: 0.2 })),
    ).toMatch(/as deep and as wide/);
    expect(
      reasonOf(plan('rebuild', { ...EXAMPLE_FENCE, installed: { earliest: '2026-05-01', latest: '2026-05-01' } })),
    ).toMatch(/not built/);
    expect(reasonOf(plan('post-swap', EXAMPLE_FENCE, []))).toBe('no post is chosen');
  });

  it('put a liner on the posts that are swapped the same day, and only on those', () => {
    const swapped = withWorks({ ...worksOf(plan('post-swap', EXAMPLE_FENCE, [3, 5])), ref: 'A' });
    expect(plan('liner', swapped)).toMatchObject({ posts: [3, 5], postCount: 2, works: { posts: [3, 5] } });
  });

  it('treat the posts that go on rotting: not the new, not the broken, not the sleeved', () => {
    const swapped = withWorks(
      { ...worksOf(plan('post-swap', EXAMPLE_FENCE, [3, 5])), ref: 'A' },
      { ref: 'B', day: '2025-02-01', posts: [7], kind: 'steel-sleeve', momentCapacityNm: 4000 },
    );
    expect(plan('groundline-treatment', swapped)).toMatchObject({ posts: [1, 2, 4, 6, 8, 9, 10, 11] });
    expect(plan('groundline-treatment', BROKEN)).toMatchObject({ posts: [1, 2, 3, 5, 6, 7, 8, 9, 10, 11] });
  });

  it('swap what is broken and reset what leans, even where nothing else would gain', () => {
    expect(plan('post-swap', BROKEN, [4])).toMatchObject({ posts: [4] });
    expect(plan('footing-reset', BROKEN, 'all', { ...BUILD, embedmentM: 0.5, footingDiameterM: 0.2 })).toMatchObject({
      posts: [6],
    });
  });

  it('put no sleeve on a post that holds more when sound than the sleeve does', () => {
    const heavy: FenceFacts = { ...EXAMPLE_FENCE, wood: { ...PINE_4X4, section: nominalSection('6x6') } };
    expect(reasonOf(plan('steel-sleeve', heavy))).toMatch(/hold more when sound than the sleeve/);
    expect(plan('steel-sleeve', heavy, 'all', { ...BUILD, sleeveMomentNm: 20_000 })).toMatchObject({ postCount: 11 });
  });

  it('refuse a post that the fence does not have', () => {
    expect(() => plan('post-swap', EXAMPLE_FENCE, [12])).toThrow(/EX-1 has no post 12 on 2026-02-01/);
  });
});

describe('the wood of a new post', () => {
  it('is treated pine of the old size for wood, its own class for round treated pine, and the like of what does not rot', () => {
    const cedar = { ...PINE_4X4, species: 'western-redcedar', treatmentClass: 'redcedar-redwood-heartwood' } as const;
    expect(newPostWood(cedar, BUILD)).toEqual({ ...PINE_4X4, treatmentClass: 'heavy-duty' });
    const round = {
      ...PINE_4X4,
      section: { kind: 'round', diameterMm: 100 },
      treatmentClass: 'round-pine-cca',
    } as const;
    expect(newPostWood(round, BUILD)).toEqual(round);
    expect(newPostWood(STEEL.wood, BUILD)).toEqual(STEEL.wood);
  });

  it('is never of a lower grade or class than the old', () => {
    const best = { ...PINE_4X4, grade: 'no-1', treatmentClass: 'extreme-duty' } as const;
    expect(newPostWood(best, BUILD)).toEqual(best);
    expect(newPostWood({ ...best, grade: 'unknown' }, BUILD).grade).toBe('no-2');
  });
});
