import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forceCoefficientA } from '../../src/capacity/force-coefficient.ts';
import { openingsFactor } from '../../src/capacity/openings.ts';
import { type LoadedRun, loadArm, postLoads, solidHeight } from '../../src/capacity/post-load.ts';

const FENCE: LoadedRun = {
  heightM: 1.8,
  bottomGapM: 0,
  runLengthM: 24,
  solidity: 1,
  returnLengthsM: [0, 0],
  postPositionsM: [0, 2.4, 4.8, 7.2, 9.6, 12, 14.4, 16.8, 19.2, 21.6, 24],
};
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Any run: lengths, gap, solidity, returns, and posts anywhere along it. */
const runs = fc
  .record({
    heightM: fc.double({ min: 0.9, max: 3, noNaN: true }),
    gapShare: fc.double({ min: 0, max: 0.4, noNaN: true }),
    runLengthM: fc.double({ min: 1, max: 120, noNaN: true }),
    solidity: fc.double({ min: 0.05, max: 1, noNaN: true }),
    returnLengthsM: fc.tuple(
      fc.double({ min: 0, max: 8, noNaN: true }),
      fc.constantFrom(0, 3.6, Number.POSITIVE_INFINITY),
    ),
    places: fc.uniqueArray(fc.integer({ min: 0, max: 1000 }), { minLength: 2, maxLength: 20 }),
  })
  .map(
    ({ places, gapShare, ...run }): LoadedRun => ({
      ...run,
      bottomGapM: gapShare * run.heightM,
      postPositionsM: [...places].sort((a, b) => a - b).map((place) => (place / 1000) * run.runLengthM),
    }),
  );

const mirrored = (run: LoadedRun): LoadedRun => ({
  ...run,
  returnLengthsM: [run.returnLengthsM[1], run.returnLengthsM[0]],
  postPositionsM: [...run.postPositionsM].reverse().map((position) => run.runLengthM - position),
});

describe('the loads of a run', () => {
  it('add up to the whole load under even wind', () => {
    fc.assert(
      fc.property(runs, (run) => {
        fc.pre(run.solidity >= 0.7);
        const solid = solidHeight(run);
        const whole =
          openingsFactor(run.solidity) *
          forceCoefficientA(solid / run.heightM, run.runLengthM / solid) *
          run.runLengthM;
        expect(sum(postLoads(run).map((load) => load.caseAM)) / whole).toBeCloseTo(1, 9);
      }),
    );
  });

  it('are mirrored where the run is mirrored', () => {
    fc.assert(
      fc.property(runs, (run) => {
        const loads = postLoads(run);
        const other = [...postLoads(mirrored(run))].reverse();
        loads.forEach((load, index) => {
          expect(other[index]!.caseAM).toBeCloseTo(load.caseAM, 8);
          expect(other[index]!.caseCM).toBeCloseTo(load.caseCM, 8);
        });
      }),
    );
  });

  it('are governed by the larger case, and never negative', () => {
    fc.assert(
      fc.property(runs, (run) => {
        for (const load of postLoads(run)) {
          expect(load.caseAM).toBeGreaterThanOrEqual(0);
          expect(load.caseCM).toBeGreaterThanOrEqual(0);
          expect(load.governingM).toBe(Math.max(load.caseAM, load.caseCM));
        }
      }),
    );
  });

  it('put everything on a lone post', () => {
    const [only] = postLoads({ ...FENCE, postPositionsM: [12] });
    expect(only!.caseAM).toBeCloseTo(forceCoefficientA(1, 24 / 1.8) * 24, 9);
  });

  it('give what overhangs the outer posts to them', () => {
    const inset = postLoads({ ...FENCE, postPositionsM: [2.4, 12, 21.6] });
    expect(inset[0]!.caseAM).toBeCloseTo(inset[2]!.caseAM, 9);
    expect(inset[0]!.caseAM / inset[1]!.caseAM).toBeCloseTo((2.4 + 4.8) / 9.6, 9);
  });

  it('are refused without a post, and without anything for the wind to push', () => {
    expect(() => postLoads({ ...FENCE, postPositionsM: [] })).toThrow(RangeError);
    expect(() => postLoads({ ...FENCE, solidity: 0 })).toThrow(RangeError);
    expect(() => postLoads({ ...FENCE, solidity: 1.01 })).toThrow(RangeError);
  });
});

describe('the ends of a run', () => {
  it('are worst at the first post inside a free end, and relieved by a return', () => {
    const free = postLoads(FENCE).map((load) => load.governingM);
    const returned = postLoads({ ...FENCE, returnLengthsM: [3.6, 3.6] }).map((load) => load.governingM);
    expect(free.indexOf(Math.max(...free))).toBe(1);
    expect(returned[1]).toBeLessThan(free[1]!);
    expect(returned[5]).toBe(free[5]);
  });

  it('are not treated apart on a short stub or an open fence', () => {
    const stub = postLoads({ ...FENCE, runLengthM: 3.5, postPositionsM: [0, 1.75, 3.5] });
    const open = postLoads({ ...FENCE, solidity: 0.5 });
    expect([...stub, ...open].map((load) => load.caseCM)).toEqual([...stub, ...open].map(() => 0));
    expect(new Set(stub.map((load) => load.governingCase))).toEqual(new Set(['A']));
    expect(new Set(open.map((load) => load.governingCase))).toEqual(new Set(['open']));
  });
});

describe('a gap under the infill', () => {
  it('counts as none up to a twentieth of the height', () => {
    expect(solidHeight({ heightM: 1.8, bottomGapM: 0.09 })).toBe(1.8);
    expect(solidHeight({ heightM: 1.8, bottomGapM: 0.1 })).toBeCloseTo(1.7, 12);
    expect(loadArm({ heightM: 1.8, bottomGapM: 0.09 })).toBeCloseTo(0.99, 12);
    expect(loadArm({ heightM: 1.8, bottomGapM: 0.3 })).toBeCloseTo(1.05, 12);
  });
});
