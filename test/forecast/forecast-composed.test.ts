import { beforeAll, describe, expect, it } from 'vitest';
import { BELIEF_POINTS, MEDIAN_POINT } from '../../src/forecast/belief-points.ts';
import { codeSpeeds } from '../../src/forecast/code-speeds.ts';
import type { FenceFacts, SiteFacts } from '../../src/forecast/fence-facts.ts';
import { type FenceForecast, seasonOne } from '../../src/forecast/fence-forecast.ts';
import { fenceStates, stateOn } from '../../src/forecast/fence-state.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import { type GumbelCurve, hazardCurve } from '../../src/forecast/hazard-curve.ts';
import { postGroups } from '../../src/forecast/post-group.ts';
import { postsShort, shareBelow, survivalLedger } from '../../src/forecast/risk.ts';
import { seasonDays } from '../../src/forecast/season-days.ts';
import { classValues, stateModel } from '../../src/forecast/state-model.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';
import { inspection, outcome, reading, withFacts, works } from './made-up-events.ts';

const forecast = (facts: Partial<FenceFacts> = {}): FenceForecast =>
  forecastFence(withFacts(facts), 2027, DEFAULT_SETTINGS);
const onSite = (site: Partial<SiteFacts>): Partial<FenceFacts> => ({ site: { ...WARM_SITE, ...site } });
const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));
const broken = (post: number) => reading(post, { groundline: { kind: 'broken' } });

describe('a forecast put together', () => {
  let plain: FenceForecast;
  beforeAll(() => {
    plain = forecast();
  });

  it('gives by default the 300-year gust and looks two seasons ahead', () => {
    expect(DEFAULT_SETTINGS).toEqual({ standingReturnPeriodYears: 300, lookAheadSeasons: 2 });
    // 105 mph
    expect(plain.designGust).toMatchObject({ gustMps: 46.939, returnPeriodYears: 300 });
    expect(plain).toMatchObject({ fenceRef: 'EX-1', postCount: 11, linePosts: [4, 5, 6, 7, 8] });
    expect(plain.endPosts).toEqual([1, 2, 3, 9, 10, 11]);
    expect(plain.unknowns).toEqual([]);
    expect(plain.remarks).toEqual([]);
    expect(plain.evidence).toBeNull();
  });

  it('rounds the curve of the site to a tenth of a millimetre a second', () => {
    const curve = hazardCurve(WARM_SITE.wind) as GumbelCurve;
    expect(plain.hazard).toEqual({
      kind: 'gumbel',
      locationMps: rounded(curve.locationMps, 4),
      scaleMps: rounded(curve.scaleMps, 4),
      explanation: curve.explanation,
    });
  });

  it('ages from the installation by calendar days', () => {
    expect(plain.seasons.map(({ ageYears }) => ageYears).slice(0, 3)).toEqual([0, 1, 2]);
    expect(seasonOne(plain).ageYears).toBe(12);
  });

  it('has of each season ahead the risk that its own state makes', () => {
    const model = stateModel(WARM_SITE, stateOn(fenceStates(EXAMPLE_FENCE), '2027-03-01'), BELIEF_POINTS);
    const gust = 105 * 0.44704;
    const ledger = survivalLedger(hazardCurve(WARM_SITE.wind) as GumbelCurve, 0.8, { count: 128, weights: null });
    const line = postGroups(model.classes.classes).line!.members[0]!;
    for (const day of ['2027-03-01', '2028-03-01']) {
      const snap = classValues(model, day).snapMps[line]!;
      const season = plain.seasons.find((each) => each.day === day)!;
      const { expected, any } = postsShort(model, day, gust);
      expect(season.pShort).toBeCloseTo(shareBelow(snap, gust), 4);
      expect(season.expectedPostsShort).toBeCloseTo(expected, 3);
      expect(season.pAnyShort).toBeCloseTo(any, 4);
      expect(season.pSnap).toBeCloseTo(ledger.addSeason(snap), 5);
    }
  });

  it('has the depth and the strength of the posts it is judged by', () => {
    const model = stateModel(WARM_SITE, fenceStates(EXAMPLE_FENCE)[0]!.state, MEDIAN_POINT);
    const values = classValues(model, '2027-03-01');
    const line = postGroups(model.classes.classes).line!.members[0]!;
    const { depthMm, strengthLeft } = seasonOne(plain);
    expect(depthMm.p50).toBeCloseTo(values.depthMm[line]![0]!, 1);
    expect(strengthLeft.p50).toBeCloseTo(values.strengthLeft[line]![0]!, 1);
    // What is left of a square post is the cube of what is left of its side.
    expect(values.strengthLeft[line]![0]).toBeCloseTo(((88.9 - 2 * values.depthMm[line]![0]!) / 88.9) ** 3, 9);
    expect(plain.seasons[0]).toMatchObject({ depthMm: { p10: 0, p50: 0, p90: 0 }, strengthLeft: { p10: 1, p90: 1 } });
  });

  it('compares the code speeds with the wind as entered, as built and today', () => {
    const [then, today] = plain.codeVerdicts;
    const model = stateModel(WARM_SITE, fenceStates(EXAMPLE_FENCE)[0]!.state, MEDIAN_POINT);
    const line = model.classes.classes.find(({ isLinePost }) => isLinePost)!;
    const asBuilt = codeSpeeds(model, line, '2015-03-01', true);
    const now = codeSpeeds(model, line, '2027-03-01', false);
    expect(then).toEqual({
      when: 'new',
      enteredGustMps: 46.939,
      snapMps: rounded(asBuilt.snapMps, 3),
      leanMps: rounded(asBuilt.leanMps, 3),
      postMeets: asBuilt.snapMps >= 46.939,
      footingMeets: asBuilt.leanMps >= 46.939,
      postMeetsMinimumPressure: asBuilt.postMeetsMinimum,
      footingMeetsMinimumPressure: asBuilt.footingMeetsMinimum,
    });
    expect(today).toMatchObject({ when: 'today', snapMps: rounded(now.snapMps, 3), leanMps: then!.leanMps });
    expect(today!.snapMps).toBeLessThan(then!.snapMps);
    const strong = forecast({ wood: { ...PINE_4X4, section: { kind: 'rectangular', widthMm: 190, depthMm: 190 } } });
    expect(strong.codeVerdicts.map(({ postMeets }) => postMeets)).toEqual([true, true]);
    const deep = forecast({ ground: { embedmentM: 1.8, footing: 'concrete', footingDiameterM: 0.4 } });
    expect(deep.codeVerdicts.map(({ footingMeets }) => footingMeets)).toEqual([true, true]);
    expect(plain.codeVerdicts.map(({ footingMeets }) => footingMeets)).toEqual([false, false]);
  });
});

