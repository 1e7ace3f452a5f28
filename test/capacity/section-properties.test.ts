import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PostSection } from '../../src/capacity/post-section.ts';
import { NO_LOSS, sectionArea, sectionModulus } from '../../src/capacity/section-properties.ts';
import { drawnEvenly } from '../drawn-evenly.ts';

const SQUARE: PostSection = { kind: 'rectangular', widthMm: 90, depthMm: 90 };
const ROUND: PostSection = { kind: 'round', diameterMm: 100 };
const section = fc.oneof(
  fc.record({
    kind: fc.constant('rectangular' as const),
    widthMm: drawnEvenly(40, 300),
    depthMm: drawnEvenly(40, 300),
  }),
  fc.record({ kind: fc.constant('round' as const), diameterMm: drawnEvenly(50, 300) }),
);
const length = drawnEvenly(0, 200);

describe('a sound section', () => {
  it('has the modulus and the area of the textbooks', () => {
    expect(sectionModulus(SQUARE, NO_LOSS)).toBeCloseTo(121_500, 9);
    expect(sectionArea(SQUARE, NO_LOSS)).toBe(8100);
    // pi 100^3 / 32 and pi 100^2 / 4
    expect(sectionModulus(ROUND, NO_LOSS)).toBeCloseTo(98_174.77, 2);
    expect(sectionArea(ROUND, NO_LOSS)).toBeCloseTo(7853.98, 2);
  });
});

describe('a residual section, worked by hand', () => {
  const deep: PostSection = { kind: 'rectangular', widthMm: 100, depthMm: 150 };
  const rotted = { depthMm: 10, oneFaceMm: 5, cavityDiameterMm: 0 };

  it('is 80 x 125 mm of a 100 x 150 mm post after 10 mm of rot all round and a cut of 5 mm', () => {
    expect(sectionModulus(deep, rotted)).toBeCloseTo((80 * 15_625) / 6, 9);
    expect(sectionArea(deep, rotted)).toBe(10_000);
  });

  it('loses the inertia and the area of a 40 mm cavity', () => {
    // 80 x 125^3 / 12 = 13,020,833; less pi 40^4 / 64 = 125,664; over 62.5
    expect(sectionModulus(deep, { ...rotted, cavityDiameterMm: 40 })).toBeCloseTo(206_322.71, 2);
    expect(sectionArea(deep, { ...rotted, cavityDiameterMm: 40 })).toBeCloseTo(8743.363, 3);
  });

  it('is a disc of 75 mm of a 100 mm round after the same, and a tube where it is hollow', () => {
    expect(sectionModulus(ROUND, rotted)).toBeCloseTo(41_417.48, 2);
    expect(sectionArea(ROUND, rotted)).toBeCloseTo(4417.865, 3);
    // pi (100^4 - 50^4) / (32 x 100) and pi (100^2 - 50^2) / 4
    expect(sectionModulus(ROUND, { ...NO_LOSS, cavityDiameterMm: 50 })).toBeCloseTo(92_038.85, 2);
    expect(sectionArea(ROUND, { ...NO_LOSS, cavityDiameterMm: 50 })).toBeCloseTo(5890.486, 3);
  });

  it('still counts a shell of just an eighth of the width, measured on the narrow side', () => {
    expect(sectionModulus(SQUARE, { ...NO_LOSS, cavityDiameterMm: 67.5 })).toBeGreaterThan(0);
    expect(sectionModulus(ROUND, { ...NO_LOSS, cavityDiameterMm: 75 })).toBeGreaterThan(0);
    expect(sectionModulus(deep, { ...rotted, cavityDiameterMm: 60 })).toBeGreaterThan(0);
    expect(sectionModulus(deep, { ...rotted, cavityDiameterMm: 61 })).toBe(0);
  });

  it('has no area left where a cavity is larger than it', () => {
    expect(sectionArea(SQUARE, { ...NO_LOSS, cavityDiameterMm: 102 })).toBe(0);
    expect(sectionArea(ROUND, { ...NO_LOSS, cavityDiameterMm: 101 })).toBe(0);
    expect(sectionArea({ kind: 'rectangular', widthMm: 40, depthMm: 200 }, { ...NO_LOSS, depthMm: 30 })).toBe(0);
  });
});

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
