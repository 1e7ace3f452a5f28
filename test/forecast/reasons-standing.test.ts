import { beforeAll, describe, expect, it } from 'vitest';
import { effectiveCount } from '../../src/forecast/band.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import type { WindEntry } from '../../src/forecast/wind-entry.ts';
import { mpsFromMph } from '../../src/units/speed.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';
import { expectWhole, fenceWith, type ReasonReader, readReasons, STORMS, siteWith } from './reason-reader.ts';

const windOf = (change: Partial<WindEntry>): FenceFacts => siteWith({ wind: { ...WARM_SITE.wind, ...change } });
const ratioToFifty = (years: number): number => 0.36 + 0.1 * Math.log(12 * years);
const SECOND = { speedMps: 55, returnPeriodYears: 1700 };

describe('the steps of a site’s wind', () => {
  /** Location and scale of the curve through one gust [m/s], worked from the ratio to the 50-year gust. */
  const oneGust = (gustMps: number, years: number): readonly [u: number, a: number] => {
    const fifty = gustMps / ratioToFifty(years);
    return [fifty * (0.36 + 0.1 * Math.log(12)), 0.1 * fifty];
  };

  it.each([
    { basis: 'ultimate', years: 300, gust: (v: number) => v, equation: null },
    { basis: 'nominal', years: 50, gust: (v: number) => v, equation: null },
    { basis: 'asd', years: 300, gust: (v: number) => v / Math.sqrt(0.6), equation: 'V_entered / sqrt(0.6)' },
    {
      basis: 'fastest-mile',
      years: 50,
      gust: (v: number) => 1.05 * v + mpsFromMph(10.5),
      equation: '1.05 V_entered + 10.5 mph',
    },
  ] as const)('lead from a speed entered as $basis to curve and design gust', ({ basis, years, gust, equation }) => {
    const reader = readReasons(windOf({ basis, speedMps: 38, returnPeriodYears: years }));
    expect(reader.at('hazard', 'V_entered')).toBe(38);
    expect(reader.step('hazard', 'V_entered')).toMatchObject({
      quantity: `map speed, ${basis}, ${years} years`,
      tag: 'recorded',
      unit: 'm/s',
      basis: 'both',
    });
    expect(reader.has('hazard', 'V_3s')).toBe(equation !== null);
    if (equation !== null) {
      expect(reader.at('hazard', 'V_3s')).toBeCloseTo(gust(38), 10);
      expect(reader.step('hazard', 'V_3s').equation).toBe(equation);
    }
    const [u, a] = oneGust(gust(38), years);
    expect(reader.at('hazard', 'u')).toBeCloseTo(u, 3);
    expect(reader.at('hazard', 'a')).toBeCloseTo(a, 3);
    expect(reader.step('hazard', 'u').equation).toContain('V_50 (0.36 + 0.1 ln 12), from the entered');
    expect(reader.step('hazard', 'a').equation).toContain('0.1 V_50, from the entered');
    expect(reader.step('hazard', 'u').tag).toBe('memory');
    expect(reader.at('hazard', 'V_design')).toBeCloseTo(u + a * Math.log(300), 2);
    expect(reader.has('hazard', 'V_second')).toBe(false);
    expectWhole(reader);
  });

  it('draw the curve through two gusts', () => {
    const reader = readReasons(windOf({ speedMps: 45, second: SECOND, hurricane: true }));
    const a = (55 - 45) / Math.log(1700 / 300);
    expect(reader.at('hazard', 'V_second')).toBe(55);
    expect(reader.step('hazard', 'V_second')).toMatchObject({ tag: 'recorded', basis: 'both', unit: 'm/s' });
    expect(reader.at('hazard', 'a')).toBeCloseTo(a, 3);
    expect(reader.at('hazard', 'u')).toBeCloseTo(45 - a * Math.log(300), 3);
    expect(reader.step('hazard', 'a').equation).toContain('(V_2 - V_1) / ln(T_2 / T_1)');
    expect(reader.step('hazard', 'u')).toMatchObject({ tag: 'derived' });
    expect(reader.step('hazard', 'V_design').tag).toBe('derived');
    expectWhole(reader);
  });

  it('take a fence rule as it stands, its curve from the second gust alone', () => {
    const rule = readReasons(windOf({ kind: 'local-rule', returnPeriodYears: null, speedMps: 40 }));
    expect(rule.step('hazard', 'V_entered').quantity).toBe('local fence rule, ultimate');
    expect(rule.step('hazard', 'u, a')).toMatchObject({ value: 'none', unit: '-' });
    expect(rule.step('hazard', 'u, a').equation).toContain('local fence rule says nothing');
    expect(rule.has('hazard', 'u')).toBe(false);
    expect(rule.at('hazard', 'V_design')).toBe(40);
    expect(rule.step('hazard', 'V_design').tag).toBe('recorded');
    for (const symbol of ['N', 'P(snap)', 'P_50']) expect(rule.has('standing', symbol), symbol).toBe(false);
    expectWhole(rule);
    const withMap = readReasons(windOf({ kind: 'local-rule', returnPeriodYears: null, speedMps: 40, second: SECOND }));
    const [u, a] = oneGust(55, 1700);
    expect([withMap.at('hazard', 'u'), withMap.at('hazard', 'a')]).toEqual([
      expect.closeTo(u, 3),
      expect.closeTo(a, 3),
    ]);
    expect(withMap.step('hazard', 'u').tag).toBe('memory');
    // a map point of no stated return period leaves the second as the only one, too
    const noPeriod = readReasons(windOf({ returnPeriodYears: null, second: SECOND }));
    expect(noPeriod.step('hazard', 'u').tag).toBe('memory');
  });

  it('have no curve on a hurricane coast with one gust, and so no chance', () => {
    const coast = readReasons(windOf({ hurricane: true }));
    expect(coast.step('hazard', 'u, a').equation).toContain('hurricane region');
    expect(coast.step('hazard', 'u, a').tag).toBe('memory');
    expect(coast.at('hazard', 'V_design')).toBeCloseTo(46.939, 3);
    expect(coast.has('standing', 'N')).toBe(false);
    expect(coast.steps.filter(({ group }) => group === 'chance')).toEqual([]);
    expect(coast.has('standing', 'P(short)')).toBe(true);
    expectWhole(coast);
  });
});

