import { describe, expect, it } from 'vitest';
import { BELIEF_POINTS } from '../../src/forecast/belief-points.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { judgedGroup, seasonOne } from '../../src/forecast/fence-forecast.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import type { PointRisks } from '../../src/forecast/point-risks.ts';
import { costOfLife, fenceLife, lifeGust } from '../../src/season/fence-life.ts';
import { fenceOutlook, risksAfter, standingAhead } from '../../src/season/fence-outlook.ts';
import { type WhatIf, type WhatIfRow, whatIf } from '../../src/season/what-if.ts';
import { SHIPPED_CATALOGUE } from '../../src/season/works-catalogue.ts';
import { halfMillimetreFence, inspectionOn } from '../forecast/evidence/read-fence.ts';
import { EXAMPLE_FENCE } from '../forecast/example-fence.ts';

const DAY = '2026-02-01';
const READ: FenceFacts = {
  ...halfMillimetreFence(18),
  inspections: [
    inspectionOn('2025-04-20', [null, null, null, { kind: 'depth', depthMm: 9 }, { kind: 'depth', depthMm: 7 }]),
  ],
};
const whatIfOf = (facts: FenceFacts, day = DAY): WhatIf =>
  whatIf(fenceOutlook(facts, DEFAULT_SETTINGS, day, 2026), SHIPPED_CATALOGUE);
const rowOf = ({ rows }: WhatIf, key: string): WhatIfRow => {
  const row = rows.find(({ option }) => option.key === key);
  if (!row) throw new Error(`no ${key} among ${rows.map(({ option }) => option.key).join('; ')}`);
  return row;
};
/** Risks whose middle snap speed runs through the given values, a season a year. */
const risksOf = (builtMps: number, gustMps: number, speeds: readonly number[]): PointRisks => {
  const at = (speed: number) => new Float64Array(128).fill(speed);
  return {
    points: BELIEF_POINTS,
    designGustMps: gustMps,
    builtMps: at(builtMps),
    seasons: speeds.map((speed, index) => ({
      label: `${2026 + index}`,
      season: index + 1,
      day: `${2026 + index}-01-01`,
      snapMps: at(speed),
    })),
  } as unknown as PointRisks;
};

describe('the life of a fence', () => {
  it('ends in its short season, between the openings by straight lines', () => {
    const risks = risksOf(50, 40, [46, 44, 41, 37, 30]);
    expect(lifeGust(risks)).toEqual({ gustMps: 40, means: 'short' });
    const { years, atLeast } = fenceLife(risks, 40);
    expect(years).toBeCloseTo(2.25, 2);
    expect(atLeast).toBe(false);
  });

  it('ends at two thirds of the strength where it was short from new', () => {
    const { gustMps, means } = lifeGust(risksOf(36, 40, [34, 33]));
    expect(means).toBe('two thirds');
    expect((gustMps / 36) ** 2).toBeCloseTo(2 / 3, 12);
  });

  it('is over where it is under that now, and at least as long as is forecast where it never is', () => {
    expect(fenceLife(risksOf(50, 40, [39, 44]), 40)).toEqual({ years: 0, atLeast: false });
    const long = fenceLife(risksOf(50, 40, [46, 45, 44]), 40);
    expect(long.atLeast).toBe(true);
    expect(long.years).toBeCloseTo(2, 2);
  });

  it('costs the price over the years gained, and nothing is said where none are', () => {
    const [two, six] = [
      { years: 2, atLeast: false },
      { years: 6, atLeast: false },
    ];
    expect(costOfLife(two, six, 1000)).toEqual({ yearsGained: 4, costPerYear: 250 });
    expect(costOfLife(two, two, 1000)).toBeNull();
    expect(costOfLife(six, two, 1000)).toBeNull();
    expect(costOfLife({ years: 29, atLeast: true }, { years: 29, atLeast: true }, 1000)).toBeNull();
  });
});

