import { beforeAll, describe, expect, it } from 'vitest';
import { type BeliefDimension, MEDIAN_POINT, singlePoint } from '../../src/forecast/belief-points.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { DEFAULT_SETTINGS } from '../../src/forecast/forecast-fence.ts';
import { normalCdf } from '../../src/forecast/normal-distribution.ts';
import { type Sensitivity, type SensitivityBelief, sensitivityOf } from '../../src/forecast/sensitivity.ts';
import type { SensitivityCase } from '../../src/forecast/sensitivity-case.ts';
import { isDateRange, sensitivityUnknowns } from '../../src/forecast/sensitivity-unknowns.ts';
import { shortTime } from '../../src/forecast/short-time.ts';
import { stateModel } from '../../src/forecast/state-model.ts';
import { dayNumber } from '../../src/units/calendar-day.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';
import { lastState, override, withFacts, works } from './made-up-events.ts';

const P90 = 1.2815515655446004;
const GUST_MPS = 105 * 0.44704;
const FROM = dayNumber('2027-03-01');
const caseOf = (facts: Partial<FenceFacts> = {}): SensitivityCase => ({
  site: WARM_SITE,
  state: lastState(facts),
  gustMps: GUST_MPS,
});
const of = (facts: Partial<FenceFacts>, belief?: SensitivityBelief): Sensitivity =>
  sensitivityOf(withFacts(facts), 2027, DEFAULT_SETTINGS, belief);
const dimensions = (facts: Partial<FenceFacts>): readonly BeliefDimension[] =>
  sensitivityUnknowns(caseOf(facts)).map(({ dimension }) => dimension);
const ground = (values: Partial<FenceFacts['ground']>) => ({ ground: { ...EXAMPLE_FENCE.ground, ...values } });
const timeAt = (scores: Partial<Record<BeliefDimension, number>>, facts: Partial<FenceFacts> = {}) =>
  shortTime(caseOf(facts), FROM, singlePoint(scores, normalCdf));
const ALWAYS: readonly BeliefDimension[] = ['pace', 'fibre strength', 'footing', 'permanent load'];
const RANGE = { earliest: '2010-01-01', latest: '2014-01-01' };

describe('the unknowns of a fence', () => {
  it('are always those that no record can give', () => {
    expect(dimensions({})).toEqual(ALWAYS);
    expect(sensitivityUnknowns(caseOf()).map(({ narrowedBy }) => narrowedBy)).toEqual([
      'rot readings',
      'storms only',
      'storms only',
      'storms only',
    ]);
  });

  it('are the install date where that of the build or of a post is a range', () => {
    expect(isDateRange(RANGE)).toBe(true);
    expect(isDateRange(EXAMPLE_FENCE.installed)).toBe(false);
    expect(dimensions({ installed: RANGE })).toEqual([...ALWAYS, 'install date']);
    expect(dimensions({ posts: [override(4, { installed: RANGE })] })).toEqual([...ALWAYS, 'install date']);
  });

  it('are the measures of the footing that are not recorded at some post', () => {
    expect(dimensions(ground({ embedmentM: null }))).toEqual([...ALWAYS, 'embedment']);
    const known = works('footing-reset', { embedmentM: 0.9, footing: 'concrete', footingDiameterM: 0.3 });
    expect(dimensions({ ...ground({ embedmentM: null }), works: [known] })).toEqual([...ALWAYS, 'embedment']);
    expect(dimensions(ground({ footingDiameterM: null }))).toEqual([...ALWAYS, 'footing diameter']);
    expect(dimensions(ground({ footing: null, footingDiameterM: null }))).toEqual([...ALWAYS, 'footing diameter']);
    const reset = { embedmentM: 0.9, footing: 'concrete', footingDiameterM: null };
    expect(dimensions({ works: [works('footing-reset', reset)] })).toEqual([...ALWAYS, 'footing diameter']);
  });

  it('are no diameter of a post set without concrete, however deep', () => {
    expect(dimensions(ground({ embedmentM: null, footing: 'soil', footingDiameterM: null }))).toEqual([
      ...ALWAYS,
      'embedment',
    ]);
  });
});

