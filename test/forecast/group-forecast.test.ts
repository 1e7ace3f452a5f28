import { describe, expect, it } from 'vitest';
import { BELIEF_POINTS, MEDIAN_POINT } from '../../src/forecast/belief-points.ts';
import { codeSpeeds } from '../../src/forecast/code-speeds.ts';
import type { FenceFacts, SiteFacts } from '../../src/forecast/fence-facts.ts';
import type { GroupSpeeds, HazardCurve } from '../../src/forecast/fence-forecast.ts';
import { groupForecast, type ModelPair } from '../../src/forecast/group-forecast.ts';
import { postGroups } from '../../src/forecast/post-group.ts';
import { classValues, stateModel } from '../../src/forecast/state-model.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';
import { inspection, lastState, outcome, override, reading } from './made-up-events.ts';

const DAY = '2022-03-01';
const NO_CURVE: HazardCurve = { kind: 'none', reason: 'made up' };
interface Asked {
  readonly site?: Partial<SiteFacts>;
  readonly sound?: boolean;
  readonly hazard?: HazardCurve;
}
const modelsOf = (facts: Partial<FenceFacts>, site: Partial<SiteFacts> = {}): ModelPair => {
  const whole = { ...WARM_SITE, ...site };
  const state = lastState({ ...facts, site: whole });
  return { full: stateModel(whole, state, BELIEF_POINTS), median: stateModel(whole, state, MEDIAN_POINT) };
};
function speedsOf(facts: Partial<FenceFacts>, name: 'line' | 'ends' = 'line', asked: Asked = {}): GroupSpeeds {
  const { sound = false, hazard = NO_CURVE } = asked;
  const models = modelsOf(facts, asked.site);
  const values = { full: classValues(models.full, DAY, sound), median: classValues(models.median, DAY, sound) };
  return groupForecast(models, postGroups(models.full.classes.classes)[name]!, values, { day: DAY, sound, hazard });
}
/** Posts whose sides are so many times 3.5 in: their bending strength goes with the cube, their speed with the 1.5th power. */
const sided = (sides: Readonly<Record<number, number>>): Partial<FenceFacts> => ({
  posts: Object.entries(sides).map(([number, times]) =>
    override(Number(number), {
      wood: { ...PINE_4X4, section: { kind: 'rectangular', widthMm: 88.9 * times, depthMm: 88.9 * times } },
    }),
  ),
});
const NO_ROT = { wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 3000 } } as const;

describe('the posts that decide a group', () => {
  it('are of the line those within half a percent of the median speed', () => {
    // Posts 4 to 8, sound: speeds of 95.5, 99.7, 100, 100.3 and 104.5 % of the middle one's.
    const near = sided({ 4: 0.97, 5: 0.998, 7: 1.002, 8: 1.03 });
    expect(speedsOf(near, 'line', { sound: true }).decidingPosts).toEqual([5, 6, 7]);
    expect(speedsOf(sided({ 5: 1.001 }), 'line', { sound: true }).decidingPosts).toEqual([4, 5, 6, 7, 8]);
    const far = sided({ 4: 0.97, 5: 0.996, 7: 1.004, 8: 1.03 });
    expect(speedsOf(far, 'line', { sound: true }).decidingPosts).toEqual([6]);
  });

  it('are one of the middle two where none is near the median between them', () => {
    const run = { ...EXAMPLE_FENCE.run, runLengthM: EXAMPLE_FENCE.run.postSpacingM * 9 };
    const four = { ...sided({ 4: 0.9, 5: 0.97, 6: 1.04, 7: 1.1 }), run };
    const { decidingPosts } = speedsOf(four, 'line', { sound: true });
    expect(decidingPosts).toHaveLength(1);
    expect([5, 6]).toContain(decidingPosts[0]);
  });

  it('are of the ends the worst placed, its mirror image with it', () => {
    const models = modelsOf({});
    const worst = models.median.classes.classes
      .filter(({ isLinePost }) => !isLinePost)
      .reduce((a, b) => (b.momentPerV2 > a.momentPerV2 ? b : a));
    const ends = speedsOf({}, 'ends');
    expect(ends.decidingPosts).toEqual(worst.numbers);
    expect(ends.snapMps.p50).toBeLessThan(speedsOf({}).snapMps.p50);
    expect(ends.leanMps.p50).toBeLessThan(speedsOf({}).leanMps.p50);
    // A weak end post decides alone.
    expect(speedsOf(sided({ 11: 0.7 }), 'ends').decidingPosts).toEqual([11]);
  });
});

