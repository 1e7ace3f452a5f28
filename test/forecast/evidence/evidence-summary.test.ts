import { describe, expect, it } from 'vitest';
import { decayDepth } from '../../../src/decay/decay-depth.ts';
import { medianDecayRate } from '../../../src/decay/decay-rate.ts';
import { BELIEF_POINTS, type BeliefDimension, type BeliefPoints } from '../../../src/forecast/belief-points.ts';
import type { DepthSeen } from '../../../src/forecast/evidence/depth-likelihood.ts';
import { evidenceSummary, type UnknownBelief } from '../../../src/forecast/evidence/evidence-summary.ts';
import type { FenceBelief } from '../../../src/forecast/evidence/fence-belief.ts';
import type { PieceEvidence } from '../../../src/forecast/evidence/groundline-evidence.ts';
import type { PaceBelief } from '../../../src/forecast/evidence/pace-belief.ts';
import type { GridBelief } from '../../../src/forecast/evidence/pace-grid.ts';
import type { StormOutcome } from '../../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from '../example-fence.ts';

const P90 = 1.2815515655446;

const stood = (storm: string): StormOutcome => ({
  ref: `O ${storm}`,
  storm,
  day: '2020-06-01',
  gustMps: 30,
  gustSpread: 0.1,
  posts: [4],
  result: 'stood',
});
const STORMED: FenceFacts = { ...EXAMPLE_FENCE, outcomes: [stood('A'), { ...stood('A'), ref: 'O2' }, stood('B')] };

const BELIEF: FenceBelief = {
  points: BELIEF_POINTS,
  afterReadings: BELIEF_POINTS,
  pace: null,
  effectivePoints: 100.26,
  stormFit: -0.4567,
};
const summaryOf = (belief: Partial<FenceBelief>, facts: FenceFacts = STORMED) =>
  evidenceSummary(facts, { ...BELIEF, ...belief })!;
const unknownOf = (summary: { readonly unknowns: readonly UnknownBelief[] }, unknown: BeliefDimension): UnknownBelief =>
  summary.unknowns.find((each) => each.unknown === unknown)!;

const grid = (mean: number): GridBelief => ({
  values: Float64Array.of(mean),
  probabilities: Float64Array.of(1),
  mean,
  sd: 0,
  logEvidence: 0,
});

/** A piece read some times with an awl, its last reading after so many years at the middle of its install dates. */
const piece = (post: number, seen: DepthSeen, years: number, earlier = 0): PieceEvidence => ({
  piece: `${post}`,
  post,
  treatmentClass: 'ground-contact',
  section: PINE_4X4.section,
  dateIsRange: false,
  readings: [
    ...Array.from({ length: earlier }, (_, i) => ({
      inspectionRef: `I-${i}`,
      day: '2019-03-01',
      method: 'caliper' as const,
      seen: { kind: 'measured', depthMm: 1, errorMm: 1 } as const,
      exposureAt: () => 4,
    })),
    {
      inspectionRef: 'I-last',
      day: '2025-03-01',
      method: 'awl-or-probe',
      seen,
      exposureAt: (level) => years + 20 * (level - 0.5),
    },
  ],
});

/** A belief in which the pieces' ln r at level p is ln 0.4 + 0.1 score + (p - 1/2) + (date level - 1/2). */
const paceOf = (pieces: readonly PieceEvidence[], means: readonly number[] = [0]): PaceBelief => ({
  pieces,
  piecePaces: new Map(
    pieces.map(({ piece: name }) => [
      name,
      {
        logRates: (score, dateLevel, levels) =>
          levels.map((level) => Math.log(0.4) + 0.1 * score + (level - 0.5) + (dateLevel - 0.5)),
        floorFromDay: 0,
        floorMm: () => 0,
      },
    ]),
  ),
  byDate: means.map(grid),
  surprise: 0.1234567,
  disagrees: false,
});

