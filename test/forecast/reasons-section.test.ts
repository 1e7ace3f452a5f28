import { beforeAll, describe, expect, it } from 'vitest';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';
import { expectWhole, fenceWith, foundAtAll, type ReasonReader, readReasons } from './reason-reader.ts';

const TRIMMED = { guards: false, yearlyCutMm: 0.8 } as const;
const SECTION_4X6 = { kind: 'rectangular', widthMm: 88.9, depthMm: 139.7 } as const;
const ROUND = { ...PINE_4X4, section: { kind: 'round', diameterMm: 127 } } as const;
const NO_CUT = 0;
const cutOf = (reader: ReasonReader): number => (reader.has('rot', 'c') ? reader.at('rot', 'c') : NO_CUT);

/** The sides that are left, from what is printed [mm]. */
const sidesLeft = (reader: ReasonReader): readonly [number, number] => {
  const d = reader.at('rot', 'd');
  return [reader.at('section', 'b') - 2 * d, reader.at('section', 'h') - 2 * d - cutOf(reader)];
};
const diameterLeft = (reader: ReasonReader): number =>
  reader.at('section', 'D') - 2 * reader.at('rot', 'd') - cutOf(reader);

describe('the steps of a sawn post', () => {
  let plain: ReasonReader;
  let cut: ReasonReader;
  let hollow: ReasonReader;
  beforeAll(() => {
    plain = readReasons(EXAMPLE_FENCE);
    cut = readReasons(fenceWith({ trimmer: TRIMMED, wood: { ...PINE_4X4, section: SECTION_4X6 } }));
    hollow = readReasons(fenceWith({ trimmer: TRIMMED, ...foundAtAll({ cavityMm: 40 }) }));
  });

  it('take the rot off both sides', () => {
    const [b, h] = sidesLeft(plain);
    expect(plain.at('section', 'b')).toBeCloseTo(88.9, 10);
    expect(plain.at('section', 'h')).toBeCloseTo(88.9, 10);
    expect(plain.at('section', 'S')).toBeCloseTo((b * h * h) / 6, 6);
    expect(plain.at('section', 'S/S0')).toBeCloseTo((b * h * h) / 88.9 ** 3, 12);
    expect(plain.at('section', 'A')).toBeCloseTo(b * h, 8);
    expect(plain.step('section', 'S')).toMatchObject({
      basis: 'both',
      unit: 'mm3',
      equation: '(b - 2d)(h - 2d - c)^2 / 6',
    });
    expect(plain.step('section', 'b')).toMatchObject({ unit: 'mm', tag: 'recorded' });
    expect(plain.has('section', 'v')).toBe(false);
    expect(plain.has('section', 'D')).toBe(false);
  });

  it('take a cut off the depth in the wind alone', () => {
    const [b, h] = sidesLeft(cut);
    expect([cut.at('section', 'b'), cut.at('section', 'h')]).toEqual([88.9, 139.7]);
    expect(cutOf(cut)).toBeGreaterThan(5);
    expect(cut.at('section', 'S')).toBeCloseTo((b * h * h) / 6, 6);
    expect(cut.at('section', 'A')).toBeCloseTo(b * h, 8);
    expect(cut.at('section', 'S/S0')).toBeCloseTo((b * h * h) / (88.9 * 139.7 ** 2), 12);
    expectWhole(cut);
  });

  it('take the hollow out of what is left', () => {
    const [b, h] = sidesLeft(hollow);
    expect(hollow.at('section', 'v')).toBe(40);
    expect(hollow.step('section', 'v')).toMatchObject({ unit: 'mm', tag: 'recorded' });
    const modulus = (b * h * h) / 6 - (Math.PI * 40 ** 4) / 64 / (h / 2);
    expect(hollow.at('section', 'S')).toBeCloseTo(modulus, 6);
    expect(hollow.at('section', 'A')).toBeCloseTo(b * h - (Math.PI * 40 ** 2) / 4, 8);
    expect(hollow.step('section', 'S').equation).toContain('less pi v^4 / 64');
    expect(hollow.step('section', 'A').equation).toBe('(b - 2d)(h - 2d - c), less pi v^2 / 4');
    expectWhole(hollow);
  });

  it('leave nothing of bending where the shell is too thin', () => {
    const shell = readReasons(fenceWith(foundAtAll({ cavityMm: 70 })));
    // 82.8 mm left: a shell of 6.4 mm is under an eighth
    expect(shell.at('section', 'S')).toBe(0);
    expect(shell.at('snap', 'V_bend')).toBe(0);
  });
});

describe('the steps of a round post', () => {
  let plain: ReasonReader;
  let hollow: ReasonReader;
  beforeAll(() => {
    plain = readReasons(fenceWith({ wood: ROUND, trimmer: TRIMMED }));
    hollow = readReasons(fenceWith({ wood: ROUND, ...foundAtAll({ cavityMm: 50 }) }));
  });

  it('take rot off all round, and a cut with it', () => {
    const left = diameterLeft(plain);
    expect(plain.at('section', 'D')).toBe(127);
    expect(plain.step('section', 'D')).toMatchObject({ unit: 'mm', tag: 'recorded', basis: 'both' });
    expect(plain.at('section', 'S')).toBeCloseTo((Math.PI * left ** 3) / 32, 6);
    expect(plain.at('section', 'S/S0')).toBeCloseTo((left / 127) ** 3, 12);
    expect(plain.at('section', 'A')).toBeCloseTo((Math.PI * left ** 2) / 4, 8);
    expect(plain.step('section', 'S').equation).toBe('pi (D - 2d - c)^3 / 32');
    expect(plain.step('section', 'A').equation).toBe('pi (D - 2d - c)^2 / 4');
    expect(plain.has('section', 'b')).toBe(false);
    expectWhole(plain);
  });

  it('take the hollow out of what is left', () => {
    const left = diameterLeft(hollow);
    const modulus = (Math.PI * left ** 3) / 32 - (Math.PI * 50 ** 4) / 64 / (left / 2);
    expect(hollow.at('section', 'S')).toBeCloseTo(modulus, 6);
    expect(hollow.at('section', 'A')).toBeCloseTo((Math.PI * (left ** 2 - 50 ** 2)) / 4, 8);
  });
});

describe('the steps of a post known by its moment alone', () => {
  it('have no section', () => {
    const steel = readReasons(
      fenceWith({ wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 4000 } }),
    );
    expect(steel.steps.filter(({ group }) => group === 'section')).toEqual([]);
  });
});