describe('the remarks of a forecast', () => {
  const remarks = (facts: Partial<FenceFacts>): string => forecast(facts).remarks.join(' ');

  it('name what stands in for species, soil and wind', () => {
    expect(remarks({ wood: { ...PINE_4X4, species: 'black-locust' } })).toMatch(/list no design values/);
    const steel = { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 4000 } as const;
    expect(remarks({ wood: { ...steel, species: 'black-locust' } })).toBe('');
    expect(remarks(onSite({ soilSaturated: true }))).toBe(
      'The soil counts as saturated: sand holds a footing with about half its dry strength.',
    );
    expect(remarks(onSite({ soilClass: 'dense-sand' }))).toMatch(/^The code check takes the bearing of gravel/);
    expect(remarks(onSite({ soilClass: 'loose-sand' }))).toMatch(/^Codes give no presumptive bearing/);
    expect(remarks(onSite({ wind: { ...WARM_SITE.wind, hurricane: true } }))).toMatch(/^No risk is given: /);
    expect(remarks({ run: { ...EXAMPLE_FENCE.run, runLengthM: 7 } })).toMatch(/^The run is too short to have line/);
  });
});

describe('a season that is running', () => {
  const swap = works('post-swap', { day: '2027-06-10', posts: 'all', wood: PINE_4X4 });
  const found = inspection('2027-05-20', broken(5));
  const storm = outcome({ day: '2027-07-01', posts: [6, 7] });
  const dayOf = (facts: Partial<FenceFacts>): string =>
    seasonDays(withFacts(facts), 2027).find(({ season }) => season === 1)!.day;

  it('is forecast for the day of the last thing done, found or blown down in it', () => {
    expect(dayOf({ inspections: [found] })).toBe('2027-05-20');
    expect(dayOf({ works: [swap] })).toBe('2027-06-10');
    expect(dayOf({ outcomes: [storm] })).toBe('2027-07-01');
    expect(dayOf({ outcomes: [storm], inspections: [found], works: [swap] })).toBe('2027-07-01');
    expect(dayOf({ inspections: [inspection('2026-05-20', broken(5))] })).toBe('2027-03-01');
    expect(dayOf({ inspections: [inspection('2028-05-20', broken(5))] })).toBe('2027-03-01');
  });

  it('shows what was found in it at once, and the seasons before stay as they were', () => {
    const result = forecast({ inspections: [found] });
    expect(result.found).toMatchObject({ broken: [5], leaning: [], closedOff: [] });
    expect(result.remarks.join(' ')).toMatch(/[Pp]ost 5/);
    expect(seasonOne(result)).toMatchObject({ label: '2027', ageYears: 12.22 });
    expect(seasonOne(result).expectedPostsShort!).toBeGreaterThan(1);
    expect(result.seasons.find(({ season }) => season === 2)!.day).toBe('2028-03-01');
    expect(forecast({}).found).toEqual({ broken: [], leaning: [], closedOff: [], crackedCollars: [], hollow: [] });
  });

  it('shows what two storms of one day did, each to its own posts', () => {
    const squall = outcome({ ref: 'O-2', storm: 'squall', day: '2027-07-01', posts: [3], result: 'leaned' });
    const result = forecast({ outcomes: [storm, squall] });
    expect(result.found).toMatchObject({ broken: [6, 7], leaning: [3] });
    expect(seasonOne(result).day).toBe('2027-07-01');
  });

  it('judges what works in it have mended as mended', () => {
    const old = { installed: { earliest: '1995-03-01', latest: '1995-03-01' } };
    expect(forecast(old).standing).toBe('short');
    const mended = forecast({ ...old, works: [swap] });
    expect(mended.standing).toBe('clear');
    expect(mended.turnover).toBeNull();
    expect(seasonOne(mended).depthMm.p90).toBe(0);
  });
});

