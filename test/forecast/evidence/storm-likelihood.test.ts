import { describe, expect, it } from 'vitest';
import { nominalSection } from '../../../src/capacity/post-section.ts';
import { BELIEF_POINTS, MEDIAN_POINT } from '../../../src/forecast/belief-points.ts';
import { stormEvidence, stormLogLikelihood } from '../../../src/forecast/evidence/storm-likelihood.ts';
import type { StormOutcome, StormResult } from '../../../src/forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../../src/forecast/fence-state.ts';
import { normalCdf, normalQuantile } from '../../../src/forecast/normal-distribution.ts';
import { classValues, stateModel } from '../../../src/forecast/state-model.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from '../example-fence.ts';
import { groundlineOf } from './read-fence.ts';
import { ROTLESS_FENCE, STORM_DAY, stormOn, withOutcomes } from './stormed-fence.ts';

/** Posts so strong that only the footing can give: what a storm says of it can be worked by hand. */
const STRONG: FenceFacts = {
  ...EXAMPLE_FENCE,
  wood: { ...PINE_4X4, section: nominalSection('8x8'), treatmentClass: 'does-not-rot', momentCapacityNm: 1e7 },
};
const stateAt = (facts: FenceFacts) => fenceStates(facts)[0]!.state;
const classOf = (model: ReturnType<typeof stateModel>, post: number): number =>
  model.classes.classes.findIndex(({ numbers }) => numbers.includes(post));

/** Points of an additive recurrence over the unit cube, by the square roots of primes. */
const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19];
const DRAWS = 8000;

interface Reports {
  readonly post: number;
  readonly results: readonly StormResult[];
}

/**
 * The probability of what was reported of posts over storms, by playing the storms through: every draw has the load of each
 * storm, and a footing and a strength of each post. A post breaks where the wind is over its snap speed and that is no higher
 * than its lean speed, it leans where the wind is over its lean speed; a leaning footing is tried no more.
 */
function played(
  gusts: readonly number[],
  posts: readonly { logSnap: number; logLean: number; spread: number; results: readonly StormResult[] }[],
): number {
  const stormSpread = Math.hypot(0.05, 0.09);
  let hits = 0;
  for (let draw = 1; draw <= DRAWS; draw += 1) {
    let next = 0;
    const normal = (): number => normalQuantile((0.5 + draw * Math.sqrt(PRIMES[next++]!)) % 1);
    const winds = gusts.map((gust) => Math.log(gust / Math.sqrt(0.85)) + stormSpread * normal());
    const all = posts.every(({ logSnap, logLean, spread, results }) => {
      const snap = logSnap + spread * normal();
      const lean = logLean + 0.1 * normal();
      let leaning = false;
      return results.every((reported, storm) => {
        const wind = winds[storm]!;
        if (snap <= wind && (leaning || snap <= lean)) return reported === 'snapped';
        if (leaning) return reported !== 'snapped';
        leaning = lean <= wind;
        return reported === (leaning ? 'leaned' : 'stood');
      });
    });
    if (all) hits += 1;
  }
  return hits / DRAWS;
}

