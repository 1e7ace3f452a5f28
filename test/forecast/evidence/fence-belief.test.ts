import { describe, expect, it } from 'vitest';
import { nominalSection } from '../../../src/capacity/post-section.ts';
import { effectiveCount } from '../../../src/forecast/band.ts';
import {
  BELIEF_DIMENSIONS,
  BELIEF_POINTS,
  type BeliefDimension,
  type BeliefPoints,
  MEDIAN_POINT,
} from '../../../src/forecast/belief-points.ts';
import { evidenceRemarks } from '../../../src/forecast/evidence/evidence-remarks.ts';
import { evidenceSummary } from '../../../src/forecast/evidence/evidence-summary.ts';
import { fenceBelief, medianOf } from '../../../src/forecast/evidence/fence-belief.ts';
import { dateLogEvidence, paceBelief, paceScore } from '../../../src/forecast/evidence/pace-belief.ts';
import { stormLogLikelihood } from '../../../src/forecast/evidence/storm-likelihood.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { normalCdf } from '../../../src/forecast/normal-distribution.ts';
import { stateModel } from '../../../src/forecast/state-model.ts';
import { PINE_4X4 } from '../example-fence.ts';
import { inspectionOn } from './read-fence.ts';
import { SHORT_FENCE, STORM_DAY, stormOn, withOutcomes } from './stormed-fence.ts';

const beliefOf = (facts: FenceFacts) => fenceBelief(facts, fenceStates(facts));
const paceOf = (facts: FenceFacts) => paceBelief(facts, fenceStates(facts))!;
const meanOf = ({ scores, weights, count }: BeliefPoints, dimension: BeliefDimension): number =>
  scores[dimension].reduce((sum, score, i) => sum + (weights?.[i] ?? 1 / count) * score, 0);

/** Posts so strong that only the footing can give: what a storm says of it can be worked by hand. */
const STRONG: FenceFacts = {
  ...SHORT_FENCE,
  wood: { ...PINE_4X4, section: nominalSection('8x8'), treatmentClass: 'does-not-rot', momentCapacityNm: 1e7 },
};
/** Gust at which half of the third posts of such fences would lean [m/s]. */
const evenGust = (): number => {
  const model = stateModel(STRONG.site, fenceStates(STRONG)[0]!.state, MEDIAN_POINT);
  const at = model.classes.classes.findIndex(({ numbers }) => numbers.includes(3));
  return model.leanMps[at]![0]! * Math.sqrt(0.85);
};

const depth = (depthMm: number) => ({ kind: 'depth', depthMm }) as const;
const READ: FenceFacts = { ...SHORT_FENCE, inspections: [inspectionOn('2026-03-01', [depth(8), depth(6)])] };
const READ_RANGE: FenceFacts = { ...READ, installed: { earliest: '2006-03-01', latest: '2018-03-01' } };

describe('the belief about a fence of which nothing was seen', () => {
  it('is the shared points', () => {
    const belief = beliefOf(SHORT_FENCE);
    expect(belief).toMatchObject({ pace: null, effectivePoints: 128, stormFit: 0 });
    expect(belief.points).toEqual(BELIEF_POINTS);
    expect(belief.afterReadings).toBe(belief.points);
  });

  it('knows what the register has learned', () => {
    const learned = { version: 2, paces: [], footing: { logShift: 0.1, spread: 0.3 } };
    expect(beliefOf({ ...SHORT_FENCE, learned }).points).toEqual({ ...BELIEF_POINTS, learned });
  });
});

