import { describe, expect, it } from 'vitest';
import { BELIEF_POINTS, MEDIAN_POINT, singlePoint } from '../../src/forecast/belief-points.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { normalCdf } from '../../src/forecast/normal-distribution.ts';
import { classValues, PERMANENT_LOAD_SPREAD, sectionLossOn, stateModel } from '../../src/forecast/state-model.ts';
import { dayNumber } from '../../src/units/calendar-day.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';
import { inspection, lastState, outcome, reading, works } from './made-up-events.ts';

const DAY = '2025-03-01';
const modelOf = (facts: Partial<FenceFacts>, points = MEDIAN_POINT) => stateModel(WARM_SITE, lastState(facts), points);
type Model = ReturnType<typeof modelOf>;
const classOf = (model: Model, post: number): number =>
  model.classes.classes.findIndex(({ numbers }) => numbers.includes(post));
const snapOf = (model: Model, post: number, sound = false): number =>
  classValues(model, DAY, sound).snapMps[classOf(model, post)]![0]!;
const leanOf = (model: Model, post: number): number => model.leanMps[classOf(model, post)]![0]!;
const at = (scores: Parameters<typeof singlePoint>[0]) => singlePoint(scores, normalCdf);
/** Bending moment of a sound 4x4 [N m]. */
const BUILT_NM = (32.5 * (88.9 ** 3 / 6)) / 1000;

describe('the snap speed of a class', () => {
  it('is the root of moment over demand: 57.7 m/s of a sound middle post', () => {
    // 3,806 N m over 1.1357 N x 1.00584 m at 1 m/s
    expect(snapOf(modelOf({}), 5, true)).toBeCloseTo(Math.sqrt(BUILT_NM / (1.1357 * 1.00584)), 2);
  });

  it('goes with the root of the fibre, and against that of the load', () => {
    const median = snapOf(modelOf({}), 5, true);
    expect(PERMANENT_LOAD_SPREAD).toBe(0.17);
    expect(snapOf(modelOf({}, at({ 'fibre strength': 1 })), 5, true) / median).toBeCloseTo(Math.exp(0.15 / 2), 10);
    expect(snapOf(modelOf({}, at({ 'permanent load': 1 })), 5, true) / median).toBeCloseTo(Math.exp(-0.17 / 2), 10);
  });

  it('is that of shear, or of the rails, where these give first', () => {
    const low = modelOf({ run: { ...EXAMPLE_FENCE.run, heightM: 0.18 } });
    const { forcePerV2 } = low.classes.classes[classOf(low, 5)]!;
    expect(snapOf(low, 5, true)).toBeCloseTo(Math.sqrt(((2 / 3) * 32.5 * 0.118 * 88.9 ** 2) / forcePerV2), 4);
    const loose = { inspections: [inspection('2020-01-01', reading(5, { railConnection: 0.01 }))] };
    expect(snapOf(modelOf(loose), 5)).toBeLessThan(0.5 * snapOf(modelOf(loose), 6));
    expect(snapOf(modelOf(loose), 5, true)).toBeCloseTo(snapOf(modelOf({}), 5, true), 10);
    const loaded = modelOf(loose, at({ 'permanent load': 1 }));
    expect(snapOf(loaded, 5) / snapOf(modelOf(loose), 5)).toBeCloseTo(Math.exp(-0.17 / 2), 10);
  });

  it('is nothing of a broken post, until it is taken as built', () => {
    const broken = modelOf({ outcomes: [outcome({})] });
    expect(snapOf(broken, 5)).toBe(0);
    expect(snapOf(broken, 5, true)).toBeCloseTo(snapOf(modelOf({}), 5, true), 10);
  });
});

