import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { sectionModulus } from '../../src/capacity/section-properties.ts';
import { decayDepth } from '../../src/decay/decay-depth.ts';
import { medianDecayRate, POST_PACE_SPREAD } from '../../src/decay/decay-rate.ts';
import { BELIEF_POINTS, singlePoint } from '../../src/forecast/belief-points.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import {
  breakProbability,
  type GumbelCurve,
  hazardCurve,
  returnPeriodOf,
  yearlyMaximumCdf,
} from '../../src/forecast/hazard-curve.ts';
import { normalCdf, normalQuantile } from '../../src/forecast/normal-distribution.ts';
import { postsShort, survivalLedger } from '../../src/forecast/risk.ts';
import { stateModel } from '../../src/forecast/state-model.ts';
import { EXAMPLE_FENCE, WARM_SITE } from './example-fence.ts';

const curve = hazardCurve(WARM_SITE.wind) as GumbelCurve;

/** Uniform numbers strictly between 0 and 1 from a seeded generator. */
function uniform(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  return () => ((generator.next() >>> 0) + 0.5) / 2 ** 32;
}

describe('expected posts short', () => {
  it('agrees with simulated posts at one belief point', () => {
    const state = fenceStates(EXAMPLE_FENCE)[0]!.state;
    const model = stateModel(
      WARM_SITE,
      state,
      singlePoint({ pace: 0.4, 'fibre strength': -0.3, 'permanent load': 0.2 }, normalCdf),
    );
    const day = '2032-03-01';
    const gust = 44;
    const { expected, any } = postsShort(model, day, gust);
    const next = uniform(20271125);
    const normal = (): number => normalQuantile(next());
    const rate = medianDecayRate('ground-contact', WARM_SITE.climate) * Math.exp(0.6 * 0.4);
    const exposure = 17.0;
    const trials = 20_000;
    let short = 0;
    let anyShort = 0;
    for (let trial = 0; trial < trials; trial += 1) {
      let found = 0;
      for (const { momentPerV2, numbers } of model.classes.classes) {
        for (let post = 0; post < numbers.length; post += 1) {
          const depthMm = decayDepth(exposure, rate * Math.exp(POST_PACE_SPREAD * normal()));
          const modulus = sectionModulus(EXAMPLE_FENCE.wood.section, { depthMm, oneFaceMm: 0, cavityDiameterMm: 0 });
          const moment = (32.5 * Math.exp(-0.3 * 0.15 + 0.32 * normal()) * modulus) / 1000;
          if (moment < gust ** 2 * momentPerV2 * Math.exp(0.17 * 0.2)) found += 1;
        }
      }
      short += found;
      anyShort += found > 0 ? 1 : 0;
    }
    expect(expected).toBeCloseTo(short / trials, 1.3);
    expect(Math.abs(any - anyShort / trials)).toBeLessThan(0.01);
  });
});

describe('the chance to break', () => {
  it('is the exceedance of the median where there is no spread', () => {
    expect(breakProbability(curve, 40, 0, 1)).toBeCloseTo(1 - yearlyMaximumCdf(curve, 40), 12);
  });
  it('is less in a season that holds part of the hazard, and the parts of a year multiply up to the year', () => {
    const holds = (share: number): number => 1 - breakProbability(curve, 40, 0, share);
    expect(holds(0.7) * holds(0.3)).toBeCloseTo(holds(1), 12);
    expect(breakProbability(curve, 40, 0.09, 0.7)).toBeLessThan(breakProbability(curve, 40, 0.09, 1));
  });
  it('agrees with a fine trapezoid over the fragility', () => {
    const beta = 0.09;
    let sum = 0;
    const step = 0.01;
    for (let v = 1; v < 120; v += step) {
      const weight = yearlyMaximumCdf(curve, v + step) - yearlyMaximumCdf(curve, v);
      sum += weight * normalCdf(Math.log((v + step / 2) / 42) / beta);
    }
    expect(breakProbability(curve, 42, beta, 1)).toBeCloseTo(sum, 5);
  });
  it('is certain for what has nothing left', () => {
    expect(breakProbability(curve, 0, 0.09, 0.5)).toBe(1);
  });
  it('falls with what has stood: survival weighs toward the stronger points', () => {
    const speeds = Float64Array.from(
      { length: BELIEF_POINTS.count },
      (_, point) => 30 + 20 * BELIEF_POINTS.levels.pace[point]!,
    );
    const ledger = survivalLedger(curve, 0.8, BELIEF_POINTS);
    const first = ledger.addSeason(speeds);
    const second = ledger.addSeason(speeds);
    const third = ledger.addSeason(speeds);
    expect(second).toBeLessThan(first);
    expect(third).toBeLessThan(second);
    expect(first).toBeCloseTo(
      speeds.reduce((sum, v) => sum + breakProbability(curve, v, 0.09, 0.8), 0) / speeds.length,
      12,
    );
  });
});

describe('the hazard curve', () => {
  it('goes through two entered points', () => {
    const two = hazardCurve({
      ...WARM_SITE.wind,
      speedMps: 40,
      returnPeriodYears: 10,
      second: { speedMps: 65, returnPeriodYears: 700 },
      hurricane: true,
    }) as GumbelCurve;
    expect(returnPeriodOf(two, 40)).toBeCloseTo(10, 9);
    expect(returnPeriodOf(two, 65)).toBeCloseTo(700, 6);
  });
  it('is refused where the rarer gust is not the stronger', () => {
    const odd = hazardCurve({ ...WARM_SITE.wind, second: { speedMps: 60, returnPeriodYears: 50 } });
    expect(odd).toMatchObject({ kind: 'none', reason: expect.stringContaining('do not rise') as string });
  });
  it('is drawn from the map point beside a local fence rule, where one was entered', () => {
    const rule = { ...WARM_SITE.wind, kind: 'local-rule', returnPeriodYears: null } as const;
    expect(hazardCurve(rule).kind).toBe('none');
    const withPoint = hazardCurve({ ...rule, second: { speedMps: 46.9392, returnPeriodYears: 300 } });
    expect(withPoint).toMatchObject({ kind: 'gumbel' });
    expect((withPoint as GumbelCurve).scaleMps).toBeCloseTo(curve.scaleMps, 9);
  });
});
