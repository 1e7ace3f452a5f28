import { beforeAll, describe, expect, it } from 'vitest';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { inspectionOn } from './evidence/read-fence.ts';
import { EXAMPLE_FENCE, PINE_4X4, WARM_SITE } from './example-fence.ts';
import {
  daysBetween,
  expectWhole,
  fenceWith,
  foundAtAll,
  type ReasonReader,
  readReasons,
  STORMS,
  siteWith,
} from './reason-reader.ts';

/** Depth [mm] after t years at a rate [mm/a] by the law as printed: lag, slow start to 5 mm, then the rate. */
function lawDepth(rate: number, t: number): number {
  const lag = 5.5 * rate ** -0.95;
  const start = lag + 5 / rate;
  return t <= start ? 5 * (t / start) ** 2 : rate * (t - lag);
}

const TWELVE_YEARS = daysBetween('2015-03-01', '2027-03-01') / 365.2425;
const LEARNED: FenceFacts['learned'] = {
  version: 7,
  paces: [{ treatmentClass: 'ground-contact', logShift: 0.25, spread: 0.4 }],
  footing: null,
};

describe('the steps of a climate', () => {
  let measured: ReasonReader;
  let zone: ReasonReader;
  let dry: ReasonReader;
  beforeAll(() => {
    measured = readReasons(EXAMPLE_FENCE);
    zone = readReasons(siteWith({ climate: { kind: 'decay-zone', zone: 4 } }));
    dry = readReasons(
      siteWith({ climate: { kind: 'measured', rainMmPerYear: 300, meanTemperatureC: 9, dryMonths: 4 } }),
    );
  });

  it('lead from rain, warmth and dry months to the factor', () => {
    const rain = 10 * (1 - Math.exp(-0.001 * (measured.at('rot', 'R') - 250))) * (1 - measured.at('rot', 'N') / 6);
    const warmth = -1 + 0.2 * measured.at('rot', 'T');
    expect(measured.at('rot', 'f')).toBeCloseTo(rain, 12);
    expect(measured.at('rot', 'g')).toBeCloseTo(warmth, 12);
    expect(measured.at('rot', 'k_climate')).toBeCloseTo(rain ** 0.3 * warmth ** 0.2, 12);
    expect(measured.step('rot', 'k_climate')).toMatchObject({ equation: 'f^0.3 g^0.2', tag: 'memory', basis: 'both' });
    expect([measured.at('rot', 'R'), measured.at('rot', 'T'), measured.at('rot', 'N')]).toEqual([1600, 19.5, 0]);
    expect(measured.step('rot', 'R')).toMatchObject({ unit: 'mm/a', tag: 'recorded', source: 'the register' });
  });

  it('take a decay zone at its factor', () => {
    expect(zone.at('rot', 'k_climate')).toBe(2);
    expect(zone.step('rot', 'k_climate')).toMatchObject({ equation: 'decay zone 4', tag: 'judgement' });
    expect(zone.has('rot', 'R')).toBe(false);
    expect(zone.at('rot', 'r')).toBeCloseTo(0.055 * 5.44 * 2, 12);
  });

  it('say where the factor is held up by its floor', () => {
    // 10 (1 - exp(-0.05)) (1 - 4/6) = 0.16257; 0.16257^0.3 x 0.8^0.2 = 0.5545: above the floor
    expect(dry.at('rot', 'k_climate')).toBeCloseTo(0.5545, 4);
    const arid = readReasons(
      siteWith({ climate: { kind: 'measured', rainMmPerYear: 260, meanTemperatureC: 9, dryMonths: 4 } }),
    );
    expect(arid.at('rot', 'k_climate')).toBe(0.5);
    expect(arid.step('rot', 'k_climate')).toMatchObject({ equation: 'f^0.3 g^0.2, floored at 0.5', tag: 'judgement' });
    expect(arid.at('rot', 'f') ** 0.3 * arid.at('rot', 'g') ** 0.2).toBeLessThan(0.5);
  });
});

