import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  allowableRailConnectionForce,
  railConnectionForce,
  referenceWithdrawal,
  specificGravity,
  usualRailConnection,
} from '../../src/capacity/rail-connection.ts';
import { SPECIES_KEYS } from '../../src/capacity/wood-strength.ts';
import { lbfFromNewtons } from '../../src/units/force.ts';
import { mmFromInches } from '../../src/units/length.ts';
import { type Place, referenceSpeedMph } from '../published/reference-fence.ts';

const PINE = usualRailConnection('southern-pine');
/** Wind in allowable stress design [-]: 0.6 W. */
const ASD_WIND = 0.6;
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('a nail in withdrawal', () => {
  it('meets the table of a 16d common nail in southern pine: 50.15 lb/in, 125.4 lb for 2.5 in', () => {
    const inches = (penetration: number): number =>
      lbfFromNewtons(referenceWithdrawal({ ...PINE, penetrationMm: mmFromInches(penetration) }));
    expect(inches(1)).toBeCloseTo(50.15, 2);
    expect(inches(2.5)).toBeCloseTo(125.4, 1);
  });
});

describe('a rail connection', () => {
  it('carries 2,140 lb of post force dry, 535 lb after wetting and drying, 4,565 lb at its ultimate', () => {
    const strengthLevel = (moisture: 'cyclic' | 'dry'): number =>
      lbfFromNewtons(allowableRailConnectionForce(PINE, 1, { moisture }) / ASD_WIND);
    expect(strengthLevel('dry')).toBeCloseTo(2140, -1);
    expect(strengthLevel('cyclic')).toBeCloseTo(535, 0);
    expect(lbfFromNewtons(railConnectionForce(PINE, 1))).toBeCloseTo(4565, -1);
  });

  it.each([
    ['interior, Case A', 89.8, 73.9],
    ['end, Case C', 81.8, 67.3],
    ['first interior, Case C', 67.0, 55.1],
  ] as readonly (readonly [Place, number, number])[])(
    'pulls out at the speeds of the worked fence: %s, %s mph in B, %s mph in C',
    (place, inB, inC) => {
      const forceN = allowableRailConnectionForce(PINE, 1) / ASD_WIND;
      expect(Math.abs(referenceSpeedMph(forceN, place, 'B') - inB)).toBeLessThan(0.15);
      expect(Math.abs(referenceSpeedMph(forceN, place, 'C') - inC)).toBeLessThan(0.15);
    },
  );

  it('holds in proportion to what is left of it, and nothing once nothing is left', () => {
    fc.assert(
      fc.property(share, (state) => {
        expect(railConnectionForce(PINE, state)).toBeCloseTo(state * railConnectionForce(PINE, 1), 6);
        expect(allowableRailConnectionForce(PINE, state)).toBeCloseTo(state * allowableRailConnectionForce(PINE, 1), 6);
      }),
    );
    expect(railConnectionForce(PINE, 0)).toBe(0);
  });

  it('carries half as much of the post where one bay hangs on it, both ways', () => {
    expect(railConnectionForce(PINE, 1, 1)).toBeCloseTo(railConnectionForce(PINE, 1) / 2, 9);
    expect(allowableRailConnectionForce(PINE, 1, { bays: 1 })).toBeCloseTo(
      allowableRailConnectionForce(PINE, 1) / 2,
      9,
    );
  });

  it('loses a third to toe-nailing at its ultimate, but by the code outlasts the face nail that wets and dries', () => {
    const toed = { ...PINE, driven: 'toe-nailed' } as const;
    expect(railConnectionForce(toed, 1) / railConnectionForce(PINE, 1)).toBeCloseTo(0.67, 9);
    const codes = allowableRailConnectionForce(toed, 1);
    expect(codes / allowableRailConnectionForce(PINE, 1, { moisture: 'dry' })).toBeCloseTo(0.67, 9);
    expect(codes).toBe(allowableRailConnectionForce(toed, 1, { moisture: 'dry' }));
  });

  it.each([-0.01, 1.01, Number.NaN])('refuses a state of %s', (state) => {
    expect(() => railConnectionForce(PINE, state)).toThrow(/outside 0 to 1/);
    expect(() => allowableRailConnectionForce(PINE, state)).toThrow(/outside 0 to 1/);
  });
});

it('takes every species at a specific gravity between white cedar and locust, an unknown one on the low side', () => {
  for (const species of SPECIES_KEYS) {
    expect(specificGravity(species)).toBeGreaterThanOrEqual(specificGravity('northern-white-cedar'));
    expect(specificGravity(species)).toBeLessThanOrEqual(specificGravity('black-locust'));
  }
  expect(specificGravity('unknown')).toBeLessThanOrEqual(specificGravity('spruce-pine-fir'));
});
