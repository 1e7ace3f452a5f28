import { describe, expect, it } from 'vitest';
import { rounded } from '../../src/forecast/band.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { judgedGroup } from '../../src/forecast/fence-forecast.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import { meanOf, middleOf, pointRisks, pointsOf, riskDays } from '../../src/forecast/point-risks.ts';
import { survivalLedger } from '../../src/forecast/risk.ts';
import type { Works } from '../../src/forecast/works.ts';
import { inspectionOn } from './evidence/read-fence.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';

const READ: FenceFacts = {
  ...EXAMPLE_FENCE,
  inspections: [
    inspectionOn('2025-04-20', [null, null, null, { kind: 'depth', depthMm: 6 }, { kind: 'depth', depthMm: 3 }]),
  ],
};
const STORMED: FenceFacts = {
  ...READ,
  installed: { earliest: '2012-01-01', latest: '2014-12-31' },
  outcomes: [
    { ref: 'S-1', day: '2025-07-02', gustMps: 30, gustSpread: 0.1, storm: 'July', result: 'stood', posts: 'all' },
  ],
};

const risksOf = (facts: FenceFacts, works: readonly Works[] = [], day = '2026-02-01') =>
  pointRisks(
    { ...facts, works: [...facts.works, ...works] },
    pointsOf(facts),
    riskDays(facts, 2026, day),
    DEFAULT_SETTINGS,
  );

describe('point risks', () => {
  it.each([
    ['a fence never seen', EXAMPLE_FENCE],
    ['a fence that was read', READ],
    ['a fence of uncertain age that stood in a storm', STORMED],
  ])('carry what the forecast of %s takes quantiles and means of', (_, facts) => {
    const forecast = forecastFence(facts, 2026, DEFAULT_SETTINGS);
    const ahead = forecast.seasons.filter(({ season }) => (season ?? 0) >= 1);
    const risks = risksOf(facts);
    expect(risks.seasons.map(({ label }) => label)).toEqual(ahead.map(({ label }) => label));
    for (const [index, season] of ahead.entries()) {
      const at = risks.seasons[index]!;
      expect(middleOf(risks, at.snapMps)).toBe(judgedGroup(season).snapMps.p50);
      expect(middleOf(risks, at.leanMps)).toBe(judgedGroup(season).leanMps.p50);
      expect(at.endsSnapMps && middleOf(risks, at.endsSnapMps)).toBe(season.line && season.ends!.snapMps.p50);
    }
    expect(rounded(meanOf(risks, risks.seasons[0]!.seasonBreak!), 5)).toBe(ahead[0]!.pSnap);
    expect(rounded(risks.expectedPostsShort, 3)).toBe(ahead[0]!.expectedPostsShort);
    expect(middleOf(risks, risks.depth.medianMm)).toBeCloseTo(ahead[0]!.depthMm.p50, 2);
    expect(risks.posts.filter(({ isLinePost }) => isLinePost).map(({ number }) => number)).toEqual(forecast.linePosts);
  });

  it('give season by season the chances that the survival ledger averages', () => {
    const risks = risksOf(EXAMPLE_FENCE);
    if (risks.hazard.kind !== 'gumbel') throw new Error('the example has a curve');
    const ledger = survivalLedger(risks.hazard, 0.8, risks.points);
    let standing = risks.weights;
    for (const { snapMps, seasonBreak } of risks.seasons) {
      const total = standing.reduce((a, b) => a + b);
      const broken = standing.reduce((sum, alive, point) => sum + alive * seasonBreak![point]!, 0);
      expect(broken / total).toBeCloseTo(ledger.addSeason(snapMps), 12);
      standing = standing.map((alive, point) => alive * (1 - seasonBreak![point]!));
    }
  });

  it('are at least as bad over a year as over its season', () => {
    for (const { seasonBreak, yearBreak } of risksOf(EXAMPLE_FENCE).seasons) {
      expect(yearBreak!.every((chance, point) => chance >= seasonBreak![point]!)).toBe(true);
    }
  });

  it('lie on the same points with works ahead: a treatment makes no point worse, in depth, speed or risk', () => {
    const treated = risksOf(READ, [
      { ref: 'T', day: '2026-02-01', posts: 'all', kind: 'groundline-treatment', yearsEffective: 5 },
    ]);
    const bare = risksOf(READ);
    expect(treated.weights).toEqual(bare.weights);
    for (const [index, season] of treated.seasons.entries()) {
      const without = bare.seasons[index]!;
      expect(season.snapMps.every((speed, point) => speed >= without.snapMps[point]!)).toBe(true);
      expect(season.yearBreak!.every((chance, point) => chance <= without.yearBreak![point]!)).toBe(true);
    }
    expect(treated.depth.medianMm.every((depth, point) => depth <= bare.depth.medianMm[point]!)).toBe(true);
    expect(meanOf(bare, bare.seasons[9]!.yearBreak!)).toBeGreaterThan(meanOf(bare, treated.seasons[9]!.yearBreak!));
  });

  it('show what is done ahead from its day on and not before', () => {
    const bare = risksOf(EXAMPLE_FENCE);
    const later = risksOf(EXAMPLE_FENCE, [
      { ref: 'R', day: '2027-01-10', posts: 'all', kind: 'rebuild', wood: PINE_4X4, postSpacingM: null },
    ]);
    expect(later.seasons[0]!.snapMps).toEqual(bare.seasons[0]!.snapMps);
    expect(middleOf(later, later.seasons[1]!.snapMps)).toBeGreaterThan(middleOf(bare, bare.seasons[1]!.snapMps) + 1);
  });

  it('take the state of a running season on the day that is asked about, and at the opening before it', () => {
    expect(riskDays(EXAMPLE_FENCE, 2026, '2026-02-01')[0]).toEqual({ label: '2026', season: 1, day: '2026-03-01' });
    expect(riskDays(EXAMPLE_FENCE, 2026, '2026-08-15')[0]!.day).toBe('2026-08-15');
    expect(riskDays(EXAMPLE_FENCE, 2026, '2027-03-01')[0]!.day).toBe('2026-03-01');
    expect(riskDays(EXAMPLE_FENCE, 2026, '2026-08-15')).toHaveLength(30);
  });

  it('give no chance of breaking where the site has no curve', () => {
    const { wind } = EXAMPLE_FENCE.site;
    const risks = risksOf({ ...EXAMPLE_FENCE, site: { ...EXAMPLE_FENCE.site, wind: { ...wind, hurricane: true } } });
    expect(risks.seasons.every(({ seasonBreak, yearBreak }) => seasonBreak === null && yearBreak === null)).toBe(true);
  });
});

