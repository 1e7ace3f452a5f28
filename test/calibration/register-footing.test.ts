import { expect, it } from 'vitest';
import { FOOTING_SPREAD } from '../../src/capacity/soil-class.ts';
import { singlePoint } from '../../src/forecast/belief-points.ts';
import { fenceFootingEvidence, registerFooting } from '../../src/forecast/evidence/register-footing.ts';
import { FOOTING_SPREAD_POST } from '../../src/forecast/evidence/storm-likelihood.ts';
import type { StormOutcome, StormResult } from '../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { normalCdf } from '../../src/forecast/normal-distribution.ts';
import { stateModel } from '../../src/forecast/state-model.ts';
import { STORM_LOAD_SPREAD, WORST_DIRECTION } from '../../src/forecast/storm-load.ts';
import { normals } from '../forecast/evidence/made-up-register.ts';
import { EXAMPLE_FENCE } from '../forecast/example-fence.ts';

/** New posts, so that footings give long before posts break. */
const DAY = '2016-06-01';
const GUST_SPREAD = 0.08;

const outcome = (posts: StormOutcome['posts'], result: StormResult, gustMps: number): StormOutcome => ({
  ref: `squall ${result}`,
  storm: 'squall',
  day: DAY,
  gustMps,
  gustSpread: GUST_SPREAD,
  posts,
  result,
});

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

it('finds that made-up footings hold well under what is published, within its interval', () => {
  const next = normals(77);
  const truth = -0.5;
  const fences = Array.from({ length: 14 }, (_, i) =>
    stormedFence(`F-${i}`, next, truth + 0.2 * next(), 20 + (i % 4) * 3),
  );
  const evidence = fences.flatMap((fence) => fenceFootingEvidence(fence, fenceStates(fence)) ?? []);
  const found = registerFooting('sand', evidence);
  expect(found).toMatchObject({ fences: 14, tried: 14 * 11, enough: true });
  expect(found.low).toBeLessThan(truth);
  expect(found.high).toBeGreaterThan(truth);
  expect(found.high).toBeLessThan(0);
}, 120_000);
