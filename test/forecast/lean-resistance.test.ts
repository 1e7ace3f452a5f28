import { describe, expect, it } from 'vitest';
import {
  allowableFootingForce,
  bearingWidth,
  collarBurstForce,
  footingForce,
  groundAfter,
} from '../../src/forecast/lean-resistance.ts';
import { SOUND_CONDITION } from '../../src/forecast/post-state.ts';
import type { KnownGround } from '../../src/forecast/unknown-priors.ts';
import { PINE_4X4 } from './example-fence.ts';

const { section } = PINE_4X4;
const POST = { section, armM: 1 };
const COLLAR: KnownGround = { embedmentM: 0.6, footing: 'concrete', diameterM: 0.23 };
const BARE: KnownGround = { embedmentM: 0.6, footing: 'soil', diameterM: null };
/** 0.8 x 0.5 gamma b L^3 Kp / (e + L), Kp = tan^2(45 + phi/2): medium sand 34 degrees, 18 kN/m3. */
const sandN = (unitWeight: number, widthM: number): number =>
  (0.8 * 0.5 * unitWeight * widthM * 0.6 ** 3 * Math.tan(((45 + 17) * Math.PI) / 180) ** 2) / 1.6;

describe('what turns a footing over', () => {
  it('is 0.8 of Broms in sand, of the weight under water where it is saturated', () => {
    expect(footingForce({ soilClass: 'medium-sand' }, false, COLLAR, POST)).toBeCloseTo(sandN(18_000, 0.23), 6);
    expect(footingForce({ soilClass: 'medium-sand' }, true, COLLAR, POST)).toBeCloseTo(sandN(18_000 - 9810, 0.23), 6);
  });

  it('is Broms in clay, wet or not: H (e + 1.5 b + f/2) = 2.25 b cu g^2 with f + g = L - 1.5 b', () => {
    const forceN = footingForce({ soilClass: 'firm-clay' }, false, COLLAR, POST);
    const f = forceN / (9 * 50_000 * 0.23);
    const g = 0.6 - 1.5 * 0.23 - f;
    expect(forceN * (1 + 1.5 * 0.23 + f / 2)).toBeCloseTo(2.25 * 0.23 * 50_000 * g * g, 6);
    expect(footingForce({ soilClass: 'firm-clay' }, true, COLLAR, POST)).toBe(forceN);
  });

  it('bears on the concrete, and without any on the diagonal of the post', () => {
    expect(bearingWidth(COLLAR, section)).toBe(0.23);
    expect(bearingWidth(BARE, section)).toBeCloseTo((88.9 * Math.SQRT2) / 1000, 12);
    expect(footingForce({ soilClass: 'medium-sand' }, false, BARE, POST)).toBeCloseTo(
      sandN(18_000, (88.9 * Math.SQRT2) / 1000),
      6,
    );
  });
});

describe('a concrete collar', () => {
  it('bursts at 375 psi in its walls; a post without concrete has none to burst', () => {
    const wallMm = (230 - 88.9) / 2;
    const perLineLoad = 1 / (2 * wallMm) + (0.75 * 88.9) / wallMm ** 2;
    const perForce = 4 / 600 + (6 * 1000) / 600 ** 2;
    expect(collarBurstForce(COLLAR, POST)).toBeCloseTo((375 * 0.00689476) / perLineLoad / perForce, 1);
    expect(collarBurstForce(BARE, POST)).toBe(Number.POSITIVE_INFINITY);
  });

  it('once cracked bursts no more and bears no wider than the post', () => {
    const cracked = groundAfter({ ...SOUND_CONDITION, collarCracked: true }, COLLAR);
    expect(cracked).toEqual({ ...COLLAR, diameterM: null });
    expect(groundAfter(SOUND_CONDITION, COLLAR)).toBe(COLLAR);
  });
});

it('allows a footing the tabulated bearing, doubled only where the site allows', () => {
  const single = allowableFootingForce({ soilClass: 'medium-sand', lateralBearingDoubled: false }, COLLAR, POST);
  const double = allowableFootingForce({ soilClass: 'medium-sand', lateralBearingDoubled: true }, COLLAR, POST);
  expect(double / single).toBeCloseTo(2, 10);
  // d = 0.5 A (1 + sqrt(1 + 4.36 h / A)), A = 2.34 P / (S1 b), S1 the bearing at a third of the depth.
  const bearingPa = ((150 * 47.880259) / 0.3048) * (0.6 / 3);
  const a = (2.34 * single) / (bearingPa * 0.23);
  expect(0.5 * a * (1 + Math.sqrt(1 + (4.36 * 1) / a))).toBeCloseTo(0.6, 6);
});
