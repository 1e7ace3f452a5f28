import { beforeAll, describe, expect, it } from 'vitest';
import { BELIEF_POINTS } from '../../src/forecast/belief-points.ts';
import type { FenceFacts, SiteFacts } from '../../src/forecast/fence-facts.ts';
import { DEFAULT_SETTINGS } from '../../src/forecast/forecast-fence.ts';
import {
  type Sensitivity,
  type SensitivityBar,
  type SensitivityBelief,
  sensitivityOf,
} from '../../src/forecast/sensitivity.ts';
import { metresFromFeet } from '../../src/units/length.ts';
import { mpsFromMph } from '../../src/units/speed.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';

const SEASON_ONE = 2027;
const of = (facts: FenceFacts, belief?: SensitivityBelief): Sensitivity =>
  sensitivityOf(facts, SEASON_ONE, DEFAULT_SETTINGS, belief);
let EXAMPLE: Sensitivity;
beforeAll(() => {
  EXAMPLE = of(EXAMPLE_FENCE);
});
const barOf = ({ bars }: Sensitivity, input: string, kind?: SensitivityBar['kind']): SensitivityBar => {
  const found = bars.find((bar) => bar.input === input && (kind === undefined || bar.kind === kind));
  if (!found) throw new Error(`no bar of ${input}: ${bars.map((bar) => bar.input).join(', ')}`);
  return found;
};
const onSite = (site: Partial<SiteFacts>): FenceFacts => ({ ...EXAMPLE_FENCE, site: { ...WARM_SITE, ...site } });
const ofWood = (wood: Partial<FenceFacts['wood']>): FenceFacts => ({
  ...EXAMPLE_FENCE,
  wood: { ...PINE_4X4, ...wood },
});
const ofRun = (run: Partial<FenceFacts['run']>): FenceFacts => ({
  ...EXAMPLE_FENCE,
  run: { ...EXAMPLE_FENCE.run, ...run },
});
const inClimate = (rainMmPerYear: number, meanTemperatureC: number): FenceFacts =>
  onSite({ climate: { kind: 'measured', rainMmPerYear, meanTemperatureC, dryMonths: 0 } });
const builtOn = (earliest: string, latest = earliest): FenceFacts => ({
  ...EXAMPLE_FENCE,
  installed: { earliest, latest },
});
/** The design gust as a local rule, which stands as it is. */
const againstMph = (mph: number): FenceFacts =>
  onSite({
    wind: {
      kind: 'local-rule',
      basis: 'ultimate',
      speedMps: mpsFromMph(mph),
      returnPeriodYears: null,
      second: null,
      hurricane: false,
    },
  });

