import { beforeAll, describe, expect, it } from 'vitest';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';
import { expectWhole, fenceWith, foundAtAll, type ReasonReader, readReasons, STORMS } from './reason-reader.ts';

const ROUND = { ...PINE_4X4, section: { kind: 'round', diameterMm: 127 } } as const;
const STEEL = { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 4000 } as const;
const sleeveOf = (momentCapacityNm: number): Pick<FenceFacts, 'works'> => ({
  works: [{ kind: 'steel-sleeve', ref: 'W', day: '2026-03-01', posts: 'all', momentCapacityNm }],
});

/** Factors that storms moved, 1 where none did [-]. */
const factor = (reader: ReasonReader, symbol: 'F' | 'Q'): number =>
  reader.has('snap', symbol) ? reader.at('snap', symbol) : 1;

/** Bending and shear speeds worked out from what is printed [m/s]. */
function speeds(reader: ReasonReader, shearShare: number): readonly [bend: number, shear: number] {
  const [F, Q] = [factor(reader, 'F'), factor(reader, 'Q')];
  const k = reader.at('wind', 'k', 'expected') * Q;
  const moment = (F * reader.at('snap', 'f') * reader.at('section', 'S')) / 1000;
  const shear = shearShare * F * reader.at('snap', 'f_v') * reader.at('section', 'A');
  return [Math.sqrt(moment / (reader.at('wind', 'e') * k)), Math.sqrt(shear / k)];
}

describe('the steps of a post that snaps', () => {
  let plain: ReasonReader;
  let round: ReasonReader;
  let storms: ReasonReader;
  beforeAll(() => {
    plain = readReasons(EXAMPLE_FENCE);
    round = readReasons(fenceWith({ wood: { ...ROUND, species: 'douglas-fir' } }));
    storms = readReasons(fenceWith(STORMS));
  });

  it('lead from strength and section to bending and shear', () => {
    expect(plain.at('snap', 'f')).toBe(32.5);
    expect(plain.step('snap', 'f').equation).toBe('32.5 MPa of the species x grade 1 x size or shape 1');
    expect(plain.at('snap', 'f_v')).toBeCloseTo(0.118 * 32.5, 12);
    expect(plain.at('snap', 'M')).toBeCloseTo((32.5 * plain.at('section', 'S')) / 1000, 8);
    expect(plain.step('snap', 'M')).toMatchObject({ unit: 'N m', equation: 'f S', tag: 'derived' });
    const [bend, shear] = speeds(plain, 2 / 3);
    expect(plain.at('snap', 'V_bend')).toBeCloseTo(bend, 10);
    expect(plain.at('snap', 'V_shear')).toBeCloseTo(shear, 10);
    expect(plain.step('snap', 'V_bend').equation).toBe('sqrt(M / (e k)), e and k of the worse run');
    expect(plain.step('snap', 'V_shear').equation).toBe('sqrt(2/3 f_v A / k)');
    for (const symbol of ['F', 's_F', 'z_F', 'Q', 'G', 'H_rail', 'M_sleeve'])
      expect(plain.has('snap', symbol), symbol).toBe(false);
    expectWhole(plain);
  });

  it('take a round post at nine tenths of clear wood, and three quarters of its shear', () => {
    expect(round.at('snap', 'f')).toBeCloseTo(0.9 * 53.1, 12);
    const [bend, shear] = speeds(round, 3 / 4);
    expect(round.at('snap', 'V_bend')).toBeCloseTo(bend, 10);
    expect(round.at('snap', 'V_shear')).toBeCloseTo(shear, 10);
    expect(round.step('snap', 'V_shear').equation).toBe('sqrt(3/4 f_v A / k)');
  });

  it('give spread and score of what storms told of strength and load', () => {
    for (const [symbol, spread] of [
      ['F', 0.15],
      ['Q', 0.17],
    ] as const) {
      expect(storms.at('snap', `s_${symbol}`)).toBe(spread);
      expect(storms.step('snap', `s_${symbol}`)).toMatchObject({ unit: '-', tag: 'judgement', basis: 'expected' });
      const z = storms.at('snap', `z_${symbol}`);
      expect(z).not.toBe(0);
      expect(storms.step('snap', `z_${symbol}`)).toMatchObject({ equation: 'median of the posterior', tag: 'derived' });
      expect(storms.at('snap', symbol)).toBeCloseTo(Math.exp(spread * z), 12);
      expect(storms.step('snap', symbol).equation).toBe(`exp(s_${symbol} z_${symbol})`);
      expect(storms.has('snap', `m_${symbol}`)).toBe(false);
    }
    const [bend, shear] = speeds(storms, 2 / 3);
    expect(storms.at('snap', 'V_bend')).toBeCloseTo(bend, 10);
    expect(storms.at('snap', 'V_shear')).toBeCloseTo(shear, 10);
    expect(storms.step('snap', 'M').equation).toBe('F f S');
    expect(storms.step('snap', 'V_bend').equation).toBe('sqrt(M / (e k Q)), e and k of the worse run');
    expect(storms.step('snap', 'V_shear').equation).toBe('sqrt(2/3 F f_v A / (k Q))');
    expectWhole(storms);
  });

  it('spread the strength of an unknown species wider', () => {
    const unknown = readReasons(fenceWith({ ...STORMS, wood: { ...PINE_4X4, species: 'unknown' } }));
    expect(unknown.at('snap', 's_F')).toBeCloseTo(Math.sqrt(0.15 ** 2 + 0.25 ** 2), 12);
    expect(unknown.at('snap', 'f')).toBe(26);
  });
});

