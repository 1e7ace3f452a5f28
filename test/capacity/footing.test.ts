import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bromsClayForce,
  bromsSandForce,
  constrainedDepth,
  passiveCoefficient,
  pivotSandForce,
  presumptiveDepth,
  presumptiveForce,
  type RigidPost,
} from '../../src/capacity/footing.ts';

const SAND = { frictionAngleDeg: 32, unitWeightNPerM3: 18_000 };
const posts = fc.record({
  embedmentM: fc.double({ min: 0.3, max: 3, noNaN: true }),
  widthM: fc.double({ min: 0.09, max: 0.6, noNaN: true }),
  armM: fc.double({ min: 0.1, max: 2, noNaN: true }),
});
const METHODS = {
  'the code formula': (post: RigidPost) => presumptiveForce(post, 300),
  'Broms in sand': (post: RigidPost) => bromsSandForce(post, SAND),
  'pivot statics': (post: RigidPost) => pivotSandForce(post, SAND),
  'Broms in clay': (post: RigidPost) => bromsClayForce(post, 50_000),
} as const;

describe.each(Object.entries(METHODS))('a footing by %s', (_, force) => {
  it('never holds less when it is set deeper, and never more when pushed higher up', () => {
    fc.assert(
      fc.property(posts, fc.double({ min: 0, max: 1, noNaN: true }), (post, more) => {
        const now = force(post);
        expect(now).toBeGreaterThanOrEqual(0);
        expect(force({ ...post, embedmentM: post.embedmentM + more })).toBeGreaterThanOrEqual(now * (1 - 1e-9));
        expect(force({ ...post, armM: post.armM + more })).toBeLessThanOrEqual(now * (1 + 1e-9));
      }),
    );
  });
});

describe('true statics in sand', () => {
  it('lie at 0.58 to 0.79 of Broms: 0.8 of Broms is never under them', () => {
    fc.assert(
      fc.property(posts, (post) => {
        const share = pivotSandForce(post, SAND) / bromsSandForce(post, SAND);
        expect(share).toBeGreaterThan(0.58);
        expect(share).toBeLessThan(0.79);
      }),
    );
  });

  it('balance forces and moments about the surface at the pivot', () => {
    const post = { embedmentM: 0.6, widthM: 0.23, armM: 1 };
    const force = pivotSandForce(post, SAND);
    const k = 3 * SAND.unitWeightNPerM3 * passiveCoefficient(SAND.frictionAngleDeg) * post.widthM;
    const pivot = Math.sqrt(force / k + post.embedmentM ** 2 / 2);
    expect(force * post.armM).toBeCloseTo((k * (post.embedmentM ** 3 - 2 * pivot ** 3)) / 3, 6);
  });
});

describe('a footing in clay', () => {
  it('holds nothing above one and a half widths, where the formula ignores the soil', () => {
    expect(bromsClayForce({ embedmentM: 0.3, widthM: 0.2, armM: 1 }, 50_000)).toBe(0);
    expect(bromsClayForce({ embedmentM: 0.2, widthM: 0.2, armM: 1 }, 50_000)).toBe(0);
    expect(bromsClayForce({ embedmentM: 0.31, widthM: 0.2, armM: 1 }, 50_000)).toBeGreaterThan(0);
  });

  it('balances the moments of its own formula', () => {
    fc.assert(
      fc.property(posts, (post) => {
        fc.pre(post.embedmentM > 1.6 * post.widthM);
        const cu = 50_000;
        const force = bromsClayForce(post, cu);
        const f = force / (9 * cu * post.widthM);
        const g = post.embedmentM - 1.5 * post.widthM - f;
        const moment = force * (post.armM + 1.5 * post.widthM + 0.5 * f);
        expect(moment / (2.25 * post.widthM * cu * g * g)).toBeCloseTo(1, 6);
      }),
    );
  });
});

describe('the code formula', () => {
  it('comes back from its own depth', () => {
    fc.assert(
      fc.property(posts, (post) => {
        const load = { forceN: presumptiveForce(post, 300), armM: post.armM, widthM: post.widthM };
        expect(presumptiveDepth(load, 300)).toBeCloseTo(post.embedmentM, 6);
      }),
    );
  });

  it('does not let bearing grow beyond twelve feet', () => {
    const at = (embedmentM: number) => presumptiveForce({ embedmentM, widthM: 0.3, armM: 0 }, 150);
    expect(at(8) / at(4)).toBeCloseTo(2, 9);
    expect(at(3) / at(1.5)).toBeCloseTo(4, 9);
  });

  it('asks for less depth where a floor holds the pole', () => {
    const load = { forceN: 2000, armM: 1.2, widthM: 0.3 };
    expect(constrainedDepth(load, 266)).toBeLessThan(presumptiveDepth(load, 266));
  });
});
