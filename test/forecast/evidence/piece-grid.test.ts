import { describe, expect, it } from 'vitest';
import { decayDepth } from '../../../src/decay/decay-depth.ts';
import { rateToDepth } from '../../../src/decay/implied-rate.ts';
import type { DepthSeen } from '../../../src/forecast/evidence/depth-likelihood.ts';
import type { PieceEvidence } from '../../../src/forecast/evidence/groundline-evidence.ts';
import { gridPosterior, priorGrid } from '../../../src/forecast/evidence/pace-grid.ts';
import { pieceGrid } from '../../../src/forecast/evidence/piece-grid.ts';
import { normalCdf, normalQuantile } from '../../../src/forecast/normal-distribution.ts';

const PRIOR = { medianRate: 0.5, spread: 0.45 };
const CENTRE = Math.log(0.5);
const SCATTER = 0.54;
const SCORES = priorGrid(0, 1);
const LEVELS = [0.1, 0.5, 0.9];
/** Half a step of the grid of ln r. */
const CLOSE = 0.006;

type Reading = readonly [DepthSeen, (dateLevel: number) => number];
const piece = (...readings: readonly Reading[]): PieceEvidence => ({
  piece: '1',
  post: 1,
  treatmentClass: 'ground-contact',
  section: { kind: 'round', diameterMm: 120 },
  dateIsRange: false,
  readings: readings.map(([seen, exposureAt]) => ({
    inspectionRef: 'I',
    day: '2026-03-01',
    method: 'awl-or-probe',
    seen,
    exposureAt,
  })),
});
const gridOf = (...readings: readonly Reading[]) => pieceGrid(piece(...readings), PRIOR, SCORES, 0.5);
const years = (exposure: number) => (): number => exposure;
const below = (depthMm: number): DepthSeen => ({ kind: 'below', depthMm });
const above = (depthMm: number): DepthSeen => ({ kind: 'above', depthMm });
const measured = (depthMm: number, errorMm = 2): DepthSeen => ({ kind: 'measured', depthMm, errorMm });
const bound = (depthMm: number, exposure: number): number => Math.log(rateToDepth(depthMm, exposure));

/** Quantile of N(mean, sd) cut off above, or under, a bound. */
const cutAbove = (mean: number, sd: number, at: number, level: number): number =>
  mean + sd * normalQuantile(level * normalCdf((at - mean) / sd));
const cutUnder = (mean: number, sd: number, at: number, level: number): number =>
  mean - sd * normalQuantile((1 - level) * normalCdf((mean - at) / sd));
const near = (found: readonly number[], wanted: readonly number[]): void => {
  expect(found).toHaveLength(wanted.length);
  for (const [i, value] of wanted.entries()) expect(Math.abs(found[i]! - value)).toBeLessThan(CLOSE);
};

describe('what a reading says of the pace of the fence', () => {
  it('is, for a bound, how probable the post scatter makes it', () => {
    const at = bound(3, 15);
    const [sound, soft] = [gridOf([below(3), years(15)]), gridOf([above(3), years(15)])];
    for (const i of [100, 160, 200, 240, 300]) {
      const z = (at - CENTRE - 0.45 * SCORES[i]!) / SCATTER;
      expect(Math.exp(sound.logLikelihoods[i]!)).toBeCloseTo(normalCdf(z), 4);
      expect(Math.exp(soft.logLikelihoods[i]!)).toBeCloseTo(normalCdf(-z), 4);
    }
  });

  it('is, for a depth, its normal density averaged over the post scatter', () => {
    const { logLikelihoods } = gridOf([measured(8), years(15)]);
    for (const i of [0, 130, 200, 270, 400]) {
      let sum = 0;
      for (let k = -4000; k <= 4000; k += 1) {
        const z = k / 800;
        const off = (8 - decayDepth(15, Math.exp(CENTRE + 0.45 * SCORES[i]! + SCATTER * z))) / 2;
        sum += (Math.exp((-z * z) / 2) * Math.max(1e-8, Math.exp((-off * off) / 2))) / 800;
      }
      expect(logLikelihoods[i]).toBeCloseTo(Math.log(sum / Math.sqrt(2 * Math.PI)), 3);
    }
  });

  it('stays a number where more than forty readings of one post speak against a pace', () => {
    // 45 times the floor of 1e-8 is 1e-360: counted as 1e-300, ln -690.78
    const many = Array.from({ length: 45 }, (): Reading => [above(60), years(15)]);
    const { logLikelihoods, depthAtLastReading, quantiles } = gridOf(...many);
    expect(logLikelihoods[0]).toBeCloseTo(-300 * Math.LN10, 6);
    // where the bound is met they say no more than one, up to the cell in which it lies
    expect(Math.exp(logLikelihoods[400]!)).toBeCloseTo(normalCdf((CENTRE + 0.45 * 5 - bound(60, 15)) / SCATTER), 2);
    const belief = gridPosterior({ mean: 0, sd: 1 }, [(_, index) => logLikelihoods[index]!]);
    const depth = depthAtLastReading(belief.probabilities, 0.1);
    const wanted = cutUnder(CENTRE, Math.hypot(0.45, SCATTER), bound(60, 15), 0.1);
    expect(Math.abs(depth - decayDepth(15, Math.exp(wanted)))).toBeLessThan(0.5);
    near(
      quantiles(3, LEVELS),
      LEVELS.map((level) => cutUnder(CENTRE + 1.35, SCATTER, bound(60, 15), level)),
    );
  });
});

