import { describe, expect, it } from 'vitest';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { judgedGroup, seasonOne } from '../../src/forecast/fence-forecast.ts';
import { DEFAULT_SETTINGS, forecastFence } from '../../src/forecast/forecast-fence.ts';
import type { Works } from '../../src/forecast/works.ts';
import { mpsFromMph } from '../../src/units/speed.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';

const forecast = (facts: FenceFacts, year = 2027) => forecastFence(facts, year, DEFAULT_SETTINGS);
const snapNow = (facts: FenceFacts): number => judgedGroup(seasonOne(forecast(facts))).snapMps.p50;
const leanNow = (facts: FenceFacts): number => judgedGroup(seasonOne(forecast(facts))).leanMps.p50;

const all = (day: string, kind: Record<string, unknown>, ref = 'W1'): Works =>
  ({ ref, day, posts: 'all', ...kind }) as unknown as Works;

describe('the forecast of one fence', () => {
  it('is the same to the byte when made twice', () => {
    expect(JSON.stringify(forecast(EXAMPLE_FENCE))).toBe(JSON.stringify(forecast(structuredClone(EXAMPLE_FENCE))));
  });

  it('runs from installation over every opening since to thirty seasons ahead', () => {
    const { seasons } = forecast(EXAMPLE_FENCE);
    expect(seasons[0]).toMatchObject({ label: 'new', season: null, ageYears: 0, day: '2015-03-01' });
    expect(seasons[1]).toMatchObject({ label: '2016', season: -10 });
    expect(seasons.at(-1)).toMatchObject({ label: '2056', season: 30 });
    expect(seasons).toHaveLength(1 + 11 + 30);
  });

  it('has a new fence lean before it snaps, and an old one snap before it leans', () => {
    const { seasons, turnover } = forecast(EXAMPLE_FENCE);
    const line = (index: number) => seasons.at(index)!.line!;
    expect(line(0).leanMps.p50).toBeLessThan(line(0).snapMps.p50);
    expect(line(-1).snapMps.p50).toBeLessThan(line(-1).leanMps.p50);
    const first = seasons.find(({ line: group }) => group!.snapMps.p50 < group!.leanMps.p50);
    expect(turnover).toBe(first!.label);
  });

  it('gives risk for seasons ahead only, and rising with rot', () => {
    const { seasons } = forecast(EXAMPLE_FENCE);
    for (const season of seasons) {
      const ahead = season.season !== null && season.season >= 1;
      for (const risk of [season.pShort, season.expectedPostsShort, season.pAnyShort, season.pSnap]) {
        expect(risk !== null).toBe(ahead);
      }
    }
    const ahead = seasons.filter(({ season }) => season !== null && season >= 1);
    for (const [index, season] of ahead.entries()) {
      const before = ahead[index - 1];
      if (!before) continue;
      expect(season.pShort!).toBeGreaterThanOrEqual(before.pShort!);
      expect(season.expectedPostsShort!).toBeGreaterThanOrEqual(before.expectedPostsShort!);
      expect(season.pAnyShort!).toBeGreaterThanOrEqual(before.pAnyShort!);
    }
  });

  it('does not depend on the order of posts and works in the register', () => {
    const posts = [3, 5, 7].map((number) => ({
      number,
      positionM: null,
      installed: { earliest: '2020-05-05', latest: '2020-05-05' },
      wood: null,
      sharedRun: null,
    }));
    const works = [
      all('2021-04-01', { kind: 'groundline-treatment', yearsEffective: 5 }, 'B'),
      all('2019-04-01', { kind: 'drainage' }, 'A'),
      { ref: 'C', day: '2022-02-02', posts: [4], kind: 'post-swap', wood: PINE_4X4 } as const,
    ];
    const one = forecast({ ...EXAMPLE_FENCE, posts, works });
    const other = forecast({ ...EXAMPLE_FENCE, posts: posts.toReversed(), works: works.toReversed() });
    expect(JSON.stringify(other)).toBe(JSON.stringify(one));
  });
});

