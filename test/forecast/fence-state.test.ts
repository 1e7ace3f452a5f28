import { describe, expect, it } from 'vitest';
import type { PostReading } from '../../src/forecast/evidence/inspection.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import type { FenceState } from '../../src/forecast/post-state.ts';
import type { Works } from '../../src/forecast/works.ts';
import { dayNumber } from '../../src/units/calendar-day.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';
import {
  inspection,
  lastState,
  NO_1_WOOD,
  outcome,
  override,
  postOf,
  reading,
  STRONG_WOOD,
  withFacts,
  works,
} from './made-up-events.ts';

const FT = 0.3048;
const reset = works('footing-reset', { embedmentM: 0.9, footing: 'concrete', footingDiameterM: 0.3 });
const swap = works('post-swap', { wood: STRONG_WOOD });
const rebuild = (values: Record<string, unknown> = {}): Works =>
  works('rebuild', { posts: 'all', wood: NO_1_WOOD, postSpacingM: null, ...values });

describe('a fence as installed', () => {
  it('has posts at every bay, numbered along the run, one bay at either end and two between', () => {
    const { posts, built, soilSaturated, run } = lastState({});
    expect(posts.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(posts.map(({ bays }) => bays)).toEqual([1, 2, 2, 2, 2, 2, 2, 2, 2, 2, 1]);
    posts.forEach(({ positionM }, index) => {
      expect(positionM).toBeCloseTo(index * 8 * FT, 10);
    });
    expect(posts.map(({ piece }) => piece)).toEqual(posts.map(({ number }) => `${number}`));
    expect({ built, soilSaturated, run }).toEqual({
      built: EXAMPLE_FENCE.installed,
      soilSaturated: false,
      run: EXAMPLE_FENCE.run,
    });
  });

  it('takes of a post what is recorded of it, and orders posts by where they stand', () => {
    const installed = { earliest: '2018-01-01', latest: '2018-01-01' };
    const sharedRun = { fenceRef: 'EX-2', run: EXAMPLE_FENCE.run, end: 0 as const };
    const state = lastState({
      posts: [override(3, { positionM: 1, wood: STRONG_WOOD, installed }), override(11, { sharedRun })],
    });
    expect(state.posts.map(({ number }) => number).slice(0, 4)).toEqual([1, 3, 2, 4]);
    expect(postOf(state, 3)).toMatchObject({ positionM: 1, wood: STRONG_WOOD, installed, sharedRun: null });
    expect(postOf(state, 11).sharedRun).toEqual(sharedRun);
    expect(postOf(state, 4)).toMatchObject({ wood: PINE_4X4, installed: EXAMPLE_FENCE.installed });
  });

  it('puts of two posts in one place the lower number first', () => {
    const { posts } = lastState({ posts: [override(1, { positionM: 8 * FT })] });
    expect(posts.map(({ number }) => number).slice(0, 3)).toEqual([1, 2, 3]);
  });

  it('names posts that are recorded and not there', () => {
    expect(() => fenceStates(withFacts({ posts: [override(12, {}), override(2, {}), override(40, {})] }))).toThrow(
      'fence EX-1: post 12, 40 recorded, but the run has posts 1 to 11',
    );
  });

  it('is cut by trimmers each year, unless guards are fitted', () => {
    const cutOf = (guards: boolean | null) =>
      lastState({ trimmer: { guards, yearlyCutMm: 2 } }).posts[0]!.cuts.yearlyCutMm;
    expect([cutOf(true), cutOf(false), cutOf(null)]).toEqual([0, 2, 2]);
  });
});

describe('an install date known as a range', () => {
  const installed = { earliest: '2010-01-01', latest: '2016-12-31' };
  const datesOf = (facts: Partial<FenceFacts>) => lastState({ installed, ...facts }).posts[0]!.installed;

  it('ends on the day on which the fence was first seen standing, by an inspection or in a storm', () => {
    const inspections = [inspection('2015-05-05'), inspection('2014-05-05')];
    expect(datesOf({ inspections })).toEqual({ earliest: '2010-01-01', latest: '2014-05-05' });
    expect(datesOf({ inspections, outcomes: [outcome({ day: '2013-03-03', result: 'stood' })] })).toEqual({
      earliest: '2010-01-01',
      latest: '2013-03-03',
    });
    expect(datesOf({ inspections: [inspection('2020-05-05')] })).toEqual(installed);
  });

  it('is never left empty by something seen too early', () => {
    expect(datesOf({ inspections: [inspection('2009-05-05')] })).toEqual({
      earliest: '2010-01-01',
      latest: '2010-01-01',
    });
  });
});

describe('works on a post', () => {
  const day = dayNumber('2022-03-05');
  const worked = (...done: readonly Works[]): FenceState => lastState({ works: done });

  it('touch the posts they name, or all of them, from their day on', () => {
    const states = fenceStates(withFacts({ works: [swap] }));
    expect(states.map(({ fromDay }) => fromDay)).toEqual([null, '2022-03-05']);
    expect(states[1]!.state.posts.filter((post, i) => post !== states[0]!.state.posts[i])).toHaveLength(1);
    const all = worked({ ...swap, posts: 'all' });
    expect(all.posts.every(({ wood }) => wood === STRONG_WOOD)).toBe(true);
  });

  it('treat: rot stands still for the years it works, once more with each treatment', () => {
    const treat = (on: string, yearsEffective: number): Works =>
      works('groundline-treatment', { ref: on, day: on, yearsEffective });
    const { stops } = postOf(worked(treat('2022-03-05', 5), treat('2026-03-05', 2)), 5).clock;
    const second = dayNumber('2026-03-05');
    expect(stops).toEqual([
      { fromDay: day, toDay: day + 5 * 365.2425 },
      { fromDay: second, toDay: second + 2 * 365.2425 },
    ]);
  });

  it('line and guard: the first of its kind counts', () => {
    const again = { day: '2024-01-01', ref: 'W2' };
    expect(postOf(worked(works('liner'), works('liner', again)), 5).clock.linerFromDay).toBe(day);
    expect(postOf(worked(works('trimmer-guard'), works('trimmer-guard', again)), 5).cuts.untilDay).toBe(day);
    expect(postOf(worked(works('liner')), 4).clock.linerFromDay).toBeNull();
  });

  it('swap: another piece of wood, new and sound, in the old collar', () => {
    const facts = {
      inspections: [
        inspection(
          '2021-05-05',
          reading(5, { collarCracked: true, trimmerCutMm: 4, leanDegrees: 20, closedOff: true, railConnection: 0.5 }),
        ),
      ],
      works: [
        works('liner', { day: '2020-01-01', ref: 'A' }),
        works('steel-sleeve', { day: '2020-01-01', ref: 'B', momentCapacityNm: 2000 }),
        swap,
      ],
    };
    expect(postOf(lastState(facts), 5)).toMatchObject({
      piece: '5 by W',
      wood: STRONG_WOOD,
      installed: { earliest: '2022-03-05', latest: '2022-03-05' },
      condition: { broken: false, leaning: false, closedOff: false, collarCracked: true, railConnection: null },
      cuts: { measured: null, yearlyCutMm: 0 },
      clock: { stops: [], linerFromDay: null },
      sleeveNm: null,
    });
  });

  it('sleeve: carries a broken post again', () => {
    const sleeve = works('steel-sleeve', { momentCapacityNm: 2000 });
    const post = postOf(lastState({ outcomes: [outcome({ day: '2021-01-01' })], works: [sleeve] }), 5);
    expect(post).toMatchObject({ sleeveNm: 2000, condition: { broken: false } });
  });

  it('reset a footing: another ground, upright, in a whole collar', () => {
    const facts = {
      inspections: [inspection('2021-05-05', reading(5, { leanDegrees: 20, collarCracked: true }))],
      works: [reset],
    };
    expect(postOf(lastState(facts), 5)).toMatchObject({
      ground: { embedmentM: 0.9, footing: 'concrete', footingDiameterM: 0.3 },
      condition: { leaning: false, collarCracked: false },
      piece: '5',
    });
  });

  it('open a closed post again only where they leave it neither broken nor leaning', () => {
    const sleeve = works('steel-sleeve', { momentCapacityNm: 2000 });
    const closedAfter = (seen: Partial<PostReading>, done: Works): boolean =>
      postOf(
        lastState({ inspections: [inspection('2021-05-05', reading(5, { closedOff: true, ...seen }))], works: [done] }),
        5,
      ).condition.closedOff;
    const broken = { groundline: { kind: 'broken' } } as const;
    expect(closedAfter({}, reset)).toBe(false);
    expect(closedAfter(broken, reset)).toBe(true);
    expect(closedAfter(broken, sleeve)).toBe(false);
    expect(closedAfter({ leanDegrees: 20 }, sleeve)).toBe(true);
    expect(closedAfter({ leanDegrees: 20 }, reset)).toBe(false);
    expect(closedAfter({}, works('liner'))).toBe(true);
  });

  it('drain the soil of the whole fence, and leave its posts', () => {
    const wet = { site: { ...EXAMPLE_FENCE.site, soilSaturated: true } };
    expect(lastState(wet).soilSaturated).toBe(true);
    expect(lastState({ ...wet, works: [works('drainage')] }).soilSaturated).toBe(false);
    expect(lastState({ ...wet, works: [works('liner')] }).soilSaturated).toBe(true);
    expect(worked(works('drainage')).posts).toEqual(lastState({}).posts);
  });
});

describe('posts set anew', () => {
  it('take the numbers after the highest, and stand in the ground of the nearest post, in the order of the run', () => {
    const added = works('added-posts', {
      ref: 'X',
      day: '2023-01-01',
      positionsM: [4 * 8 * FT + 1, 1],
      wood: STRONG_WOOD,
    });
    const guarded = {
      trimmer: { guards: false, yearlyCutMm: 2 },
      inspections: [inspection('2021-01-01', reading(5, { trimmerCutMm: 6, leanDegrees: 30 }))],
    };
    const state = lastState({ ...guarded, works: [reset, added] });
    expect(state.posts.map(({ number }) => number)).toEqual([1, 13, 2, 3, 4, 5, 12, 6, 7, 8, 9, 10, 11]);
    expect(postOf(state, 12)).toMatchObject({
      piece: '12 by X',
      wood: STRONG_WOOD,
      installed: { earliest: '2023-01-01', latest: '2023-01-01' },
      ground: { embedmentM: 0.9, footing: 'concrete', footingDiameterM: 0.3 },
      condition: { leaning: false },
      cuts: { measured: null, yearlyCutMm: 2 },
      sleeveNm: null,
      sharedRun: null,
      bays: 2,
    });
    expect(postOf(state, 13).ground).toEqual(EXAMPLE_FENCE.ground);
    expect(state.built).toEqual(EXAMPLE_FENCE.installed);
  });

  it('are all of them after a rebuild: of its wood, on its day, in its spacing', () => {
    const done = rebuild({ ref: 'R', day: '2024-04-04', postSpacingM: 10 * FT });
    const sharedRun = { fenceRef: 'EX-2', run: EXAMPLE_FENCE.run, end: 0 as const };
    const state = lastState({
      posts: [override(1, { sharedRun })],
      site: { ...EXAMPLE_FENCE.site, soilSaturated: true },
      works: [reset, done],
    });
    const onDay = { earliest: '2024-04-04', latest: '2024-04-04' };
    expect(state.posts).toHaveLength(9);
    expect(state.run).toEqual({ ...EXAMPLE_FENCE.run, postSpacingM: 10 * FT });
    expect(state.built).toEqual(onDay);
    expect(state.soilSaturated).toBe(true);
    expect(postOf(state, 2)).toMatchObject({ piece: '2 by R', wood: NO_1_WOOD, installed: onDay, sharedRun: null });
    expect(postOf(state, 1).sharedRun).toEqual(sharedRun);
    // Post 4 stands at 30 ft, nearest to the old post 5 at 32 ft, whose footing was reset.
    expect(postOf(state, 4).ground.embedmentM).toBe(0.9);
    expect(postOf(state, 3).ground).toEqual(EXAMPLE_FENCE.ground);
    expect(lastState({ works: [rebuild()] }).run).toBe(EXAMPLE_FENCE.run);
  });
});
