import { decayDepth } from '../../decay/decay-depth.ts';
import { POST_PACE_SPREAD } from '../../decay/decay-rate.ts';
import type { PacePrior } from '../pace-prior.ts';
import type { PieceEvidence } from './groundline-evidence.ts';
import { gridQuantile } from './pace-grid.ts';
import { pieceLikelihood } from './piece-likelihood.ts';

/** How far the grid of a post's ln r reaches beyond that of its fence, in standard deviations of the post scatter [-]. */
const REACH = 5;

/** Far from everything that was read a share is no longer a number [-]. */
const LEAST_SHARE = 1e-300;

/** What the readings of one piece of wood say, on a grid that fits the grid of its fence's pace score. */
export interface PieceGrid {
  /** ln likelihood of the readings at each grid value of the fence's pace score, the post scatter integrated out [-]. */
  readonly logLikelihoods: Float64Array;
  /** Quantiles of the post's ln r where the fence has a pace score [ln mm/a]; levels ascending. */
  readonly quantiles: (score: number, levels: readonly number[]) => readonly number[];
  /**
   * Depth of the post at its last reading [mm] that the whole belief puts at a level.
   * @param scoreProbabilities posterior of the fence's pace score on its grid
   */
  readonly depthAtLastReading: (scoreProbabilities: Float64Array, level: number) => number;
}

/**
 * Integrates the post-to-post scatter out of the readings of one piece of wood: ln r of the post is the fence's plus
 * N(0, 0.54), on a grid in ln r that has the step of the grid of the fence.
 * @param scores grid of the fence's pace score, even, ascending
 * @param dateLevel level of the install date, 0 to 1
 * Source: model choice (fence pace plus post scatter); depth law of decay/.
 */
export function pieceGrid(piece: PieceEvidence, prior: PacePrior, scores: Float64Array, dateLevel: number): PieceGrid {
  const centre = Math.log(prior.medianRate);
  const step = prior.spread * (scores[1]! - scores[0]!);
  const wide = Math.ceil((REACH * POST_PACE_SPREAD) / step);
  const first = centre + prior.spread * scores[0]! - wide * step;
  const logRates = Float64Array.from({ length: scores.length + 2 * wide }, (_, j) => first + j * step);
  const kernel = Float64Array.from({ length: 2 * wide + 1 }, (_, d) =>
    Math.exp(-((((d - wide) * step) / POST_PACE_SPREAD) ** 2) / 2),
  );
  const kernelSum = kernel.reduce((a, b) => a + b);
  const timed = piece.readings.map(({ seen, exposureAt }) => ({ seen, exposureYears: exposureAt(dateLevel) }));
  const { logs, relative: likelihood, logHighest } = pieceLikelihood(timed, logRates);
  const marginal = scores.map((_, i) => {
    let sum = 0;
    for (let d = 0; d < kernel.length; d += 1) sum += likelihood[i + d]! * kernel[d]!;
    return sum / kernelSum;
  });

  /** Likelihood on a stretch of the grid: over its highest there where dozens of readings leave no number over that of the whole. */
  const onStretch = (from: number, to: number): Float64Array => {
    const shares = likelihood.subarray(from, to);
    if (shares.some((share) => share > LEAST_SHARE)) return shares;
    const stretch = logs.subarray(from, to);
    const highest = stretch.reduce((a, b) => Math.max(a, b));
    return stretch.map((log) => Math.exp(log - highest));
  };

  const quantiles = (score: number, levels: readonly number[]): readonly number[] => {
    const mean = centre + prior.spread * score;
    const from = Math.max(0, Math.floor((mean - first) / step) - wide);
    const to = Math.min(logRates.length, from + 2 * wide + 2);
    const values = logRates.subarray(from, to);
    const shares = onStretch(from, to);
    const raw = values.map((value, j) => shares[j]! * Math.exp(-(((value - mean) / POST_PACE_SPREAD) ** 2) / 2));
    const total = raw.reduce((a, b) => a + b);
    const probabilities = raw.map((each) => each / total);
    return levels.map((level) => gridQuantile({ values, probabilities }, level));
  };

  return {
    logLikelihoods: marginal.map((share) => logHighest + Math.log(Math.max(LEAST_SHARE, share))),
    quantiles,
    depthAtLastReading: (scoreProbabilities, level) => {
      const raw = new Float64Array(logRates.length);
      for (let i = 0; i < scores.length; i += 1) {
        const share = scoreProbabilities[i]! / Math.max(LEAST_SHARE, marginal[i]!);
        for (let d = 0; d < kernel.length; d += 1) raw[i + d] = raw[i + d]! + share * kernel[d]! * likelihood[i + d]!;
      }
      const total = raw.reduce((a, b) => a + b);
      const logRate = gridQuantile({ values: logRates, probabilities: raw.map((each) => each / total) }, level);
      return decayDepth(timed.at(-1)!.exposureYears, Math.exp(logRate));
    },
  };
}
