import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendingForce, shearForce, speedAtResistance } from '../../src/capacity/post-resistance.ts';
import { nominalSection } from '../../src/capacity/post-section.ts';
import { NO_LOSS, sectionModulus } from '../../src/capacity/section-properties.ts';
import { drawnEvenly } from '../drawn-evenly.ts';

describe('what a post resists', () => {
  it('turns strength and modulus into a force at the arm', () => {
    expect(bendingForce(30, 120_000, 1)).toBeCloseTo(3600, 9);
    expect(bendingForce(30, 120_000, 2)).toBeCloseTo(1800, 9);
  });

  it('takes the peak of the shear stress by the shape', () => {
    expect(shearForce(3, 9000, 'rectangular')).toBeCloseTo(18_000, 9);
    expect(shearForce(3, 9000, 'round')).toBeCloseTo(20_250, 9);
  });

  it('never rises as rot deepens', () => {
    const post = nominalSection('4x4');
    const depth = drawnEvenly(0, 60);
    fc.assert(
      fc.property(depth, depth, (a, b) => {
        const speed = (depthMm: number): number =>
          speedAtResistance(bendingForce(32.5, sectionModulus(post, { ...NO_LOSS, depthMm }), 1), 2);
        expect(speed(Math.max(a, b))).toBeLessThanOrEqual(speed(Math.min(a, b)));
      }),
    );
  });
});

describe('the gust that meets a resistance', () => {
  it('is the root of resistance over load, and nothing where nothing resists', () => {
    expect(speedAtResistance(3600, 1)).toBe(60);
    expect(speedAtResistance(3600, 4)).toBe(30);
    expect(speedAtResistance(0, 1)).toBe(0);
    expect(speedAtResistance(-5, 1)).toBe(0);
    expect(speedAtResistance(Number.POSITIVE_INFINITY, 1)).toBe(Number.POSITIVE_INFINITY);
  });
});