describe('the probability of what storms did to posts of which all else is known', () => {
  const DAYS = ['2019-06-01', '2020-06-01', '2021-06-01'];
  const reported = (facts: FenceFacts, gusts: readonly number[], reports: readonly Reports[]): FenceFacts =>
    withOutcomes(
      facts,
      ...reports.flatMap(({ post, results }) =>
        results.map((result, i) => stormOn(DAYS[i]!, gusts[i]!, [post], result)),
      ),
    );
  const speedsOf = (facts: FenceFacts, post: number) => {
    const model = stateModel(facts.site, stateAt(facts), MEDIAN_POINT);
    const at = classOf(model, post);
    return {
      logSnap: Math.log(classValues(model, STORM_DAY).snapMps[at]![0]!),
      logLean: Math.log(model.leanMps[at]![0]!),
    };
  };
  const chanceOf = (facts: FenceFacts): number =>
    Math.exp(stormLogLikelihood(facts, fenceStates(facts), MEDIAN_POINT)[0]!);
  /** Wood that does not rot, sawn so thin that it breaks at about the wind at which its footing gives. */
  const EVEN: FenceFacts = {
    ...ROTLESS_FENCE,
    wood: { ...ROTLESS_FENCE.wood, section: { kind: 'rectangular', widthMm: 60, depthMm: 60 } },
  };
  const compare = (facts: FenceFacts, gusts: readonly number[], reports: readonly Reports[], spread = 0.16): void => {
    const posts = reports.map(({ post, results }) => ({ ...speedsOf(facts, post), spread, results }));
    expect(Math.abs(chanceOf(reported(facts, gusts, reports)) - played(gusts, posts))).toBeLessThan(0.025);
  };

  it('is tried where breaking and leaning are both likely', () => {
    const { logSnap, logLean } = speedsOf(EVEN, 3);
    expect(Math.abs(logSnap - logLean)).toBeLessThan(0.25);
    for (const gust of [18, 22, 27]) expect(Math.abs(Math.log(gust) - logLean)).toBeLessThan(0.5);
  });

  it.each([18, 22, 27])('is that of playing one storm of %s m/s through', (gust) => {
    for (const result of ['stood', 'leaned', 'snapped'] as const)
      compare(EVEN, [gust], [{ post: 3, results: [result] }]);
  });

  it.each([
    [['stood', 'stood']],
    [['stood', 'leaned']],
    [['stood', 'snapped']],
    [['leaned', 'stood']],
    [['leaned', 'snapped']],
  ] as const)('is that of playing two storms through: %s', (results) => {
    compare(EVEN, [20, 22], [{ post: 3, results }]);
    compare(EVEN, [24, 20], [{ post: 3, results }]);
  });

  it('is that of playing three storms through', () => {
    compare(EVEN, [20, 21, 22], [{ post: 3, results: ['stood', 'leaned', 'stood'] }]);
    compare(EVEN, [20, 21, 22], [{ post: 3, results: ['stood', 'leaned', 'snapped'] }]);
    compare(EVEN, [22, 20, 21], [{ post: 3, results: ['stood', 'stood', 'stood'] }]);
  });

  it('has the load of a storm in common over all posts', () => {
    compare(
      EVEN,
      [21],
      [
        { post: 2, results: ['stood'] },
        { post: 3, results: ['stood'] },
        { post: 4, results: ['stood'] },
      ],
    );
    compare(
      EVEN,
      [22],
      [
        { post: 2, results: ['stood'] },
        { post: 3, results: ['leaned'] },
      ],
    );
  });

  it('is that of playing a storm through over steel, which does not scatter', () => {
    const { logSnap } = speedsOf(EVEN, 3);
    expect(logSnap).toBeGreaterThan(0);
    const steel: FenceFacts = { ...ROTLESS_FENCE, wood: { ...ROTLESS_FENCE.wood, momentCapacityNm: 900 } };
    for (const result of ['stood', 'leaned', 'snapped'] as const) {
      compare(steel, [21], [{ post: 3, results: [result] }], 1e-6);
    }
  });

  it('leaves the footing of a post that was leaning before out, and tells "stood" from "leaned" no more', () => {
    const leaning = (result: StormResult): number =>
      chanceOf({
        ...withOutcomes(EVEN, stormOn(STORM_DAY, 22, [3], result)),
        inspections: [
          { ref: 'I', day: '2019-01-01', method: 'level', readings: [{ ...groundlineOf(3, null), leanDegrees: 25 }] },
        ],
      });
    const { logSnap } = speedsOf(EVEN, 3);
    const snaps = normalCdf((Math.log(22 / Math.sqrt(0.85)) - logSnap) / Math.hypot(0.16, 0.05, 0.09));
    expect(leaning('snapped')).toBeCloseTo(snaps, 2);
    expect(leaning('stood')).toBeCloseTo(1 - snaps, 2);
    expect(leaning('leaned')).toBe(leaning('stood'));
  });
});

describe('reports that cannot be', () => {
  const logOf = (...outcomes: readonly StormOutcome[]): number => {
    const facts = withOutcomes(ROTLESS_FENCE, ...outcomes);
    return stormLogLikelihood(facts, fenceStates(facts), MEDIAN_POINT)[0]!;
  };

  it('are one in a thousand million a post: some are wrong', () => {
    expect(logOf(stormOn(STORM_DAY, 300, [3], 'stood'))).toBeCloseTo(Math.log(1e-9), 9);
    expect(logOf(stormOn(STORM_DAY, 300, [2, 3, 4], 'stood'))).toBeCloseTo(3 * Math.log(1e-9), 9);
    expect(logOf(stormOn(STORM_DAY, 3, [3], 'snapped'), stormOn('2021-06-01', 3, [3], 'stood'))).toBeCloseTo(
      Math.log(1e-9),
      9,
    );
  });

  it('are not those that a footing made anew explains: its scatter is its own', () => {
    const [first, second] = [stormOn('2019-06-01', 20, [3], 'leaned'), stormOn('2021-06-01', 26, [3], 'stood')];
    const { embedmentM, footingDiameterM } = ROTLESS_FENCE.ground;
    const facts: FenceFacts = {
      ...withOutcomes(ROTLESS_FENCE, first, second),
      works: [
        {
          ref: 'W',
          day: STORM_DAY,
          posts: [3],
          kind: 'footing-reset',
          embedmentM: embedmentM!,
          footing: 'concrete',
          footingDiameterM,
        },
      ],
    };
    const log = stormLogLikelihood(facts, fenceStates(facts), MEDIAN_POINT)[0]!;
    expect(Math.abs(log - logOf(first) - logOf(second))).toBeLessThan(0.15);
  });
});

