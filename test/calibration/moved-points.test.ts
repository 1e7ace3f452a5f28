import { describe, expect, it } from 'vitest';
import { BELIEF_POINTS, beliefPoints } from '../../src/forecast/belief-points.ts';
import { fenceBelief } from '../../src/forecast/evidence/fence-belief.ts';
import { stormLogLikelihood } from '../../src/forecast/evidence/storm-likelihood.ts';
import type { StormOutcome } from '../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { EXAMPLE_FENCE } from '../forecast/example-fence.ts';

const stood = (day: string, gustMps: number): StormOutcome => ({
  ref: day,
  storm: day,
  day,
  gustMps,
  gustSpread: 0.05,
  posts: 'all',
  result: 'stood',
});

describe('points that carry the belief', () => {
  it('are added and moved where one set leaves too few, and the answer holds', () => {
    const hard: FenceFacts = {
      ...EXAMPLE_FENCE,
      outcomes: [stood('2018-06-01', 36), stood('2019-06-01', 38), stood('2020-06-01', 40)],
    };
    const belief = fenceBelief(hard, fenceStates(hard));
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
