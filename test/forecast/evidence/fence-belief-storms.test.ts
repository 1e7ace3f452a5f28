import { describe, expect, it } from 'vitest';
import { nominalSection } from '../../../src/capacity/post-section.ts';
import { BELIEF_POINTS, MEDIAN_POINT } from '../../../src/forecast/belief-points.ts';
import { fenceBelief } from '../../../src/forecast/evidence/fence-belief.ts';
import { stormLogLikelihood } from '../../../src/forecast/evidence/storm-likelihood.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { classValues, stateModel } from '../../../src/forecast/state-model.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from '../example-fence.ts';
import { STORM_DAY, stormOn, withOutcomes } from './stormed-fence.ts';

const beliefOf = (facts: FenceFacts) => fenceBelief(facts, fenceStates(facts));

/** Posts so strong that only the footing can give: what a storm says of it can be worked by hand. */
const STRONG: FenceFacts = {
  ...EXAMPLE_FENCE,
  wood: { ...PINE_4X4, section: nominalSection('8x8'), treatmentClass: 'does-not-rot', momentCapacityNm: 1e7 },
};
const stateAt = (facts: FenceFacts) => fenceStates(facts)[0]!.state;
const classOf = (model: ReturnType<typeof stateModel>, post: number): number =>
  model.classes.classes.findIndex(({ numbers }) => numbers.includes(post));

describe('a storm that only the footing could have lost', () => {
  // ln V_lean of post 5 is N(m, s): s = (0.4 (+) 0.17) / 2 = 0.21731. Against it stands the storm's ln gust with
  // n = 0.05 (+) 0.09 (+) 0.1 (gust, load of the storm, this post's footing) = 0.14353. S = s (+) n = 0.26043.
  // At the gust at which half would have leaned, phi(0)/Phi(0) = 0.79788: the mean moves by s^2/S x 0.79788 = 0.14468.
  const medianLean = (): number => {
    const median = stateModel(STRONG.site, stateAt(STRONG), MEDIAN_POINT);
    return median.leanMps[classOf(median, 5)]![0]!;
  };
  const evenGust = (): number => medianLean() * Math.sqrt(0.85);
  const meanLogLean = (facts: FenceFacts): number => {
    const { points } = beliefOf(facts);
    const model = stateModel(facts.site, stateAt(facts), points);
    const lean = model.leanMps[classOf(model, 5)]!;
    return lean.reduce((sum, speed, i) => sum + (points.weights?.[i] ?? 1 / points.count) * Math.log(speed), 0);
  };

  it('lifts the footing by what is worked by hand where it stood', () => {
    const stood = withOutcomes(STRONG, stormOn(STORM_DAY, evenGust(), [5], 'stood'));
    expect(meanLogLean(stood) - Math.log(medianLean())).toBeCloseTo(0.14468, 2);
  });

  it('lowers it by as much where it leaned', () => {
    const leaned = withOutcomes(STRONG, stormOn(STORM_DAY, evenGust(), [5], 'leaned'));
    expect(meanLogLean(leaned) - Math.log(medianLean())).toBeCloseTo(-0.14468, 2);
  });

  it('says little where the gust was far under what the footing holds', () => {
    const mild = withOutcomes(STRONG, stormOn(STORM_DAY, evenGust() * 0.4, [5], 'stood'));
    expect(meanLogLean(mild) - Math.log(medianLean())).toBeCloseTo(0, 2);
  });
});

describe('what storms leave of a belief', () => {
  it('of a post that stood twice say less than two posts that stood once', () => {
    const gust = 34;
    const meanLog = (facts: FenceFacts): number => {
      const { points } = beliefOf(facts);
      const footing = points.scores.footing;
      return footing.reduce((sum, score, i) => sum + (points.weights?.[i] ?? 1 / points.count) * score, 0);
    };
    const twice = withOutcomes(
      EXAMPLE_FENCE,
      stormOn('2019-06-01', gust, [5], 'stood'),
      stormOn('2020-06-01', gust, [5], 'stood'),
    );
    const apart = withOutcomes(
      EXAMPLE_FENCE,
      stormOn('2019-06-01', gust, [5], 'stood'),
      stormOn('2020-06-01', gust, [7], 'stood'),
    );
    expect(meanLog(twice)).toBeGreaterThan(0.1);
    expect(meanLog(apart)).toBeGreaterThan(meanLog(twice));
  });

  it('leave out a post that was broken before, and the footing of one that leaned before', () => {
    const snapped = stormOn('2019-06-01', 40, [5], 'snapped');
    const once = withOutcomes(EXAMPLE_FENCE, snapped);
    const again = withOutcomes(EXAMPLE_FENCE, snapped, stormOn('2020-06-01', 40, [5], 'stood'));
    const [a, b] = [once, again].map((facts) => stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS));
    for (const [point, log] of a!.entries()) expect(b![point]).toBeCloseTo(log, 9);
    const leaned = stormOn('2019-06-01', 30, [5], 'leaned');
    const stillUp = withOutcomes(EXAMPLE_FENCE, leaned, stormOn('2020-06-01', 60, [5], 'stood'));
    // 60 m/s would have laid any footing of this fence flat; the post only shows that its wood held.
    const { points } = beliefOf(stillUp);
    const footing = points.scores.footing.reduce((sum, score, i) => sum + points.weights![i]! * score, 0);
    expect(footing).toBeLessThan(0.5);
  });
});

describe('after "stood at v"', () => {
  // With unknowns that are independent and a likelihood that rises with each of them, this is the inequality of Harris
  // (1960); a point set of 128 meets it up to its resolution.
  const RESOLUTION = 0.01;
  const old: FenceFacts = { ...EXAMPLE_FENCE, installed: { earliest: '2004-03-01', latest: '2004-03-01' } };

  it.each([
    ['one post', [5] as readonly number[], 25],
    ['one post in a strong gust', [5], 38],
    ['the whole fence', 'all' as const, 25],
    ['the whole fence in a strong gust', 'all' as const, 34],
  ])('the probability that the capacity on that day was under x rises for no x: %s', (_, posts, gust) => {
    const facts = withOutcomes(old, stormOn(STORM_DAY, gust, posts, 'stood'));
    const capacities = (points: ReturnType<typeof beliefOf>['points']) => {
      const model = stateModel(facts.site, stateAt(facts), points);
      const at = classOf(model, 5);
      const snap = classValues(model, STORM_DAY).snapMps[at]!;
      return snap.map((speed, point) => Math.min(speed, model.leanMps[at]![point]!));
    };
    const under = (values: Float64Array, weights: Float64Array | null, x: number): number =>
      values.reduce((sum, value, i) => sum + (value < x ? (weights?.[i] ?? 1 / values.length) : 0), 0);
    const { points } = beliefOf(facts);
    const [before, after] = [capacities(BELIEF_POINTS), capacities(points)];
    let moved = 0;
    for (let x = 5; x < 80; x += 0.5) {
      const [was, is] = [under(before, null, x), under(after, points.weights, x)];
      expect(is, `under ${x} m/s`).toBeLessThanOrEqual(was + RESOLUTION);
      moved = Math.max(moved, was - is);
    }
    expect(moved).toBeGreaterThan(0.1);
  });
});
