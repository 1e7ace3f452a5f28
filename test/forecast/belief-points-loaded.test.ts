import { expect, it } from 'vitest';

it('the shared belief points are there as soon as they are asked for, each level within 0 and 1', async () => {
  const { BELIEF_DIMENSIONS, BELIEF_POINTS } = await import('../../src/forecast/belief-points.ts');
  expect(BELIEF_POINTS.count).toBe(128);
  for (const dimension of BELIEF_DIMENSIONS) {
    for (const level of BELIEF_POINTS.levels[dimension]) {
      expect(level).toBeGreaterThan(0);
      expect(level).toBeLessThan(1);
    }
    for (const score of BELIEF_POINTS.scores[dimension]) expect(Math.abs(score)).toBeLessThan(3);
  }
});
