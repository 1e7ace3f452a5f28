/** Half the width of the grid in prior standard deviations, and the number of its points. */
const HALF_WIDTH = 5;
const GRID_POINTS = 401;

/** A belief over one unknown on an even grid: the probability of each grid value. */
export interface GridBelief {
  readonly values: Float64Array;
  readonly probabilities: Float64Array;
  readonly mean: number;
  readonly sd: number;
  /** ln of the probability of the evidence under the prior, up to the constants left out of the likelihoods [-]. */
  readonly logEvidence: number;
}

/** The grid of a normal prior: 401 values from 5 standard deviations under its mean to 5 above. */
export const priorGrid = (mean: number, sd: number): Float64Array =>
  Float64Array.from({ length: GRID_POINTS }, (_, i) => mean + sd * HALF_WIDTH * ((2 * i) / (GRID_POINTS - 1) - 1));

/**
 * Posterior of one unknown with a normal prior, by evaluation on a grid: exact up to the grid.
 * @param prior mean and standard deviation, in the unit of the unknown
 * @param logLikelihoods ln likelihood of each piece of evidence at a value of the unknown
 * Source: Bayes' rule on a grid.
 */
export function gridPosterior(
  prior: { readonly mean: number; readonly sd: number },
  logLikelihoods: readonly ((value: number, index: number) => number)[],
): GridBelief {
  const values = priorGrid(prior.mean, prior.sd);
  const logs = values.map((value, index) => {
    const score = (value - prior.mean) / prior.sd;
    return logLikelihoods.reduce((sum, log) => sum + log(value, index), (-score * score) / 2);
  });
  const highest = logs.reduce((a, b) => Math.max(a, b));
  const raw = logs.map((log) => Math.exp(log - highest));
  const total = raw.reduce((a, b) => a + b);
  const probabilities = raw.map((each) => each / total);
  const mean = values.reduce((sum, value, i) => sum + value * probabilities[i]!, 0);
  const variance = values.reduce((sum, value, i) => sum + (value - mean) ** 2 * probabilities[i]!, 0);
  const priorTotal = values.reduce((sum, value) => sum + Math.exp(-(((value - prior.mean) / prior.sd) ** 2) / 2), 0);
  return { values, probabilities, mean, sd: Math.sqrt(variance), logEvidence: highest + Math.log(total / priorTotal) };
}

/**
 * Quantile of a belief on a grid, in the unit of the unknown: each grid value stands for the cell around it, evenly filled.
 * @param probability 0 < p < 1
 */
export function gridQuantile(belief: Pick<GridBelief, 'values' | 'probabilities'>, probability: number): number {
  const { values, probabilities } = belief;
  const step = values[1]! - values[0]!;
  let below = 0;
  for (let i = 0; i < values.length; i += 1) {
    const here = probabilities[i]!;
    if (below + here >= probability) return values[i]! + step * ((probability - below) / here - 0.5);
    below += here;
  }
  return values.at(-1)!;
}