describe('what gives first', () => {
  it('is bending in a usual fence, and the rails where an inspection found them loose', () => {
    const loose = (state: number) => ({
      inspections: [
        inspection('2020-01-01', ...[4, 5, 6, 7, 8].map((post) => reading(post, { railConnection: state }))),
      ],
    });
    expect(speedsOf({}).snapState).toBe('bending');
    expect(speedsOf(loose(0.01)).snapState).toBe('rail connection');
    expect(speedsOf(loose(1)).snapState).toBe('bending');
    expect(speedsOf(loose(0.01), 'line', { sound: true }).snapState).toBe('bending');
    // What does not bend pulls its rails out first.
    expect(speedsOf({ ...loose(0.2), wood: { ...NO_ROT.wood, momentCapacityNm: 90_000 } }).snapState).toBe(
      'rail connection',
    );
  });

  it('is shear where the wind acts so low that bending comes later', () => {
    // 0.33 ft of arm: 3,806 N m over 0.10 m is 38 kN, shear 20 kN.
    const low = { run: { ...EXAMPLE_FENCE.run, heightM: 0.18 } };
    expect(speedsOf(low, 'line', { sound: true }).snapState).toBe('shear');
    expect(speedsOf({ ...low, outcomes: [outcome({ posts: [4, 5, 6, 7, 8] })] }).snapMps.p50).toBe(0);
  });

  it('is still bending with an arm of 0.22 m: 3,806 N m over it is 17 kN', () => {
    const lowish = { run: { ...EXAMPLE_FENCE.run, heightM: 0.4 } };
    expect(speedsOf(lowish, 'line', { sound: true }).snapState).toBe('bending');
  });

  it('of the footing is the collar where its wall is thin, else the soil', () => {
    const concrete = (footingDiameterM: number): Partial<FenceFacts> => ({
      ground: { embedmentM: 0.6, footing: 'concrete', footingDiameterM },
    });
    expect(speedsOf(concrete(0.1)).leanState).toBe('collar');
    expect(speedsOf(concrete(0.4)).leanState).toBe('footing');
    const cracked = {
      ...concrete(0.1),
      inspections: [inspection('2020-01-01', ...[4, 5, 6, 7, 8].map((post) => reading(post, { collarCracked: true })))],
    };
    expect(speedsOf(cracked).leanState).toBe('footing');
  });
});

describe('the speeds of a group', () => {
  it('are by the code those of its median post, of the ends those of the worst, to the millimetre a second', () => {
    const facts = sided({ 4: 0.8, 5: 0.9, 7: 1.1, 8: 1.2 });
    const { median } = modelsOf(facts);
    const of = (number: number) =>
      codeSpeeds(median, median.classes.classes.find(({ numbers }) => numbers.includes(number))!, DAY, false);
    const line = speedsOf(facts);
    expect(line.codeSnapMps).toBeCloseTo(of(6).snapMps, 3);
    expect(line.codeLeanMps).toBeCloseTo(of(6).leanMps, 3);
    const ends = [1, 2, 3, 9, 10, 11].map(of);
    expect(speedsOf(facts, 'ends').codeSnapMps).toBeCloseTo(Math.min(...ends.map((each) => each.snapMps)), 3);
    expect(speedsOf(facts, 'ends').codeLeanMps).toBeCloseTo(Math.min(...ends.map((each) => each.leanMps)), 3);
  });

  it('come once in exp((v - u)/a) years where the site has a curve', () => {
    const hazard: HazardCurve = { kind: 'gumbel', locationMps: 20, scaleMps: 8, explanation: 'made up' };
    const { onceInYears, snapMps } = speedsOf({}, 'line', { hazard });
    expect(onceInYears).toBeCloseTo(Math.exp((snapMps.p50 - 20) / 8), 0);
    expect(speedsOf({}).onceInYears).toBeNull();
  });
});