describe('the summary of what was seen', () => {
  it('is none where nothing was', () => {
    expect(evidenceSummary(EXAMPLE_FENCE, BELIEF)).toBeNull();
  });

  it('counts storms once however many rows report them, and rounds what it says of the belief', () => {
    expect(summaryOf({})).toMatchObject({
      readPosts: [],
      readings: 0,
      storms: 2,
      surprise: null,
      disagrees: false,
      effectivePoints: 100.3,
      stormFit: -0.46,
    });
  });

  it('counts every reading of every piece, also without storms', () => {
    const pieces = [
      piece(4, { kind: 'measured', depthMm: 7, errorMm: 2 }, 14, 2),
      piece(5, { kind: 'below', depthMm: 3 }, 14),
    ];
    const summary = summaryOf({ pace: paceOf(pieces) }, EXAMPLE_FENCE);
    expect(summary).toMatchObject({ readings: 4, storms: 0, surprise: 0.12346, disagrees: false });
    expect(summary.readPosts.map(({ post, readings }) => [post, readings])).toEqual([
      [4, 3],
      [5, 1],
    ]);
    expect(summaryOf({ pace: { ...paceOf(pieces), disagrees: true } }, EXAMPLE_FENCE).disagrees).toBe(true);
  });
});

describe('a post that was read', () => {
  const readPost = (seen: DepthSeen, years = 14, means: readonly number[] = [0]) =>
    summaryOf({ pace: paceOf([piece(4, seen, years, 1)], means) }).readPosts[0]!;

  it('has its last reading, what the depth alone implies, and what is believed of that day', () => {
    const round = (value: number): number => Math.round(value * 100) / 100;
    expect(readPost({ kind: 'measured', depthMm: 7.004, errorMm: 2 })).toEqual({
      post: 4,
      day: '2025-03-01',
      inspectionRef: 'I-last',
      method: 'awl-or-probe',
      readings: 2,
      seen: 'measured',
      seenMm: 7,
      // (d + 5.5) / t
      impliedRate: Math.round((12.504 / 14) * 1e4) / 1e4,
      depthMm: {
        p10: round(decayDepth(14, 0.4 * Math.exp(-0.4))),
        p50: round(decayDepth(14, 0.4)),
        p90: round(decayDepth(14, 0.4 * Math.exp(0.4))),
      },
    });
  });

  it('takes the middle of the install dates, where there are several', () => {
    const middle = readPost({ kind: 'measured', depthMm: 7, errorMm: 2 }, 14, [9, -9, 2, 30, 9]).depthMm;
    expect(middle.p50).toBeCloseTo(decayDepth(14, 0.4 * Math.exp(0.2)), 2);
    const upper = readPost({ kind: 'measured', depthMm: 7, errorMm: 2 }, 14, [9, -1]).depthMm;
    expect(upper.p50).toBeCloseTo(decayDepth(14, 0.4 * Math.exp(-0.1)), 2);
  });

  it('says of a bound that it is one', () => {
    expect(readPost({ kind: 'below', depthMm: 3 })).toMatchObject({ seen: 'at most', seenMm: 3 });
    expect(readPost({ kind: 'above', depthMm: 9 })).toMatchObject({ seen: 'at least', seenMm: 9 });
  });

  it('implies no rate where no depth was found, or where the wood has not been exposed', () => {
    expect(readPost({ kind: 'measured', depthMm: -0.5, errorMm: 2 })).toMatchObject({ seenMm: -0.5, impliedRate: 0 });
    expect(readPost({ kind: 'measured', depthMm: 6, errorMm: 2 }, 0)).toMatchObject({ seenMm: 6, impliedRate: 0 });
  });
});

