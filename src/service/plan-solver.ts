import highsLoader, { type Highs, type Model } from 'highs';
import type { MipLimits, MipModel, MipResult, MipSolver } from '../season/plan/mip-solver.ts';

// The package's types describe its CommonJS face, where the loader is one level deeper than in the ES module that runs.
const loadHighs = highsLoader as unknown as () => Promise<Highs>;

/**
 * The solver of the season plan: HiGHS, compiled to WebAssembly, in this very thread, which it blocks while it works.
 * One thread, a fixed seed and limits that count nodes and simplex iterations make it deterministic.
 */
export async function loadPlanSolver(): Promise<MipSolver> {
  const highs = await loadHighs();
  return {
    solve: (model, limits, stopNow) =>
      model.objective.length === 0 ? withoutColumns(model) : solved(highs, model, limits, stopNow),
  };
}

const withoutColumns = (model: MipModel): MipResult => {
  const kept = model.rows.every(({ lower, upper }) => lower <= 0 && upper >= 0);
  return { status: kept ? 'optimal' : 'infeasible', values: kept ? [] : null, bound: 0, nodes: 0, iterations: 0 };
};

function solved(highs: Highs, model: MipModel, limits: MipLimits, stopNow: () => boolean): MipResult {
  const columns = model.objective.length;
  const starts = new Int32Array(model.rows.length + 1);
  model.rows.forEach((row, index) => {
    starts[index + 1] = starts[index]! + row.indices.length;
  });
  const { constants } = highs;
  return highs.withModel(
    {
      numCols: columns,
      numRows: model.rows.length,
      sense: constants.objectiveSense.maximize,
      colCost: Float64Array.from(model.objective),
      colLower: new Float64Array(columns),
      colUpper: new Float64Array(columns).fill(1),
      integrality: new Int32Array(columns).fill(constants.variableType.integer),
      rowLower: Float64Array.from(model.rows, ({ lower }) => lower),
      rowUpper: Float64Array.from(model.rows, ({ upper }) => upper),
      matrix: {
        format: 'csr',
        numRows: model.rows.length,
        numCols: columns,
        starts,
        indices: Int32Array.from(model.rows.flatMap(({ indices }) => indices)),
        values: Float64Array.from(model.rows.flatMap(({ values }) => values)),
      },
    },
    (loaded) => run(highs, loaded, model, limits, stopNow),
  );
}

function run(highs: Highs, loaded: Model, model: MipModel, limits: MipLimits, stopNow: () => boolean): MipResult {
  const { callbackType, modelStatus } = highs.constants;
  loaded.options.set({
    output_flag: false,
    random_seed: 0,
    mip_rel_gap: 0,
    mip_abs_gap: 1e-6,
    mip_max_nodes: limits.maxNodes,
  });
  if (model.start !== null) loaded.setSolution({ colValue: Float64Array.from(model.start) });
  let iterations = 0;
  loaded.run({
    [callbackType.mipInterrupt](event) {
      iterations = Math.max(iterations, Number(event.data.mip_total_lp_iterations ?? 0));
      if (iterations > limits.maxIterations || stopNow()) event.interrupt();
    },
    [callbackType.simplexInterrupt](event) {
      if (stopNow()) event.interrupt();
    },
  });
  const status = loaded.getModelStatus();
  const nodes = Math.max(0, Number(loaded.info.get('mip_node_count')));
  iterations = Math.max(iterations, Number(loaded.info.get('simplex_iteration_count')));
  if (status === modelStatus.infeasible || status === modelStatus.unboundedOrInfeasible)
    return { status: 'infeasible', values: null, bound: Number.NEGATIVE_INFINITY, nodes, iterations };
  const proved = status === modelStatus.optimal;
  const found = Number(loaded.info.get('primal_solution_status')) === 2;
  const dual = Number(loaded.info.get('mip_dual_bound'));
  return {
    status: proved ? 'optimal' : 'stopped',
    values: found ? Array.from(loaded.getSolution().colValue, (value) => Math.round(value)) : null,
    bound: Number.isFinite(dual) && Math.abs(dual) < 1e19 ? dual : Number.POSITIVE_INFINITY,
    nodes,
    iterations,
  };
}
