import { describe, expect, it } from 'vitest';
import { nominalSection } from '../../../src/capacity/post-section.ts';
import { failedDepth } from '../../../src/forecast/evidence/failed-depth.ts';

describe('the depth at which a post counts as broken by rot', () => {
  it('leaves a twentieth of the section modulus of a round or a square: b/2 (1 - 0.05^(1/3))', () => {
    const share = (1 - 0.05 ** (1 / 3)) / 2;
    expect(failedDepth({ kind: 'round', diameterMm: 115 })).toBeCloseTo(115 * share, 9);
    expect(failedDepth({ kind: 'rectangular', widthMm: 89, depthMm: 89 })).toBeCloseTo(28.11, 2);
    expect(failedDepth(nominalSection('6x6'))).toBeCloseTo(139.7 * share, 9);
  });

  it.each([
    [75, 100],
    [100, 75],
    [89, 140],
    [140, 89],
  ])('leaves (b - 2d)(h - 2d)^2 at a twentieth of b h^2 of %d x %d mm', (widthMm, depthMm) => {
    const d = failedDepth({ kind: 'rectangular', widthMm, depthMm });
    expect(((widthMm - 2 * d) * (depthMm - 2 * d) ** 2) / (widthMm * depthMm ** 2)).toBeCloseTo(0.05, 10);
    expect(2 * d).toBeLessThan(Math.min(widthMm, depthMm));
  });
});