describe('the steps of rot where nothing was seen', () => {
  let plain: ReasonReader;
  beforeAll(() => {
    plain = readReasons(EXAMPLE_FENCE);
  });

  it('multiply to the rate, and lead by the law to the depth', () => {
    expect(plain.at('rot', 'phi')).toBe(0.055);
    expect(plain.at('rot', 'k_wood')).toBe(5.44);
    const r = plain.at('rot', 'phi') * plain.at('rot', 'k_wood') * plain.at('rot', 'k_climate');
    expect(plain.at('rot', 'r')).toBeCloseTo(r, 12);
    expect(plain.at('rot', 'tau')).toBe(0.6);
    expect(plain.at('rot', 't_lag')).toBeCloseTo(5.5 * r ** -0.95, 10);
    expect(plain.at('rot', 't_d0')).toBeCloseTo(plain.at('rot', 't_lag') + 5 / r, 10);
    expect(plain.at('rot', 't')).toBeCloseTo(TWELVE_YEARS, 10);
    expect(plain.at('rot', 'd')).toBeCloseTo(lawDepth(r, TWELVE_YEARS), 10);
    expect(plain.step('rot', 't_lag').equation).toBe('5.5 r^-0.95');
    expect(plain.step('rot', 'd').equation).not.toContain('what was read');
  });

  it('name no rate but the published one, and no cut', () => {
    for (const symbol of ['r_learned', 'z_pace', 'r_seen', 'c', 'c_m', 'c_a', 't_c']) {
      expect(plain.has('rot', symbol), symbol).toBe(false);
    }
  });

  it('are whole in every season, sound wood not yet exposed', () => {
    for (const seasonLabel of ['new', '2016', '2040', '2056']) expectWhole(readReasons(EXAMPLE_FENCE, { seasonLabel }));
    const fresh = readReasons(EXAMPLE_FENCE, { seasonLabel: 'new' });
    expect([fresh.at('rot', 't'), fresh.at('rot', 'd')]).toEqual([0, 0]);
    const late = readReasons(EXAMPLE_FENCE, { seasonLabel: '2056' });
    // 41 years at 0.675 mm/a: past the slow start
    expect(late.at('rot', 'd')).toBeCloseTo(late.at('rot', 'r') * (late.at('rot', 't') - late.at('rot', 't_lag')), 10);
  });

  it('end at once for what does not rot', () => {
    const steel = readReasons(
      fenceWith({ wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 4000 } }),
    );
    expect(steel.at('rot', 'd')).toBe(0);
    expect(steel.step('rot', 'd')).toMatchObject({ basis: 'both', unit: 'mm', tag: 'judgement' });
    expect(steel.steps.filter(({ group }) => group === 'rot')).toHaveLength(1);
  });
});

describe('the steps of rot after works', () => {
  const clockAfter = (works: FenceFacts['works']): number => readReasons(fenceWith({ works })).at('rot', 't');

  it('leave out the years that a groundline treatment stops', () => {
    const t = clockAfter([
      { kind: 'groundline-treatment', ref: 'W', day: '2020-03-01', posts: 'all', yearsEffective: 5 },
    ]);
    expect(t).toBeCloseTo(TWELVE_YEARS - 5, 10);
  });

  it('count half the years behind a liner', () => {
    const t = clockAfter([{ kind: 'liner', ref: 'W', day: '2021-03-01', posts: 'all' }]);
    const bare = daysBetween('2015-03-01', '2021-03-01');
    const lined = daysBetween('2021-03-01', '2027-03-01');
    expect(t).toBeCloseTo((bare + lined / 2) / 365.2425, 10);
  });

  it('start anew with a swapped post', () => {
    const wood = { ...PINE_4X4, treatmentClass: 'untreated-softwood' } as const;
    const swapped = readReasons(
      fenceWith({ works: [{ kind: 'post-swap', ref: 'W', day: '2022-03-01', posts: 'all', wood }] }),
    );
    expect(swapped.at('rot', 't')).toBeCloseTo(daysBetween('2022-03-01', '2027-03-01') / 365.2425, 10);
    expect(swapped.at('rot', 'phi')).toBe(1);
    expect(swapped.step('rot', 'k_wood').quantity).toContain('untreated softwood');
    // r = 5.44 k_climate: 12 mm/a, five years: deeper than half of 88.9 mm is not counted
    expect(lawDepth(swapped.at('rot', 'r'), swapped.at('rot', 't'))).toBeGreaterThan(44.45);
    expect(swapped.at('rot', 'd')).toBeCloseTo(44.45, 10);
    expect(swapped.step('rot', 'd').equation).toContain('at most half the narrowest side');
  });
});