describe('works act from their day on, never back', () => {
  const past = (facts: FenceFacts) => forecast(facts).seasons.filter(({ season }) => season === null || season < 0);

  it('a groundline treatment slows the loss and never makes a later depth larger', () => {
    const treated = {
      ...EXAMPLE_FENCE,
      works: [all('2026-04-01', { kind: 'groundline-treatment', yearsEffective: 5 })],
    };
    expect(past(treated)).toEqual(past(EXAMPLE_FENCE));
    const [plain, slowed] = [forecast(EXAMPLE_FENCE), forecast(treated)];
    plain.seasons.forEach((season, index) => {
      const after = slowed.seasons[index]!.depthMm;
      expect(after.p10).toBeLessThanOrEqual(season.depthMm.p10);
      expect(after.p50).toBeLessThanOrEqual(season.depthMm.p50);
      expect(after.p90).toBeLessThanOrEqual(season.depthMm.p90);
    });
    expect(slowed.seasons.at(-1)!.depthMm.p50).toBeLessThan(plain.seasons.at(-1)!.depthMm.p50 - 2);
  });

  it('a liner halves the pace from its day', () => {
    const lined = { ...EXAMPLE_FENCE, works: [all('2015-03-01', { kind: 'liner' })] };
    const half = forecast(lined).seasons.at(-1)!.depthMm.p50;
    expect(half).toBeLessThan(0.55 * forecast(EXAMPLE_FENCE).seasons.at(-1)!.depthMm.p50);
  });

  it('a post swap starts that post anew and leaves the others', () => {
    const before = forecast({ ...EXAMPLE_FENCE, installed: { earliest: '2000-03-01', latest: '2000-03-01' } });
    const after = forecast({
      ...EXAMPLE_FENCE,
      installed: { earliest: '2000-03-01', latest: '2000-03-01' },
      works: [{ ref: 'S', day: '2026-09-01', posts: [5], kind: 'post-swap', wood: PINE_4X4 }],
    });
    expect(seasonOne(after).line!.decidingPosts).not.toContain(5);
    expect(seasonOne(before).line!.decidingPosts).toContain(5);
    expect(seasonOne(after).expectedPostsShort!).toBeLessThan(seasonOne(before).expectedPostsShort! - 0.5);
  });

  it('drainage gives a footing in saturated sand its strength back', () => {
    const wet = { ...EXAMPLE_FENCE, site: { ...WARM_SITE, soilSaturated: true } };
    const drained = { ...wet, works: [all('2026-04-01', { kind: 'drainage' })] };
    expect(leanNow(wet)).toBeLessThan(0.75 * leanNow(EXAMPLE_FENCE));
    expect(leanNow(drained)).toBe(leanNow(EXAMPLE_FENCE));
  });

  it('a footing reset moves the lean speed only', () => {
    const reset = {
      ...EXAMPLE_FENCE,
      works: [
        all('2026-04-01', { kind: 'footing-reset', embedmentM: 0.914, footing: 'concrete', footingDiameterM: 0.3 }),
      ],
    };
    expect(leanNow(reset)).toBeGreaterThan(1.6 * leanNow(EXAMPLE_FENCE));
    expect(snapNow(reset)).toBe(snapNow(EXAMPLE_FENCE));
  });

  it('a trimmer guard ends the yearly cut', () => {
    const cut = { ...EXAMPLE_FENCE, trimmer: { guards: false, yearlyCutMm: 1 } };
    const guarded = { ...cut, works: [all('2020-04-01', { kind: 'trimmer-guard' })] };
    expect(snapNow(cut)).toBeLessThan(snapNow(guarded));
    expect(snapNow(guarded)).toBeLessThan(snapNow(EXAMPLE_FENCE));
    expect(snapNow({ ...EXAMPLE_FENCE, trimmer: { guards: true, yearlyCutMm: 1 } })).toBe(snapNow(EXAMPLE_FENCE));
  });

  it('a steel sleeve carries what rot took, up to the sound wood above it', () => {
    const old = { ...EXAMPLE_FENCE, installed: { earliest: '1998-03-01', latest: '1998-03-01' } };
    const weak = { ...old, works: [all('2026-04-01', { kind: 'steel-sleeve', momentCapacityNm: 2500 })] };
    const strong = { ...old, works: [all('2026-04-01', { kind: 'steel-sleeve', momentCapacityNm: 99_000 })] };
    const built = forecast(old).seasons[0]!.line!.snapMps.p50;
    expect(snapNow(weak)).toBeGreaterThan(1.2 * snapNow(old));
    expect(snapNow(strong)).toBeCloseTo(built, 1);
  });

  it('added posts shorten the bays and lift both speeds', () => {
    const positionsM = Array.from({ length: 10 }, (_, bay) => (bay + 0.5) * EXAMPLE_FENCE.run.postSpacingM);
    const more = { ...EXAMPLE_FENCE, works: [all('2026-04-01', { kind: 'added-posts', positionsM, wood: PINE_4X4 })] };
    const result = forecast(more);
    expect(result.postCount).toBe(21);
    expect(snapNow(more)).toBeGreaterThan(1.3 * snapNow(EXAMPLE_FENCE));
    expect(past(more)).toEqual(past(EXAMPLE_FENCE));
  });

  it('a rebuild restarts all, and the marks and turnover are those of the new build', () => {
    const old = { ...EXAMPLE_FENCE, installed: { earliest: '1995-03-01', latest: '1995-03-01' } };
    const rebuilt = { ...old, works: [all('2026-06-01', { kind: 'rebuild', wood: PINE_4X4, postSpacingM: null })] };
    const result = forecast(rebuilt);
    expect(result.marksCrossed).toEqual([]);
    expect(forecast(old).marksCrossed.map(({ mark }) => mark)).toContain('two thirds');
    expect(seasonOne(result).depthMm.p50).toBeLessThan(0.1);
    expect(result.standing).toBe('clear');
  });

  it('works in the running season show at once, though the season opened before them', () => {
    const old = { ...EXAMPLE_FENCE, installed: { earliest: '1995-03-01', latest: '1995-03-01' } };
    const rebuilt = { ...old, works: [all('2027-05-20', { kind: 'rebuild', wood: PINE_4X4, postSpacingM: null })] };
    const { day, label } = seasonOne(forecast(rebuilt));
    expect({ day, label }).toEqual({ day: '2027-05-20', label: '2027' });
    expect(forecast(rebuilt).standing).toBe('clear');
  });
});

