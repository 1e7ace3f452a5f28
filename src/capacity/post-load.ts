import {
  CASE_C_FROM_ASPECT,
  CASE_C_STEPS,
  forceCoefficientA,
  forceCoefficientC,
  returnCornerFactor,
} from './force-coefficient.ts';
import { openingsFactor, openSignCoefficient, SOLID_FROM } from './openings.ts';

/** Geometry of a run as the wind sees it. */
export interface LoadedRun {
  /** Height of the top above ground h [m]. */
  readonly heightM: number;
  /** Gap between ground and infill [m]; up to 0.05 h it counts as none. */
  readonly bottomGapM: number;
  /** Length of the straight run B [m]. */
  readonly runLengthM: number;
  /** Solid over gross area eps [-]. */
  readonly solidity: number;
  /** Return length at end A and end B [m]; 0 for a free edge, Infinity for a tie to a building. */
  readonly returnLengthsM: readonly [number, number];
  /** Positions of the posts from end A [m], ascending. */
  readonly postPositionsM: readonly number[];
}

/** Load on one post, as the product of force coefficient and tributary length. */
export interface PostLoad {
  /** Cf L of Case A, openings included [m]. */
  readonly caseAM: number;
  /** The larger Cf L of Case C taken from either end, openings and return corners included [m]; 0 where it does not apply. */
  readonly caseCM: number;
  /** The governing Cf L [m]. */
  readonly governingM: number;
  readonly governingCase: 'A' | 'C' | 'open';
}

/** Gap up to which infill counts as reaching the ground, as a share of the height [-]; judgement. */
const NO_GAP_SHARE = 0.05;

/** Height of the solid part s of a run [m]: the height less the gap, the whole height where the gap is at most 0.05 h. Source: judgement, avoids a jump in Figure 29.3-1. */
export const solidHeight = (run: Pick<LoadedRun, 'heightM' | 'bottomGapM'>): number =>
  run.bottomGapM <= NO_GAP_SHARE * run.heightM ? run.heightM : run.heightM - run.bottomGapM;

/**
 * Arm of the wind force above ground [m]: 0.55 h where the infill reaches the ground (s/h = 1), else h - s/2.
 * Source: ASCE 7-16 Figure 29.3-1, notes (memory): the resultant acts 0.05 h above the centre for s/h = 1.
 */
export function loadArm(run: Pick<LoadedRun, 'heightM' | 'bottomGapM'>): number {
  const solid = solidHeight(run);
  return solid === run.heightM ? 0.55 * run.heightM : run.heightM - solid / 2;
}

type Steps = readonly { readonly fromM: number; readonly toM: number; readonly coefficient: number }[];

/** Reactions of simply supported bays under a stepwise line load; what overhangs the outer posts goes to them. */
function reactions(positionsM: readonly number[], runLengthM: number, steps: Steps): number[] {
  const result = positionsM.map(() => 0);
  const supports = positionsM.length;
  const add = (index: number, amount: number): void => {
    result[index] = result[index]! + amount;
  };
  const first = positionsM[0]!;
  const last = positionsM[supports - 1]!;
  for (const step of steps) {
    const before = Math.min(step.toM, first) - step.fromM;
    if (before > 0) add(0, step.coefficient * before);
    const after = Math.min(step.toM, runLengthM) - Math.max(step.fromM, last);
    if (after > 0) add(supports - 1, step.coefficient * after);
    for (let bay = 0; bay + 1 < supports; bay += 1) {
      const left = positionsM[bay]!;
      const right = positionsM[bay + 1]!;
      const from = Math.max(step.fromM, left);
      const to = Math.min(step.toM, right);
      if (to <= from) continue;
      const total = step.coefficient * (to - from);
      const toRight = ((from + to) / 2 - left) / (right - left);
      add(bay, total * (1 - toRight));
      add(bay + 1, total * toRight);
    }
  }
  return result;
}

/**
 * Wind load of every post of a run, rails simply supported between posts. Case A is even over the run; Case C is taken
 * from either end where B/s >= 2 and eps >= 0.7. The larger counts.
 * @param run geometry; at least one post, positions within the run
 * @returns one `PostLoad` a post, in the order of the positions [m]
 * Source: ASCE 7-16 Figure 29.3-1 (read at second hand) and 29.4-2 (read); tributary statics derived.
 */
export function postLoads(run: LoadedRun): readonly PostLoad[] {
  const { postPositionsM: positions, runLengthM: length, solidity } = run;
  if (positions.length === 0) throw new RangeError('post loads: a run needs at least one post');
  const solid = solidHeight(run);
  if (solidity < SOLID_FROM) {
    const even = [{ fromM: 0, toM: length, coefficient: openSignCoefficient(solidity) * solidity }];
    return reactions(positions, length, even).map((load) => ({
      caseAM: load,
      caseCM: 0,
      governingM: load,
      governingCase: 'open',
    }));
  }
  const openings = openingsFactor(solidity);
  const clearance = solid / run.heightM;
  const aspect = length / solid;
  const even = [{ fromM: 0, toM: length, coefficient: openings * forceCoefficientA(clearance, aspect) }];
  const caseA = reactions(positions, length, even);
  const caseC =
    aspect < CASE_C_FROM_ASPECT ? caseA.map(() => 0) : worstOfBothEnds(run, { solid, openings, clearance, aspect });
  return caseA.map((a, index) => {
    const c = caseC[index]!;
    return { caseAM: a, caseCM: c, governingM: Math.max(a, c), governingCase: c > a ? 'C' : 'A' };
  });
}

function worstOfBothEnds(
  run: LoadedRun,
  wall: { readonly solid: number; readonly openings: number; readonly clearance: number; readonly aspect: number },
): readonly number[] {
  const { runLengthM: length, postPositionsM: positions } = run;
  const bands = CASE_C_STEPS.map((from, index) => {
    const next = CASE_C_STEPS[index + 1] ?? Number.POSITIVE_INFINITY;
    return { from: from * wall.solid, to: Math.min(next * wall.solid, length), at: from };
  }).filter((band) => band.from < length);
  const fromEnd = (end: 0 | 1): number[] => {
    const returns = returnCornerFactor(run.returnLengthsM[end] / wall.solid, wall.aspect);
    const steps = bands.map((band) => ({
      fromM: end === 0 ? band.from : length - band.to,
      toM: end === 0 ? band.to : length - band.from,
      coefficient:
        wall.openings * forceCoefficientC(wall.clearance, wall.aspect, band.at) * (band.at === 0 ? returns : 1),
    }));
    return reactions(positions, length, steps);
  };
  const a = fromEnd(0);
  const b = fromEnd(1);
  return a.map((load, index) => Math.max(load, b[index]!));
}