describe('the belief after readings', () => {
  it('has its points at quantiles of the pace, all alike in weight where the install date is known', () => {
    const { points, pace, afterReadings, effectivePoints, stormFit } = beliefOf(READ);
    expect(pace!.pieces).toHaveLength(2);
    expect(points.weights).toBeNull();
    expect([effectivePoints, stormFit]).toEqual([128, 0]);
    expect(afterReadings).toBe(points);
    expect([...points.piecePaces.keys()]).toEqual(['1', '2']);
    for (const i of [0, 31, 127]) {
      expect(points.scores.pace[i]).toBe(paceScore(paceOf(READ), BELIEF_POINTS.levels.pace[i]!, 0.5));
    }
    for (const dimension of BELIEF_DIMENSIONS) {
      expect(points.levels[dimension]).toEqual(BELIEF_POINTS.levels[dimension]);
      if (dimension !== 'pace') expect(points.scores[dimension]).toEqual(BELIEF_POINTS.scores[dimension]);
    }
    const learned = { version: 1, paces: [], footing: null };
    expect(beliefOf({ ...READ, learned }).points.learned).toBe(learned);
  });

  it('weighs install dates by how well the readings fit them, where the date is a range', () => {
    const { points, effectivePoints } = beliefOf(READ_RANGE);
    const pace = paceOf(READ_RANGE);
    const weights = points.weights!;
    const dates = BELIEF_POINTS.levels['install date'];
    expect(weights.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
    for (const [i, j] of [
      [0, 1],
      [5, 90],
      [127, 64],
    ] as const) {
      const wanted = dateLogEvidence(pace, dates[i]!) - dateLogEvidence(pace, dates[j]!);
      expect(Math.log(weights[i]! / weights[j]!)).toBeCloseTo(wanted, 9);
      expect(points.scores.pace[i]).toBe(paceScore(pace, BELIEF_POINTS.levels.pace[i]!, dates[i]!));
    }
    expect(effectivePoints).toBeCloseTo(effectiveCount(weights), 9);
    expect(effectivePoints).toBeLessThan(127.9);
  });
});

describe('the belief after storms that many points fit', () => {
  it('has the shared points, weighed by how well they fit', () => {
    const facts = withOutcomes(STRONG, stormOn(STORM_DAY, evenGust() * 0.95, [3], 'stood'));
    const logs = stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS);
    const likelihoods = logs.map((log) => Math.exp(log));
    const total = likelihoods.reduce((a, b) => a + b);
    const { points, afterReadings, effectivePoints, stormFit } = beliefOf(facts);
    expect(afterReadings).toEqual(BELIEF_POINTS);
    const kept = [...likelihoods.keys()].filter((i) => likelihoods[i]! / total >= 1e-5);
    expect(kept.length).toBeGreaterThan(48);
    expect(points.count).toBe(kept.length);
    expect(points.weights!.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
    for (const [at, i] of kept.entries()) {
      expect(points.weights![at]! / points.weights![0]!).toBeCloseTo(likelihoods[i]! / likelihoods[kept[0]!]!, 9);
      for (const dimension of BELIEF_DIMENSIONS) {
        expect(points.levels[dimension][at]).toBe(BELIEF_POINTS.levels[dimension][i]);
        expect(points.scores[dimension][at]).toBe(BELIEF_POINTS.scores[dimension][i]);
      }
    }
    expect(effectivePoints).toBeCloseTo(effectiveCount(points.weights!), 9);
    expect(effectivePoints).toBeGreaterThan(48);
    expect(stormFit).toBeCloseTo(Math.max(...logs), 12);
    expect(stormFit).toBeLessThan(0);
  });

  it('leaves out points that carry less than a hundred-thousandth', () => {
    const facts = withOutcomes(STRONG, stormOn(STORM_DAY, evenGust() * 1.05, [3], 'leaned', { gustSpread: 0.01 }));
    const { points } = beliefOf(facts);
    const logs = stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS);
    const total = logs.reduce((sum, log) => sum + Math.exp(log), 0);
    expect(points.count).toBe(logs.filter((log) => Math.exp(log) / total >= 1e-5).length);
    expect(points.count).toBeLessThan(128);
    expect(Math.min(...points.weights!)).toBeGreaterThanOrEqual(1e-5);
  });

  it('weighs by readings and storms together', () => {
    const facts = withOutcomes(READ_RANGE, stormOn('2021-06-01', 15, [3], 'stood'));
    const { points, afterReadings, stormFit } = beliefOf(facts);
    const states = fenceStates(facts);
    const logs = stormLogLikelihood(facts, states, afterReadings);
    const raw = logs.map((log, i) => afterReadings.weights![i]! * Math.exp(log));
    const total = raw.reduce((a, b) => a + b);
    const wanted = afterReadings.scores.footing.reduce((sum, score, i) => sum + (raw[i]! / total) * score, 0);
    expect(meanOf(points, 'footing')).toBeCloseTo(wanted, 3);
    const heaviest = [...raw.keys()].sort((a, b) => raw[b]! - raw[a]!);
    const weights = [...points.weights!].sort((a, b) => b - a);
    expect(weights[0]! / weights[9]!).toBeCloseTo(raw[heaviest[0]!]! / raw[heaviest[9]!]!, 9);
    expect([...points.piecePaces.keys()]).toEqual(['1', '2']);
    expect(stormFit).toBeCloseTo(Math.max(...logs), 12);
  });
});

