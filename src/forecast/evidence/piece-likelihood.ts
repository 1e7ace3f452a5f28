import { decayDepth } from '../../decay/decay-depth.ts';
import { rateToDepth } from '../../decay/implied-rate.ts';
import { type DepthSeen, depthLikelihood } from './depth-likelihood.ts';

/**
 * Least likelihood of a reading over its highest [-]: readings are sometimes taken at the wrong post or written down wrong,
 * and one of them must not rule out everything. Judgement.
 */
const MISREADING_FLOOR = 1e-8;

/** A reading and the exposure at which it was taken [a]. */
export interface TimedReading {
  readonly seen: DepthSeen;
  readonly exposureYears: number;
}

/** Share of the cell around a value that lies under a bound [-]. */
const shareUnder = (bound: number, value: number, step: number): number =>
  Math.min(1, Math.max(0, (bound - value) / step + 0.5));

function likelihoodOf({ seen, exposureYears }: TimedReading, logRates: Float64Array, step: number): Float64Array {
  if (seen.kind === 'measured') {
    return logRates.map((logRate) => depthLikelihood(seen, decayDepth(exposureYears, Math.exp(logRate))));
  }
  const bound = Math.log(rateToDepth(seen.depthMm, exposureYears));
  return logRates.map((logRate) => {
    const under = shareUnder(bound, logRate, step);
    return seen.kind === 'below' ? under : 1 - under;
  });
}

/**
 * Likelihood of everything read of one piece of wood, as a function of its own ln r, on an even grid: its ln, its value over
 * the highest, and the ln of that [-]: dozens of readings stay in the range of numbers.
 * @param logRates grid of ln r [ln mm/a], evenly spaced, ascending
 * Source: depth law of decay/; each reading independent given the rate (model choice).
 */
export function pieceLikelihood(
  readings: readonly TimedReading[],
  logRates: Float64Array,
): { readonly logs: Float64Array; readonly relative: Float64Array; readonly logHighest: number } {
  const step = logRates[1]! - logRates[0]!;
  const logs = new Float64Array(logRates.length);
  for (const reading of readings) {
    const each = likelihoodOf(reading, logRates, step);
    for (let j = 0; j < logs.length; j += 1) logs[j] = logs[j]! + Math.log(Math.max(MISREADING_FLOOR, each[j]!));
  }
  const logHighest = logs.reduce((a, b) => Math.max(a, b));
  return { logs, relative: logs.map((log) => Math.exp(log - logHighest)), logHighest };
}
