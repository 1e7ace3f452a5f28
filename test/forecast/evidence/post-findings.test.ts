import { describe, expect, it } from 'vitest';
import type { PostReading } from '../../../src/forecast/evidence/inspection.ts';
import { afterInspection, afterOutcome } from '../../../src/forecast/evidence/post-findings.ts';
import type { StormOutcome } from '../../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates, stateBefore, stateOn } from '../../../src/forecast/fence-state.ts';
import { type FenceState, type PostCondition, SOUND_CONDITION } from '../../../src/forecast/post-state.ts';
import type { Works } from '../../../src/forecast/works.ts';
import { dayNumber } from '../../../src/units/calendar-day.ts';
import { EXAMPLE_FENCE } from '../example-fence.ts';
import { groundlineOf } from './read-fence.ts';

const DAY = '2020-06-10';
const sound = (): FenceState => fenceStates(EXAMPLE_FENCE)[0]!.state;
const withCondition = (number: number, change: Partial<PostCondition>): FenceState => {
  const state = sound();
  const posts = state.posts.map((post) =>
    post.number === number ? { ...post, condition: { ...post.condition, ...change } } : post,
  );
  return { ...state, posts };
};
const read = (state: FenceState, post: number, found: Partial<PostReading>): FenceState =>
  afterInspection(state, {
    ref: 'I-1',
    day: DAY,
    method: 'eye',
    readings: [{ ...groundlineOf(post, null), ...found }],
  });
const postIn = (state: FenceState, number: number) => state.posts.find((post) => post.number === number)!;
const conditionIn = (state: FenceState, number: number): PostCondition => postIn(state, number).condition;

describe('the state after an inspection', () => {
  it('is the same where nothing was found', () => {
    const state = sound();
    expect(read(state, 4, {})).toBe(state);
    expect(read(state, 4, { groundline: { kind: 'depth', depthMm: 3 } })).toBe(state);
    expect(read(state, 4, { cavityMm: 0, collarCracked: false, leanDegrees: 15 })).toBe(state);
  });

  it.each([
    ['broken at the groundline', { groundline: { kind: 'broken' } }, { broken: true }],
    ['leaning beyond 15 degrees', { leanDegrees: 15.1 }, { leaning: true }],
    ['closed off', { closedOff: true }, { closedOff: true }],
    ['a cracked collar', { collarCracked: true }, { collarCracked: true }],
    ['a weak rail connection', { railConnection: 0.4 }, { railConnection: 0.4 }],
    ['a hollow heart', { cavityMm: 30 }, { cavityDiameterMm: 30 }],
  ] as const)('holds what was found of a post, and of no other: %s', (_, found, condition) => {
    const before = sound();
    const after = read(before, 4, found);
    expect(conditionIn(after, 4)).toEqual({ ...SOUND_CONDITION, ...condition });
    expect(after.posts).toHaveLength(before.posts.length);
    for (const post of before.posts) {
      if (post.number !== 4) expect(postIn(after, post.number)).toBe(post);
    }
    expect(postIn(after, 4).cuts).toBe(postIn(before, 4).cuts);
  });

  it('keeps what was found before and not looked at again', () => {
    const before: Partial<PostCondition> = {
      broken: true,
      leaning: true,
      closedOff: true,
      collarCracked: true,
      railConnection: 0.3,
      cavityDiameterMm: 20,
    };
    const state = withCondition(4, before);
    expect(read(state, 4, { groundline: { kind: 'sound-to', depthMm: 2 } })).toBe(state);
  });

  it('mends no break and opens no post, but takes back a crack, a lean and a cavity that are not there', () => {
    const state = withCondition(4, {
      broken: true,
      closedOff: true,
      collarCracked: true,
      leaning: true,
      railConnection: 0.3,
      cavityDiameterMm: 20,
    });
    const after = read(state, 4, { collarCracked: false, leanDegrees: 0, railConnection: 1, cavityMm: 0 });
    expect(conditionIn(after, 4)).toEqual({
      broken: true,
      closedOff: true,
      collarCracked: false,
      leaning: false,
      railConnection: 1,
      cavityDiameterMm: 0,
    });
  });

  it.each([
    [2, false],
    [3, false],
    [3.1, true],
    [15, true],
  ])('a post that leaned before and is found %s degrees out of plumb still leans: %s', (degrees, leaning) => {
    expect(conditionIn(read(withCondition(4, { leaning: true }), 4, { leanDegrees: degrees }), 4).leaning).toBe(
      leaning,
    );
  });

  it('takes the last cut measured, on its day, and changes nothing else', () => {
    const before = sound();
    const after = read(before, 4, { trimmerCutMm: 6 });
    expect(postIn(after, 4)).toEqual({
      ...postIn(before, 4),
      cuts: { ...postIn(before, 4).cuts, measured: { depthMm: 6, day: dayNumber(DAY) } },
    });
    expect(postIn(read(after, 4, { trimmerCutMm: 0 }), 4).cuts.measured).toEqual({ depthMm: 0, day: dayNumber(DAY) });
    expect(postIn(read(after, 4, { closedOff: true }), 4).cuts.measured).toEqual({ depthMm: 6, day: dayNumber(DAY) });
  });

  it('refuses readings of posts that are not there, naming the inspection and each of them', () => {
    const readings = [groundlineOf(4, null), groundlineOf(12, null), groundlineOf(0, null)];
    expect(() => afterInspection(sound(), { ref: 'I-7', day: DAY, method: 'eye', readings })).toThrow(
      new RangeError('inspection I-7: post 12, 0 named, but the fence had no such post on that day'),
    );
  });
});