describe('the unknowns of a fence', () => {
  it('are pace in mm a year, and strength, footing and load as factors on their medians', () => {
    expect(summaryOf({}).unknowns.map(({ unknown, unit }) => [unknown, unit])).toEqual([
      ['pace', 'mm/a'],
      ['fibre strength', 'of the median'],
      ['footing', 'of the median'],
      ['permanent load', 'of the median'],
    ]);
  });

  it.each([
    // median, spread of ln: published
    ['pace', medianDecayRate('ground-contact', WARM_SITE.climate), 0.6],
    ['fibre strength', 1, 0.15],
    ['footing', 1, 0.4],
    ['permanent load', 1, 0.17],
  ] as const)('have quantiles of a lognormal before anything was seen: %s', (unknown, median, spread) => {
    const { prior, afterReadings, posterior, movedBy } = unknownOf(summaryOf({}), unknown);
    expect(prior.p10 / (median * Math.exp(-P90 * spread))).toBeCloseTo(1, 1.4);
    expect(prior.p50 / median).toBeCloseTo(1, 1.4);
    expect(prior.p90 / (median * Math.exp(P90 * spread))).toBeCloseTo(1, 1.4);
    expect(prior.p50).toBe(Math.round(prior.p50 * 1e4) / 1e4);
    expect([afterReadings, posterior, movedBy]).toEqual([prior, prior, 'nothing']);
  });

  it('leave pace out where nothing rots, and take steel to scatter as wood of a known species', () => {
    const steel: FenceFacts = {
      ...STORMED,
      wood: { ...PINE_4X4, species: 'unknown', treatmentClass: 'does-not-rot', momentCapacityNm: 3000 },
    };
    const summary = summaryOf({}, steel);
    expect(summary.unknowns.map(({ unknown }) => unknown)).toEqual(['fibre strength', 'footing', 'permanent load']);
    expect(unknownOf(summary, 'fibre strength').prior).toEqual(unknownOf(summaryOf({}), 'fibre strength').prior);
  });

  it('scatter wider in strength where the species is not known', () => {
    const unknown: FenceFacts = { ...STORMED, wood: { ...PINE_4X4, species: 'unknown' } };
    const [wide, narrow] = [unknown, STORMED].map((facts) => unknownOf(summaryOf({}, facts), 'fibre strength').prior);
    expect(wide!.p90).toBeGreaterThan(narrow!.p90);
    expect(wide!.p10).toBeLessThan(narrow!.p10);
  });

  it('lie about what the register has learned', () => {
    const paces = [{ treatmentClass: 'ground-contact', logShift: Math.log(1.5), spread: 0.2 } as const];
    const learned = { version: 1, paces, footing: { logShift: Math.log(0.7), spread: 0.25 } };
    const summary = summaryOf({}, { ...STORMED, learned });
    const [pace, footing] = [unknownOf(summary, 'pace').prior, unknownOf(summary, 'footing').prior];
    const published = medianDecayRate('ground-contact', WARM_SITE.climate);
    expect(pace.p50 / (1.5 * published)).toBeCloseTo(1, 1.4);
    expect(pace.p90 / pace.p50 / Math.exp(P90 * 0.2)).toBeCloseTo(1, 1.4);
    expect(footing.p50).toBeCloseTo(0.7, 1.7);
    expect(footing.p90 / footing.p50 / Math.exp(P90 * 0.25)).toBeCloseTo(1, 1.4);
  });

  it('are weighed where points carry unlike weights', () => {
    // all weight on footings whose score is above 1
    const raw = BELIEF_POINTS.scores.footing.map((score) => (score > 1 ? 1 : 0));
    const total = raw.reduce((a, b) => a + b);
    const { posterior } = unknownOf(
      summaryOf({ points: { ...BELIEF_POINTS, weights: raw.map((each) => each / total) } }),
      'footing',
    );
    expect(posterior.p10).toBeGreaterThan(Math.exp(0.4));
    expect(posterior.p10).toBeLessThan(posterior.p50);
  });
});

describe('what moved an unknown', () => {
  const changed = (points: BeliefPoints, change: (score: number) => number): BeliefPoints => ({
    ...points,
    scores: { ...points.scores, 'permanent load': points.scores['permanent load'].map(change) },
  });
  const movedBy = (readings: (score: number) => number, storms: (score: number) => number) => {
    const afterReadings = changed(BELIEF_POINTS, readings);
    return unknownOf(summaryOf({ afterReadings, points: changed(afterReadings, storms) }), 'permanent load').movedBy;
  };
  const same = (score: number): number => score;
  // The prior is some 2.56 scores wide: a twentieth of that is 0.128.
  const further = (score: number): number => score + 0.3;
  const back = (score: number): number => score - 0.3;
  const hardly = (score: number): number => score + 0.06;
  const narrower = (score: number): number => 0.85 * score;

  it('is what moved its median', () => {
    expect(movedBy(further, same)).toBe('readings');
    expect(movedBy(same, further)).toBe('storms');
    expect(movedBy(back, same)).toBe('readings');
    expect(movedBy(same, back)).toBe('storms');
    expect(movedBy(further, further)).toBe('readings and storms');
  });

  it('is both where one took back what the other had done', () => {
    expect(movedBy(further, back)).toBe('readings and storms');
  });

  it('is what made it narrower or wider', () => {
    expect(movedBy(narrower, same)).toBe('readings');
    expect(movedBy(same, narrower)).toBe('storms');
    expect(movedBy(same, (score) => 1.15 * score)).toBe('storms');
    expect(movedBy(narrower, narrower)).toBe('readings and storms');
  });

  it('is nothing where it moved by less than a twentieth of the width of the prior', () => {
    expect(movedBy(hardly, same)).toBe('nothing');
    expect(movedBy(same, hardly)).toBe('nothing');
    expect(movedBy(hardly, (score) => 0.97 * score)).toBe('nothing');
  });
});