describe('a fence that is old', () => {
  let old: FenceForecast;
  beforeAll(() => {
    old = forecast({ installed: { earliest: '1985-03-01', latest: '1987-03-01' } });
  });

  it('has been short since a season long before season 1, counted from its build on', () => {
    const gust = 105 * 0.44704;
    const short = old.seasons.filter(({ line }) => line!.snapMps.p50 < gust);
    expect(old.shortFrom).toBe(short[0]!.label);
    expect(Number(old.shortFrom)).toBeLessThan(2027);
    expect(old.shortSeason).toBe('2027');
    expect(old.marksCrossed.length).toBeGreaterThan(0);
  });

  it('was sound when new, at every belief point, though its install date is a range', () => {
    expect(old.seasons[0]).toMatchObject({ depthMm: { p10: 0, p90: 0 }, strengthLeft: { p10: 1, p50: 1 } });
  });

  it('met the least pressure of the code when new and does no more', () => {
    // 9.6 psf on 8 by 6 ft are 2,049 N at 1.006 m, 2,061 N m: too much for a 4x4 even when new, not for a 6x6.
    const meets = (verdicts: FenceForecast['codeVerdicts']) =>
      verdicts.map(({ postMeetsMinimumPressure }) => postMeetsMinimumPressure);
    expect(meets(old.codeVerdicts)).toEqual([false, false]);
    const section = { kind: 'rectangular', widthMm: 139.7, depthMm: 139.7 } as const;
    const installed = { earliest: '1985-03-01', latest: '1985-03-01' };
    expect(meets(forecast({ installed, wood: { ...PINE_4X4, section } }).codeVerdicts)).toEqual([true, false]);
  });
});

describe('a fence rebuilt', () => {
  it('in the running season is judged by the new build from that very day, and the old one leaves no mark', () => {
    const rebuild = works('rebuild', { day: '2027-05-05', posts: 'all', wood: PINE_4X4, postSpacingM: null });
    const result = forecast({ installed: { earliest: '1985-03-01', latest: '1985-03-01' }, works: [rebuild] });
    const young = forecast({ installed: { earliest: '2027-05-05', latest: '2027-05-05' } });
    expect(seasonOne(result).day).toBe('2027-05-05');
    for (const word of ['standing', 'shortSeason', 'shortFrom', 'turnover', 'marksCrossed', 'marksAhead'] as const) {
      expect(result[word]).toEqual(young[word]);
    }
  });

  it('is judged, and checked as new, from its rebuild on', () => {
    const rebuild = works('rebuild', {
      day: '2020-05-05',
      posts: 'all',
      wood: { ...PINE_4X4, grade: 'no-1' },
      postSpacingM: null,
    });
    const old = { installed: { earliest: '1990-03-01', latest: '1990-03-01' } };
    const result = forecast({ ...old, works: [rebuild] });
    const young = forecast({
      wood: { ...PINE_4X4, grade: 'no-1' },
      installed: { earliest: '2020-05-05', latest: '2020-05-05' },
    });
    expect(result.codeVerdicts).toEqual(young.codeVerdicts);
    expect(result.shortFrom).toBe(young.shortFrom);
    expect(result.turnover).toBe(young.turnover);
    expect(result.marksCrossed).toEqual(young.marksCrossed);
    expect(seasonOne(result).line).toEqual(seasonOne(young).line);
    expect(seasonOne(result).ageYears).toBe(37);
  });
});