describe('what if', () => {
  const result = whatIfOf(EXAMPLE_FENCE);

  it.each([
    ['the example fence', EXAMPLE_FENCE],
    ['a fence that was read', READ],
  ])('shows of %s, done nothing, what its forecast shows', (_, facts) => {
    const forecast = forecastFence(facts, 2026, DEFAULT_SETTINGS);
    const { nothing } = whatIfOf(facts);
    const now = seasonOne(forecast);
    expect(nothing.pSnap).toBe(now.pSnap);
    expect(nothing.onceInYears).toBe(judgedGroup(now).onceInYears);
    expect(nothing.shortSeason).toBe(forecast.shortSeason);
    expect([nothing.standing, nothing.endsStanding]).toEqual([forecast.standing, forecast.endsStanding]);
    expect(nothing.expectedPostsShort).toBe(now.expectedPostsShort);
    expect(nothing.seasons.map(({ snapMps }) => snapMps)).toEqual(
      forecast.seasons.filter(({ season }) => (season ?? 0) >= 1).map((season) => judgedGroup(season).snapMps.p50),
    );
  });

  it('shows of each works what the forecast shows once they are in the register', () => {
    for (const key of ['groundline-treatment', 'post-swap + footing-reset', 'added-posts', 'rebuild + liner']) {
      const row = rowOf(result, key);
      const forecast = forecastFence({ ...EXAMPLE_FENCE, works: row.option.works }, 2026, DEFAULT_SETTINGS);
      expect(row.shortSeason, key).toBe(forecast.shortSeason);
      expect(row.pSnap, key).toBe(seasonOne(forecast).pSnap);
      expect(row.seasons[0]!.leanMps, key).toBe(judgedGroup(seasonOne(forecast)).leanMps.p50);
      expect(row.seasons[29]!.snapMps, key).toBe(judgedGroup(forecast.seasons.at(-1)!).snapMps.p50);
    }
  });

  it('gives a treatment its five years, and no works at the ends a year of the line', () => {
    const treatment = rowOf(result, 'groundline-treatment');
    expect(treatment.yearsGained).toBeCloseTo(5, 1);
    expect(treatment.costPerYear).toBeCloseTo(treatment.cost.price / treatment.yearsGained!, 1);
    const ends = result.rows.find(
      ({ option }) =>
        option.parts.length === 1 && option.parts[0]!.at === 'ends' && option.parts[0]!.kind === 'post-swap',
    )!;
    expect(ends.costPerYear).toBeNull();
    expect(ends.expectedPostsShort).toBeLessThan(result.nothing.expectedPostsShort);
    expect(ends.seasons[0]!.endsSnapMps!).toBeGreaterThan(result.nothing.seasons[0]!.endsSnapMps!);
  });

  it('lifts the lean speed by new footings and the snap speed by new posts, each alone and both together', () => {
    const { nothing } = result;
    const [swap, reset, both] = ['post-swap', 'footing-reset', 'post-swap + footing-reset'].map(
      (key) => rowOf(result, key).seasons[0]!,
    );
    const now = nothing.seasons[0]!;
    expect(swap!.snapMps).toBeGreaterThan(now.snapMps);
    expect(swap!.leanMps).toBe(now.leanMps);
    expect(reset!.leanMps).toBeGreaterThan(now.leanMps);
    expect(reset!.snapMps).toBe(now.snapMps);
    expect([both!.snapMps, both!.leanMps]).toEqual([swap!.snapMps, reset!.leanMps]);
  });

  it('halves the rot of new posts by a liner', () => {
    const [bare, lined] = [rowOf(result, 'post-swap'), rowOf(result, 'post-swap + liner')];
    expect(lined.seasons[0]!.snapMps).toBe(bare.seasons[0]!.snapMps);
    expect(lined.seasons[29]!.snapMps).toBeGreaterThan(bare.seasons[29]!.snapMps);
  });

  it('says nothing of risk where the site has no curve', () => {
    const { site } = EXAMPLE_FENCE;
    const { nothing, rows } = whatIfOf({
      ...EXAMPLE_FENCE,
      site: { ...site, wind: { ...site.wind, hurricane: true } },
    });
    for (const { pSnap, onceInYears } of [nothing, ...rows]) expect([pSnap, onceInYears]).toEqual([null, null]);
  });

  it('shows works done within a running season at once, against the same day without them', () => {
    const running = whatIfOf(EXAMPLE_FENCE, '2026-08-15');
    expect(running.nothing.seasons[0]!.day).toBe('2026-08-15');
    expect(rowOf(running, 'rebuild').seasons[0]!.snapMps).toBeGreaterThan(running.nothing.seasons[0]!.snapMps);
    expect(rowOf(running, 'groundline-treatment').seasons[0]!.snapMps).toBe(running.nothing.seasons[0]!.snapMps);
  });

  it('comes out the same twice', () => {
    expect(JSON.stringify(whatIfOf(READ))).toBe(JSON.stringify(whatIfOf(READ)));
  });
});

describe('the outlook', () => {
  it('refuses a day before something that is recorded, and says which day would do', () => {
    expect(() => fenceOutlook(READ, DEFAULT_SETTINGS, '2025-04-19', 2025)).toThrow(
      /recorded on 2025-04-20, after 2025-04-19; look ahead from 2025-04-20/,
    );
  });

  it('leaves the standing as it is where nothing is done', () => {
    const outlook = fenceOutlook(READ, DEFAULT_SETTINGS, DAY, 2026);
    const before = standingAhead(outlook.risks, DEFAULT_SETTINGS);
    expect(standingAhead(risksAfter(outlook, []), DEFAULT_SETTINGS, before)).toEqual(before);
  });

  it('lets a standing improve only past three per cent', () => {
    const before = { standing: 'short', endsStanding: null } as const;
    const standingAt = (speed: number) =>
      standingAhead({ ...risksOf(50, 40, [speed, speed, speed]), builtEndsMps: null }, DEFAULT_SETTINGS, before)
        .standing;
    expect(standingAt(41)).toBe('short');
    expect(standingAt(41.3)).toBe('clear');
  });
});
