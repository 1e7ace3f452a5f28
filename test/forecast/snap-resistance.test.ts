import { describe, expect, it } from 'vitest';
import { NO_LOSS } from '../../src/capacity/section-properties.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import type { PostState } from '../../src/forecast/post-state.ts';
import {
  allowableSnapResistance,
  builtMoment,
  fibreSpread,
  snapResistance,
} from '../../src/forecast/snap-resistance.ts';
import { EXAMPLE_FENCE, PINE_4X4 } from './example-fence.ts';

const post = (change: Partial<PostState> = {}): PostState => ({
  ...fenceStates(EXAMPLE_FENCE)[0]!.state.posts[5]!,
  ...change,
});
const found = (change: Partial<PostState['condition']>, more: Partial<PostState> = {}): PostState =>
  post({ condition: { ...post().condition, ...change }, ...more });
const STEEL = { wood: { ...PINE_4X4, treatmentClass: 'does-not-rot', momentCapacityNm: 2500 } } as const;
/** 5 mm off every face: 78.9 mm square. */
const LOSS = { ...NO_LOSS, depthMm: 5 };

/** 3.5 in = 88.9 mm: S = 88.9^3/6 = 117,099 mm3, A = 7,903 mm2; 32.5 MPa in bending, 0.118 of it in shear. */
const BUILT_NM = (32.5 * (88.9 ** 3 / 6)) / 1000;
const BUILT_SHEAR_N = (2 / 3) * 32.5 * 0.118 * 88.9 ** 2;

describe('what a post resists', () => {
  it('is 3,806 N m and 20.2 kN of a sound 4x4, and no force at its rails that anybody reported', () => {
    const { momentNm, shearN, railN } = snapResistance(post(), NO_LOSS, 1);
    expect(BUILT_NM).toBeCloseTo(3805.7, 0);
    expect(momentNm).toBeCloseTo(BUILT_NM, 6);
    expect(shearN).toBeCloseTo(BUILT_SHEAR_N, 6);
    expect(railN).toBe(Number.POSITIVE_INFINITY);
  });

  it('goes with the fibre and with what is left of the section', () => {
    const { momentNm, shearN } = snapResistance(post(), LOSS, 1.2);
    expect(momentNm).toBeCloseTo(1.2 * BUILT_NM * (78.9 / 88.9) ** 3, 6);
    expect(shearN).toBeCloseTo(1.2 * BUILT_SHEAR_N * (78.9 / 88.9) ** 2, 6);
  });

  it('is the given moment of a post that does not rot, whatever the fibre; it does not shear', () => {
    expect(snapResistance(post(STEEL), LOSS, 0.5)).toEqual({
      momentNm: 2500,
      shearN: Number.POSITIVE_INFINITY,
      railN: Number.POSITIVE_INFINITY,
    });
  });

  it('is with a sleeve the weaker of the sleeve and the sound wood above it', () => {
    expect(snapResistance(post({ sleeveNm: 2000 }), LOSS, 1)).toMatchObject({
      momentNm: 2000,
      shearN: Number.POSITIVE_INFINITY,
    });
    expect(snapResistance(post({ sleeveNm: 9000 }), LOSS, 0.8).momentNm).toBeCloseTo(0.8 * BUILT_NM, 6);
  });

  it('is nothing once it is broken, by either basis, steel or not', () => {
    for (const broken of [found({ broken: true }), found({ broken: true }, STEEL)]) {
      expect(snapResistance(broken, NO_LOSS, 1)).toEqual({ momentNm: 0, shearN: 0, railN: 0 });
      expect(allowableSnapResistance(broken, NO_LOSS)).toEqual({ momentNm: 0, shearN: 0, railN: 0 });
    }
  });

  it('counts rails where an inspection reported them: in proportion to what is left, twice as much with two bays', () => {
    // Two 16d nails 2 in deep: 2 x 7,850 x 0.55^2.5 x 0.162 x 2 lbf a rail end, half of a bay's wind on the middle rail.
    const railEndN = 2 * 7850 * 0.55 ** 2.5 * 0.162 * 2 * 4.4482216;
    const inner = snapResistance(found({ railConnection: 0.4 }), NO_LOSS, 1);
    expect(inner.railN).toBeCloseTo((0.4 * railEndN * 2) / 0.5, 1);
    expect(inner.momentNm).toBeCloseTo(BUILT_NM, 6);
    expect(snapResistance(found({ railConnection: 0.4 }, { bays: 1 }), NO_LOSS, 1).railN).toBeCloseTo(
      inner.railN / 2,
      6,
    );
    expect(snapResistance(found({ railConnection: 0 }, STEEL), NO_LOSS, 1)).toMatchObject({
      momentNm: 2500,
      railN: 0,
    });
  });
});

describe('what a post may be asked to resist', () => {
  it('is the allowable stress on what is left', () => {
    const sound = allowableSnapResistance(post(), NO_LOSS);
    const rotten = allowableSnapResistance(post(), LOSS);
    expect(sound.momentNm).toBeLessThan(BUILT_NM / 2);
    expect(sound.momentNm).toBeGreaterThan(BUILT_NM / 6);
    expect(rotten.momentNm / sound.momentNm).toBeCloseTo((78.9 / 88.9) ** 3, 10);
    expect(rotten.shearN / sound.shearN).toBeCloseTo((78.9 / 88.9) ** 2, 10);
    expect(sound.railN).toBe(Number.POSITIVE_INFINITY);
  });

  it('is the moment of steel over 1.67, of a sleeve too unless the wood above it is weaker', () => {
    expect(allowableSnapResistance(post(STEEL), LOSS)).toMatchObject({
      momentNm: 2500 / 1.67,
      shearN: Number.POSITIVE_INFINITY,
    });
    expect(allowableSnapResistance(post({ sleeveNm: 1000 }), LOSS)).toMatchObject({
      momentNm: 1000 / 1.67,
      shearN: Number.POSITIVE_INFINITY,
    });
    const sound = allowableSnapResistance(post(), NO_LOSS).momentNm;
    expect(allowableSnapResistance(post({ sleeveNm: 90_000 }), LOSS).momentNm).toBeCloseTo(sound, 10);
  });

  it('takes rails at their design value, wetting and drying: far less than they really hold, half with one bay', () => {
    const inner = allowableSnapResistance(found({ railConnection: 1 }), NO_LOSS).railN;
    // 1,380 x 1.6 x 0.25 over 7,850
    expect(inner / snapResistance(found({ railConnection: 1 }), NO_LOSS, 1).railN).toBeCloseTo(
      (1380 * 1.6 * 0.25) / 7850,
      6,
    );
    expect(allowableSnapResistance(found({ railConnection: 1 }, { bays: 1 }), NO_LOSS).railN).toBeCloseTo(inner / 2, 6);
  });
});

describe('the wood of a post', () => {
  it('scatters by 0.15 from fence to fence, by 0.25 more where its species is not known, steel not at all', () => {
    expect(fibreSpread(PINE_4X4)).toBe(0.15);
    expect(fibreSpread({ ...PINE_4X4, species: 'unknown' })).toBeCloseTo(Math.sqrt(0.15 ** 2 + 0.25 ** 2), 12);
    expect(fibreSpread({ ...STEEL.wood, species: 'unknown' })).toBe(0);
  });

  it('was built with its sound moment, whatever was found or put around it since', () => {
    expect(builtMoment(post())).toBeCloseTo(BUILT_NM, 6);
    expect(builtMoment(found({ broken: true }, { sleeveNm: 500 }))).toBeCloseTo(BUILT_NM, 6);
    expect(builtMoment(post(STEEL))).toBe(2500);
  });
});