const outcome = (
  posts: StormOutcome['posts'],
  result: StormOutcome['result'],
  storm = 'S',
  ref = 'O',
): StormOutcome => ({
  ref: `${ref} ${storm} ${result}`,
  storm,
  day: DAY,
  gustMps: 30,
  gustSpread: 0.1,
  posts,
  result,
});

describe('the state after a storm', () => {
  it('is the same where the posts stood', () => {
    const state = sound();
    const stood = outcome('all', 'stood');
    expect(afterOutcome(state, stood, [stood])).toBe(state);
  });

  it('has broken posts where some snapped, leaning ones where some leaned, and leaves the others', () => {
    const [snapped, leaned] = [outcome([2, 3], 'snapped'), outcome([5], 'leaned')];
    const before = withCondition(3, { leaning: true, cavityDiameterMm: 10 });
    const after = afterOutcome(afterOutcome(before, snapped, [snapped, leaned]), leaned, [snapped, leaned]);
    expect(conditionIn(after, 2)).toEqual({ ...SOUND_CONDITION, broken: true });
    expect(conditionIn(after, 3)).toEqual({ ...SOUND_CONDITION, broken: true, leaning: true, cavityDiameterMm: 10 });
    expect(conditionIn(after, 5)).toEqual({ ...SOUND_CONDITION, leaning: true });
    for (const number of [1, 4, 6, 7, 8, 9, 10, 11]) expect(postIn(after, number)).toBe(postIn(before, number));
  });

  it('takes "all" as every post that no other row of the storm names', () => {
    const [all, snapped] = [outcome('all', 'leaned'), outcome([1, 2, 3, 4, 5, 6, 7, 8], 'snapped')];
    const after = afterOutcome(sound(), all, [all, snapped]);
    expect(after.posts.filter(({ condition }) => condition.leaning).map(({ number }) => number)).toEqual([9, 10, 11]);
  });

  it('refuses posts that are not there, also where they are said to have stood', () => {
    for (const result of ['stood', 'leaned', 'snapped'] as const) {
      const stray = outcome([11, 12], result);
      expect(() => afterOutcome(sound(), stray, [stray])).toThrow(
        new RangeError(`outcome O S ${result}: post 12 named, but the fence had no such post on that day`),
      );
    }
  });
});

