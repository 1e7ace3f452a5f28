import { describe, expect, it } from 'vitest';
import { railConnectionForce, usualRailConnection } from '../../../src/capacity/rail-connection.ts';
import { BELIEF_POINTS, MEDIAN_POINT, singlePoint } from '../../../src/forecast/belief-points.ts';
import type { PostReading } from '../../../src/forecast/evidence/inspection.ts';
import { stormTrials } from '../../../src/forecast/evidence/storm-trials.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { nodeMoments } from '../../../src/forecast/node-moments.ts';
import { normalCdf } from '../../../src/forecast/normal-distribution.ts';
import { classValues, stateModel } from '../../../src/forecast/state-model.ts';
import type { Works } from '../../../src/forecast/works.ts';
import { dayNumber } from '../../../src/units/calendar-day.ts';
import { PINE_4X4 } from '../example-fence.ts';
import { groundlineOf } from './read-fence.ts';
import { ROTLESS_FENCE, SHORT_FENCE, STORM_DAY, stormOn, withOutcomes } from './stormed-fence.ts';

const trialsOf = (facts: FenceFacts, points = MEDIAN_POINT) => stormTrials(facts, fenceStates(facts), points);
/** Each trace as its count and the results of its trials; a tilde where the footing was not tried. */
const told = (facts: FenceFacts): readonly string[] =>
  trialsOf(facts)
    .traces.map(
      ({ count, trials }) =>
        `${count}: ${trials.map(({ storm, result, footingTried }) => `${storm} ${footingTried ? '' : '~'}${result}`).join(', ')}`,
    )
    .sort();
const foundAt = (day: string, ...readings: readonly (Partial<PostReading> & { readonly post: number })[]) => ({
  ref: `I ${day}`,
  day,
  method: 'eye' as const,
  readings: readings.map((reading) => ({ ...groundlineOf(reading.post, null), ...reading })),
});
const reset = (day: string, posts: readonly number[], embedmentM = 0.6096): Works => ({
  ref: `W ${day}`,
  day,
  posts,
  kind: 'footing-reset',
  embedmentM,
  footing: 'concrete',
  footingDiameterM: 0.2286,
});

describe('the storms over a fence', () => {
  it('blow against speeds from the worst direction, and are known as well as their gust and the load of a storm', () => {
    const { storms } = trialsOf(withOutcomes(SHORT_FENCE, stormOn(STORM_DAY, 30, [2], 'stood', { gustSpread: 0.12 })));
    expect(storms).toHaveLength(1);
    expect(storms[0]!.logGust).toBeCloseTo(Math.log(30 / Math.sqrt(0.85)), 12);
    // half of 0.18 of force, as a speed
    expect(storms[0]!.spread).toBeCloseTo(Math.sqrt(0.12 ** 2 + 0.09 ** 2), 12);
  });

  it('come in the order of their days, on one day in that of their names, whatever the order of the rows', () => {
    const rows = [
      stormOn('2021-06-01', 21, [2], 'stood'),
      stormOn('2019-06-01', 13, [2], 'stood', { storm: 'C' }),
      stormOn('2019-06-01', 11, [2], 'stood', { storm: 'A' }),
      stormOn('2020-06-01', 20, [3], 'stood'),
      stormOn('2019-06-01', 12, [2], 'stood', { storm: 'B' }),
      stormOn('2020-06-01', 20, [2], 'stood'),
    ];
    for (const outcomes of [rows, [...rows].reverse()]) {
      const { storms } = trialsOf(withOutcomes(SHORT_FENCE, ...outcomes));
      const gusts = storms.map(({ logGust }) => Math.round(Math.exp(logGust) * Math.sqrt(0.85)));
      expect(gusts).toEqual([11, 12, 13, 20, 21]);
    }
  });

  it('are none where none was reported', () => {
    expect(trialsOf(SHORT_FENCE)).toEqual({ storms: [], traces: [] });
  });
});

