import { describe, expect, it } from 'vitest';
import { medianBendingStrength } from '../../src/capacity/wood-strength.ts';
import { decayDepth } from '../../src/decay/decay-depth.ts';
import { medianDecayRate } from '../../src/decay/decay-rate.ts';
import { BELIEF_POINTS, MEDIAN_POINT, singlePoint } from '../../src/forecast/belief-points.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { type NodeMoments, nodeMoments } from '../../src/forecast/node-moments.ts';
import { NORMAL_QUADRATURE, normalCdf } from '../../src/forecast/normal-distribution.ts';
import type { FenceState, PostState } from '../../src/forecast/post-state.ts';
import { classValues, stateModel } from '../../src/forecast/state-model.ts';
import { DAYS_PER_YEAR, dayNumber } from '../../src/units/calendar-day.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';

const BUILT = dayNumber('2015-03-01');
/** Side of a 4x4 as sold [mm]. */
const SIDE_MM = 88.9;
/** Section modulus of a square, b^3 / 6 [mm3]. */
const squareModulus = (sideMm: number): number => sideMm ** 3 / 6;
const strengthMpa = (): number => medianBendingStrength('southern-pine', 'no-2', PINE_4X4.section);

/** The example fence with every post changed alike. */
function stateWith(change: Partial<PostState>, facts: FenceFacts = EXAMPLE_FENCE): FenceState {
  const { state } = fenceStates(facts)[0]!;
  return { ...state, posts: state.posts.map((post) => ({ ...post, ...change })) };
}
const sound = (): PostState => stateWith({}).posts[0]!;
const momentsOf = (state: FenceState, years: number, points = MEDIAN_POINT, point = 0): NodeMoments =>
  nodeMoments(stateModel(WARM_SITE, state, points), { kind: 0, point, day: BUILT + Math.round(years * DAYS_PER_YEAR) });
function wood(moments: NodeMoments): readonly number[] {
  if (moments.kind !== 'wood') expect.unreachable();
  return moments.momentsNm;
}

describe('the moment that wooden posts resist at the nodes of the scatter', () => {
  it('is strength times section modulus at every node on the day they were set', () => {
    const moments = wood(momentsOf(stateWith({}), 0));
    expect(moments).toHaveLength(9);
    for (const momentNm of moments) {
      expect(momentNm / ((strengthMpa() * squareModulus(SIDE_MM)) / 1000)).toBeCloseTo(1, 9);
    }
  });

  it('is that of the section left at the pace of the point and the node, times the fibre of the fence', () => {
    const points = singlePoint({ pace: 0.5, 'fibre strength': -1.2 }, normalCdf);
    const moments = wood(momentsOf(stateWith({}), 14, points));
    const exposure = Math.round(14 * DAYS_PER_YEAR) / DAYS_PER_YEAR;
    for (const [index, node] of NORMAL_QUADRATURE.nodes.entries()) {
      const rate = medianDecayRate('ground-contact', WARM_SITE.climate) * Math.exp(0.6 * 0.5 + 0.54 * node);
      const left = Math.max(0, SIDE_MM - 2 * decayDepth(exposure, rate));
      // fence-level spread of strength of a known species: 0.15
      const momentNm = (strengthMpa() * Math.exp(0.15 * -1.2) * squareModulus(left)) / 1000;
      expect(moments[index]).toBeCloseTo(momentNm, 6);
    }
    expect(moments[0]! - moments[8]!).toBeGreaterThan(0);
  });

  it('has the median post at its middle node, at every belief point', () => {
    const day = '2029-03-01';
    const model = stateModel(WARM_SITE, stateWith({}), BELIEF_POINTS);
    const { snapMps } = classValues(model, day);
    const { momentPerV2 } = model.classes.classes[0]!;
    for (const point of [0, 17, 90, 127]) {
      const middle = wood(nodeMoments(model, { kind: 0, point, day: dayNumber(day) }))[4]!;
      expect(Math.sqrt(middle / (momentPerV2 * model.loadFactor[point]!))).toBeCloseTo(snapMps[0]![point]!, 9);
    }
  });

  it('counts a hollow heart and a trimmer cut', () => {
    const hollow = wood(momentsOf(stateWith({ condition: { ...sound().condition, cavityDiameterMm: 40 } }), 0));
    // I of the cavity, pi c^4 / 64, over half the depth
    const lost = (Math.PI * 40 ** 4) / 64 / (SIDE_MM / 2);
    expect(hollow[4]).toBeCloseTo((strengthMpa() * (squareModulus(SIDE_MM) - lost)) / 1000, 6);
    const cuts = { ...sound().cuts, measured: { depthMm: 10, day: BUILT } };
    expect(wood(momentsOf(stateWith({ cuts }), 0))[4]).toBeCloseTo(
      (strengthMpa() * SIDE_MM * (SIDE_MM - 10) ** 2) / 6 / 1000,
      6,
    );
  });
});

describe('the moment of posts that do not scatter', () => {
  it('is as recorded for steel, whatever the fibre of the fence and its age', () => {
    const steel = { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 3100 } as const;
    const points = singlePoint({ 'fibre strength': 2 }, normalCdf);
    expect(momentsOf(stateWith({ wood: steel }), 30, points)).toEqual({ kind: 'rigid', momentNm: 3100 });
  });

  it('is that of the sleeve, or of the sound wood above it where that is weaker', () => {
    expect(momentsOf(stateWith({ sleeveNm: 900 }), 30)).toEqual({ kind: 'rigid', momentNm: 900 });
    const points = singlePoint({ 'fibre strength': -1 }, normalCdf);
    const above = momentsOf(stateWith({ sleeveNm: 1e9 }), 30, points);
    if (above.kind !== 'rigid') expect.unreachable();
    expect(above.momentNm).toBeCloseTo((strengthMpa() * Math.exp(-0.15) * squareModulus(SIDE_MM)) / 1000, 6);
  });

  it('is nothing for a broken post', () => {
    expect(momentsOf(stateWith({ condition: { ...sound().condition, broken: true } }), 5)).toEqual({
      kind: 'rigid',
      momentNm: 0,
    });
  });
});
