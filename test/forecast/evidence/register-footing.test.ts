import { describe, expect, it } from 'vitest';
import { FOOTING_SPREAD } from '../../../src/capacity/soil-class.ts';
import { singlePoint } from '../../../src/forecast/belief-points.ts';
import {
  type FenceFootingEvidence,
  fenceFootingEvidence,
  footingLogLikelihoods,
  registerFooting,
} from '../../../src/forecast/evidence/register-footing.ts';
import { FOOTING_SPREAD_POST } from '../../../src/forecast/evidence/storm-likelihood.ts';
import type { StormOutcome, StormResult } from '../../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { normalCdf } from '../../../src/forecast/normal-distribution.ts';
import { stateModel } from '../../../src/forecast/state-model.ts';
import { STORM_LOAD_SPREAD, WORST_DIRECTION } from '../../../src/forecast/storm-load.ts';
import { EXAMPLE_FENCE } from '../example-fence.ts';
import { normals } from './made-up-register.ts';

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

const stormed = (...outcomes: readonly StormOutcome[]): FenceFacts => ({ ...EXAMPLE_FENCE, outcomes });
const evidenceOf = (facts: FenceFacts): FenceFootingEvidence | null => fenceFootingEvidence(facts, fenceStates(facts));
const curveOf = (facts: FenceFacts): readonly number[] =>
  footingLogLikelihoods(facts, fenceStates(facts)).logLikelihoods;

/** A fence whose footings hold e^offset times the published value, and what one storm did to it. */
function stormedFence(ref: string, next: () => number, offset: number, gustMps: number): FenceFacts {
  const facts: FenceFacts = { ...EXAMPLE_FENCE, ref };
  const [first] = fenceStates(facts);
  if (!first) throw new Error('a fence has a first state');
  const point = singlePoint({ footing: offset / FOOTING_SPREAD, 'permanent load': next() }, normalCdf);
  const model = stateModel(facts.site, first.state, point);
  const felt = (gustMps / WORST_DIRECTION) * Math.exp(GUST_SPREAD * next() + (STORM_LOAD_SPREAD / 2) * next());
  const leaned: number[] = [];
  for (const [index, { numbers }] of model.classes.classes.entries()) {
    for (const number of numbers) {
      const lean = (model.leanMps[index]?.[0] ?? Number.NaN) * Math.exp((FOOTING_SPREAD_POST / 2) * next());
      if (lean <= felt) leaned.push(number);
    }
  }
  const reported = leaned.length === 0 ? [] : [outcome(leaned, 'leaned', gustMps)];
  return { ...facts, outcomes: [...reported, outcome('all', 'stood', gustMps)] };
}

describe('what storms say of the footings of a fence', () => {
  it('is nothing where no storm was reported, and where all that was reported is broken posts', () => {
    expect(evidenceOf(EXAMPLE_FENCE)).toBeNull();
    expect(evidenceOf(stormed(outcome([2], 'snapped', 40)))).toBeNull();
  });

  it('speaks for stronger footings the more, the higher the wind they stood in', () => {
    const curve = curveOf(stormed(outcome('all', 'stood', 30)));
    for (const [index, value] of curve.entries()) {
      if (index > 0) expect(value).toBeGreaterThanOrEqual((curve[index - 1] ?? 0) - 1e-9);
    }
    const shift = (gust: number): number => {
      const evidence = evidenceOf(stormed(outcome('all', 'stood', gust)));
      return evidence ? registerFooting('sand', [evidence]).logShift : Number.NaN;
    };
    expect(shift(32)).toBeGreaterThan(shift(26));
    expect(shift(26)).toBeGreaterThan(0);
  });

  it('speaks for weaker footings where posts leaned', () => {
    const curve = curveOf(stormed(outcome([4, 5, 6], 'leaned', 28)));
    for (const [index, value] of curve.entries()) {
      if (index > 0) expect(value).toBeLessThanOrEqual((curve[index - 1] ?? 0) + 1e-9);
    }
    const evidence = evidenceOf(stormed(outcome([4, 5, 6], 'leaned', 28)));
    expect(evidence).toMatchObject({ tried: 3, leaned: 3, soilKind: 'sand' });
    expect(registerFooting('sand', evidence ? [evidence] : []).logShift).toBeLessThan(0);
  });

  it('counts posts by storm, and not those that were broken or leaning before', () => {
    const facts = stormed(outcome([2], 'snapped', 40), outcome([4, 5], 'leaned', 40), outcome('all', 'stood', 40), {
      ...outcome('all', 'stood', 30, 'later'),
      day: '2017-06-01',
    });
    // eleven posts: ten reported leaned or standing, then the eight that neither broke nor leaned
    expect(evidenceOf(facts)).toMatchObject({ tried: 18, leaned: 2 });
  });

  it('leaves what the office has accepted out', () => {
    const facts = stormed(outcome([4], 'leaned', 30), outcome('all', 'stood', 30));
    const accepted = { ...facts, learned: { version: 1, paces: [], footing: { logShift: -0.4, spread: 0.3 } } };
    expect(curveOf(accepted)).toEqual(curveOf(facts));
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

  it('finds that made-up footings hold well under what is published, within its interval', () => {
    const next = normals(77);
    const truth = -0.5;
    const fences = Array.from({ length: 14 }, (_, i) =>
      stormedFence(`F-${i}`, next, truth + 0.2 * next(), 20 + (i % 4) * 3),
    );
    const evidence = fences.flatMap((fence) => evidenceOf(fence) ?? []);
    const found = registerFooting('sand', evidence);
    expect(found).toMatchObject({ fences: 14, tried: 14 * 11, enough: true });
    expect(found.low).toBeLessThan(truth);
    expect(found.high).toBeGreaterThan(truth);
    expect(found.high).toBeLessThan(0);
  }, 120_000);
});
