import { describe, expect, it } from 'vitest';
import { BELIEF_POINTS, type BeliefPoints, MEDIAN_POINT } from '../../src/forecast/belief-points.ts';
import { fenceBelief, medianOf } from '../../src/forecast/evidence/fence-belief.ts';
import type { EndFacts, FenceFacts } from '../../src/forecast/fence-facts.ts';
import type { UnknownInput } from '../../src/forecast/fence-forecast.ts';
import { fenceStates, stateOn } from '../../src/forecast/fence-state.ts';
import { postGroups } from '../../src/forecast/post-group.ts';
import { classValues, stateModel } from '../../src/forecast/state-model.ts';
import { unknownInputs } from '../../src/forecast/unknown-inputs.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';
import { inspection, reading, withFacts, works } from './made-up-events.ts';

const DAY = '2027-03-01';
const P90 = 1.2815515655446004;
const PRIOR = { median: MEDIAN_POINT, points: BELIEF_POINTS };
const found = (facts: Partial<FenceFacts>, belief = PRIOR, day = DAY): readonly UnknownInput[] => {
  const whole = withFacts(facts);
  return unknownInputs(whole, stateOn(fenceStates(whole), day), day, belief);
};
/** After the readings and storms in the facts themselves. */
const foundAfter = (facts: Partial<FenceFacts>, day = DAY): readonly UnknownInput[] => {
  const whole = withFacts(facts);
  const { points } = fenceBelief(whole, fenceStates(whole));
  return found(facts, { median: medianOf(points), points }, day);
};
const swing = (unknowns: readonly UnknownInput[], input: UnknownInput['input']): number => {
  const one = unknowns.find((each) => each.input === input);
  if (!one) throw new Error(`${input} is not among ${unknowns.map((each) => each.input).join(', ')}`);
  return one.swingMps;
};
/** Snap and lean speed of the middle post of the line with every unknown at its median [m/s]. */
const middle = (facts: Partial<FenceFacts>) => {
  const whole = withFacts(facts);
  const model = stateModel(whole.site, stateOn(fenceStates(whole), DAY), MEDIAN_POINT);
  const line = postGroups(model.classes.classes).line!.members[0]!;
  return { snap: classValues(model, DAY).snapMps[line]![0]!, lean: model.leanMps[line]![0]! };
};
const ground = (values: Partial<FenceFacts['ground']>) => ({ ground: { ...EXAMPLE_FENCE.ground, ...values } });
const UNKNOWN_SPECIES = { wood: { ...PINE_4X4, species: 'unknown' } } as const;
const UNKNOWN_TREATED = { wood: { ...PINE_4X4, treatmentClass: 'unknown-treated' } } as const;
const ends = (a: EndFacts, b: EndFacts) => ({ run: { ...EXAMPLE_FENCE.run, ends: [a, b] as const } });

