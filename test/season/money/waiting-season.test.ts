import { expect, it } from 'vitest';
import { waitingSeason } from '../../../src/season/money/waiting-season.ts';

it('is the dearer rebuild and what the fence brings down, so that a pool barrier weighs more than an ordinary fence', () => {
  // 0.4 of the rebuild in a bad week, and the stated loss of each consequence
  expect(waitingSeason(0.25, 4000, 'ordinary').extra).toBeCloseTo(0.4 * 4000 + 500, 9);
  expect(waitingSeason(0.25, 4000, 'pool-barrier').extra).toBeCloseTo(0.4 * 4000 + 12_000, 9);
  expect(waitingSeason(0.25, 4000, 'ordinary').chance).toBe(0.25);
});