describe('the steps of a post with a sleeve', () => {
  it('take the sleeve where it is the weaker, whatever rot has left of the wood', () => {
    const weak = readReasons(fenceWith(sleeveOf(1500)));
    expect([weak.at('snap', 'M_sleeve'), weak.at('snap', 'M')]).toEqual([1500, 1500]);
    expect(weak.step('snap', 'M_sleeve')).toMatchObject({ unit: 'N m', tag: 'recorded' });
    expect(weak.step('snap', 'M').equation).toBe('the lesser of M_sleeve and f S0 above it');
    expect(weak.has('snap', 'V_shear')).toBe(false);
    expectWhole(weak);
  });

  it('take the sound wood above a strong one', () => {
    const strong = readReasons(fenceWith({ ...sleeveOf(9000), ...STORMS }));
    const built = strong.at('section', 'S') / strong.at('section', 'S/S0');
    expect(strong.at('snap', 'M')).toBeCloseTo((strong.at('snap', 'F') * strong.at('snap', 'f') * built) / 1000, 8);
    expect(strong.step('snap', 'M').equation).toBe('the lesser of M_sleeve and F f S0 above it');
  });
});

describe('the steps of a steel post', () => {
  let steel: ReasonReader;
  beforeAll(() => {
    steel = readReasons(fenceWith({ wood: STEEL, ...STORMS }));
  });

  it('take its moment as entered, with no wood in it', () => {
    expect(steel.at('snap', 'M')).toBe(4000);
    expect(steel.step('snap', 'M')).toMatchObject({ equation: 'as entered', tag: 'recorded', source: 'the register' });
    for (const symbol of ['f', 'F', 's_F', 'f_v', 'V_shear']) expect(steel.has('snap', symbol), symbol).toBe(false);
    const demand = steel.at('wind', 'e') * steel.at('wind', 'k', 'expected') * factor(steel, 'Q');
    expect(steel.at('snap', 'V_bend')).toBeCloseTo(Math.sqrt(4000 / demand), 10);
    expectWhole(steel);
  });
});

