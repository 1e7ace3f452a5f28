import { expect, it } from 'vitest';
import { BELIEF_POINTS } from '../../../src/forecast/belief-points.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { SHORT_FENCE, STORM_DAY, stormOn, withOutcomes } from './stormed-fence.ts';

it('the winds and footings that storms are weighed over are there as soon as they are asked for', async () => {
  const { stormEvidence } = await import('../../../src/forecast/evidence/storm-likelihood.ts');
  const facts = withOutcomes(SHORT_FENCE, stormOn(STORM_DAY, 25, [3], 'leaned'));
  const { logs, posts } = stormEvidence(facts, fenceStates(facts), BELIEF_POINTS);
  expect(posts).toBe(1);
  expect(logs).toHaveLength(BELIEF_POINTS.count);
  for (const log of logs) expect(log).toBeLessThan(0);
});
