import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forceCoefficientA } from '../../src/capacity/force-coefficient.ts';
import { openingsFactor } from '../../src/capacity/openings.ts';
import { type LoadedRun, loadArm, postLoads, solidHeight } from '../../src/capacity/post-load.ts';
import { drawnEvenly } from '../drawn-evenly.ts';

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
    heightM: drawnEvenly(0.9, 3),
    gapShare: drawnEvenly(0, 0.4),
    runLengthM: drawnEvenly(1, 120),
    solidity: drawnEvenly(0.05, 1),
    returnLengthsM: fc.tuple(drawnEvenly(0, 8), fc.constantFrom(0, 3.6, Number.POSITIVE_INFINITY)),
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

describe('the loads of a run, worked by hand for 26 m of 2 m height with a post every 2 m', () => {
  const run: LoadedRun = {
    heightM: 2,
    bottomGapM: 0,
    runLengthM: 26,
    solidity: 1,
    returnLengthsM: [0, 0],
    postPositionsM: Array.from({ length: 14 }, (_, index) => 2 * index),
  };
  const expectLoads = (actual: readonly number[], expected: readonly number[]): void => {
    expect(actual).toHaveLength(expected.length);
    expected.forEach((load, index) => {
      expect(actual[index], `post ${index + 1}`).toBeCloseTo(load, 9);
    });
  };
  /** B/s = 13: 0.8 x (4, 2.6, 2, 1.5, 1.35, then 0.9) over bays of 2 m, half a bay's load to either post. */
  const fromOneEnd = [3.2, 5.28, 3.68, 2.8, 2.28, 1.8, 1.44];

  it('are by Case C those of the bands from the nearer end', () => {
    expectLoads(
      postLoads(run).map(({ caseCM }) => caseCM),
      [...fromOneEnd, ...[...fromOneEnd].reverse()],
    );
  });

  it('are by Case A 1.3 over every bay', () => {
    expectLoads(
      postLoads(run).map(({ caseAM }) => caseAM),
      [1.3, ...Array.from({ length: 12 }, () => 2.6), 1.3],
    );
  });

  it('are governed by Case C at the first four posts from either end', () => {
    const cases = postLoads(run).map(({ governingCase }) => governingCase);
    expect(cases.join('')).toBe('CCCCAAAAAACCCC');
  });

  it('lose a quarter of the first band, and of no other, to a return as long as the fence is high', () => {
    const one = postLoads({ ...run, returnLengthsM: [2, 0] }).map(({ caseCM }) => caseCM);
    expectLoads(one, [2.4, 4.48, ...fromOneEnd.slice(2), ...[...fromOneEnd].reverse()]);
    const other = postLoads({ ...run, returnLengthsM: [0, 2] }).map(({ caseCM }) => caseCM);
    expectLoads(other, [...one].reverse());
  });

  it('are of half open infill 1.6 x 0.5 of the area, by the table of open signs', () => {
    const loads = postLoads({ ...run, solidity: 0.5 });
    expectLoads(
      loads.map(({ governingM }) => governingM),
      [0.8, ...Array.from({ length: 12 }, () => 1.6), 0.8],
    );
  });

  it('are those of a solid fence with openings from 0.7 on: 1 - 0.3^1.5 of it', () => {
    const loads = postLoads({ ...run, solidity: 0.7 });
    expect(loads[6]!.governingCase).toBe('A');
    expect(loads[6]!.caseAM / 2.6).toBeCloseTo(0.83568, 5);
    expect(loads[1]!.caseCM / 5.28).toBeCloseTo(0.83568, 5);
  });

  it('have a Case C on a run of just twice the height', () => {
    const short = postLoads({ ...run, runLengthM: 4, postPositionsM: [0, 2, 4] });
    // 0.8 x 2.25 over the first height, 0.8 x 1.5 over the second
    expectLoads(
      short.map(({ caseCM }) => caseCM),
      [1.8, 3, 1.8],
    );
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
    expect(solidHeight({ heightM: 2, bottomGapM: 0.1 })).toBe(2);
    expect(solidHeight({ heightM: 1.8, bottomGapM: 0.1 })).toBeCloseTo(1.7, 12);
    expect(loadArm({ heightM: 1.8, bottomGapM: 0.09 })).toBeCloseTo(0.99, 12);
    expect(loadArm({ heightM: 1.8, bottomGapM: 0.3 })).toBeCloseTo(1.05, 12);
  });
});
