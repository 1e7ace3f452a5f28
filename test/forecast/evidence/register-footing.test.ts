import { describe, expect, it } from 'vitest';
import { nominalSection } from '../../../src/capacity/post-section.ts';
import { FOOTING_SPREAD } from '../../../src/capacity/soil-class.ts';
import { MEDIAN_POINT } from '../../../src/forecast/belief-points.ts';
import { fenceBelief } from '../../../src/forecast/evidence/fence-belief.ts';
import {
  type FenceFootingEvidence,
  fenceFootingEvidence,
  footingLogLikelihoods,
  registerFooting,
} from '../../../src/forecast/evidence/register-footing.ts';
import { stormLogLikelihood } from '../../../src/forecast/evidence/storm-likelihood.ts';
import type { StormOutcome, StormResult } from '../../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { normalCdf } from '../../../src/forecast/normal-distribution.ts';
import { stateModel } from '../../../src/forecast/state-model.ts';
import { PINE_4X4 } from '../example-fence.ts';
import { groundlineOf, inspectionOn } from './read-fence.ts';
import { SHORT_FENCE } from './stormed-fence.ts';

/** New posts, so that footings give long before posts break. */
const DAY = '2016-06-01';
const GUST_SPREAD = 0.08;

const outcome = (
  posts: StormOutcome['posts'],
  result: StormResult,
  gustMps: number,
  storm = 'squall',
): StormOutcome => ({
  ref: `${storm} ${result} ${String(posts)}`,
  storm,
  day: DAY,
  gustMps,
  gustSpread: GUST_SPREAD,
  posts,
  result,
});

const stormed = (...outcomes: readonly StormOutcome[]): FenceFacts => ({ ...SHORT_FENCE, outcomes });
const evidenceOf = (facts: FenceFacts): FenceFootingEvidence | null => fenceFootingEvidence(facts, fenceStates(facts));
const curveOf = (facts: FenceFacts): readonly number[] =>
  footingLogLikelihoods(facts, fenceStates(facts)).logLikelihoods;

describe('what storms say of the footings of a fence', () => {
  it('is nothing where no storm was reported, and where all that was reported is broken posts', () => {
    expect(evidenceOf(SHORT_FENCE)).toBeNull();
    expect(evidenceOf(stormed(outcome([2], 'snapped', 40)))).toBeNull();
  });

  it('speaks for stronger footings the more, the higher the wind they stood in', () => {
    const curve = curveOf(stormed(outcome([2, 3], 'stood', 30)));
    for (const [index, value] of curve.entries()) {
      if (index > 0) expect(value).toBeGreaterThanOrEqual((curve[index - 1] ?? 0) - 1e-9);
    }
    const shift = (gust: number): number => {
      const evidence = evidenceOf(stormed(outcome([3], 'stood', gust)));
      return evidence ? registerFooting('sand', [evidence]).logShift : Number.NaN;
    };
    expect(shift(32)).toBeGreaterThan(shift(26));
    expect(shift(26)).toBeGreaterThan(0);
  });

  it('speaks for weaker footings where posts leaned', () => {
    const curve = curveOf(stormed(outcome([2, 3, 4], 'leaned', 28)));
    for (const [index, value] of curve.entries()) {
      if (index > 0) expect(value).toBeLessThanOrEqual((curve[index - 1] ?? 0) + 1e-9);
    }
    const evidence = evidenceOf(stormed(outcome([2, 3, 4], 'leaned', 28)));
    expect(evidence).toMatchObject({ tried: 3, leaned: 3, soilKind: 'sand' });
    expect(registerFooting('sand', evidence ? [evidence] : []).logShift).toBeLessThan(0);
  });

  it('counts posts by storm, and not those that were broken or leaning before', () => {
    const facts = stormed(outcome([2], 'snapped', 40), outcome([4, 5], 'leaned', 40), outcome('all', 'stood', 40), {
      ...outcome([1, 2, 3, 4], 'stood', 30, 'later'),
      day: '2017-06-01',
    });
    // five posts: four reported leaned or standing, then the two that neither broke nor leaned
    expect(evidenceOf(facts)).toMatchObject({ tried: 6, leaned: 2 });
  });

  it('leaves what the office has accepted out', () => {
    const facts = stormed(outcome([4], 'leaned', 30), outcome('all', 'stood', 30));
    const accepted = { ...facts, learned: { version: 1, paces: [], footing: { logShift: -0.4, spread: 0.3 } } };
    expect(curveOf(accepted)).toEqual(curveOf(facts));
  });
});

