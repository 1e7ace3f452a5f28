import { describe, expect, it } from 'vitest';
import { decayDepth } from '../../../src/decay/decay-depth.ts';
import type { DepthSeen } from '../../../src/forecast/evidence/depth-likelihood.ts';
import type { PieceEvidence } from '../../../src/forecast/evidence/groundline-evidence.ts';
import { DISAGREEMENT_BELOW, priorSurprise } from '../../../src/forecast/evidence/prior-surprise.ts';
import { normalCdf } from '../../../src/forecast/normal-distribution.ts';

const PRIOR = { medianRate: 0.5, spread: 0.45 };
/** Standard deviation of ln r of one post: the fence's 0.45 and the post's 0.54. */
const SD = Math.hypot(0.45, 0.54);
const YEARS = 20;

/** Readings of one post, all at the same exposure unless told. */
const piece = (seen: readonly DepthSeen[], exposureAt: (dateLevel: number) => number = () => YEARS): PieceEvidence => ({
  piece: '1',
  post: 1,
  treatmentClass: 'ground-contact',
  section: { kind: 'round', diameterMm: 120 },
  dateIsRange: false,
  readings: seen.map((each) => ({
    inspectionRef: 'I',
    day: '2026-03-01',
    method: 'awl-or-probe',
    seen: each,
    exposureAt,
  })),
});
const surpriseOf = (pieces: readonly PieceEvidence[], dateLevel = 0.5, prior = PRIOR): number =>
  priorSurprise(
    pieces.map((evidence) => ({ evidence, prior })),
    dateLevel,
  );
/** Depth of a post whose ln r lies so many standard deviations above the median. */
const depthAt = (score: number, years = YEARS): number => decayDepth(years, 0.5 * Math.exp(SD * score));
const measured = (depthMm: number, errorMm = 1e-3): DepthSeen => ({ kind: 'measured', depthMm, errorMm });
const below = (depthMm: number): DepthSeen => ({ kind: 'below', depthMm });
const above = (depthMm: number): DepthSeen => ({ kind: 'above', depthMm });

describe('the surprise of one reading', () => {
  it('is the probability of one at least as far from the median: 2 Phi(-|z|)', () => {
    for (const z of [-2, -1, -0.3, 0.7, 1.5, 2.5]) {
      // the prior is taken in 240 cells, so that an exact reading falls into one of them: up to half a cell, 0.025 of z
      expect(Math.abs(surpriseOf([piece([measured(depthAt(z))])]) - 2 * normalCdf(-Math.abs(z)))).toBeLessThan(0.02);
    }
  });

  it('takes in the error of the reading', () => {
    // level = E Phi((d - depth(z)) / error) over a standard normal z, by a sum of 20001 narrow cells
    const level = (depthMm: number, errorMm: number): number => {
      let sum = 0;
      for (let i = -10_000; i <= 10_000; i += 1) {
        const z = i / 1250;
        sum += (Math.exp((-z * z) / 2) * normalCdf((depthMm - depthAt(z)) / errorMm)) / 1250;
      }
      return sum / Math.sqrt(2 * Math.PI);
    };
    for (const depthMm of [1, 4, 12, 25]) {
      const p = level(depthMm, 3);
      expect(surpriseOf([piece([measured(depthMm, 3)])])).toBeCloseTo(2 * Math.min(p, 1 - p), 5);
    }
  });

  it('takes a bound at the middle of what it leaves open', () => {
    // under the bound lies Phi(z): "sound to" is at half of that, "soft to" halfway between it and 1
    for (const z of [-1.5, -0.5, 0, 0.8]) {
      expect(surpriseOf([piece([below(depthAt(z))])])).toBeCloseTo(normalCdf(z), 8);
      expect(surpriseOf([piece([above(depthAt(z))])])).toBeCloseTo(normalCdf(-z), 8);
    }
  });

  it('is never nothing: what the model holds impossible is one in 5e8', () => {
    const least = 2e-9;
    for (const seen of [below(0), measured(1e4), measured(-1e3), above(1e5)]) {
      expect(surpriseOf([piece([seen])]) / least).toBeCloseTo(1, 6);
    }
  });
});

describe('the surprise of several posts', () => {
  const [high, low] = [measured(depthAt(1.2), 2), measured(depthAt(-1.2), 2)];
  const rho = 0.45 ** 2 / (0.45 ** 2 + 0.54 ** 2);

  it('is that of the mean of their scores, with variance rho + (1 - rho)/n', () => {
    // each "sound to" the median: level 1/4, z = -0.67449
    for (const count of [1, 2, 5, 30]) {
      const sd = Math.sqrt(rho + (1 - rho) / count);
      const found = surpriseOf(Array.from({ length: count }, () => piece([below(depthAt(0))])));
      expect(found).toBeCloseTo(2 * normalCdf(-0.6744897502 / sd), 8);
    }
  });

  it('is less surprise where they err to both sides', () => {
    expect(surpriseOf([piece([high]), piece([low])])).toBeGreaterThan(surpriseOf([piece([high]), piece([high])]));
    expect(surpriseOf([piece([below(depthAt(0))]), piece([above(depthAt(0))])])).toBeCloseTo(1, 8);
  });

  it('takes the mean of their rho where their priors differ', () => {
    const wide = { medianRate: 0.5, spread: 0.8 };
    const wideRho = 0.8 ** 2 / (0.8 ** 2 + 0.54 ** 2);
    const mixed = (rho + wideRho) / 2;
    const found = priorSurprise(
      [PRIOR, wide].map((prior) => ({ evidence: piece([below(decayDepth(YEARS, 0.5))]), prior })),
      0.5,
    );
    expect(found).toBeCloseTo(2 * normalCdf(-0.6744897502 / Math.sqrt(mixed + (1 - mixed) / 2)), 8);
  });

  it('counts each post once, by its last reading', () => {
    const twice = piece([measured(depthAt(3), 2), below(depthAt(-0.5))]);
    expect(surpriseOf([twice])).toBeCloseTo(normalCdf(-0.5), 8);
  });
});

it('is judged at the level of the install date', () => {
  const dated = piece([below(5)], (level) => 30 - 20 * level);
  // sound to 5 mm after 30, 20 or 10 years: ln r of r (t - 5.5 r^-0.95) = 5, by bisection on the law
  const scoreOf = (years: number): number => {
    let [low, high] = [-8, 8];
    for (let i = 0; i < 60; i += 1) {
      const middle = (low + high) / 2;
      if (depthAt(middle, years) < 5) low = middle;
      else high = middle;
    }
    return low;
  };
  for (const [level, years] of [
    [0, 30],
    [0.5, 20],
    [1, 10],
  ] as const) {
    expect(surpriseOf([dated], level)).toBeCloseTo(normalCdf(scoreOf(years)), 8);
  }
});

it('readings less probable than one in a hundred disagree with the model', () => {
  expect(DISAGREEMENT_BELOW).toBe(0.01);
});