describe('what works leave behind', () => {
  const old = { ...EXAMPLE_FENCE, installed: { earliest: '1998-03-01', latest: '1998-03-01' } };
  const swapAll = (wood = PINE_4X4, day = '2026-09-01'): Works => ({
    ref: 'S',
    day,
    posts: 'all',
    kind: 'post-swap',
    wood,
  });

  it('a rebuilt post stands in the ground of the post before it, not of post 1', () => {
    const reset: Works = {
      ref: 'A',
      day: '2020-05-01',
      posts: [1],
      kind: 'footing-reset',
      embedmentM: 1.2,
      footing: 'concrete',
      footingDiameterM: 0.4,
    };
    const rebuild = all('2026-05-01', { kind: 'rebuild', wood: PINE_4X4, postSpacingM: null }, 'B');
    expect(leanNow({ ...old, works: [reset, rebuild] })).toBe(leanNow({ ...old, works: [rebuild] }));
  });

  it('swapping every post takes back the turnover and the shortness that it mends', () => {
    const before = forecast(old);
    expect(before.standing).toBe('short');
    expect(Number(before.turnover)).toBeLessThan(2034);
    const after = forecast({ ...old, works: [swapAll()] });
    expect(after.standing).toBe('clear');
    expect(after.turnover).toBeNull();
    expect(Number(after.shortFrom)).toBeGreaterThan(2036);
    expect(after.shortFrom).toBe(after.shortSeason);
  });

  it('a fence built too weak and then given stronger posts is short by rot when these rot, not from new', () => {
    const weak = { ...old, site: { ...WARM_SITE, exposure: 'C' as const } };
    expect(forecast(weak).standing).toBe('short from new');
    expect(forecast(weak).shortFrom).toBe('new');
    const stronger = { ...PINE_4X4, section: { kind: 'rectangular', widthMm: 114, depthMm: 114 } as const };
    const mended = { ...weak, works: [swapAll(stronger, '1999-04-01')] };
    const later = forecast(mended, 2050);
    expect(later.standing).toBe('short');
  });

  it('the season in which the present shortness began is told, not the one of an older build', () => {
    const result = forecast(old);
    const short = result.seasons.filter(({ line }) => line!.snapMps.p50 < result.designGust.gustMps);
    expect(result.shortFrom).toBe(short[0]!.label);
  });
});