describe('the sensitivity of the short season', () => {
  it('starts from the anchor: ground-contact stock in a Gulf-like climate is short of 105 mph in year 16.5', () => {
    // Built on 1 March 2015, season 1 opens on 1 March 2027.
    expect(EXAMPLE.fromDay).toBe('2027-03-01');
    expect(EXAMPLE.baseline.yearsAhead! + 12).toBeCloseTo(16.5, 1);
    expect(EXAMPLE.baseline).toMatchObject({ fromNew: false, label: 'short from 2032' });
  });

  it('puts the input first that moves it most, rot pace, and measures each from end to end', () => {
    const swings = EXAMPLE.bars.map((bar) => bar.swingYears);
    expect(swings).toEqual([...swings].sort((a, b) => b - a));
    expect(EXAMPLE.bars[0]!.input).toBe('rot pace');
    for (const { low, high, swingYears } of EXAMPLE.bars) {
      expect(swingYears).toBeCloseTo(Math.abs(high.yearsAhead! - low.yearsAhead!), 2);
    }
  });

  it.each([
    ['rot pace', 'sooner'],
    ['shelter and shape', 'sooner'],
    ['exposure category', 'sooner'],
    ['design gust', 'sooner'],
    ['annual rain', 'sooner'],
    ['mean temperature', 'sooner'],
    ['post spacing', 'sooner'],
    ['height', 'sooner'],
    ['solidity', 'sooner'],
    ['fibre strength', 'later'],
    ['section', 'later'],
    ['treatment class', 'later'],
    ['grade', 'later'],
    ['install date', 'later'],
  ] as const)('more %s: short %s', (input, when) => {
    const { low, high } = barOf(EXAMPLE, input);
    if (when === 'sooner') expect(high.yearsAhead!).toBeLessThan(low.yearsAhead!);
    else expect(high.yearsAhead!).toBeGreaterThan(low.yearsAhead!);
  });

  it.each([
    ['exposure category', 'high', onSite({ exposure: 'C' })],
    ['design gust', 'low', againstMph(105 * 0.95)],
    ['design gust', 'high', againstMph(105 * 1.05)],
    ['annual rain', 'low', inClimate(1280, 19.5)],
    ['annual rain', 'high', inClimate(1920, 19.5)],
    ['mean temperature', 'low', inClimate(1600, 18)],
    ['mean temperature', 'high', inClimate(1600, 21)],
    ['section', 'low', ofWood({ section: { kind: 'rectangular', widthMm: 85.9, depthMm: 85.9 } })],
    ['section', 'high', ofWood({ section: { kind: 'rectangular', widthMm: 91.9, depthMm: 91.9 } })],
    ['post spacing', 'low', ofRun({ postSpacingM: metresFromFeet(7), runLengthM: metresFromFeet(70) })],
    ['post spacing', 'high', ofRun({ postSpacingM: metresFromFeet(9), runLengthM: metresFromFeet(90) })],
    ['height', 'low', ofRun({ heightM: metresFromFeet(5.75) })],
    ['height', 'high', ofRun({ heightM: metresFromFeet(6.25) })],
    ['solidity', 'low', ofRun({ solidity: 0.9 })],
    ['treatment class', 'low', ofWood({ treatmentClass: 'above-ground-stock' })],
    ['treatment class', 'high', ofWood({ treatmentClass: 'heavy-duty' })],
    ['grade', 'low', ofWood({ grade: 'no-3' })],
    ['grade', 'high', ofWood({ grade: 'no-1' })],
    ['install date', 'low', builtOn('2014-03-01')],
    ['install date', 'high', builtOn('2016-02-29')],
  ] as const)('a fence recorded so goes short when the bar says: %s, %s', (input, side, facts) => {
    const end = barOf(EXAMPLE, input)[side];
    const { yearsAhead, fromNew } = of(facts).baseline;
    expect(end.fromNew).toBe(fromNew);
    expect(end.yearsAhead!).toBeCloseTo(yearsAhead!, 1);
  });

  it('leaves the recorded value in place where the input has no neighbour that way', () => {
    const { low } = barOf(EXAMPLE, 'exposure category');
    expect(low.label.us).toBe('as recorded');
    expect(low.yearsAhead).toBe(EXAMPLE.baseline.yearsAhead);
    expect(barOf(EXAMPLE, 'solidity').high.label.us).toBe('as recorded');
    expect(of(ofWood({ treatmentClass: 'round-pine-creosote' })).bars.map(({ input }) => input)).not.toContain(
      'treatment class',
    );
  });

  it('names what does not move it: the footing, of which it says nothing where all of it is recorded', () => {
    expect(EXAMPLE.without).toEqual(['footing strength']);
    const unknown = of({ ...EXAMPLE_FENCE, ground: { embedmentM: null, footing: null, footingDiameterM: null } });
    expect([...unknown.without].sort()).toEqual(['embedment', 'footing diameter', 'footing strength']);
  });

  it('finds that nothing of the wood moves it where steel posts carry the fence', () => {
    const steel = of(ofWood({ treatmentClass: 'does-not-rot', momentCapacityNm: 2000 }));
    expect(steel.baseline.yearsAhead === null || steel.baseline.fromNew).toBe(true);
    for (const input of ['rot pace', 'fibre strength', 'grade', 'section']) expect(steel.without).toContain(input);
  });

  it('counts a fence that was never strong enough from its build, and one that outlasts sixty years not at all', () => {
    const exposed = of(onSite({ exposure: 'D' }));
    expect(exposed.baseline).toEqual({ yearsAhead: -12, fromNew: true, label: 'short from new' });
    const lasting = of({
      ...ofWood({ treatmentClass: 'extreme-duty' }),
      site: { ...WARM_SITE, climate: { kind: 'decay-zone', zone: 1 } },
    });
    expect(lasting.baseline).toEqual({ yearsAhead: null, fromNew: false, label: 'not short within 60 years' });
    const pace = barOf(lasting, 'rot pace');
    expect(pace.low.yearsAhead).toBeNull();
    expect(pace.swingYears).toBeCloseTo(60 - pace.high.yearsAhead!, 2);
  });

  it('gives a time before season 1 to a fence that is short already', () => {
    const old = of(builtOn('2005-03-01'));
    expect(old.baseline.yearsAhead! + 22).toBeCloseTo(16.5, 1);
    expect(old.baseline.label).toBe('short since 2022');
  });

  it('runs a range of install dates through its own days, and then doubts no recorded date', () => {
    const ranged = of(builtOn('2010-01-01', '2019-12-31'));
    const bar = barOf(ranged, 'install date');
    expect(bar.kind).toBe('unknown');
    expect(bar.low.label.us).toMatch(/^201[01]-/);
    expect(bar.high.label.us).toMatch(/^201[89]-/);
    expect(bar.swingYears).toBeCloseTo(8, 1);
    expect(ranged.bars.filter(({ input }) => input === 'install date')).toHaveLength(1);
  });

  it('steps decay zones and durability classes by one', () => {
    const zoned = of({
      ...ofWood({ treatmentClass: 'heartwood-class-2' }),
      site: { ...WARM_SITE, climate: { kind: 'decay-zone', zone: 3 } },
    });
    expect(barOf(zoned, 'decay zone')).toMatchObject({
      low: { label: { us: 'zone 2' } },
      high: { label: { us: 'zone 4' } },
    });
    expect(barOf(zoned, 'treatment class')).toMatchObject({
      low: { label: { us: 'class 3' } },
      high: { label: { us: 'class 1' } },
    });
    expect(zoned.bars.map(({ input }) => input)).not.toContain('annual rain');
  });

  it('writes values in either units', () => {
    expect(barOf(EXAMPLE, 'height').low.label).toEqual({ us: '5.75 ft', metric: '1.75 m' });
    expect(barOf(EXAMPLE, 'section').low.label).toEqual({ us: '3.38 × 3.38 in', metric: '86 × 86 mm' });
    expect(barOf(EXAMPLE, 'mean temperature').low.label).toEqual({ us: '64.4 °F', metric: '18 °C' });
  });

  it('leaves the date of a swapped post alone where the install date is doubted', () => {
    // Every line post but one was swapped in 2025: the median post is a swapped one.
    const swapped: FenceFacts = {
      ...EXAMPLE_FENCE,
      works: [{ ref: 'W1', day: '2025-03-01', posts: [3, 4, 5, 6, 7, 8, 9], kind: 'post-swap', wood: PINE_4X4 }],
    };
    expect(of(swapped).without).toContain('install date');
  });

  it('starts anew with a rebuild', () => {
    const rebuilt: FenceFacts = {
      ...EXAMPLE_FENCE,
      works: [{ ref: 'W1', day: '2025-03-01', posts: 'all', kind: 'rebuild', wood: PINE_4X4, postSpacingM: null }],
    };
    expect(of(rebuilt).baseline.yearsAhead! - EXAMPLE.baseline.yearsAhead!).toBeCloseTo(10, 1);
  });
});

describe('what evidence has made of the unknowns', () => {
  it('moves the fence as it stands and shortens the bar', () => {
    const learned = of(EXAMPLE_FENCE, { scores: { pace: { p10: 0.2, p50: 0.5, p90: 0.8 } } });
    expect(learned.baseline.yearsAhead!).toBeLessThan(EXAMPLE.baseline.yearsAhead!);
    expect(barOf(learned, 'rot pace').swingYears).toBeLessThan(barOf(EXAMPLE, 'rot pace').swingYears / 2);
    expect(barOf(learned, 'rot pace').low.yearsAhead!).toBeGreaterThan(learned.baseline.yearsAhead!);
  });

  it('changes nothing where it is the prior', () => {
    const score = 1.2815515655446004;
    expect(of(EXAMPLE_FENCE, { scores: { pace: { p10: -score, p50: 0, p90: score } }, base: BELIEF_POINTS })).toEqual(
      EXAMPLE,
    );
  });
});
