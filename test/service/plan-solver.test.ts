import { beforeAll, describe, expect, it } from 'vitest';
import type { MipModel, MipSolver } from '../../src/season/plan/mip-solver.ts';
import { loadPlanSolver } from '../../src/service/plan-solver.ts';
import { uniforms } from '../season/plan/made-up-problem.ts';

const FAR = { maxNodes: 100_000, maxIterations: 10_000_000 };
const never = (): boolean => false;

/** A knapsack with several limits; hard enough that a solver has to branch. */
function knapsack(columns: number, limits: number, seed: number): MipModel {
  const next = uniforms(seed);
  const whole = (): number => 1 + Math.floor(next() * 100);
  const indices = Array.from({ length: columns }, (_, column) => column);
  return {
    objective: indices.map(whole),
    rows: Array.from({ length: limits }, () => {
      const values = indices.map(whole);
      const upper = Math.floor(values.reduce((sum, value) => sum + value, 0) / 3);
      return { lower: Number.NEGATIVE_INFINITY, upper, indices, values };
    }),
    start: null,
  };
}

function enumerated({ objective, rows }: MipModel): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let set = 0; set < 2 ** objective.length; set += 1) {
    const has = (column: number): number => (set >> column) & 1;
    const kept = rows.every(({ lower, upper, indices, values }) => {
      const sum = indices.reduce((total, column, k) => total + values[k]! * has(column), 0);
      return sum >= lower && sum <= upper;
    });
    if (kept)
      best = Math.max(
        best,
        objective.reduce((total, each, column) => total + each * has(column), 0),
      );
  }
  return best;
}

describe('the solver of the season plan', () => {
  let solver: MipSolver;
  beforeAll(async () => {
    solver = await loadPlanSolver();
  });

  it('finds and proves what enumeration finds', () => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const model = knapsack(10, 3, seed);
      const { status, values, bound } = solver.solve(model, FAR, never);
      const found = values!.reduce((sum, value, column) => sum + value * model.objective[column]!, 0);
      expect(status).toBe('optimal');
      expect(found).toBe(enumerated(model));
      expect(bound).toBeCloseTo(found, 4);
    }
  });

  it('says where no point keeps the rows', () => {
    const row = { lower: 3, upper: Number.POSITIVE_INFINITY, indices: [0, 1], values: [1, 1] };
    expect(solver.solve({ objective: [1, 1], rows: [row], start: null }, FAR, never)).toMatchObject({
      status: 'infeasible',
      values: null,
    });
    const none = { ...row, indices: [], values: [] };
    expect(solver.solve({ objective: [], rows: [none], start: null }, FAR, never).status).toBe('infeasible');
  });

  it('stops at its counts at the same place every time, with a bound that still holds', () => {
    const model = knapsack(60, 10, 7);
    const few = { maxNodes: 3, maxIterations: 10_000_000 };
    const stopped = solver.solve(model, few, never);
    expect(stopped.status).toBe('stopped');
    expect(stopped.nodes).toBeLessThanOrEqual(3);
    expect(solver.solve(model, few, never)).toEqual(stopped);
    const value = stopped.values!.reduce((sum, each, column) => sum + each * model.objective[column]!, 0);
    expect(stopped.bound).toBeGreaterThanOrEqual(value);
    const fewer = solver.solve(model, { maxNodes: 100_000, maxIterations: 50 }, never);
    expect(fewer.status).toBe('stopped');
  });

  it('gives back the point it began from where time is over at once', () => {
    const model = knapsack(60, 10, 7);
    const start = model.objective.map((_, column) => (column < 5 ? 1 : 0));
    const { status, values } = solver.solve({ ...model, start }, FAR, () => true);
    expect(status).toBe('stopped');
    const worth = (point: readonly number[]): number =>
      point.reduce((sum, each, column) => sum + each * model.objective[column]!, 0);
    expect(worth(values!)).toBeGreaterThanOrEqual(worth(start));
  });
});
