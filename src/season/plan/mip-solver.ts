/** One linear row: `lower <= sum of values[k] * column indices[k] <= upper`. */
export interface MipRow {
  readonly lower: number;
  readonly upper: number;
  readonly indices: readonly number[];
  readonly values: readonly number[];
}

/** A problem of yes-or-no columns, to be maximised. */
export interface MipModel {
  /** What each column adds where it is 1. */
  readonly objective: readonly number[];
  readonly rows: readonly MipRow[];
  /** A point known to keep every row, to begin from; null where none is known. */
  readonly start: readonly number[] | null;
}

/** Where a solver stops although it has not proved the best; counts, so that the same model always stops at the same place. */
export interface MipLimits {
  readonly maxNodes: number;
  readonly maxIterations: number;
}

/** What a solver found. */
export interface MipResult {
  readonly status: 'optimal' | 'stopped' | 'infeasible';
  /** 0 or 1 for each column; null where no point was found. */
  readonly values: readonly number[] | null;
  /** No point has a higher objective; Infinity where nothing was proved. */
  readonly bound: number;
  readonly nodes: number;
  readonly iterations: number;
}

/** A solver of such problems. Deterministic as long as `stopNow` never says true. */
export interface MipSolver {
  solve(model: MipModel, limits: MipLimits, stopNow: () => boolean): MipResult;
}
