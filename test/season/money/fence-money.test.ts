import { describe, expect, it } from 'vitest';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { DEFAULT_SETTINGS } from '../../../src/forecast/forecast-fence.ts';
import { fenceOutlook } from '../../../src/season/fence-outlook.ts';
import { type FenceMoney, type FenceMoneyTerms, fenceMoney, partOf } from '../../../src/season/money/fence-money.ts';
import { fenceCourses } from '../../../src/season/money/plan-fence.ts';
import type { FenceConsequence } from '../../../src/season/snap-consequence.ts';
import { SHIPPED_CATALOGUE } from '../../../src/season/works-catalogue.ts';
import { EXAMPLE_FENCE } from '../../forecast/example-fence.ts';

const DAY = '2026-02-01';
const TERMS: FenceMoneyTerms = { firstYear: 2026, rule: 'cheapest', longestServiceYears: 25, inspectEveryYears: 5 };

const of = (
  change: Partial<FenceFacts> = {},
  { consequence = 'ordinary', ...terms }: Partial<FenceMoneyTerms> & { readonly consequence?: FenceConsequence } = {},
): FenceMoney =>
  fenceMoney(
    {
      outlook: fenceOutlook({ ...EXAMPLE_FENCE, ...change }, DEFAULT_SETTINGS, DAY, 2026),
      seasonYear: 2026,
      catalogue: SHIPPED_CATALOGUE,
      consequence,
    },
    { ...TERMS, ...terms },
  );
const builtOn = (day: string): Partial<FenceFacts> => ({ installed: { earliest: day, latest: day } });
const OLD = builtOn('2004-03-01');
const MIDDLE = of(builtOn('2012-03-01'));

