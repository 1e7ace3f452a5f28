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
import { lbfFromNewtons, newtonsFromLbf } from '../../src/units/force.ts';
import { feetFromMetres, metresFromFeet } from '../../src/units/length.ts';
import { drawnEvenly } from '../drawn-evenly.ts';

const SAND = { frictionAngleDeg: 32, unitWeightNPerM3: 18_000 };
const posts = fc.record({
  embedmentM: drawnEvenly(0.3, 3),
  widthM: drawnEvenly(0.09, 0.6),
  armM: drawnEvenly(0.1, 2),
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
      fc.property(posts, drawnEvenly(0, 1), (post, more) => {
        const now = force(post);
        expect(now).toBeGreaterThanOrEqual(0);
        expect(force({ ...post, embedmentM: post.embedmentM + more })).toBeGreaterThanOrEqual(now * (1 - 1e-9));
        expect(force({ ...post, armM: post.armM + more })).toBeLessThanOrEqual(now * (1 + 1e-9));
      }),
    );
  });
});

describe('footings worked by hand', () => {
  it('meet in sand three times the earth pressure at 30 degrees, and 3.5371 times at 34', () => {
    // (1 + sin phi) / (1 - sin phi)
    expect(passiveCoefficient(0)).toBeCloseTo(1, 12);
    expect(passiveCoefficient(30)).toBeCloseTo(3, 10);
    expect(passiveCoefficient(34)).toBeCloseTo(3.5371, 4);
  });

  it('hold 4,050 N in sand of 30 degrees and 18 kN/m3, one metre deep, 0.3 m wide, pushed at 1 m', () => {
    const sand = { frictionAngleDeg: 30, unitWeightNPerM3: 18_000 };
    expect(bromsSandForce({ embedmentM: 1, widthM: 0.3, armM: 1 }, sand)).toBeCloseTo(4050, 8);
  });

  it('hold by the code 45.8 lbf two feet deep, nine inches wide, pushed at 3.3 ft, at 300 psf/ft', () => {
    const post = { embedmentM: 0.6096, widthM: 0.2286, armM: 1.00584 };
    expect(lbfFromNewtons(presumptiveForce(post, 300))).toBeCloseTo(45.81, 2);
  });

  it('need 0.712 m under a floor for 1 kN at 1 m, half a metre wide, at 150 psf/ft', () => {
    // 150 psf/ft is 23,563 Pa/m; the cube root of 4.25 x 1000 x 1 / (23,563 x 0.5)
    expect(constrainedDepth({ forceN: 1000, armM: 1, widthM: 0.5 }, 150)).toBeCloseTo(0.71186, 4);
    expect(constrainedDepth({ forceN: 500, armM: 2, widthM: 0.5 }, 150)).toBeCloseTo(0.71186, 4);
  });

  it('need 5.02 ft without a floor, and 3.19 ft with one, for 510 lbf at 4 ft, 1 ft wide, at 266 psf/ft', () => {
    const load = { forceN: newtonsFromLbf(510), armM: metresFromFeet(4), widthM: metresFromFeet(1) };
    expect(feetFromMetres(presumptiveDepth(load, 266))).toBeCloseTo(5.02, 1);
    expect(feetFromMetres(constrainedDepth(load, 266))).toBeCloseTo(3.19, 2);
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
