import fc from 'fast-check';
import { expect, it } from 'vitest';
import { COLLAR_TENSION_MPA, collarForce } from '../../src/capacity/collar.ts';

const COLLAR = { diameterM: 0.23, postBreadthM: 0.089, depthM: 0.6, armM: 1 };

it('holds nothing where the concrete does not cover the post', () => {
  expect(collarForce({ ...COLLAR, diameterM: 0.089 }, COLLAR_TENSION_MPA)).toBe(0);
  expect(collarForce({ ...COLLAR, diameterM: 0.05 }, COLLAR_TENSION_MPA)).toBe(0);
});

it('holds more when thicker or deeper, less when pushed higher up, and in proportion to the tension', () => {
  const size = fc.double({ min: 0, max: 0.3, noNaN: true });
  fc.assert(
    fc.property(size, (more) => {
      const now = collarForce(COLLAR, 1);
      expect(collarForce({ ...COLLAR, diameterM: COLLAR.diameterM + more }, 1)).toBeGreaterThanOrEqual(now);
      expect(collarForce({ ...COLLAR, depthM: COLLAR.depthM + more }, 1)).toBeGreaterThanOrEqual(now);
      expect(collarForce({ ...COLLAR, armM: COLLAR.armM + more }, 1)).toBeLessThanOrEqual(now);
      expect(collarForce(COLLAR, 1 + more)).toBeCloseTo((1 + more) * now, 6);
    }),
  );
});
