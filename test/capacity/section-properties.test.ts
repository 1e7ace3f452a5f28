import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PostSection } from '../../src/capacity/post-section.ts';
import { NO_LOSS, sectionArea, sectionModulus } from '../../src/capacity/section-properties.ts';

const SQUARE: PostSection = { kind: 'rectangular', widthMm: 90, depthMm: 90 };
const ROUND: PostSection = { kind: 'round', diameterMm: 100 };
const section = fc.oneof(
  fc.record({
    kind: fc.constant('rectangular' as const),
    widthMm: fc.double({ min: 40, max: 300, noNaN: true }),
    depthMm: fc.double({ min: 40, max: 300, noNaN: true }),
  }),
  fc.record({ kind: fc.constant('round' as const), diameterMm: fc.double({ min: 50, max: 300, noNaN: true }) }),
);
const length = fc.double({ min: 0, max: 200, noNaN: true });

describe('a residual section', () => {
  it('is nothing once rot has met from both sides, and stays so', () => {
    for (const depthMm of [45, 46, 1000]) {
      expect(sectionModulus(SQUARE, { ...NO_LOSS, depthMm })).toBe(0);
      expect(sectionArea(SQUARE, { ...NO_LOSS, depthMm })).toBe(0);
    }
    expect(sectionModulus(ROUND, { ...NO_LOSS, depthMm: 50 })).toBe(0);
    expect(sectionArea(ROUND, { ...NO_LOSS, depthMm: 51 })).toBe(0);
    expect(sectionModulus({ kind: 'rectangular', widthMm: 40, depthMm: 200 }, { ...NO_LOSS, depthMm: 20 })).toBe(0);
  });

  it('never grows with any loss, and is never negative', () => {
    fc.assert(
      fc.property(section, length, length, length, (post, depthMm, oneFaceMm, more) => {
        const loss = { ...NO_LOSS, depthMm, oneFaceMm };
        const modulus = sectionModulus(post, loss);
        const area = sectionArea(post, loss);
        expect(modulus).toBeGreaterThanOrEqual(0);
        expect(area).toBeGreaterThanOrEqual(0);
        for (const worse of [
          { ...loss, depthMm: depthMm + more },
          { ...loss, oneFaceMm: oneFaceMm + more },
        ]) {
          expect(sectionModulus(post, worse)).toBeLessThanOrEqual(modulus);
          expect(sectionArea(post, worse)).toBeLessThanOrEqual(area);
        }
      }),
    );
  });

  it('never grows with a cavity', () => {
    fc.assert(
      fc.property(section, length, length, length, (post, depthMm, cavityDiameterMm, more) => {
        const loss = { ...NO_LOSS, depthMm, cavityDiameterMm };
        const worse = { ...loss, cavityDiameterMm: cavityDiameterMm + more };
        expect(sectionModulus(post, loss)).toBeGreaterThanOrEqual(0);
        expect(sectionModulus(post, worse)).toBeLessThanOrEqual(sectionModulus(post, loss));
        expect(sectionArea(post, worse)).toBeLessThanOrEqual(sectionArea(post, loss));
      }),
    );
  });

  it('counts a shell thinner than an eighth of the width as failed', () => {
    expect(sectionModulus(SQUARE, { ...NO_LOSS, cavityDiameterMm: 67 })).toBeGreaterThan(0);
    expect(sectionModulus(SQUARE, { ...NO_LOSS, cavityDiameterMm: 68 })).toBe(0);
    expect(sectionModulus(ROUND, { ...NO_LOSS, cavityDiameterMm: 74 })).toBeGreaterThan(0);
    expect(sectionModulus(ROUND, { ...NO_LOSS, cavityDiameterMm: 76 })).toBe(0);
  });

  it('is stronger with its deep side to the wind', () => {
    const flat = sectionModulus({ kind: 'rectangular', widthMm: 140, depthMm: 89 }, NO_LOSS);
    expect(sectionModulus({ kind: 'rectangular', widthMm: 89, depthMm: 140 }, NO_LOSS) / flat).toBeCloseTo(
      140 / 89,
      10,
    );
  });
});
