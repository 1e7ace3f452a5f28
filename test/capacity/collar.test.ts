import fc from 'fast-check';
import { expect, it } from 'vitest';
import { COLLAR_TENSION_LRFD_MPA, COLLAR_TENSION_MPA, collarForce } from '../../src/capacity/collar.ts';
import { drawnEvenly } from '../drawn-evenly.ts';

const COLLAR = { diameterM: 0.23, postBreadthM: 0.089, depthM: 0.6, armM: 1 };

it('bursts at the force worked by hand for a 70 mm wall round a 90 mm post, 0.6 m deep, pushed at 1 m', () => {
  // ring 1/140 + 0.75 x 90 / 70^2 = 0.0209184 mm^-1; bearing 4/600 + 6 x 1000 / 600^2 = 0.0233333 mm^-1
  const collar = { diameterM: 0.23, postBreadthM: 0.09, depthM: 0.6, armM: 1 };
  expect(collarForce(collar, 1)).toBeCloseTo(2048.78, 2);
  expect(collarForce(collar, 2)).toBeCloseTo(4097.56, 2);
});

it('is of concrete that tears at 375 psi, and is designed for 150 psi', () => {
  expect(COLLAR_TENSION_MPA).toBeCloseTo(2.58553, 5);
  expect(COLLAR_TENSION_LRFD_MPA).toBeCloseTo(1.03421, 5);
});

it('holds nothing where the concrete does not cover the post', () => {
  expect(collarForce({ ...COLLAR, diameterM: 0.089 }, COLLAR_TENSION_MPA)).toBe(0);
  expect(collarForce({ ...COLLAR, diameterM: 0.05 }, COLLAR_TENSION_MPA)).toBe(0);
});

it('holds more when thicker or deeper, less when pushed higher up, and in proportion to the tension', () => {
  const size = drawnEvenly(0, 0.3);
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