describe('the pace of the post where its fence has a pace', () => {
  it('is the scatter about the fence where more than forty readings rule out all of it: they were misread', () => {
    const many = (seen: DepthSeen): readonly Reading[] => Array.from({ length: 60 }, (): Reading => [seen, years(15)]);
    for (const [seen, score] of [
      [below(0.1), 5],
      [above(60), -5],
    ] as const) {
      near(
        gridOf(...many(seen)).quantiles(score, LEVELS),
        LEVELS.map((level) => CENTRE + 0.45 * score + SCATTER * normalQuantile(level)),
      );
    }
  });

  it('is what the fewest of more than forty readings rule out, where each place is ruled out by some', () => {
    // sixty times soft to 60 mm, once sound to a depth in reach: of all that is left the part under that bound
    const sixty = Array.from({ length: 60 }, (): Reading => [above(60), years(15)]);
    const at = bound(0.2, 15);
    near(
      gridOf(...sixty, [below(0.2), years(15)]).quantiles(-4, LEVELS),
      LEVELS.map((level) => cutAbove(CENTRE - 1.8, SCATTER, at, level)),
    );
  });

  it('is a normal about the fence, cut off at a bound', () => {
    const at = bound(3, 15);
    for (const score of [-1, 0, 1.3]) {
      const mean = CENTRE + 0.45 * score;
      near(
        gridOf([below(3), years(15)]).quantiles(score, LEVELS),
        LEVELS.map((level) => cutAbove(mean, SCATTER, at, level)),
      );
      near(
        gridOf([above(3), years(15)]).quantiles(score, LEVELS),
        LEVELS.map((level) => cutUnder(mean, SCATTER, at, level)),
      );
    }
  });

  it('is the scatter about the fence at either end of the grid, where nothing was ruled out', () => {
    for (const score of [-5, 5]) {
      near(
        gridOf([above(0), years(15)]).quantiles(score, LEVELS),
        LEVELS.map((level) => CENTRE + 0.45 * score + SCATTER * normalQuantile(level)),
      );
    }
  });

  it('closes in on an exact reading', () => {
    const exact = decayDepth(15, Math.exp(-0.2));
    near(gridOf([measured(exact, 0.2), years(15)]).quantiles(0, [0.5]), [-0.2]);
  });
});

describe('the depth of the post at its last reading', () => {
  /** The fence's pace after the readings of this one post. */
  const depthOf = (grid: ReturnType<typeof gridOf>, level: number): number =>
    grid.depthAtLastReading(
      gridPosterior({ mean: 0, sd: 1 }, [(_, index) => grid.logLikelihoods[index]!]).probabilities,
      level,
    );

  it('is that of a pace whose spread holds the fence and the post', () => {
    // ln r of the post ~ N(ln 0.5, 0.45 (+) 0.54) cut off at the bound, at 15 years
    const sd = Math.hypot(0.45, SCATTER);
    for (const level of LEVELS) {
      const sound = decayDepth(15, Math.exp(cutAbove(CENTRE, sd, bound(3, 15), level)));
      const soft = decayDepth(15, Math.exp(cutUnder(CENTRE, sd, bound(3, 15), level)));
      expect(Math.abs(depthOf(gridOf([below(3), years(15)]), level) / sound - 1)).toBeLessThan(0.02);
      expect(Math.abs(depthOf(gridOf([above(3), years(15)]), level) / soft - 1)).toBeLessThan(0.02);
    }
  });

  it('is at the exposure of the last one, where there are several', () => {
    // soft to 2 mm at 10 years and to 3 mm at 20: the first asks for the faster pace
    const grid = gridOf([above(2), years(10)], [above(3), years(20)]);
    const least = Math.max(bound(2, 10), bound(3, 20));
    expect(least).toBe(bound(2, 10));
    const wanted = decayDepth(20, Math.exp(cutUnder(CENTRE, Math.hypot(0.45, SCATTER), least, 0.5)));
    expect(Math.abs(depthOf(grid, 0.5) / wanted - 1)).toBeLessThan(0.02);
  });

  it('is that of the post where the pace of the fence is certain', () => {
    const grid = gridOf([below(3), years(15)]);
    const certain = new Float64Array(401);
    certain[280] = 1;
    const wanted = cutAbove(CENTRE + 0.45 * 2, SCATTER, bound(3, 15), 0.5);
    expect(Math.abs(Math.log(rateToDepth(grid.depthAtLastReading(certain, 0.5), 15)) - wanted)).toBeLessThan(CLOSE);
  });
});

it('takes the exposure at the level of the install date, and the spread of the fence it is given', () => {
  const dated = piece([above(3), (level) => 10 + 10 * level]);
  const wide = { medianRate: 0.4, spread: 0.8 };
  for (const level of [0, 1]) {
    const { quantiles } = pieceGrid(dated, wide, SCORES, level);
    const wanted = cutUnder(Math.log(0.4) + 0.8 * 0.5, SCATTER, bound(3, 10 + 10 * level), 0.5);
    expect(Math.abs(quantiles(0.5, [0.5])[0]! - wanted)).toBeLessThan(0.01);
  }
});