describe('what one storm says of footings that alone can give', () => {
  /** Posts so strong that nothing else breaks. */
  const strong = (...outcomes: readonly StormOutcome[]): FenceFacts => ({
    ...SHORT_FENCE,
    wood: { ...PINE_4X4, section: nominalSection('8x8'), treatmentClass: 'does-not-rot', momentCapacityNm: 1e7 },
    outcomes,
  });
  const GUST = 26;
  /** ln of the wind that a footing stands, over its wind at half odds, in the spread of all that is not known. */
  const score = (facts: FenceFacts, offset: number): number => {
    const model = stateModel(facts.site, fenceStates(facts)[0]!.state, MEDIAN_POINT);
    const at = model.classes.classes.findIndex(({ numbers }) => numbers.includes(3));
    const even = Math.log(model.leanMps[at]![0]!) + offset / 2;
    // gust, load of the storm, post to post, permanent load
    return (even - Math.log(GUST / Math.sqrt(0.85))) / Math.hypot(GUST_SPREAD, 0.09, 0.1, 0.085);
  };

  it.each(['stood', 'leaned'] as const)('is a normal distribution function of the offset: %s', (result) => {
    const facts = strong(outcome([3], result, GUST));
    const { offsets, logLikelihoods } = footingLogLikelihoods(facts, fenceStates(facts));
    expect(offsets).toHaveLength(25);
    expect([offsets[0], offsets[12], offsets[13], offsets[24]]).toEqual([-1.5, 0, 0.125, 1.5]);
    for (const [index, offset] of offsets.entries()) {
      const held = normalCdf(score(facts, offset));
      const chance = result === 'stood' ? held : 1 - held;
      expect(Math.abs(Math.exp(logLikelihoods[index]!) - chance), `at ${offset}`).toBeLessThan(0.02);
    }
  });

  it('is taken in between offsets, and beyond them as at the end', () => {
    const facts = strong(outcome([3], 'leaned', GUST));
    const curve = curveOf(facts);
    const { logLikelihoods } = evidenceOf(facts)!;
    expect(logLikelihoods).toHaveLength(321);
    // offsets of 0.4 / 20 = 0.02: 160 is 0, 185 is 0.5, 191 is 0.62 (0.96 of the way from 0.5 to 0.625)
    expect(logLikelihoods[160]).toBeCloseTo(curve[12]!, 12);
    expect(logLikelihoods[185]).toBeCloseTo(curve[16]!, 9);
    expect(logLikelihoods[191]).toBeCloseTo(0.04 * curve[16]! + 0.96 * curve[17]!, 9);
    expect(logLikelihoods[0]).toBe(curve[0]);
    expect(logLikelihoods[320]).toBe(curve[24]);
  });

  it('weighs its points by what was read, where the install date is a range', () => {
    const facts: FenceFacts = {
      ...stormed(outcome([3], 'snapped', 22)),
      installed: { earliest: '1990-03-01', latest: '2015-03-01' },
      inspections: [inspectionOn(DAY, [{ kind: 'sound-to', depthMm: 3 }])],
    };
    const states = fenceStates(facts);
    const { points } = fenceBelief({ ...facts, outcomes: [] }, states);
    expect(points.count).toBe(128);
    // Every eighth point and its mirror image, all of one footing: at the offset 0, and at 0.5 of a spread of 0.4.
    const taken = Array.from({ length: 16 }, (_, i) => [8 * i, 127 - 8 * i]).flat();
    for (const [index, score] of [
      [12, 0],
      [16, 1.25],
    ] as const) {
      const footing = new Float64Array(128).fill(score);
      const logs = stormLogLikelihood(facts, states, { ...points, scores: { ...points.scores, footing } });
      let [sum, total, plain] = [0, 0, 0];
      for (const point of taken) {
        sum += points.weights![point]! * Math.exp(logs[point]!);
        total += points.weights![point]!;
        plain += Math.exp(logs[point]!) / 32;
      }
      expect(curveOf(facts)[index]).toBeCloseTo(Math.log(sum / total), 9);
      expect(Math.abs(Math.log(sum / total / plain))).toBeGreaterThan(0.05);
    }
  });

  it('names the fence, its soil and the posts tried', () => {
    const facts = { ...strong(outcome([3], 'leaned', GUST), outcome([2, 4], 'stood', GUST)), ref: 'F-3' };
    expect(evidenceOf(facts)).toMatchObject({ ref: 'F-3', soilKind: 'sand', tried: 3, leaned: 1 });
    const clay: FenceFacts = { ...facts, site: { ...facts.site, soilClass: 'firm-clay' } };
    expect(evidenceOf(clay)?.soilKind).toBe('clay');
  });

  it('counts no post twice over that an inspection had found leaning or broken', () => {
    const facts: FenceFacts = {
      ...strong(outcome('all', 'stood', 10)),
      inspections: [
        {
          ref: 'I',
          day: '2016-01-01',
          method: 'eye',
          readings: [{ ...groundlineOf(2, null), leanDegrees: 20 }, groundlineOf(4, { kind: 'broken' })],
        },
      ],
    };
    expect(evidenceOf(facts)).toMatchObject({ tried: 3, leaned: 0 });
  });
});

describe('what a register shows of footings', () => {
  it('is the published value where nothing was seen', () => {
    const none = registerFooting('clay', []);
    expect(none).toMatchObject({ key: 'footing/clay', fences: 0, tried: 0, leaned: 0, enough: false });
    expect(none.logShift).toBeCloseTo(0, 12);
    expect(none.spread).toBeCloseTo(FOOTING_SPREAD, 6);
  });

  it('is enough from twenty posts tried on, five of them leaned, and only of its own soil', () => {
    const flat = { ref: 'A', soilKind: 'sand', tried: 20, leaned: 5, logLikelihoods: new Float64Array(321) } as const;
    expect(registerFooting('sand', [flat]).enough).toBe(true);
    expect(registerFooting('clay', [flat])).toMatchObject({ enough: false, fences: 0 });
    expect(registerFooting('sand', [{ ...flat, leaned: 4 }]).enough).toBe(false);
    expect(registerFooting('sand', [{ ...flat, tried: 19 }]).enough).toBe(false);
  });

  it('adds what was tried and leaned over the fences of its soil, and only those', () => {
    const flat = { ref: 'A', soilKind: 'sand', tried: 12, leaned: 3, logLikelihoods: new Float64Array(321) } as const;
    const fences = [flat, { ...flat, ref: 'B', tried: 8, leaned: 2 }, { ...flat, ref: 'C', soilKind: 'clay' as const }];
    expect(registerFooting('sand', fences)).toMatchObject({
      kind: 'footing',
      key: 'footing/sand',
      soilKind: 'sand',
      fences: 2,
      tried: 20,
      leaned: 5,
      enough: true,
      published: { spread: 0.4 },
    });
    expect(registerFooting('clay', fences)).toMatchObject({ key: 'footing/clay', fences: 1, tried: 12, leaned: 3 });
  });
});