describe('the evidence of storms', () => {
  it('is nothing where none was reported', () => {
    expect(stormEvidence(ROTLESS_FENCE, fenceStates(ROTLESS_FENCE), BELIEF_POINTS).posts).toBe(0);
    expect([...stormLogLikelihood(ROTLESS_FENCE, fenceStates(ROTLESS_FENCE), MEDIAN_POINT)]).toEqual([0]);
  });

  it('counts the posts reported, whatever the number of storms they went through', () => {
    const facts = withOutcomes(
      ROTLESS_FENCE,
      stormOn('2019-06-01', 20, [2, 3, 4], 'stood'),
      stormOn('2020-06-01', 20, [3, 4, 5], 'stood'),
    );
    expect(stormEvidence(facts, fenceStates(facts), MEDIAN_POINT).posts).toBe(4);
  });

  it('takes more storms than there are lattice directions', () => {
    const years = Array.from({ length: 20 }, (_, i) => `${2001 + i}-06-01`);
    const facts = withOutcomes(
      { ...ROTLESS_FENCE, installed: { earliest: '2000-03-01', latest: '2000-03-01' } },
      ...years.map((day) => stormOn(day, 16, [3], 'stood')),
    );
    const [log] = stormLogLikelihood(facts, fenceStates(facts), MEDIAN_POINT);
    expect(log).toBeLessThan(0);
    expect(log).toBeGreaterThan(-2);
  });
});

describe('a storm that only the footing could have lost', () => {
  const evenGust = (): number => {
    const median = stateModel(STRONG.site, stateAt(STRONG), MEDIAN_POINT);
    return median.leanMps[classOf(median, 5)]![0]! * Math.sqrt(0.85);
  };

  it('is even odds beforehand, and both results together are certain', () => {
    const chance = (result: StormResult): number => {
      const facts = withOutcomes(STRONG, stormOn(STORM_DAY, evenGust(), [5], result));
      const logs = stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS);
      return logs.reduce((sum, log) => sum + Math.exp(log) / logs.length, 0);
    };
    expect(chance('stood')).toBeCloseTo(0.5, 2);
    expect(chance('stood') + chance('leaned')).toBeCloseTo(1, 2);
  });
});

describe('the three results of a storm', () => {
  it.each([0.7, 1, 1.3])('have probabilities that sum to 1, at %s times the even gust', (times) => {
    const facts: FenceFacts = { ...EXAMPLE_FENCE, installed: { earliest: '2005-03-01', latest: '2005-03-01' } };
    const total = BELIEF_POINTS.levels.pace.map(() => 0);
    for (const result of ['stood', 'leaned', 'snapped'] as const) {
      const seen = withOutcomes(facts, stormOn(STORM_DAY, 28 * times, [5], result));
      stormLogLikelihood(seen, fenceStates(seen), BELIEF_POINTS).forEach((log, point) => {
        total[point] = total[point]! + Math.exp(log);
      });
    }
    // Each point on its own, up to the even levels at which the footing of one post is tried.
    for (const sum of total) expect(Math.abs(sum - 1)).toBeLessThan(0.06);
    expect(total.reduce((a, b) => a + b) / total.length).toBeCloseTo(1, 2);
  });

  it('count a post once, however its storms are split into rows', () => {
    const rows = withOutcomes(
      EXAMPLE_FENCE,
      stormOn(STORM_DAY, 30, [4, 5, 6], 'stood'),
      stormOn(STORM_DAY, 30, [3], 'leaned'),
    );
    const all = withOutcomes(
      EXAMPLE_FENCE,
      ...[4, 5, 6].map((post) => stormOn(STORM_DAY, 30, [post], 'stood')),
      rows.outcomes[1]!,
    );
    const [a, b] = [rows, all].map((facts) => stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS));
    for (const [point, log] of a!.entries()) expect(b![point]).toBeCloseTo(log, 9);
  });

  it('"all" means every post that no other row of the storm names', () => {
    const rest = withOutcomes(
      EXAMPLE_FENCE,
      stormOn(STORM_DAY, 30, 'all', 'stood'),
      stormOn(STORM_DAY, 30, [3], 'leaned'),
    );
    const named = withOutcomes(
      EXAMPLE_FENCE,
      stormOn(STORM_DAY, 30, [1, 2, 4, 5, 6, 7, 8, 9, 10, 11], 'stood'),
      stormOn(STORM_DAY, 30, [3], 'leaned'),
    );
    const [a, b] = [rest, named].map((facts) => stormLogLikelihood(facts, fenceStates(facts), BELIEF_POINTS));
    for (const [point, log] of a!.entries()) expect(b![point]).toBeCloseTo(log, 9);
  });
});