describe('the steps from the worked speeds to those that are told', () => {
  let plain: ReasonReader;
  let storms: ReasonReader;
  let ends: ReasonReader;
  beforeAll(() => {
    plain = readReasons(EXAMPLE_FENCE);
    storms = readReasons(fenceWith(STORMS));
    ends = readReasons(EXAMPLE_FENCE, { which: 'ends' });
  });

  it('name the least of the worked speeds, the p50 and the way from one to the other', () => {
    for (const reader of [plain, storms, ends]) {
      const snap = Math.min(reader.at('snap', 'V_bend'), reader.at('snap', 'V_shear'));
      const lean = Math.min(reader.at('lean', 'V_foot'), reader.at('lean', 'V_collar'));
      expect(reader.at('standing', 'V_snap,m')).toBe(snap);
      expect(reader.at('standing', 'V_lean,m')).toBe(lean);
      for (const kind of ['snap', 'lean']) {
        const told = reader.at('standing', `V_${kind}`);
        expect(reader.at('standing', `V_${kind} - V_${kind},m`)).toBeCloseTo(
          told - reader.at('standing', `V_${kind},m`),
          12,
        );
      }
      expectWhole(reader);
    }
  });

  it('end in the bands of the forecast', () => {
    const { line } = plain.context.season;
    expect(plain.at('standing', 'V_snap')).toBe(line!.snapMps.p50);
    expect(plain.at('standing', 'V_lean')).toBe(line!.leanMps.p50);
    const range = `p10 ${line!.snapMps.p10.toFixed(1)}, p90 ${line!.snapMps.p90.toFixed(1)} m/s`;
    expect(plain.step('standing', 'V_snap').quantity).toBe(`snap speed p50 (${range}), by bending`);
    expect(plain.step('standing', 'V_lean').quantity).toContain('by footing');
    expect(ends.at('standing', 'V_snap')).toBe(ends.context.season.ends!.snapMps.p50);
  });

  it('say over how many points the p50 is taken, and what they are worth', () => {
    expect(plain.step('standing', 'V_snap').equation).toBe(
      'Harrell-Davis quantile at 0.5 over 128 points of the belief, of equal weight; at each point the median post of the line',
    );
    const { count, weights } = storms.context.belief;
    const worth = 1 / weights!.reduce((sum, weight) => sum + weight ** 2, 0);
    expect(effectiveCount(weights!)).toBeCloseTo(worth, 10);
    expect(storms.step('standing', 'V_lean').equation).toContain(
      `over ${count} points of the belief, unlike in weight, worth ${worth.toFixed(1)} of equal weight`,
    );
    expect(ends.step('standing', 'V_snap').equation).toMatch(/at each point the weakest post of the ends$/);
  });

  it('tell how rare the gust is that it holds, as far as the curve goes', () => {
    const years = Math.exp((plain.at('standing', 'V_snap') - plain.at('hazard', 'u')) / plain.at('hazard', 'a'));
    expect(plain.at('standing', 'N') / years).toBeCloseTo(1, 3);
    expect(plain.step('standing', 'N').unit).toBe('a');
    const sound = readReasons(EXAMPLE_FENCE, { seasonLabel: 'new' });
    const rare = Math.exp((sound.at('standing', 'V_snap') - sound.at('hazard', 'u')) / sound.at('hazard', 'a'));
    const strong = readReasons(
      fenceWith({ wood: { ...PINE_4X4, section: { kind: 'rectangular', widthMm: 140, depthMm: 140 } } }),
    );
    expect(rare).toBeLessThan(10_000);
    expect(sound.at('standing', 'N') / rare).toBeCloseTo(1, 3);
    expect(strong.step('standing', 'N').value).toBe('more than 10,000');
    expect(strong.at('standing', 'V_snap')).toBeGreaterThan(
      strong.at('hazard', 'u') + strong.at('hazard', 'a') * Math.log(10_000),
    );
  });

  it('tell the standing of the posts explained, in season 1 alone', () => {
    expect(plain.step('standing', 'standing')).toMatchObject({
      value: plain.context.forecast.standing,
      quantity: 'standing of the line posts, before any margin',
      unit: '-',
    });
    expect(ends.step('standing', 'standing')).toMatchObject({
      value: ends.context.forecast.endsStanding,
      quantity: 'standing of the end posts, before any margin',
    });
    expect(readReasons(EXAMPLE_FENCE, { seasonLabel: '2040' }).has('standing', 'standing')).toBe(false);
    const short = { ...EXAMPLE_FENCE.run, runLengthM: 2.4384 };
    const single = readReasons(fenceWith({ run: short }), { which: 'ends' });
    expect(single.step('standing', 'standing').value).toBe(single.context.forecast.standing);
    expect(single.step('standing', 'P(short)').quantity).toContain('the weakest post of the ends');
    expect(single.step('standing', 'n_short').equation).toContain('posts weaker than is usual');
  });
});