describe('depth scatter', () => {
  it('is none where nothing rots', () => {
    const { depth } = risksOf({
      ...EXAMPLE_FENCE,
      wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 4000 },
    });
    expect([...depth.meanMm, ...depth.spreadMm, ...depth.medianMm].every((mm) => mm === 0)).toBe(true);
  });

  it('meets a simulation of single posts at the point of middle pace', () => {
    const risks = risksOf(EXAMPLE_FENCE);
    const point = risks.points.scores.pace.reduce(
      (best, score, index, all) => (Math.abs(score) < Math.abs(all[best]!) ? index : best),
      0,
    );
    // Independent reckoning: r = 0.055 x 5.44 x k_climate is read back from the median, then 0.54 of scatter in ln r.
    const years = (Date.UTC(2026, 2, 1) - Date.UTC(2015, 2, 1)) / 86_400_000 / 365.2425;
    const law = (rate: number): number => {
      const lag = 5.5 * rate ** -0.95;
      const start = lag + 5 / rate;
      return years <= start ? 5 * (years / start) ** 2 : rate * (years - lag);
    };
    let [low, high] = [0.01, 5];
    for (let step = 0; step < 80; step += 1) {
      const middle = Math.sqrt(low * high);
      if (law(middle) < risks.depth.medianMm[point]!) low = middle;
      else high = middle;
    }
    let seed = 7;
    const uniform = (): number => {
      seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31;
      return (seed + 0.5) / 2 ** 31;
    };
    const depths = Array.from({ length: 40_000 }, () =>
      Math.min(
        44.45,
        law(low * Math.exp(0.54 * Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform()))),
      ),
    );
    const mean = depths.reduce((a, b) => a + b) / depths.length;
    const spread = Math.sqrt(depths.reduce((sum, depth) => sum + (depth - mean) ** 2, 0) / depths.length);
    expect(risks.depth.meanMm[point]! / mean).toBeCloseTo(1, 1);
    expect(risks.depth.spreadMm[point]! / spread).toBeCloseTo(1, 1);
  });
});
