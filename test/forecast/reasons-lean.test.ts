import { beforeAll, describe, expect, it } from 'vitest';
import type { FenceFacts, GroundFacts } from '../../src/forecast/fence-facts.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';
import {
  expectWhole,
  fenceWith,
  foundAtAll,
  type ReasonReader,
  readReasons,
  STORMS,
  siteWith,
} from './reason-reader.ts';

const groundOf = (ground: GroundFacts): FenceFacts => fenceWith({ ground });

/** Arm and force of the only run, wind over the median counted [m, N/(m/s)^2]. */
const demand = (reader: ReasonReader): readonly [e: number, k: number] => [
  reader.at('wind', 'e'),
  reader.at('wind', 'k', 'expected') * (reader.has('snap', 'Q') ? reader.at('snap', 'Q') : 1),
];

/** Force on a footing in sand from what is printed [N]. */
function sandForce(reader: ReasonReader): number {
  const [L, w] = [reader.at('lean', 'L'), reader.at('lean', 'w')];
  const soil = reader.at('lean', 'gamma') * 1000 * reader.at('lean', 'Kp');
  return (0.8 * 0.5 * soil * w * L ** 3) / (reader.at('wind', 'e') + L);
}

/** Force on a footing in clay from what is printed [N], by bisection of the balance in f. */
function clayForce(reader: ReasonReader): number {
  const [L, w, e] = [reader.at('lean', 'L'), reader.at('lean', 'w'), reader.at('wind', 'e')];
  const cu = reader.at('lean', 'cu') * 1e6;
  let [low, high] = [0, L - 1.5 * w];
  for (let i = 0; i < 200; i += 1) {
    const f = (low + high) / 2;
    const g = L - 1.5 * w - f;
    if (9 * cu * w * f * (e + 1.5 * w + 0.5 * f) > 2.25 * w * cu * g * g) high = f;
    else low = f;
  }
  return 9 * cu * w * low;
}

/** Force that bursts a collar from what is printed [N]. */
function collarForce(reader: ReasonReader): number {
  const [b, c] = [reader.at('lean', 'b_c'), reader.at('lean', 'c_w')];
  const [L, e] = [1000 * reader.at('lean', 'L'), 1000 * reader.at('wind', 'e')];
  return reader.at('lean', 'f_t') / (1 / (2 * c) + (0.75 * b) / c ** 2) / (4 / L + (6 * e) / L ** 2);
}

describe('the steps of a footing in sand', () => {
  let plain: ReasonReader;
  beforeAll(() => {
    plain = readReasons(EXAMPLE_FENCE);
  });

  it('lead from soil and size to the speed at which it gives', () => {
    expect([plain.at('lean', 'phi_s'), plain.at('lean', 'gamma')]).toEqual([34, 18]);
    expect(plain.at('lean', 'Kp')).toBeCloseTo(Math.tan((62 * Math.PI) / 180) ** 2, 12);
    expect(plain.at('lean', 'L')).toBeCloseTo(0.6096, 12);
    expect(plain.at('lean', 'w')).toBeCloseTo(0.2286, 12);
    expect(plain.step('lean', 'L')).toMatchObject({ unit: 'm', tag: 'recorded', basis: 'expected' });
    expect(plain.at('lean', 'H')).toBeCloseTo(sandForce(plain), 8);
    const [, k] = demand(plain);
    expect(plain.at('lean', 'V_foot')).toBeCloseTo(Math.sqrt(plain.at('lean', 'H') / k), 10);
    expect(plain.step('lean', 'V_foot').equation).toBe('sqrt(H / k), k and e of the worse run');
    expect(plain.step('lean', 'H')).toMatchObject({
      quantity: 'footing resistance, medium sand',
      equation: '0.8 x 0.5 gamma w L^3 Kp / (e + L)',
      tag: 'judgement',
    });
    expect(plain.step('lean', 'gamma')).toMatchObject({ quantity: 'unit weight', equation: 'soil class' });
    for (const symbol of ['cu', 'B', 's_B', 'm_B']) expect(plain.has('lean', symbol), symbol).toBe(false);
    expectWhole(plain);
  });

  it('give every value by which a collar bursts', () => {
    expect(plain.at('lean', 'b_c')).toBeCloseTo(88.9, 10);
    expect(plain.at('lean', 'c_w')).toBeCloseTo((228.6 - 88.9) / 2, 10);
    // 7.5 sqrt(2,500) = 375 psi
    expect(plain.at('lean', 'f_t')).toBeCloseTo(375 * 0.006894757293168, 10);
    expect(plain.at('lean', 'H_c')).toBeCloseTo(collarForce(plain), 8);
    const [, k] = demand(plain);
    expect(plain.at('lean', 'V_collar')).toBeCloseTo(Math.sqrt(plain.at('lean', 'H_c') / k), 10);
    expect(plain.step('lean', 'V_collar').equation).toBe('sqrt(H_c / k), k and e of the worse run');
    expect(plain.step('lean', 'c_w')).toMatchObject({ unit: 'mm', basis: 'expected' });
  });

  it('weigh saturated soil less the water in it', () => {
    const wet = readReasons(siteWith({ soilSaturated: true, soilClass: 'loose-sand' }));
    expect(wet.at('lean', 'gamma')).toBeCloseTo(17 - 9.81, 12);
    expect(wet.step('lean', 'gamma')).toMatchObject({
      quantity: 'submerged unit weight',
      equation: 'soil class less water, 9.81',
    });
    expect(wet.at('lean', 'H')).toBeCloseTo(sandForce(wet), 8);
    expect(wet.step('lean', 'H').quantity).toBe('footing resistance, loose sand or fill, saturated');
  });
});