describe('two storms on one day', () => {
  const first = outcome([4], 'leaned', 'A');
  const second = outcome([4, 5], 'snapped', 'B');
  const states = (...outcomes: readonly StormOutcome[]) => fenceStates({ ...EXAMPLE_FENCE, outcomes });

  it('both leave their mark, in one state that holds from the day on', () => {
    const after = states(second, first);
    expect(after).toHaveLength(2);
    expect(after[1]!.fromDay).toBe(DAY);
    expect(conditionIn(after[1]!.state, 4)).toEqual({ ...SOUND_CONDITION, leaning: true, broken: true });
    expect(conditionIn(after[1]!.state, 5)).toEqual({ ...SOUND_CONDITION, broken: true });
    expect(conditionIn(stateBefore(after, DAY), 4)).toEqual(SOUND_CONDITION);
  });

  it('each take "all" as the posts that their own rows leave', () => {
    const after = states(outcome('all', 'leaned', 'A'), outcome([2, 3], 'stood', 'A'), outcome([7], 'snapped', 'B'));
    const leaning = after[1]!.state.posts.filter(({ condition }) => condition.leaning).map(({ number }) => number);
    expect(leaning).toEqual([1, 4, 5, 6, 7, 8, 9, 10, 11]);
  });
});

describe('findings that open and clear', () => {
  const found = (day: string, ref: string, reading: PostReading): FenceFacts['inspections'][number] => ({
    ref,
    day,
    method: 'eye',
    readings: [reading],
  });
  const works = (each: Works): Works => each;
  const conditionOn = (facts: FenceFacts, day: string): PostCondition =>
    conditionIn(stateOn(fenceStates(facts), day), 4);

  it('a lean opens in a storm, stays while unseen, and clears where the post is found upright', () => {
    const facts: FenceFacts = {
      ...EXAMPLE_FENCE,
      outcomes: [outcome([4], 'leaned')],
      inspections: [
        found('2020-07-01', 'I-1', { ...groundlineOf(4, null), leanDegrees: 9 }),
        found('2020-08-01', 'I-2', { ...groundlineOf(4, null), leanDegrees: 1 }),
      ],
    };
    expect(conditionOn(facts, '2020-06-09').leaning).toBe(false);
    expect(conditionOn(facts, DAY).leaning).toBe(true);
    expect(conditionOn(facts, '2020-07-01').leaning).toBe(true);
    expect(conditionOn(facts, '2020-07-31').leaning).toBe(true);
    expect(conditionOn(facts, '2020-08-01').leaning).toBe(false);
  });

  it('a post closed off stays so until works leave it neither broken nor leaning', () => {
    const facts: FenceFacts = {
      ...EXAMPLE_FENCE,
      inspections: [
        found('2020-07-01', 'I-1', { ...groundlineOf(4, { kind: 'broken' }), leanDegrees: 20, closedOff: true }),
        found('2020-08-01', 'I-2', { ...groundlineOf(4, { kind: 'sound-to', depthMm: 5 }), leanDegrees: 20 }),
      ],
      works: [
        works({
          ref: 'W-1',
          day: '2020-09-01',
          kind: 'footing-reset',
          posts: [4],
          embedmentM: 0.7,
          footing: 'concrete',
          footingDiameterM: 0.25,
        }),
        works({ ref: 'W-2', day: '2020-10-01', kind: 'steel-sleeve', posts: [4], momentCapacityNm: 4000 }),
      ],
    };
    const open = { broken: true, leaning: true, closedOff: true };
    expect(conditionOn(facts, '2020-06-30')).toEqual(SOUND_CONDITION);
    expect(conditionOn(facts, '2020-07-01')).toEqual({ ...SOUND_CONDITION, ...open });
    expect(conditionOn(facts, '2020-08-31')).toEqual({ ...SOUND_CONDITION, ...open });
    expect(conditionOn(facts, '2020-09-01')).toEqual({ ...SOUND_CONDITION, ...open, leaning: false });
    expect(conditionOn(facts, '2020-10-01')).toEqual(SOUND_CONDITION);
  });
});