describe('the steps of chance and of posts short', () => {
  let plain: ReasonReader;
  beforeAll(() => {
    plain = readReasons(EXAMPLE_FENCE);
  });

  it('say why few points short and several posts short are both true', () => {
    const { pShort, expectedPostsShort } = plain.context.season;
    expect(plain.at('standing', 'P(short)')).toBe(pShort);
    expect(plain.at('standing', 'n_short')).toBe(expectedPostsShort);
    expect(plain.step('standing', 'P(short)').quantity).toContain('the median post of the line is under V_design');
    const { equation } = plain.step('standing', 'n_short');
    expect(equation).toContain('its own ln pace spread by 0.54 and its own ln strength by 0.32');
    expect(equation).toContain('a line whose median post holds can have several weak posts');
    expect(equation).toContain('P(short) can be under 1 % where n_short is 1 or more');
  });

  it('give what is needed to work out the chance to snap at the p50', () => {
    expect(plain.at('chance', 'w_season')).toBe(0.8);
    expect(plain.at('chance', 'beta')).toBeCloseTo(0.09, 12);
    const [V, u, a] = [plain.at('standing', 'V_snap'), plain.at('hazard', 'u'), plain.at('hazard', 'a')];
    // the mean over a standard normal z, by small steps from -8 to 8
    let chance = 0;
    for (let z = -8; z <= 8; z += 0.001) {
      const breaks = 1 - Math.exp(-0.8 * Math.exp(-(V * Math.exp(0.09 * z) - u) / a));
      chance += ((breaks * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI)) * 0.001;
    }
    expect(plain.at('chance', 'P_50') / chance).toBeCloseTo(1, 2);
    expect(plain.at('chance', 'P(snap)')).toBe(plain.context.season.pSnap);
    expect(plain.at('chance', 'P(snap)')).toBeGreaterThan(plain.at('chance', 'P_50'));
  });

  it('leave both out of the past, and of posts by which the fence is not judged', () => {
    for (const reader of [
      readReasons(EXAMPLE_FENCE, { seasonLabel: '2020' }),
      readReasons(EXAMPLE_FENCE, { which: 'ends' }),
    ]) {
      for (const symbol of ['P(short)', 'n_short']) expect(reader.has('standing', symbol), symbol).toBe(false);
      expect(reader.steps.filter(({ group }) => group === 'chance')).toEqual([]);
    }
  });
});
