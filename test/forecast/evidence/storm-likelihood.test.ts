import { describe, expect, it } from 'vitest';
import { nominalSection } from '../../../src/capacity/post-section.ts';
import { BELIEF_POINTS, beliefPoints, MEDIAN_POINT } from '../../../src/forecast/belief-points.ts';
import { fenceBelief } from '../../../src/forecast/evidence/fence-belief.ts';
import { stormLogLikelihood } from '../../../src/forecast/evidence/storm-likelihood.ts';
import type { StormOutcome, StormResult } from '../../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { classValues, stateModel } from '../../../src/forecast/state-model.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from '../example-fence.ts';

const outcome = (
  day: string,
  gustMps: number,
  posts: StormOutcome['posts'],
  result: StormResult,
  gustSpread = 0.05,
): StormOutcome => ({ ref: `${day} ${result} ${String(posts)}`, storm: day, day, gustMps, gustSpread, posts, result });

const withOutcomes = (facts: FenceFacts, ...outcomes: readonly StormOutcome[]): FenceFacts => ({ ...facts, outcomes });
const beliefOf = (facts: FenceFacts) => fenceBelief(facts, fenceStates(facts));

/** Posts so strong that only the footing can give: what a storm says of it can be worked by hand. */
const STRONG: FenceFacts = {
  ...EXAMPLE_FENCE,
  wood: { ...PINE_4X4, section: nominalSection('8x8'), treatmentClass: 'does-not-rot', momentCapacityNm: 1e7 },
};
const STORM_DAY = '2020-06-01';
const stateAt = (facts: FenceFacts) => fenceStates(facts)[0]!.state;
const classOf = (model: ReturnType<typeof stateModel>, post: number): number =>
  model.classes.classes.findIndex(({ numbers }) => numbers.includes(post));

describe('a storm that only the footing could have lost', () => {
  // ln V_lean of post 5 is N(m, s): s = (0.4 (+) 0.17) / 2 = 0.21731. Against it stands the storm's ln gust with
  // n = 0.05 (+) 0.09 (+) 0.1 (gust, load of the storm, this post's footing) = 0.14353. S = s (+) n = 0.26043.
  // At the gust at which half would have leaned, phi(0)/Phi(0) = 0.79788: the mean moves by s^2/S x 0.79788 = 0.14468.
  const median = stateModel(STRONG.site, stateAt(STRONG), MEDIAN_POINT);
  const medianLean = median.leanMps[classOf(median, 5)]![0]!;
  const evenGust = medianLean * Math.sqrt(0.85);
  const meanLogLean = (facts: FenceFacts): number => {
    const { points } = beliefOf(facts);
    const model = stateModel(facts.site, stateAt(facts), points);
    const lean = model.leanMps[classOf(model, 5)]!;
    return lean.reduce((sum, speed, i) => sum + (points.weights?.[i] ?? 1 / points.count) * Math.log(speed), 0);
  };

  it('lifts the footing by what is worked by hand where it stood', () => {
    const stood = withOutcomes(STRONG, outcome(STORM_DAY, evenGust, [5], 'stood'));
    expect(meanLogLean(stood) - Math.log(medianLean)).toBeCloseTo(0.14468, 2);
  });

  it('lowers it by as much where it leaned', () => {
    const leaned = withOutcomes(STRONG, outcome(STORM_DAY, evenGust, [5], 'leaned'));
    expect(meanLogLean(leaned) - Math.log(medianLean)).toBeCloseTo(-0.14468, 2);
  });

  it('is even odds beforehand, and both results together are certain', () => {
    const chance = (result: StormResult): number => {
      const facts = withOutcomes(STRONG, outcome(STORM_DAY, evenGust, [5], result));
      const logs = stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS);
      return logs.reduce((sum, log) => sum + Math.exp(log) / logs.length, 0);
    };
    expect(chance('stood')).toBeCloseTo(0.5, 2);
    expect(chance('stood') + chance('leaned')).toBeCloseTo(1, 2);
  });

  it('says little where the gust was far under what the footing holds', () => {
    const mild = withOutcomes(STRONG, outcome(STORM_DAY, evenGust * 0.4, [5], 'stood'));
    expect(meanLogLean(mild) - Math.log(medianLean)).toBeCloseTo(0, 2);
  });
});

