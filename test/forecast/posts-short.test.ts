import { describe, expect, it } from 'vitest';
import { type BeliefPoints, MEDIAN_POINT, singlePoint } from '../../src/forecast/belief-points.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { breakProbability, type GumbelCurve } from '../../src/forecast/hazard-curve.ts';
import { normalCdf } from '../../src/forecast/normal-distribution.ts';
import { postsShort, shareBelow, survivalLedger } from '../../src/forecast/risk.ts';
import { stateModel } from '../../src/forecast/state-model.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';
import { inspection, lastState, outcome, reading } from './made-up-events.ts';

/** The day of the build: nothing has rotted, whatever the pace. */
const DAY = '2015-03-01';
const LATER = '2023-03-01';
const modelOf = (facts: Partial<FenceFacts>, points: BeliefPoints = MEDIAN_POINT) =>
  stateModel(EXAMPLE_FENCE.site, lastState(facts), points);
/** Moment a sound 4x4 has in the middle [N m], and the demand of each class of the example with its count. */
const BUILT_NM = (32.5 * (88.9 ** 3 / 6)) / 1000;
const demands = (model: ReturnType<typeof modelOf>) =>
  model.classes.classes.map(({ momentPerV2, numbers }) => ({ perV2: momentPerV2, count: numbers.length }));
/** Two belief points, the second one's permanent load a spread over the median. */
const twoPoints = (weights: Float64Array | null): BeliefPoints => {
  const one = singlePoint({}, normalCdf);
  const twice = (record: BeliefPoints['scores']) =>
    Object.fromEntries(Object.entries(record).map(([key, [value]]) => [key, Float64Array.of(value!, value!)]));
  const scores = { ...twice(one.scores), 'permanent load': Float64Array.of(0, 1) };
  return { ...one, count: 2, levels: twice(one.levels), scores, weights } as unknown as BeliefPoints;
};
const STEEL = { wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 2500 } } as const;

describe('posts expected short', () => {
  it('are of sound wood the share of strengths under the demand, 0.32 spread in ln strength, each post for itself', () => {
    const model = modelOf({});
    const gust = 52;
    const shares = demands(model).map(({ perV2, count }) => ({
      count,
      share: normalCdf(Math.log((gust ** 2 * perV2) / BUILT_NM) / 0.32),
    }));
    const { expected, any } = postsShort(model, DAY, gust);
    expect(expected).toBeCloseTo(
      shares.reduce((sum, { share, count }) => sum + share * count, 0),
      6,
    );
    expect(any).toBeCloseTo(1 - shares.reduce((none, { share, count }) => none * (1 - share) ** count, 1), 6);
    expect(expected).toBeGreaterThan(any);
  });

  it('are of steel all or none of a class: it does not scatter', () => {
    const model = modelOf(STEEL);
    const line = model.classes.classes.find(({ isLinePost }) => isLinePost)!;
    const gust = Math.sqrt(2500 / line.momentPerV2);
    expect(postsShort(model, DAY, gust * 0.999).expected).toBe(
      demands(model)
        .filter(({ perV2 }) => perV2 > line.momentPerV2 * 1.01)
        .reduce((sum, { count }) => sum + count, 0),
    );
    expect(postsShort(model, DAY, 3)).toEqual({ expected: 0, any: 0 });
    expect(postsShort(model, DAY, 200)).toEqual({ expected: 11, any: 1 });
  });

  it('are those that are broken, whatever the gust', () => {
    const model = modelOf({ outcomes: [outcome({ posts: [5, 7] })] });
    const { expected, any } = postsShort(model, DAY, 1);
    expect(expected).toBeCloseTo(2, 9);
    expect(any).toBe(1);
  });

  it('are those whose rails pull out, as soon as the wind on them is more than the rails hold', () => {
    const facts = { inspections: [inspection('2020-05-05', reading(5, { railConnection: 0.1 }))] };
    const model = modelOf(facts);
    // A tenth of two 16d nails at each end of a middle rail that carries half of each of two bays.
    const railN = (0.1 * 2 * 7850 * 0.55 ** 2.5 * 0.162 * 2 * 4.4482216 * 2) / 0.5;
    const post = model.classes.classes.find(({ numbers }) => numbers.includes(5))!;
    const pullsAt = Math.sqrt(railN / post.forcePerV2);
    expect(pullsAt).toBeLessThan(50);
    const moreThanSound = (gust: number): number =>
      postsShort(model, DAY, gust).expected - postsShort(modelOf({}), DAY, gust).expected;
    const share = normalCdf(Math.log((pullsAt ** 2 * post.momentPerV2) / BUILT_NM) / 0.32);
    expect(moreThanSound(pullsAt * 0.999)).toBeCloseTo(0, 9);
    expect(moreThanSound(pullsAt * 1.001)).toBeCloseTo(1 - share, 2);
    expect(postsShort(model, DAY, pullsAt * 1.001).any).toBe(1);
    // A heavier load at a belief point pulls them out in a lesser gust.
    const heavy = modelOf(facts, singlePoint({ 'permanent load': 1 }, normalCdf));
    expect(postsShort(heavy, DAY, pullsAt * Math.exp(-0.17 / 2) * 1.001).any).toBe(1);
    expect(postsShort(heavy, DAY, pullsAt * Math.exp(-0.17 / 2) * 0.999).any).toBeLessThan(1);
  });

  it('grow with rot, and are counted by kind where posts are of unlike wood', () => {
    expect(postsShort(modelOf({}), LATER, 45).expected).toBeGreaterThan(postsShort(modelOf({}), DAY, 45).expected);
    const mixed = { posts: [{ number: 5, positionM: null, installed: null, wood: STEEL.wood, sharedRun: null }] };
    const gust = 52;
    const line = modelOf({}).classes.classes.find(({ isLinePost }) => isLinePost)!;
    const share = normalCdf(Math.log((gust ** 2 * line.momentPerV2) / BUILT_NM) / 0.32);
    expect(postsShort(modelOf(mixed), DAY, gust).expected).toBeCloseTo(
      postsShort(modelOf({}), DAY, gust).expected - share + 1,
      6,
    );
  });

  it('are averaged over the belief points by what each is worth', () => {
    const at = (load: number) => postsShort(modelOf({}, singlePoint({ 'permanent load': load }, normalCdf)), DAY, 48);
    const [light, heavy] = [at(0), at(1)];
    const of = (weights: Float64Array | null) => postsShort(modelOf({}, twoPoints(weights)), DAY, 48);
    expect(heavy.expected).toBeGreaterThan(light.expected * 1.1);
    expect(of(null).expected).toBeCloseTo((light.expected + heavy.expected) / 2, 12);
    expect(of(null).any).toBeCloseTo((light.any + heavy.any) / 2, 12);
    const weighted = of(Float64Array.of(0.9, 0.1));
    expect(weighted.expected).toBeCloseTo(0.9 * light.expected + 0.1 * heavy.expected, 12);
    expect(weighted.any).toBeCloseTo(0.9 * light.any + 0.1 * heavy.any, 12);
  });
});