describe('what the register does not know', () => {
  it('is nothing where all is recorded', () => {
    expect(found({})).toEqual([]);
    expect(found(ground({ footing: 'soil', footingDiameterM: null }))).toEqual([]);
  });

  it('says what stands in for each', () => {
    const all = found({
      ...ground({ embedmentM: null, footing: null, footingDiameterM: null }),
      ...ends({ kind: 'free' }, { kind: 'unknown' }),
      wood: { ...UNKNOWN_TREATED.wood, species: 'unknown' },
      installed: { earliest: '2008-01-01', latest: '2013-12-31' },
    });
    expect(Object.fromEntries(all.map(({ input, standsIn, moves }) => [input, [moves, standsIn]]))).toEqual({
      'install date': ['snap', 'any day from 2008-01-01 to 2013-12-31'],
      'treatment class': ['snap', 'a pace between ground-contact and above-ground stock, with a wider spread'],
      species: ['snap', 'a low-middling bending strength with a wider spread'],
      embedment: ['lean', 'about 24 in (0.61 m)'],
      footing: ['lean', 'a concrete collar of about 9 in (0.23 m)'],
      'end kind': ['snap', 'a return at least 12 ft (3.7 m) long'],
    });
    const swings = all.map(({ swingMps }) => swingMps);
    expect(swings).toEqual([...swings].sort((a, b) => b - a));
  });

  it('moves the snap speed of unknown wood with the root of its strength, 10th to 90th percentile', () => {
    const spread = Math.hypot(0.15, 0.25);
    const { snap } = middle(UNKNOWN_SPECIES);
    expect(swing(found(UNKNOWN_SPECIES), 'species')).toBeCloseTo(2 * snap * Math.sinh((spread * P90) / 2), 2);
  });

  it('moves the lean speed with the root of the width, or of L^3/(e + L), of a footing in sand', () => {
    const sand = { site: { ...WARM_SITE, soilClass: 'loose-sand' } } as const;
    const wide = { ...sand, ...ground({ footingDiameterM: null }) };
    expect(swing(found(wide), 'footing')).toBeCloseTo(2 * middle(wide).lean * Math.sinh((0.12 * P90) / 2), 2);
    const deep = { ...sand, ...ground({ embedmentM: null }) };
    const root = (score: number): number => {
      const depth = 0.6096 * Math.exp(0.15 * score);
      return Math.sqrt(depth ** 3 / (1.00584 + depth));
    };
    expect(swing(found(deep), 'embedment')).toBeCloseTo((middle(deep).lean * (root(P90) - root(-P90))) / root(0), 2);
    expect(found(deep).map(({ input }) => input)).toEqual(['embedment']);
  });

  it('asks for a footing where its kind is missing, and for the diameter of concrete only', () => {
    const inputs = (values: Partial<FenceFacts['ground']>) => found(ground(values)).map(({ input }) => input);
    expect(inputs({ footing: null })).toEqual(['footing']);
    expect(inputs({ footing: 'concrete', footingDiameterM: null })).toEqual(['footing']);
    expect(inputs({ footing: 'gravel', footingDiameterM: null })).toEqual([]);
  });

  it('takes an end that is not recorded as returned, and weighs it against a free one, at either end', () => {
    const of = (a: EndFacts, b: EndFacts) => found(ends(a, b)).map(({ input, swingMps }) => [input, swingMps]);
    const [free, unknown, building] = [{ kind: 'free' }, { kind: 'unknown' }, { kind: 'building' }] as const;
    expect(of(free, free)).toEqual([]);
    // The other end is free already: it decides, and the one not recorded moves nothing.
    expect(of(free, unknown)).toEqual([['end kind', 0]]);
    const [first] = of(unknown, building);
    expect(first![1]).toBeGreaterThan(3);
    expect(of(building, unknown)).toEqual([first]);
    expect(of(unknown, unknown)).toEqual([first]);
  });

  it('is named in order of the alphabet where two weigh alike', () => {
    const steel = { wood: { ...UNKNOWN_TREATED.wood, species: 'unknown', momentCapacityNm: 3000 } } as const;
    expect(found(steel).map(({ input, swingMps }) => [input, swingMps])).toEqual([
      ['species', 0],
      ['treatment class', 0],
    ]);
  });

  it('is of a run too short for line posts judged by its ends', () => {
    const run = { ...EXAMPLE_FENCE.run, runLengthM: 2, postSpacingM: 2.4 };
    expect(swing(found({ run, ...UNKNOWN_SPECIES }), 'species')).toBeGreaterThan(1);
    expect(swing(found({ run: { ...run, ends: [{ kind: 'unknown' }, { kind: 'free' }] } }), 'end kind')).toBe(0);
  });
});

describe('what has been seen or done', () => {
  it('narrows what is not known to the scores that the belief has left', () => {
    const weights = BELIEF_POINTS.scores.embedment.map((score) => (Math.abs(score) < 0.5 ? 1 : 0));
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const points: BeliefPoints = { ...BELIEF_POINTS, weights: weights.map((weight) => weight / total) };
    const deep = ground({ embedmentM: null });
    const before = swing(found(deep), 'embedment');
    const after = swing(found(deep, { median: medianOf(points), points }), 'embedment');
    // Even between -0.5 and 0.5: the 10th percentile of the levels 0.309 to 0.691 is 0.347, a score of -0.393.
    expect(after / before).toBeGreaterThan(0.25);
    expect(after / before).toBeLessThan(0.36);
  });

  it('by readings of rot depth narrows the treatment class and the install date', () => {
    const readings = {
      inspections: [
        inspection(
          '2026-05-05',
          ...[4, 5, 6, 7, 8].map((post) => reading(post, { groundline: { kind: 'depth', depthMm: 6 } })),
        ),
      ],
    };
    expect(swing(foundAfter({ ...UNKNOWN_TREATED, ...readings }), 'treatment class')).toBeLessThan(
      0.7 * swing(foundAfter(UNKNOWN_TREATED), 'treatment class'),
    );
    expect(foundAfter(UNKNOWN_TREATED)).toEqual(found(UNKNOWN_TREATED));
    const installed = { earliest: '2000-01-01', latest: '2020-12-31' };
    expect(swing(foundAfter({ installed, ...readings }), 'install date')).toBeLessThan(
      swing(foundAfter({ installed }), 'install date'),
    );
  });

  it('by a treatment makes the treatment class weigh less: rot stands still', () => {
    const treat = works('groundline-treatment', { day: '2018-03-01', posts: 'all', yearsEffective: 8 });
    expect(swing(found({ ...UNKNOWN_TREATED, works: [treat] }), 'treatment class')).toBeLessThan(
      0.8 * swing(found(UNKNOWN_TREATED), 'treatment class'),
    );
  });
});