describe('what a post has lost', () => {
  it('is rot in every face, cuts in one and a hollow, and nothing as built', () => {
    const facts = {
      trimmer: { guards: false, yearlyCutMm: 0.5 },
      inspections: [inspection('2020-01-01', reading(5, { cavityMm: 30 }))],
    };
    const model = modelOf(facts);
    const { kind } = model.classes.classes[classOf(model, 5)]!;
    const loss = sectionLossOn(model, { kind, point: 0, dayNumber: dayNumber(DAY), sound: false });
    // Ten years since the build.
    expect(loss.oneFaceMm).toBeCloseTo(5, 1);
    expect(loss.cavityDiameterMm).toBe(30);
    expect(loss.depthMm).toBeGreaterThan(1);
    expect(sectionLossOn(model, { kind, point: 0, dayNumber: dayNumber(DAY), sound: true })).toEqual({
      depthMm: 0,
      oneFaceMm: 0,
      cavityDiameterMm: 0,
    });
  });

  it('is told as depth, and as the cube of the side left over the side built', () => {
    const model = modelOf({});
    const { depthMm, strengthLeft } = classValues(model, DAY);
    const depth = depthMm[classOf(model, 5)]![0]!;
    expect(depth).toBeGreaterThan(1);
    expect(strengthLeft[classOf(model, 5)]![0]).toBeCloseTo(((88.9 - 2 * depth) / 88.9) ** 3, 10);
    expect(classValues(model, DAY, true).strengthLeft[0]![0]).toBe(1);
    // Weak fibre is weak from the beginning: it leaves no less of what was built.
    const weak = modelOf({}, at({ 'fibre strength': -2 }));
    expect(classValues(weak, DAY).strengthLeft[0]![0]).toBeCloseTo(strengthLeft[0]![0]!, 12);
  });

  it('is of steel and of a sleeve what they carry over what was built', () => {
    const sleeved = modelOf({ works: [works('steel-sleeve', { momentCapacityNm: 2000 })] });
    expect(classValues(sleeved, DAY).strengthLeft[classOf(sleeved, 5)]![0]).toBeCloseTo(2000 / BUILT_NM, 9);
    const steel = modelOf({ wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 2000 } });
    expect(classValues(steel, DAY).strengthLeft[0]![0]).toBe(1);
  });
});

describe('the lean speed of a class', () => {
  it('is the root of the weaker of soil and collar over the demand, where the footing is recorded', () => {
    const { forcePerV2 } = modelOf({}).classes.classes[classOf(modelOf({}), 5)]!;
    const sandN =
      (0.8 * 0.5 * 18_000 * 0.2286 * 0.6096 ** 3 * Math.tan((62 * Math.PI) / 180) ** 2) / (1.00584 + 0.6096);
    expect(leanOf(modelOf({}), 5)).toBeCloseTo(Math.sqrt(sandN / forcePerV2), 4);
    const thin = modelOf({ ground: { ...EXAMPLE_FENCE.ground, footingDiameterM: 0.1 } });
    expect(leanOf(thin, 5)).toBeLessThan(0.5 * leanOf(modelOf({}), 5));
  });

  it('spreads by 0.4 in the footing and 0.17 in the load, both in ln force', () => {
    const median = leanOf(modelOf({}), 5);
    expect(leanOf(modelOf({}, at({ footing: 1 })), 5) / median).toBeCloseTo(Math.exp(0.4 / 2), 10);
    expect(leanOf(modelOf({}, at({ 'permanent load': 1 })), 5) / median).toBeCloseTo(Math.exp(-0.17 / 2), 10);
    const learned = {
      ...at({ footing: 1 }),
      learned: { version: 1, paces: [], footing: { logShift: -0.2, spread: 0.3 } },
    } as unknown as typeof MEDIAN_POINT;
    expect(leanOf(modelOf({}, learned), 5) / median).toBeCloseTo(Math.exp(0.1 / 2), 10);
  });

  it('is of a footing that is not recorded that of its prior at each point', () => {
    const unknown = { ground: { embedmentM: null, footing: null, footingDiameterM: null } };
    expect(leanOf(modelOf(unknown), 5)).toBeCloseTo(leanOf(modelOf({}), 5), 6);
    const deep = { ground: { ...EXAMPLE_FENCE.ground, embedmentM: 0.6096 * Math.exp(0.15) } };
    expect(leanOf(modelOf(unknown, at({ embedment: 1 })), 5)).toBeCloseTo(leanOf(modelOf(deep), 5), 6);
    const model = modelOf(unknown, BELIEF_POINTS);
    expect(new Set(model.leanMps[0]).size).toBe(128);
  });

  it('is of a corner post that of the worse of its runs, of a cracked collar that of the bare post', () => {
    const taller = { ...EXAMPLE_FENCE.run, heightM: 2.4, ends: [{ kind: 'free' }, { kind: 'free' }] as const };
    const sharedRun = { fenceRef: 'EX-2', run: taller, end: 0 as const };
    const corner = { posts: [{ number: 1, positionM: null, installed: null, wood: null, sharedRun }] };
    const other = modelOf({ run: taller });
    expect(leanOf(modelOf(corner), 1)).toBeCloseTo(leanOf(other, 1), 8);
    const cracked = { inspections: [inspection('2020-01-01', reading(5, { collarCracked: true }))] };
    const bare = { ground: { ...EXAMPLE_FENCE.ground, footing: 'soil' as const, footingDiameterM: null } };
    expect(leanOf(modelOf(cracked), 5)).toBeCloseTo(leanOf(modelOf(bare), 5), 8);
  });
});