describe('the posts that went through them', () => {
  it('are those reported, alike ones taken together', () => {
    const facts = withOutcomes(
      SHORT_FENCE,
      stormOn(STORM_DAY, 30, [1, 5], 'stood'),
      stormOn(STORM_DAY, 30, [3], 'leaned'),
    );
    expect(told(facts)).toEqual(['1: 0 leaned', '2: 0 stood']);
  });

  it('are all that no other row names where a row says so', () => {
    const facts = withOutcomes(
      SHORT_FENCE,
      stormOn(STORM_DAY, 30, 'all', 'stood'),
      stormOn(STORM_DAY, 30, [1], 'leaned'),
    );
    const { traces } = trialsOf(facts);
    expect(traces.reduce((sum, { count }) => sum + count, 0)).toBe(5);
    expect(traces.filter(({ trials }) => trials[0]!.result === 'leaned').map(({ count }) => count)).toEqual([1]);
  });

  it('are followed from storm to storm', () => {
    const facts = withOutcomes(
      SHORT_FENCE,
      stormOn('2019-06-01', 25, [3], 'stood'),
      stormOn('2020-06-01', 30, [3], 'leaned'),
      stormOn('2021-06-01', 35, [3], 'stood'),
      stormOn('2022-06-01', 40, [3], 'snapped'),
      stormOn('2023-06-01', 20, [3], 'stood'),
    );
    // from the lean on the footing shows nothing more, and a post that snapped is not there
    expect(told(facts)).toEqual(['1: 0 stood, 1 leaned, 2 ~stood, 3 ~snapped']);
  });

  it('were not tried at the footing where an inspection had found them leaning, and not at all where broken', () => {
    const facts: FenceFacts = {
      ...withOutcomes(SHORT_FENCE, stormOn(STORM_DAY, 30, [2, 3, 4], 'stood')),
      inspections: [foundAt('2019-01-01', { post: 2, leanDegrees: 20 }, { post: 4, groundline: { kind: 'broken' } })],
    };
    expect(told(facts)).toEqual(['1: 0 stood', '1: 0 ~stood']);
  });

  it('are other ones after a swap', () => {
    const swap: Works = { ref: 'W', day: '2020-01-01', posts: [3], kind: 'post-swap', wood: PINE_4X4 };
    const facts: FenceFacts = {
      ...withOutcomes(SHORT_FENCE, stormOn('2019-06-01', 40, [3], 'snapped'), stormOn(STORM_DAY, 30, [3], 'stood')),
      works: [swap],
    };
    expect(told(facts)).toEqual(['1: 0 snapped', '1: 1 stood']);
  });

  it('stand on another footing after a reset: what the old one did says nothing of its scatter', () => {
    const facts: FenceFacts = {
      ...withOutcomes(
        SHORT_FENCE,
        stormOn('2019-06-01', 30, [3], 'leaned'),
        stormOn(STORM_DAY, 35, [3], 'stood'),
        stormOn('2021-06-01', 36, [3], 'stood'),
      ),
      works: [reset('2019-09-01', [3])],
    };
    expect(told(facts)).toEqual(['1: 0 leaned', '1: 1 stood, 2 stood']);
  });

  it('go on with their footing where a sleeve mends what a storm snapped', () => {
    const sleeve: Works = { ref: 'W', day: '2019-09-01', posts: [3], kind: 'steel-sleeve', momentCapacityNm: 3000 };
    const facts: FenceFacts = {
      ...withOutcomes(SHORT_FENCE, stormOn('2019-06-01', 40, [3], 'snapped'), stormOn(STORM_DAY, 30, [3], 'stood')),
      works: [sleeve],
    };
    expect(told(facts)).toEqual(['1: 0 snapped, 1 stood']);
  });
});

describe('two storms on one day', () => {
  const both = (first: 'stood' | 'leaned' | 'snapped', second: 'stood' | 'leaned' | 'snapped') =>
    told(
      withOutcomes(
        SHORT_FENCE,
        stormOn(STORM_DAY, 30, [3], first, { storm: 'A' }),
        stormOn(STORM_DAY, 34, [3], second, { storm: 'B' }),
      ),
    );
  it('try a post that stood in the first twice', () => {
    expect(both('stood', 'leaned')).toEqual(['1: 0 stood, 1 leaned']);
  });
  it('find a post that the first snapped no longer there', () => {
    expect(both('snapped', 'stood')).toEqual(['1: 0 snapped']);
  });
  it('find the footing of a post that leaned in the first tried no more', () => {
    expect(both('leaned', 'stood')).toEqual(['1: 0 leaned, 1 ~stood']);
    expect(both('leaned', 'snapped')).toEqual(['1: 0 leaned, 1 ~snapped']);
  });
});