describe('the belief after storms that few points fit', () => {
  // ln V_lean is N(m, s), s^2 = 0.2^2 + 0.085^2 = 0.047225 (half of 0.4 of the footing, half of 0.17 of the load). A storm
  // adds n^2 = 0.05^2 + 0.09^2 + 0.1^2 = 0.0206 (gust, load of the storm, post). S^2 = 0.067825, S = 0.260432.
  // Of a post that stood at a gust 2.2 S above the even one, ln V_lean is higher by s^2 / S x phi(2.2) / (1 - Phi(2.2))
  // = 0.181333 x 0.0354746 / 0.0139034 = 0.462673; the footing's score by 0.2 / s^2 of that, the load's by -0.085 / s^2.
  const S = 0.260432;
  const RISE = 0.462673;
  const strongStorm = (sign: 1 | -1): FenceFacts =>
    withOutcomes(
      STRONG,
      stormOn(STORM_DAY, evenGust() * Math.exp(sign * 2.2 * S), [3], sign === 1 ? 'stood' : 'leaned'),
    );
  const alone = (facts: FenceFacts): number => {
    const likelihoods = stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS).map((log) => Math.exp(log));
    const total = likelihoods.reduce((a, b) => a + b);
    return effectiveCount(likelihoods.map((each) => each / total));
  };

  it.each([1, -1] as const)(
    'is carried by more points, moved there, and is what is worked by hand: side %s',
    (sign) => {
      const facts = strongStorm(sign);
      expect(alone(facts)).toBeLessThan(48);
      const { points, effectivePoints, afterReadings } = beliefOf(facts);
      expect(effectivePoints).toBeGreaterThan(48);
      expect(effectivePoints).toBeCloseTo(effectiveCount(points.weights!), 9);
      expect(points.count).toBeGreaterThan(128);
      expect(points.count).toBeLessThanOrEqual(512);
      expect(points.weights!.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
      expect(Math.abs(meanOf(points, 'footing') - (sign * 0.2 * RISE) / 0.047225)).toBeLessThan(0.08);
      expect(Math.abs(meanOf(points, 'permanent load') + (sign * 0.085 * RISE) / 0.047225)).toBeLessThan(0.08);
      for (const dimension of ['pace', 'fibre strength', 'install date', 'embedment', 'footing diameter'] as const) {
        expect(Math.abs(meanOf(points, dimension))).toBeLessThan(0.1);
        const square = points.scores[dimension].reduce((sum, score, i) => sum + points.weights![i]! * score * score, 0);
        expect(Math.abs(Math.sqrt(square) - 1)).toBeLessThan(0.1);
      }
      expect(afterReadings).toEqual(BELIEF_POINTS);
    },
  );

  it('keeps levels and scores of the moved points together', () => {
    const { points } = beliefOf(strongStorm(1));
    for (const dimension of BELIEF_DIMENSIONS) {
      expect(points.levels[dimension]).toHaveLength(points.count);
      for (const i of [0, 7, points.count - 1]) {
        expect(points.levels[dimension][i]).toBeCloseTo(normalCdf(points.scores[dimension][i]!), 9);
      }
    }
  });

  it('says how well the best of all points fits, the moved ones among them', () => {
    const facts = strongStorm(1);
    const first = Math.max(...stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS));
    const { stormFit } = beliefOf(facts);
    expect(stormFit).toBeGreaterThan(first);
    expect(stormFit).toBeLessThanOrEqual(0);
  });

  it('places the pace of moved points at quantiles of what was read', () => {
    const facts: FenceFacts = {
      ...withOutcomes(SHORT_FENCE, stormOn('2024-06-01', 42, [3], 'stood')),
      inspections: READ.inspections,
      installed: READ_RANGE.installed,
    };
    const { points, pace } = beliefOf(facts);
    expect(points.count).toBeGreaterThan(128);
    for (const i of [0, 50, points.count - 1]) {
      expect(points.scores.pace[i]).toBe(paceScore(pace!, points.levels.pace[i]!, points.levels['install date'][i]!));
    }
  });
});

