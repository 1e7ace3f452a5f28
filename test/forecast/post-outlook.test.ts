import { describe, expect, it } from 'vitest';
import { judgedGroup, seasonOne } from '../../src/forecast/fence-forecast.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import { postOutlook } from '../../src/forecast/post-outlook.ts';
import { EXAMPLE_FENCE } from './example-fence.ts';
import { reading, withFacts } from './made-up-events.ts';

const SEASONS = [1, 6, 11];

describe('the outlook of the posts of a fence', () => {
  it('gives the deciding posts the snap and lean speed, the depth and the strength that the forecast gives them', () => {
    const forecast = forecastFence(EXAMPLE_FENCE, 2027, DEFAULT_SETTINGS);
    const posts = postOutlook(EXAMPLE_FENCE, 2027, SEASONS);
    const deciding = judgedGroup(seasonOne(forecast)).decidingPosts[0]!;
    const moments = posts.find(({ number }) => number === deciding)!.moments;
    for (const moment of moments) {
      const season = forecast.seasons.find(({ label }) => label === moment.label)!;
      expect(moment.snapMps.p50).toBeCloseTo(season.line!.snapMps.p50, 1);
      expect(moment.leanMps.p50).toBeCloseTo(season.line!.leanMps.p50, 1);
      expect(moment.depthMm).toEqual(season.depthMm);
      expect(moment.strengthLeft).toEqual(season.strengthLeft);
    }
    expect(moments.map(({ season }) => season)).toEqual(SEASONS);
  });

  it('lists every post once, by its position, and says which are line posts', () => {
    const forecast = forecastFence(EXAMPLE_FENCE, 2027, DEFAULT_SETTINGS);
    const posts = postOutlook(EXAMPLE_FENCE, 2027, [1]);
    expect(posts).toHaveLength(forecast.postCount);
    expect(posts.filter(({ isLinePost }) => isLinePost).map(({ number }) => number)).toEqual(forecast.linePosts);
    expect(posts.map(({ positionM }) => positionM)).toEqual(
      posts.map(({ positionM }) => positionM).toSorted((a, b) => a - b),
    );
  });

  it('gives a post that was read deeper a rot of its own, and a cut and a cavity as they were found', () => {
    const facts = withFacts({
      trimmer: { guards: false, yearlyCutMm: 0.5 },
      inspections: [
        {
          ref: 'I-1',
          day: '2026-05-01',
          method: 'awl-or-probe',
          readings: [reading(4, { groundline: { kind: 'depth', depthMm: 24 }, cavityMm: 20, trimmerCutMm: 6 })],
        },
      ],
    });
    const posts = postOutlook(facts, 2027, [1]);
    const read = posts.find(({ number }) => number === 4)!.moments[0]!;
    const beside = posts.find(({ number }) => number === 5)!.moments[0]!;
    expect(read.cavityDiameterMm).toBe(20);
    expect(beside.cavityDiameterMm).toBe(0);
    // 6 mm measured, then half a millimetre a year from May 2026 to the opening of season 1
    expect(read.oneFaceMm).toBeCloseTo(6 + 0.5 * (304 / 365.25), 1);
    expect(read.snapMps.p50).toBeLessThan(beside.snapMps.p50);
  });

  it('gives a swapped post no rot on its first day, and leaves the others as they were', () => {
    const swapped = withFacts({
      works: [{ ref: 'W-1', day: '2027-02-01', kind: 'post-swap', posts: [3], wood: EXAMPLE_FENCE.wood }],
    });
    const [before, after] = [EXAMPLE_FENCE, swapped].map((facts) => postOutlook(facts, 2027, [1]));
    expect(after!.find(({ number }) => number === 3)!.moments[0]!.depthMm.p90).toBeLessThan(0.5);
    expect(after!.find(({ number }) => number === 6)).toEqual(before!.find(({ number }) => number === 6));
  });
});