describe('what the register does not know', () => {
  it('names each unknown, what stands in, and puts the one that weighs most first', () => {
    const { unknowns } = forecast({
      ...EXAMPLE_FENCE,
      installed: { earliest: '2008-01-01', latest: '2013-12-31' },
      wood: { ...PINE_4X4, treatmentClass: 'unknown-treated', species: 'unknown' },
      ground: { embedmentM: null, footing: null, footingDiameterM: null },
      run: { ...EXAMPLE_FENCE.run, ends: [{ kind: 'unknown' }, { kind: 'free' }] },
    });
    expect(unknowns.map(({ input }) => input).sort()).toEqual(
      ['embedment', 'end kind', 'footing', 'install date', 'species', 'treatment class'].sort(),
    );
    expect(unknowns[0]!.input).toBe('treatment class');
    for (let index = 1; index < unknowns.length; index += 1) {
      expect(unknowns[index]!.swingMps).toBeLessThanOrEqual(unknowns[index - 1]!.swingMps);
    }
    expect(forecast(EXAMPLE_FENCE).unknowns).toEqual([]);
  });

  it('widens the band where the install date is a range', () => {
    const width = (facts: FenceFacts): number => {
      const { snapMps } = seasonOne(forecast(facts)).line!;
      return snapMps.p90 - snapMps.p10;
    };
    const vague = { ...EXAMPLE_FENCE, installed: { earliest: '2007-03-01', latest: '2023-03-01' } };
    expect(width(vague)).toBeGreaterThan(width(EXAMPLE_FENCE));
  });
});

describe('geometry', () => {
  it('judges a run too short for line posts by its ends, and says so', () => {
    const short = forecast({ ...EXAMPLE_FENCE, run: { ...EXAMPLE_FENCE.run, runLengthM: 7 } });
    expect(short.linePosts).toEqual([]);
    expect(seasonOne(short).line).toBeNull();
    expect(short.remarks.join(' ')).toContain('too short to have line posts');
    expect(short.endsStanding).toBeNull();
    expect(short.endsShortSeason).toBeNull();
  });

  it('loads a corner post with the worse of its two runs', () => {
    const taller = { ...EXAMPLE_FENCE.run, heightM: 2.4, ends: [{ kind: 'free' }, { kind: 'free' }] as const };
    const corner = {
      number: 1,
      positionM: null,
      installed: null,
      wood: null,
      sharedRun: { fenceRef: 'EX-2', run: taller, end: 0 as const },
    };
    const alone = forecast(EXAMPLE_FENCE);
    const shared = forecast({ ...EXAMPLE_FENCE, posts: [corner] });
    expect(seasonOne(shared).ends!.snapMps.p50).toBeLessThan(seasonOne(alone).ends!.snapMps.p50);
    expect(seasonOne(shared).ends!.decidingPosts).toEqual([1]);
    expect(seasonOne(shared).line).toEqual(seasonOne(alone).line);
  });

  it('refuses a recorded post that the run does not have', () => {
    const stray = { number: 40, positionM: null, installed: null, wood: null, sharedRun: null };
    expect(() => forecast({ ...EXAMPLE_FENCE, posts: [stray] })).toThrow(/post 40 recorded.*posts 1 to 11/);
  });

  it('keeps a post that does not rot at its strength for ever', () => {
    const steel = { ...PINE_4X4, treatmentClass: 'does-not-rot' as const, momentCapacityNm: 4000 };
    const { seasons, shortSeason } = forecast({ ...EXAMPLE_FENCE, wood: steel });
    expect(seasons.at(-1)!.line!.snapMps).toEqual(seasons[0]!.line!.snapMps);
    expect(seasons.at(-1)!.strengthLeft.p50).toBe(1);
    expect(shortSeason).toBeNull();
  });
});

describe('wind', () => {
  const withWind = (wind: Partial<FenceFacts['site']['wind']>): FenceFacts => ({
    ...EXAMPLE_FENCE,
    site: { ...WARM_SITE, wind: { ...WARM_SITE.wind, ...wind } },
  });

  it('gives no risk in a hurricane region with one gust, and says what to enter', () => {
    const result = forecast(withWind({ hurricane: true }));
    expect(result.hazard.kind).toBe('none');
    expect(seasonOne(result).pSnap).toBeNull();
    expect(seasonOne(result).line!.onceInYears).toBeNull();
    expect(result.remarks.join(' ')).toMatch(/enter a second map gust with its return period/);
    expect(result.designGust.gustMps).toBeCloseTo(mpsFromMph(105), 2);
  });

  it('uses a local fence rule as it stands', () => {
    const result = forecast(
      withWind({ kind: 'local-rule', basis: 'fastest-mile', speedMps: mpsFromMph(76), returnPeriodYears: null }),
    );
    expect(result.designGust.gustMps).toBeCloseTo(mpsFromMph(90.3), 2);
    expect(result.designGust.returnPeriodYears).toBeNull();
  });

  it('is short from new where sound wood does not hold the design gust', () => {
    const windy = forecast({ ...EXAMPLE_FENCE, site: { ...WARM_SITE, exposure: 'D' } });
    expect(windy.standing).toBe('short from new');
    expect(windy.shortSeason).toBe('2027');
  });
});