describe('storm reports that nothing explains', () => {
  it('fit no point, and people are told', () => {
    const facts = withOutcomes(STRONG, stormOn(STORM_DAY, 300, [2, 3], 'stood'));
    const belief = beliefOf(facts);
    // the floor of 1e-9 a post, one trace of two posts, and so for each of them
    expect(belief.stormFit).toBeCloseTo(Math.log(1e-9), 9);
    expect(evidenceRemarks(evidenceSummary(facts, belief))).toEqual([
      'The storm reports fit hardly anything the model holds possible: check the gusts and what is recorded of the footings.',
    ]);
  });

  it('change nothing where they speak of posts that were broken before', () => {
    const facts = withOutcomes(
      STRONG,
      stormOn('2019-06-01', 30, [3], 'snapped'),
      stormOn('2020-06-01', 30, [3], 'stood'),
    );
    const only: FenceFacts = {
      ...withOutcomes(STRONG, stormOn('2020-06-01', 30, [3], 'stood')),
      inspections: [inspectionOn('2019-06-01', [null, null, { kind: 'broken' }])],
    };
    expect(beliefOf(only)).toMatchObject({ stormFit: 0 });
    expect(beliefOf(only).effectivePoints).toBeCloseTo(128, 9);
    expect(beliefOf(facts).stormFit).toBeCloseTo(Math.log(1e-9), 9);
  });
});

describe('the median of a belief', () => {
  it('is every unknown at its median where nothing was seen', () => {
    const median = medianOf(BELIEF_POINTS);
    for (const dimension of BELIEF_DIMENSIONS) {
      expect(median.scores[dimension][0]).toBe(0);
      expect(median.levels[dimension][0]).toBeCloseTo(0.5, 12);
    }
    expect(median.count).toBe(1);
  });

  it('is the weighted median of each unknown where points carry unlike weights', () => {
    // All weight on footings above the score 1: of those the median lies at the level 1 - 0.1587 / 2.
    const raw = BELIEF_POINTS.scores.footing.map((score) => (score > 1 ? 1 : 0));
    const total = raw.reduce((a, b) => a + b);
    const median = medianOf({ ...BELIEF_POINTS, weights: raw.map((each) => each / total) });
    expect(Math.abs(median.scores.footing[0]! - 1.41)).toBeLessThan(0.1);
    expect(median.levels.footing[0]).toBeCloseTo(normalCdf(median.scores.footing[0]!), 12);
  });

  it('is the median of what was read where posts were', () => {
    const { points } = beliefOf(READ);
    const median = medianOf(points);
    expect(median.piecePaces).toBe(points.piecePaces);
    expect(median.scores.pace[0]).toBeCloseTo(paceScore(paceOf(READ), 0.5, 0.5), 1);
    expect(Math.abs(median.scores.pace[0]!)).toBeGreaterThan(0.2);
    expect(Math.abs(median.scores.footing[0]!)).toBeLessThan(0.01);
  });
});