describe('the steps of other footings', () => {
  it('balance a footing in clay', () => {
    const clay = readReasons(siteWith({ soilClass: 'firm-clay' }));
    expect(clay.at('lean', 'cu')).toBeCloseTo(0.05, 12);
    expect(clay.step('lean', 'cu')).toMatchObject({ unit: 'MPa', tag: 'judgement' });
    for (const symbol of ['phi_s', 'gamma', 'Kp']) expect(clay.has('lean', symbol), symbol).toBe(false);
    expect(clay.at('lean', 'H')).toBeCloseTo(clayForce(clay), 5);
    expect(clay.step('lean', 'H').equation).toContain('9 cu w f');
    expect(clay.step('lean', 'H').tag).toBe('read at second hand');
    expectWhole(clay);
  });

  it('take the diagonal of a post set in gravel, and no collar', () => {
    const gravel = readReasons(groundOf({ embedmentM: 0.75, footing: 'gravel', footingDiameterM: null }));
    expect(gravel.at('lean', 'w')).toBeCloseTo(0.0889 * Math.SQRT2, 12);
    expect(gravel.step('lean', 'w')).toMatchObject({ quantity: 'bearing width, gravel', tag: 'recorded' });
    expect(gravel.at('lean', 'H')).toBeCloseTo(sandForce(gravel), 8);
    for (const symbol of ['b_c', 'c_w', 'f_t', 'H_c', 'V_collar'])
      expect(gravel.has('lean', symbol), symbol).toBe(false);
  });

  it('surround the wider side of a post, or its diameter', () => {
    const wide = readReasons(
      fenceWith({ wood: { ...PINE_4X4, section: { kind: 'rectangular', widthMm: 88.9, depthMm: 139.7 } } }),
    );
    expect(wide.at('lean', 'b_c')).toBe(139.7);
    expect(wide.at('lean', 'H_c')).toBeCloseTo(collarForce(wide), 8);
    const round = readReasons(fenceWith({ wood: { ...PINE_4X4, section: { kind: 'round', diameterMm: 127 } } }));
    expect(round.at('lean', 'b_c')).toBe(127);
    expect(round.at('lean', 'c_w')).toBeCloseTo((228.6 - 127) / 2, 10);
  });

  it('say what stands in for a footing that is not recorded', () => {
    const unknown = readReasons(groundOf({ embedmentM: null, footing: null, footingDiameterM: null }));
    expect([unknown.at('lean', 'L'), unknown.at('lean', 'w')]).toEqual([0.6095999999999999, 0.2286]);
    for (const symbol of ['L', 'w']) {
      expect(unknown.step('lean', symbol)).toMatchObject({
        tag: 'judgement',
        source: 'stands in for what is not recorded',
      });
    }
    expectWhole(unknown);
  });

  it('let the post alone bear where its collar was found cracked, but not as built', () => {
    const facts = fenceWith(foundAtAll({ collarCracked: true }));
    const cracked = readReasons(facts);
    expect(cracked.at('lean', 'w')).toBeCloseTo(0.0889 * Math.SQRT2, 12);
    expect(cracked.step('lean', 'w').equation).toBe('collar found cracked: post diagonal');
    expect(cracked.has('lean', 'V_collar')).toBe(false);
    const fresh = readReasons(fenceWith(foundAtAll({ collarCracked: true }, '2015-03-01')), { seasonLabel: 'new' });
    expect(fresh.at('lean', 'w')).toBeCloseTo(0.2286, 12);
    expect(fresh.step('lean', 'w').equation).toBe('concrete diameter, else post diagonal');
    expect(fresh.has('lean', 'V_collar')).toBe(true);
  });

  it('show that a thin collar bursts before the footing gives', () => {
    const thin = readReasons(groundOf({ embedmentM: 1.2, footing: 'concrete', footingDiameterM: 0.11 }));
    expect(thin.at('lean', 'H_c')).toBeLessThan(thin.at('lean', 'H'));
    expect(thin.at('standing', 'V_lean,m')).toBe(thin.at('lean', 'V_collar'));
  });
});