describe('the three results of a storm', () => {
  it.each([0.7, 1, 1.3])('have probabilities that sum to 1, at %s times the even gust', (times) => {
    const facts: FenceFacts = { ...EXAMPLE_FENCE, installed: { earliest: '2005-03-01', latest: '2005-03-01' } };
    const total = BELIEF_POINTS.levels.pace.map(() => 0);
    for (const result of ['stood', 'leaned', 'snapped'] as const) {
      const seen = withOutcomes(facts, outcome(STORM_DAY, 28 * times, [5], result));
      stormLogLikelihood(seen, fenceStates(seen), BELIEF_POINTS).forEach((log, point) => {
        total[point] = total[point]! + Math.exp(log);
      });
    }
    // Each point on its own, up to the even levels at which the footing of one post is tried.
    for (const sum of total) expect(Math.abs(sum - 1)).toBeLessThan(0.06);
    expect(total.reduce((a, b) => a + b) / total.length).toBeCloseTo(1, 2);
  });

  it('count a post once, however its storms are split into rows', () => {
    const rows = withOutcomes(
      EXAMPLE_FENCE,
      outcome(STORM_DAY, 30, [4, 5, 6], 'stood'),
      outcome(STORM_DAY, 30, [3], 'leaned'),
    );
    const all = withOutcomes(
      EXAMPLE_FENCE,
      ...[4, 5, 6].map((post) => outcome(STORM_DAY, 30, [post], 'stood')),
      rows.outcomes[1]!,
    );
    const [a, b] = [rows, all].map((facts) => stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS));
    for (const [point, log] of a!.entries()) expect(b![point]).toBeCloseTo(log, 9);
  });

  it('"all" means every post that no other row of the storm names', () => {
    const rest = withOutcomes(
      EXAMPLE_FENCE,
      outcome(STORM_DAY, 30, 'all', 'stood'),
      outcome(STORM_DAY, 30, [3], 'leaned'),
    );
    const named = withOutcomes(
      EXAMPLE_FENCE,
      outcome(STORM_DAY, 30, [1, 2, 4, 5, 6, 7, 8, 9, 10, 11], 'stood'),
      outcome(STORM_DAY, 30, [3], 'leaned'),
    );
    const [a, b] = [rest, named].map((facts) => stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS));
    for (const [point, log] of a!.entries()) expect(b![point]).toBeCloseTo(log, 9);
  });

  it('of a post that stood twice say less than two posts that stood once', () => {
    const gust = 34;
    const meanLog = (facts: FenceFacts): number => {
      const { points } = beliefOf(facts);
      const footing = points.scores.footing;
      return footing.reduce((sum, score, i) => sum + (points.weights?.[i] ?? 1 / points.count) * score, 0);
    };
    const twice = withOutcomes(
      EXAMPLE_FENCE,
      outcome('2019-06-01', gust, [5], 'stood'),
      outcome('2020-06-01', gust, [5], 'stood'),
    );
    const apart = withOutcomes(
      EXAMPLE_FENCE,
      outcome('2019-06-01', gust, [5], 'stood'),
      outcome('2020-06-01', gust, [7], 'stood'),
    );
    expect(meanLog(twice)).toBeGreaterThan(0.1);
    expect(meanLog(apart)).toBeGreaterThan(meanLog(twice));
  });

  it('leave out a post that was broken before, and the footing of one that leaned before', () => {
    const snapped = outcome('2019-06-01', 40, [5], 'snapped');
    const once = withOutcomes(EXAMPLE_FENCE, snapped);
    const again = withOutcomes(EXAMPLE_FENCE, snapped, outcome('2020-06-01', 40, [5], 'stood'));
    const [a, b] = [once, again].map((facts) => stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS));
    for (const [point, log] of a!.entries()) expect(b![point]).toBeCloseTo(log, 9);
    const leaned = outcome('2019-06-01', 30, [5], 'leaned');
    const stillUp = withOutcomes(EXAMPLE_FENCE, leaned, outcome('2020-06-01', 60, [5], 'stood'));
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
    const facts = withOutcomes(old, outcome(STORM_DAY, gust, posts, 'stood'));
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

describe('points that carry the belief', () => {
  it('are added and moved where one set leaves too few, and the answer holds', () => {
    const hard = withOutcomes(
      EXAMPLE_FENCE,
      outcome('2018-06-01', 36, 'all', 'stood'),
      outcome('2019-06-01', 38, 'all', 'stood'),
      outcome('2020-06-01', 40, 'all', 'stood'),
    );
    const belief = beliefOf(hard);
    const alone = stormLogLikelihood(hard, fenceStates(hard), BELIEF_POINTS);
    const worth = (logs: Float64Array): number => {
      const top = logs.reduce((a, b) => Math.max(a, b));
      const each = logs.map((log) => Math.exp(log - top));
      return each.reduce((a, b) => a + b) ** 2 / each.reduce((sum, w) => sum + w * w, 0);
    };
    expect(worth(alone)).toBeLessThan(12);
    expect(belief.effectivePoints).toBeGreaterThan(24);
    expect(belief.points.weights!.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
    // The same by brute force: 32 unmoved sets, weighted.
    const set = beliefPoints(32);
    const many = stormLogLikelihood(hard, fenceStates(hard), set);
    const highest = many.reduce((a, b) => Math.max(a, b));
    const raw = many.map((log) => Math.exp(log - highest));
    const plain = raw.reduce((sum, w, i) => sum + w * set.scores.footing[i]!, 0) / raw.reduce((a, b) => a + b);
    const { weights, scores } = belief.points;
    const mean = scores.footing.reduce((sum, score, i) => sum + weights![i]! * score, 0);
    expect(Math.abs(mean - plain)).toBeLessThan(0.1);
  });
});