describe('the steps of rot after something was seen', () => {
  let learned: ReasonReader;
  let storms: ReasonReader;
  let both: ReasonReader;
  let read: ReasonReader;
  beforeAll(() => {
    learned = readReasons(fenceWith({ learned: LEARNED }));
    storms = readReasons(fenceWith(STORMS));
    both = readReasons(fenceWith({ ...STORMS, learned: LEARNED }));
    read = readReasons(
      fenceWith({
        inspections: [
          inspectionOn(
            '2026-05-12',
            Array.from({ length: 11 }, () => ({ kind: 'depth', depthMm: 9 })),
          ),
        ],
      }),
    );
  });

  it('shift the rate by what the register learned', () => {
    expect(learned.at('rot', 'r_learned')).toBeCloseTo(learned.at('rot', 'r') * Math.exp(0.25), 12);
    expect(learned.step('rot', 'r_learned')).toMatchObject({
      unit: 'mm/a',
      equation: 'r exp(shift) of acceptance 7',
      tag: 'derived',
    });
    expect(learned.at('rot', 'tau')).toBe(0.4);
    expect(learned.has('rot', 'r_seen')).toBe(false);
    expect(learned.step('rot', 't_lag').equation).toBe('5.5 r_learned^-0.95');
    expect(learned.at('rot', 't_lag')).toBeCloseTo(5.5 * learned.at('rot', 'r_learned') ** -0.95, 10);
  });

  it('give the score with the spread, so that the rate can be worked out by hand', () => {
    const z = storms.at('rot', 'z_pace');
    expect(z).not.toBe(0);
    expect(storms.at('rot', 'r_seen')).toBeCloseTo(storms.at('rot', 'r') * Math.exp(storms.at('rot', 'tau') * z), 12);
    expect(storms.step('rot', 'r_seen')).toMatchObject({ equation: 'r exp(tau z_pace)', tag: 'derived' });
    expect(storms.step('rot', 'r_seen').quantity).toContain('of this fence');
    expect(storms.has('rot', 'r_learned')).toBe(false);
    expect(storms.at('rot', 'd')).toBeCloseTo(lawDepth(storms.at('rot', 'r_seen'), storms.at('rot', 't')), 10);
    expectWhole(storms);
  });

  it('start from the learned rate where there is one', () => {
    const expected = both.at('rot', 'r') * Math.exp(0.25 + 0.4 * both.at('rot', 'z_pace'));
    expect(both.at('rot', 'r_seen')).toBeCloseTo(expected, 12);
    expect(both.step('rot', 'r_seen').equation).toBe('r_learned exp(tau z_pace)');
    expectWhole(both);
  });

  it('say of a post that was read that its rate is its own', () => {
    expect(read.step('rot', 'r_seen').quantity).toContain('of this post');
    expect(read.step('rot', 'r_seen').equation).toContain('r exp(tau z_pace) of the fence');
    expect(read.step('rot', 'd').equation).toContain('never under what was read');
    const { r_seen, t } = { r_seen: read.at('rot', 'r_seen'), t: read.at('rot', 't') };
    expect(read.at('rot', 'd')).toBeGreaterThanOrEqual(lawDepth(r_seen, t) - 1e-9);
    // 9 mm in May 2026, three times what the published rate gives: the rate must be well above the published one
    expect(r_seen).toBeGreaterThan(read.at('rot', 'r'));
    expectWhole(read);
  });
});

describe('the steps of a trimmer', () => {
  const trimmer = { guards: false, yearlyCutMm: 0.8 } as const;

  it('count the yearly cut from installation', () => {
    const cut = readReasons(fenceWith({ trimmer }));
    expect(cut.at('rot', 'c_a')).toBe(0.8);
    expect(cut.at('rot', 't_c')).toBeCloseTo(TWELVE_YEARS, 10);
    expect(cut.at('rot', 'c')).toBeCloseTo(0.8 * TWELVE_YEARS, 10);
    expect(cut.has('rot', 'c_m')).toBe(false);
    expect(cut.step('rot', 't_c').equation).toContain('from installation to the day shown');
    expect(cut.step('rot', 'c')).toMatchObject({ equation: 'c_a t_c', unit: 'mm', tag: 'derived' });
    expectWhole(cut);
  });

  it('count from the middle of an install date that is a range', () => {
    const range = fenceWith({ trimmer, installed: { earliest: '2014-03-01', latest: '2016-03-01' } });
    const days = daysBetween('2014-03-01', '2027-03-01') - daysBetween('2014-03-01', '2016-03-01') / 2;
    const cut = readReasons(range);
    expect(cut.at('rot', 't_c')).toBeCloseTo(days / 365.2425, 10);
    expect(cut.at('rot', 'c')).toBeCloseTo((0.8 * days) / 365.2425, 10);
  });

  it('add the years since a cut was measured to what was measured', () => {
    const cut = readReasons(fenceWith({ trimmer, ...foundAtAll({ trimmerCutMm: 6 }, '2024-06-01') }));
    const years = daysBetween('2024-06-01', '2027-03-01') / 365.2425;
    expect([cut.at('rot', 'c_m'), cut.at('rot', 't_c')]).toEqual([6, years]);
    expect(cut.at('rot', 'c')).toBeCloseTo(6 + 0.8 * years, 10);
    expect(cut.step('rot', 'c').equation).toBe('c_m + c_a t_c');
    expect(cut.step('rot', 't_c').equation).toContain('from the measurement');
    expectWhole(cut);
  });

  it('end at the guards', () => {
    const cut = readReasons(
      fenceWith({ trimmer, works: [{ kind: 'trimmer-guard', ref: 'W', day: '2020-09-01', posts: 'all' }] }),
    );
    const years = daysBetween('2015-03-01', '2020-09-01') / 365.2425;
    expect(cut.at('rot', 't_c')).toBeCloseTo(years, 10);
    expect(cut.at('rot', 'c')).toBeCloseTo(0.8 * years, 10);
    expect(cut.step('rot', 't_c').equation).toContain('to the guards');
  });

  it('do not run back where the guards came before the measurement', () => {
    const cut = readReasons(
      fenceWith({
        trimmer,
        works: [{ kind: 'trimmer-guard', ref: 'W', day: '2020-09-01', posts: 'all' }],
        ...foundAtAll({ trimmerCutMm: 6 }, '2024-06-01'),
      }),
    );
    expect([cut.at('rot', 't_c'), cut.at('rot', 'c')]).toEqual([0, 6]);
  });

  it('have cut nothing where a post is sound', () => {
    expect(readReasons(fenceWith({ trimmer, site: WARM_SITE }), { seasonLabel: 'new' }).has('rot', 'c')).toBe(false);
  });
});