describe('the share of the belief under a gust', () => {
  it('counts points under it, not those at it, each by its weight', () => {
    const speeds = Float64Array.of(30, 40, 50, 60);
    expect(shareBelow(speeds, 50)).toBe(0.5);
    expect(shareBelow(speeds, 50, Float64Array.of(0.1, 0.2, 0.3, 0.4))).toBeCloseTo(0.3, 12);
    expect(shareBelow(speeds, 10)).toBe(0);
    expect(shareBelow(new Float64Array(10).fill(1), 50)).toBeCloseTo(1, 12);
    // Rounding of the sum never makes more than certainty.
    expect(shareBelow(Float64Array.of(1, 1), 50, Float64Array.of(0.6, 0.5))).toBe(1);
  });
});

describe('the chance to snap, season by season', () => {
  const CURVE: GumbelCurve = { kind: 'gumbel', locationMps: 17, scaleMps: 10, explanation: 'made up' };
  const breaks = (mps: number): number => breakProbability(CURVE, mps, 0.18 / 2, 0.8);

  it('is that of the points, weighed by the belief and by what has stood so far', () => {
    const speeds = Float64Array.of(35, 60);
    const ledger = survivalLedger(CURVE, 0.8, { count: 2, weights: Float64Array.of(0.25, 0.75) });
    const [weak, strong] = [breaks(35), breaks(60)];
    expect(ledger.addSeason(speeds)).toBeCloseTo(0.25 * weak + 0.75 * strong, 10);
    const [a, b] = [0.25 * (1 - weak), 0.75 * (1 - strong)];
    expect(ledger.addSeason(speeds)).toBeCloseTo((a * weak + b * strong) / (a + b), 10);
  });

  it('is certain once nothing of the belief is left standing', () => {
    const ledger = survivalLedger(CURVE, 0.8, { count: 1, weights: null });
    expect(ledger.addSeason(Float64Array.of(0))).toBe(1);
    expect(ledger.addSeason(Float64Array.of(90))).toBe(1);
  });
});