describe('the speeds of a trial', () => {
  const day = '2030-06-01';
  const old = withOutcomes(SHORT_FENCE, stormOn(day, 30, [1], 'stood'), stormOn(day, 30, [3], 'stood'));
  const stateOf = (facts: FenceFacts) => fenceStates(facts).at(-1)!.state;
  const classOf = (model: ReturnType<typeof stateModel>, post: number): number =>
    model.classes.classes.findIndex(({ numbers }) => numbers.includes(post));
  const trialAt = (facts: FenceFacts, index: number, points = MEDIAN_POINT) =>
    trialsOf(facts, points).traces[index]!.trials[0]!;

  it('are those of the forecast on that day, at each point and node', () => {
    const model = stateModel(old.site, stateOf(SHORT_FENCE), BELIEF_POINTS);
    const { snapMps } = classValues(model, day);
    for (const [index, post] of [1, 3].entries()) {
      const at = classOf(model, post);
      const { kind, momentPerV2 } = model.classes.classes[at]!;
      const { logSnap, logLean, snapSpread } = trialAt(old, index, BELIEF_POINTS);
      expect(logSnap).toHaveLength(9 * 128);
      expect(logLean).toHaveLength(128);
      // 0.32 of strength, as a speed
      expect(snapSpread).toBeCloseTo(0.16, 12);
      for (const point of [0, 1, 70, 127]) {
        expect(Math.exp(logLean[point]!)).toBeCloseTo(model.leanMps[at]![point]!, 9);
        // the middle node is the median post
        expect(Math.exp(logSnap[9 * point + 4]!)).toBeCloseTo(snapMps[at]![point]!, 9);
        const moments = nodeMoments(model, { kind, point, day: dayNumber(day) });
        if (moments.kind !== 'wood') expect.unreachable();
        for (const [node, momentNm] of moments.momentsNm.entries()) {
          const speed = Math.sqrt(
            momentNm / (momentPerV2 * Math.exp(0.17 * BELIEF_POINTS.scores['permanent load'][point]!)),
          );
          if (momentNm > 0) expect(Math.exp(logSnap[9 * point + node]!)).toBeCloseTo(speed, 9);
        }
      }
    }
  });

  it('are those at which the rails pull out where an inspection found them that weak', () => {
    const railed = (share: number): FenceFacts => ({
      ...withOutcomes(ROTLESS_FENCE, stormOn(STORM_DAY, 30, [3], 'stood')),
      inspections: [foundAt('2019-01-01', { post: 3, railConnection: share })],
    });
    const points = singlePoint({ 'permanent load': 1.4, 'fibre strength': 1 }, normalCdf);
    const { logSnap, snapSpread } = trialAt(railed(0.05), 0, points);
    const model = stateModel(ROTLESS_FENCE.site, stateOf(railed(0.05)), points);
    const { forcePerV2 } = model.classes.classes[classOf(model, 3)]!;
    const railN = railConnectionForce(usualRailConnection('southern-pine'), 0.05, 2);
    const speed = Math.sqrt(railN / (forcePerV2 * Math.exp(0.17 * 1.4)));
    for (let node = 0; node < 9; node += 1) expect(Math.exp(logSnap[node]!)).toBeCloseTo(speed, 9);
    expect(snapSpread).toBeCloseTo(0.16, 12);
    // Strong rails leave the post to break in bending.
    const sound = trialAt(withOutcomes(ROTLESS_FENCE, stormOn(STORM_DAY, 30, [3], 'stood')), 0, points);
    expect([...trialAt(railed(1), 0, points).logSnap]).toEqual([...sound.logSnap]);
    expect(sound.logSnap[0]).toBeGreaterThan(logSnap[0]!);
  });

  it('scatter not at all for steel', () => {
    const steel = {
      ...SHORT_FENCE,
      wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 2500 },
    } as const;
    const facts = withOutcomes(steel, stormOn(STORM_DAY, 30, [3], 'stood'));
    const { logSnap, snapSpread } = trialAt(facts, 0);
    const model = stateModel(facts.site, stateOf(steel), MEDIAN_POINT);
    const { momentPerV2 } = model.classes.classes[classOf(model, 3)]!;
    expect(snapSpread).toBeLessThan(1e-5);
    for (const log of logSnap) expect(Math.exp(log)).toBeCloseTo(Math.sqrt(2500 / momentPerV2), 9);
  });

  it('are those of the state that each storm met', () => {
    const facts: FenceFacts = {
      ...withOutcomes(SHORT_FENCE, stormOn('2019-06-01', 25, [3], 'stood'), stormOn(STORM_DAY, 25, [3], 'stood')),
      works: [{ ref: 'W', day: STORM_DAY, posts: [3], kind: 'steel-sleeve', momentCapacityNm: 100 }],
      inspections: [foundAt('2020-01-01', { post: 3, cavityMm: 50 })],
    };
    const [before, after] = trialsOf(facts).traces[0]!.trials;
    expect(after!.logSnap[4]).toBeLessThan(before!.logSnap[4]!);
    // the sleeve of that day comes after the storm
    expect(after!.snapSpread).toBeCloseTo(0.16, 12);
    expect([...after!.logLean]).toEqual([...before!.logLean]);
  });
});