describe('the money of a fence', () => {
  it('is the rebuild in a quiet week, in a bad one, and what is stated beside', () => {
    // 400 and 420 a post for 11 posts; 1.4 times that in a bad week.
    expect(MIDDLE).toMatchObject({ price: 502_000, priceAfterFailure: 702_800, consequence: 50_000 });
    expect(of({}, { consequence: 'pool-barrier' }).consequence).toBe(1_200_000);
    expect(MIDDLE.planned).toMatchObject({
      replacementCost: MIDDLE.price,
      replacementCostAfterFailure: MIDDLE.priceAfterFailure,
      consequence: MIDDLE.consequence,
    });
    expect(MIDDLE.ageYears).toBeCloseTo(13.9, 1);
  });

  it('keeps a young fence, and replaces an old one that breaks too easily', () => {
    const young = of(builtOn('2025-03-01'));
    const old = of(OLD, { longestServiceYears: 30 });
    expect(young.snapRisk).toBeLessThan(0.01);
    expect(young.ahead!.advice.kind).toBe('run to failure');
    expect(young.cheapestYear).toBe(2050);
    expect(young.cheapestAgeYears).toBeCloseTo(25, 1);
    expect(young.replacingNow).toBeGreaterThan(100_000);
    expect(old.snapRisk).toBeGreaterThan(0.1);
    expect(old.ahead!.advice).toEqual({ kind: 'replace now' });
    expect(old).toMatchObject({ cheapestYear: 2026, replacingNow: 0, isOutworn: false });
    expect(old.waitingOneYear).toBeGreaterThan(0);
    expect(old.planned.replacement).toEqual({ kind: 'in year', year: 2026 });
  });

  it('weighs the wait by the odds of its own snapping against the long run of its successor', () => {
    const old = of(OLD, { longestServiceYears: 30 });
    const risk = old.snapRisk!;
    const dearer = 2008 + 500;
    const expected = dearer * risk - old.successor!.costPerYear * (1 - risk / 2);
    expect(old.waitingOneYear! / 100).toBeCloseTo(expected, 2);
    // The successor is not credited with more than its longest service.
    expect(old.successor!.costPerYear).toBeGreaterThan(5020 / 30);
  });

  it('replaces a fence sooner where more hangs on it', () => {
    const pool = of(builtOn('2014-03-01'), { consequence: 'pool-barrier' });
    const ordinary = of(builtOn('2014-03-01'));
    expect(pool.cheapestYear).toBeLessThan(ordinary.cheapestYear!);
  });

  it('calls a fence outworn whose longest service is over', () => {
    const outworn = of(builtOn('2015-03-01'), { longestServiceYears: 11 });
    expect(outworn).toMatchObject({ isOutworn: true, cheapestYear: 2026 });
    expect(of(builtOn('2015-03-01'), { longestServiceYears: 12 })).toMatchObject({ isOutworn: false });
  });

  it('counts age and risk from the rebuild of a fence that was rebuilt', () => {
    const { wood } = EXAMPLE_FENCE;
    const again = of({
      ...OLD,
      works: [{ ref: 'W', day: '2024-03-01', kind: 'rebuild', posts: 'all', wood, postSpacingM: null }],
    });
    expect(again.built).toEqual({ earliest: '2024-03-01', latest: '2024-03-01' });
    expect(again.ageYears).toBeCloseTo(1.9, 1);
    expect(again.snapRisk).toBeLessThan(0.01);
  });

  it('replaces before it is short, by the chance of each season, where that is wanted', () => {
    const short = of(builtOn('2012-03-01'), { rule: 'before short' });
    expect(short.rule).toBe('before short');
    const { replacement } = short.planned;
    if (replacement.kind !== 'by chance') throw new Error('not by chance');
    expect(replacement.chanceByYear.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
    expect(replacement.chanceByYear.filter((chance) => chance > 0).length).toBeGreaterThan(3);
    const courses = fenceCourses(
      { ...short.planned, responsible: 'lot' },
      { firstYear: 2026, years: 30, inflation: 0 },
    );
    const snapped = (each: typeof courses): number =>
      each.filter((course) => course.snapped).reduce((sum, { probability }) => sum + probability, 0);
    const cheapest = fenceCourses(
      { ...MIDDLE.planned, responsible: 'lot' },
      { firstYear: 2026, years: 30, inflation: 0 },
    );
    expect(courses.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
    expect(snapped(courses)).toBeLessThan(snapped(cheapest));
    // The advice stays what is cheapest.
    expect(short.cheapestYear).toBe(MIDDLE.cheapestYear);
  });

  it('goes by the season in which it is short where no hazard curve is known', () => {
    const { wind } = EXAMPLE_FENCE.site;
    const blind = of({ site: { ...EXAMPLE_FENCE.site, wind: { ...wind, hurricane: true } } });
    expect(blind).toMatchObject({
      rule: 'before short',
      snapRisk: null,
      ahead: null,
      successor: null,
      cheapestYear: null,
    });
    expect(blind).toMatchObject({ waitingOneYear: null, replacingNow: null });
    expect(blind.planned.snapRiskByYear).toEqual([]);
    expect(blind.planned.replacement.kind).toBe('by chance');
    expect(blind.shortSeason).toMatch(/^20\d\d$/);
  });

  it('begins later where its season does', () => {
    const later = of(OLD, { firstYear: 2025, rule: 'before short' });
    expect(later.planned.snapRiskByYear[0]).toBe(0);
    expect(later.planned.snapRiskByYear).toHaveLength(31);
    const { replacement } = later.planned;
    expect(replacement.kind === 'by chance' && replacement.chanceByYear[0]).toBe(0);
    expect(of(OLD, { firstYear: 2025 }).planned.replacement).toEqual(of(OLD).planned.replacement);
  });

  it('plans inspections in turn from the last, and mends what was found once', () => {
    expect(of(builtOn('2024-03-01')).planned.repairs).toEqual([
      { what: 'inspection', firstYear: 2029, everyYears: 5, cost: 12_600 },
    ]);
    expect(of(OLD).planned.repairs).toMatchObject([{ what: 'inspection', firstYear: 2026 }]);
    expect(of(OLD, { inspectEveryYears: 0 }).planned.repairs).toEqual([]);
    const storm = {
      ref: 'O',
      storm: 'S',
      day: '2025-09-01',
      gustMps: 30,
      gustSpread: 0.1,
      posts: [4, 6],
      result: 'snapped',
    } as const;
    const broken = of({ ...builtOn('2024-03-01'), outcomes: [storm] });
    // Two posts swapped: 150 and 185 each.
    expect(broken.planned.repairs[0]).toEqual({
      what: 'mending what was found',
      firstYear: 2026,
      everyYears: null,
      cost: 52_000,
    });
  });

  it('is not reckoned for a fence that is not built yet', () => {
    expect(() => of(builtOn('2026-06-01'))).toThrow(RangeError);
  });
});

describe('the part of one owner', () => {
  it('is a share of every payment', () => {
    const half = partOf(MIDDLE.planned, 0.5);
    expect(half).toMatchObject({ replacementCost: 251_000, replacementCostAfterFailure: 351_400, consequence: 25_000 });
    expect(half.repairs.map(({ cost }) => cost)).toEqual(MIDDLE.planned.repairs.map(({ cost }) => cost / 2));
    expect(half.snapRiskByYear).toEqual(MIDDLE.planned.snapRiskByYear);
  });
});