describe('how far the unknowns move a fence', () => {
  let plain: Sensitivity;
  let vague: Sensitivity;
  const VAGUE = { installed: RANGE, ...ground({ embedmentM: null, footing: null, footingDiameterM: null }) };
  beforeAll(() => {
    plain = of({});
    vague = of(VAGUE);
  });
  const barOf = ({ bars }: Sensitivity, input: string) => bars.find((bar) => bar.input === input)!;

  it('is from the 10th to the 90th percentile of each, all else at the median', () => {
    for (const [input, dimension] of [
      ['rot pace', 'pace'],
      ['fibre strength', 'fibre strength'],
      ['shelter and shape', 'permanent load'],
    ] as const) {
      const { low, high, kind, swingYears } = barOf(plain, input);
      expect(kind).toBe('unknown');
      expect(low).toMatchObject(timeAt({ [dimension]: -P90 }));
      expect(high).toMatchObject(timeAt({ [dimension]: P90 }));
      expect(swingYears).toBeCloseTo(Math.abs(low.yearsAhead! - high.yearsAhead!), 3);
    }
    expect(plain.baseline).toMatchObject(timeAt({}));
    expect(plain).toMatchObject({ fenceRef: 'EX-1', fromDay: '2027-03-01', seasonOneLabel: '2027' });
  });

  it('is told with what can narrow each; what is recorded has nothing to narrow', () => {
    for (const { kind, narrowedBy } of plain.bars) expect(narrowedBy === null).toBe(kind === 'recorded');
    expect(barOf(plain, 'rot pace').narrowedBy).toBe('rot readings');
    expect(barOf(vague, 'install date')).toMatchObject({ kind: 'unknown', narrowedBy: 'papers' });
    expect(barOf(plain, 'install date')).toMatchObject({ kind: 'recorded', narrowedBy: null });
  });

  it('names for a range of install dates the days at a tenth and at nine tenths of it', () => {
    // 1,461 days from 1 January 2010: 146.1 of them lead to 27 May, 1,314.9 to 8 August 2013.
    const { low, high } = barOf(vague, 'install date');
    expect([low.label.us, high.label.metric]).toEqual(['2010-05-27', '2013-08-08']);
    const onePost = of({ posts: [4, 5, 6, 7, 8].map((number) => override(number, { installed: RANGE })) });
    expect(onePost.bars.find(({ input, kind }) => input === 'install date' && kind === 'unknown')!.low.label.us).toBe(
      'early, 1 in 10',
    );
  });

  it('leaves a recorded input where it is on the side on which there is nothing further', () => {
    const asRecorded = { label: { us: 'as recorded', metric: 'as recorded' }, ...timeAt({}) };
    expect(barOf(plain, 'exposure category').low).toEqual(asRecorded);
    expect(barOf(plain, 'solidity').high).toEqual(asRecorded);
  });

  it('puts the largest first, and apart what moves it by less than a hundredth of a year', () => {
    const swings = plain.bars.map(({ swingYears }) => swingYears);
    expect(swings).toEqual([...swings].sort((a, b) => b - a));
    expect(Math.min(...swings)).toBeGreaterThanOrEqual(0.01);
    expect(plain.without).toEqual(['footing strength']);
    expect(vague.without).toEqual(['footing strength', 'embedment', 'footing diameter']);
  });

  it('tells of the lean speed what the short season does not show: footing strength first', () => {
    const model = stateModel(WARM_SITE, lastState({}), MEDIAN_POINT);
    const lean = model.leanMps[model.classes.classes.findIndex(({ isLinePost }) => isLinePost)]![0]!;
    // A spread of 0.4 in the force is one of 0.2 in the speed; the load's is 0.17.
    const swing = (spread: number): number => 2 * lean * Math.sinh((spread * P90) / 2);
    expect(plain.leanSwings).toMatchObject([
      { input: 'footing strength', narrowedBy: 'storms only' },
      { input: 'shelter and shape', narrowedBy: 'storms only' },
    ]);
    expect(plain.leanSwings[0]!.swingMps).toBeCloseTo(swing(0.4), 2);
    expect(plain.leanSwings[1]!.swingMps).toBeCloseTo(swing(0.17), 2);
    expect(vague.leanSwings.map(({ input }) => input).sort()).toEqual([
      'embedment',
      'footing diameter',
      'footing strength',
      'shelter and shape',
    ]);
    const swings = vague.leanSwings.map(({ swingMps }) => swingMps);
    expect(swings).toEqual([...swings].sort((a, b) => b - a));
  });

  it('runs within what the belief has left, and stands at its middle', () => {
    const learned = of({}, { scores: { pace: { p10: 0.2, p50: 0.5, p90: 0.8 } } });
    expect(learned.baseline).toMatchObject(timeAt({ pace: 0.5 }));
    expect(barOf(learned, 'rot pace').low).toMatchObject(timeAt({ pace: 0.2 }));
    expect(barOf(learned, 'rot pace').high).toMatchObject(timeAt({ pace: 0.8 }));
    expect(barOf(learned, 'fibre strength').high).toMatchObject(timeAt({ pace: 0.5, 'fibre strength': P90 }));
  });

  it('says of the fence as it stands since when or from when it is short, if ever', () => {
    expect(plain.baseline.label).toBe('short from 2032');
    const old = of({ installed: { earliest: '2005-03-01', latest: '2005-03-01' } });
    expect(old.baseline.label).toBe('short since 2022');
    const steel = (momentCapacityNm: number) =>
      of({ wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm } });
    expect(steel(500).baseline).toEqual({ yearsAhead: -12, fromNew: true, label: 'short from new' });
    expect(steel(9000).baseline).toEqual({
      yearsAhead: null,
      fromNew: false,
      label: 'not short within 60 years',
    });
    expect(steel(9000).bars).toEqual([]);
  });
});