describe('the steps of the rails', () => {
  /** Force on the post [N]: nails of 0.162 in by 2 in, 7,850 lbf G^2.5 D L each, of which `q` is left. */
  const railForce = (gravity: number, q: number, share: number): number =>
    (q * 2 * 7850 * 4.4482216152605 * gravity ** 2.5 * 0.162 * 2) / share;

  it('lead from the nails to the speed at which they pull out', () => {
    const rails = readReasons(fenceWith(foundAtAll({ railConnection: 0.4 })));
    expect(rails.at('snap', 'G')).toBe(0.55);
    expect(rails.at('snap', 'D_n') / 25.4).toBeCloseTo(0.162, 12);
    expect(rails.at('snap', 'L_n') / 25.4).toBeCloseTo(2, 12);
    expect([rails.at('snap', 'q'), rails.at('snap', 'share')]).toEqual([0.4, 0.25]);
    expect(rails.at('snap', 'H_rail')).toBeCloseTo(railForce(0.55, 0.4, 0.25), 8);
    const speed = Math.sqrt(rails.at('snap', 'H_rail') / rails.at('wind', 'k', 'expected'));
    expect(rails.at('snap', 'V_rail')).toBeCloseTo(speed, 10);
    expect(rails.step('snap', 'V_rail').equation).toBe('sqrt(H_rail / k)');
    expect(rails.step('snap', 'H_rail').equation).toContain('q x 2 x 7,850 lbf');
    expectWhole(rails);
  });

  it('carry half of the force of a post at an end, and the load that storms told of', () => {
    const ends = readReasons(fenceWith({ ...foundAtAll({ railConnection: 0 }), ...STORMS }), { which: 'ends' });
    const { bays } = ends.context.postClass.sample.post;
    expect(ends.at('snap', 'share')).toBe(bays === 1 ? 0.5 : 0.25);
    expect(ends.at('snap', 'V_rail')).toBe(0);
    const alone = foundAtAll({ railConnection: 0.3 });
    const free = { ...EXAMPLE_FENCE.run, ends: [{ kind: 'free' }, { kind: 'free' }] } as const;
    const first = { number: 1, positionM: null, installed: null, wood: null, sharedRun: null };
    const worst = readReasons(
      fenceWith({
        ...alone,
        ...STORMS,
        run: { ...free, heightM: 2.4 },
        posts: [{ ...first, wood: { ...PINE_4X4, species: 'unknown' } }],
      }),
      { which: 'ends' },
    );
    expect(worst.at('snap', 'V_rail')).toBeCloseTo(
      Math.sqrt(worst.at('snap', 'H_rail') / (worst.at('wind', 'k', 'expected') * worst.at('snap', 'Q'))),
      10,
    );
    expect(worst.step('snap', 'V_rail').equation).toBe('sqrt(H_rail / (k Q))');
    const gravity = worst.at('snap', 'G');
    expect(worst.at('snap', 'H_rail')).toBeCloseTo(railForce(gravity, 0.3, worst.at('snap', 'share')), 8);
  });

  it('carry half of the force of the only kind of post on a one-bay run', () => {
    const two = foundAtAll({ railConnection: 0.5 });
    const readings = two.inspections[0]!.readings.slice(0, 2);
    const single = readReasons(
      fenceWith({
        run: { ...EXAMPLE_FENCE.run, runLengthM: 2.4384 },
        inspections: [{ ...two.inspections[0]!, readings }],
      }),
    );
    expect(single.group).toBe('ends');
    expect(single.at('snap', 'share')).toBe(0.5);
    expect(single.at('snap', 'H_rail')).toBeCloseTo(railForce(0.55, 0.5, 0.5), 8);
  });
});

describe('the steps of a broken post', () => {
  it('say that it holds nothing, and stop there', () => {
    const broken = readReasons(fenceWith(foundAtAll({ groundline: { kind: 'broken' }, railConnection: 0.5 })));
    expect([broken.at('snap', 'M'), broken.at('snap', 'V_bend')]).toEqual([0, 0]);
    expect(broken.step('snap', 'M').equation).toBe('found broken');
    for (const symbol of ['f_v', 'V_shear', 'G', 'V_rail']) expect(broken.has('snap', symbol), symbol).toBe(false);
    expect(broken.at('standing', 'V_snap,m')).toBe(0);
    expectWhole(broken);
  });

  it('take it as sound at installation, on the day on which it was found', () => {
    const day = '2015-03-01';
    const facts = fenceWith(foundAtAll({ groundline: { kind: 'broken' } }, day));
    const fresh = readReasons(facts, { seasonLabel: 'new' });
    expect(fresh.at('snap', 'M')).toBeCloseTo((32.5 * 88.9 ** 3) / 6 / 1000, 8);
    expect(fresh.step('snap', 'M').equation).toBe('f S');
    expect(fresh.has('snap', 'V_shear')).toBe(true);
  });
});

describe('the steps of a corner post whose runs ask most in different ways', () => {
  it('bend it by the one and shear it by the other', () => {
    // A low panel high up asks less force than the fence's own run, but three times its arm.
    const run: FenceFacts['run'] = {
      ...EXAMPLE_FENCE.run,
      heightM: 3.6,
      bottomGapM: 2.9,
      ends: [{ kind: 'free' }, { kind: 'free' }],
    };
    const first = { number: 1, positionM: null, installed: null, wood: null };
    const corner = readReasons(fenceWith({ posts: [{ ...first, sharedRun: { fenceRef: 'EX-2', run, end: 0 } }] }), {
      which: 'ends',
    });
    expect(corner.context.postClass.numbers).toEqual([1]);
    const [k, k2] = [corner.at('wind', 'k', 'expected'), corner.at('wind', 'k2', 'expected')];
    const [e, e2] = [corner.at('wind', 'e'), corner.at('wind', 'e2')];
    expect(k).toBeGreaterThan(k2);
    expect(k2 * e2).toBeGreaterThan(k * e);
    expect(corner.at('snap', 'V_bend')).toBeCloseTo(Math.sqrt(corner.at('snap', 'M') / (k2 * e2)), 10);
    const shear = (2 / 3) * corner.at('snap', 'f_v') * corner.at('section', 'A');
    expect(corner.at('snap', 'V_shear')).toBeCloseTo(Math.sqrt(shear / k), 10);
  });
});