describe('the steps of a footing of which something was seen', () => {
  const learnedFooting: FenceFacts['learned'] = { version: 2, paces: [], footing: { logShift: -0.2, spread: 0.3 } };

  it('give spread and score of what storms told', () => {
    const storms = readReasons(fenceWith(STORMS));
    expect(storms.at('lean', 's_B')).toBe(0.4);
    const z = storms.at('lean', 'z_B');
    expect(z).not.toBe(0);
    const B = Math.exp(0.4 * z);
    expect(storms.at('lean', 'B')).toBeCloseTo(B, 12);
    expect(storms.step('lean', 'B')).toMatchObject({ equation: 'exp(s_B z_B)', basis: 'expected', unit: '-' });
    const [, k] = demand(storms);
    expect(storms.at('lean', 'V_foot')).toBeCloseTo(Math.sqrt((B * storms.at('lean', 'H')) / k), 10);
    expect(storms.at('lean', 'V_collar')).toBeCloseTo(Math.sqrt((B * storms.at('lean', 'H_c')) / k), 10);
    expect(storms.step('lean', 'V_foot').equation).toBe('sqrt(B H / (k Q)), k and e of the worse run');
    expect(storms.step('lean', 'V_collar').equation).toBe('sqrt(B H_c / (k Q)), k and e of the worse run');
    expectWhole(storms);
  });

  it('shift it by what the register learned', () => {
    const learned = readReasons(fenceWith({ learned: learnedFooting }));
    expect([learned.at('lean', 'm_B'), learned.at('lean', 's_B'), learned.at('lean', 'z_B')]).toEqual([-0.2, 0.3, 0]);
    expect(learned.at('lean', 'B')).toBeCloseTo(Math.exp(-0.2), 12);
    expect(learned.step('lean', 'B').equation).toBe('exp(m_B + s_B z_B)');
    expect(learned.step('lean', 's_B')).toMatchObject({
      tag: 'derived',
      equation: 'standard deviation, as this register learned it',
    });
    expect(learned.step('lean', 'V_foot').equation).toBe('sqrt(B H / k), k and e of the worse run');
    const both = readReasons(fenceWith({ ...STORMS, learned: learnedFooting }));
    expect(both.at('lean', 'B')).toBeCloseTo(Math.exp(-0.2 + 0.3 * both.at('lean', 'z_B')), 12);
    expectWhole(both);
  });

  it('leave it at its median where the register learned of paces only', () => {
    const paces = readReasons(fenceWith({ learned: { version: 2, paces: [], footing: null } }));
    expect(paces.has('lean', 'B')).toBe(false);
  });
});

describe('the steps of a corner post that leans', () => {
  const FREE: FenceFacts['run'] = { ...EXAMPLE_FENCE.run, ends: [{ kind: 'free' }, { kind: 'free' }] };

  it.each([
    { worse: 'other', own: EXAMPLE_FENCE.run, other: { ...FREE, heightM: 2.4 } },
    { worse: 'own', own: FREE, other: { ...EXAMPLE_FENCE.run, heightM: 1.2 } },
  ])('take the run that asks more of the footing, here the $worse', ({ worse, own, other }) => {
    // A thin post at the corner, so that it decides the ends.
    const thin = { ...PINE_4X4, section: { kind: 'rectangular', widthMm: 64, depthMm: 64 } } as const;
    const first = { number: 1, positionM: null, installed: null, wood: thin };
    const corner = readReasons(
      fenceWith({ run: own, posts: [{ ...first, sharedRun: { fenceRef: 'EX-2', run: other, end: 0 } }] }),
      { which: 'ends' },
    );
    const L = corner.at('lean', 'L');
    const soil = corner.at('lean', 'gamma') * 1000 * corner.at('lean', 'Kp') * corner.at('lean', 'w');
    const speed = (e: string, k: string): number =>
      Math.sqrt((0.8 * 0.5 * soil * L ** 3) / (corner.at('wind', e) + L) / corner.at('wind', k, 'expected'));
    const [ofOwn, ofOther] = [speed('e', 'k'), speed('e2', 'k2')];
    expect(worse === 'own').toBe(ofOwn < ofOther);
    expect(corner.at('lean', 'V_foot')).toBeCloseTo(Math.min(ofOwn, ofOther), 9);
  });
});
