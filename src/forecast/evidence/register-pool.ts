import { gridQuantile } from './pace-grid.ts';

/** Grid of a fence's offset, and of what the register's fences share, in spreads; both have the same step. */
const STEPS_PER_SPREAD = 20;
const OFFSET_REACH = 8 * STEPS_PER_SPREAD;
const SHIFT_REACH = 4 * STEPS_PER_SPREAD;

/**
 * Part of the published variance from fence to fence that the fences of one register are taken to share (one office, one
 * supplier, one way to build) [-]; the rest is each fence's own. Judgement.
 */
const SHARED_VARIANCE = 0.5;
/** Spread of ln of the fences' own spread about its published part [-]; judgement. */
const OWN_SPREAD_SPREAD = 0.4;
/** Own spreads tried, as scores of that lognormal. */
const OWN_SCORES = Float64Array.from({ length: 25 }, (_, i) => (i - 12) / 4);

/** The interval shown holds in nine cases of ten. */
const INTERVAL = [0.05, 0.95] as const;
const INTERVAL_SCORE = 1.6448536269514722;

/** Keeps a logarithm finite where a fence is all but impossible under one value of the grid. */
const LEAST = 1e-300;

/** What was seen of one fence: its ln likelihood at each of `poolOffsets` [-]. */
export interface FenceLikelihood {
  readonly ref: string;
  readonly logLikelihoods: Float64Array;
}

/** What a register has shown of one quantity, as ln over the published value [-], with the published belief beside it. */
export interface RegisterBelief {
  /** Fences of which something was seen. */
  readonly fences: number;
  /** What the fences of the register share: mean, and the interval that holds in 9 cases of 10. */
  readonly logShift: number;
  readonly low: number;
  readonly high: number;
  /** Spread of a further fence of the register about the shift. */
  readonly spread: number;
  /** The same before anything was seen; its shift is 0. */
  readonly published: { readonly low: number; readonly high: number; readonly spread: number };
}

/** Offsets ln(value / published) at which a fence's likelihood is wanted [-]: even, ascending, from -8 to 8 spreads. */
export const poolOffsets = (publishedSpread: number): Float64Array =>
  Float64Array.from(
    { length: 2 * OFFSET_REACH + 1 },
    (_, i) => ((i - OFFSET_REACH) / STEPS_PER_SPREAD) * publishedSpread,
  );

/** One spread of the fences' own tried: its prior weight, and the normal weights of an offset by its distance in steps. */
interface OwnSpread {
  readonly variance: number;
  readonly logPrior: number;
  readonly kernel: Float64Array;
  /** Sum of the kernel over the grid of offsets, by the grid of shifts. */
  readonly sums: Float64Array;
}

/** The prior of the own spread, scaled so that its mean square is exactly its part of the published variance. */
function ownSpreads(publishedSpread: number): readonly OwnSpread[] {
  const weights = OWN_SCORES.map((score) => Math.exp((-score * score) / 2));
  const total = weights.reduce((a, b) => a + b);
  const factors = OWN_SCORES.map((score) => Math.exp(OWN_SPREAD_SPREAD * score));
  const meanSquare = factors.reduce((sum, factor, k) => sum + (factor * factor * weights[k]!) / total, 0);
  const centre = publishedSpread * Math.sqrt((1 - SHARED_VARIANCE) / meanSquare);
  const step = publishedSpread / STEPS_PER_SPREAD;
  return [...factors].map((factor, k) => {
    const spread = centre * factor;
    const kernel = Float64Array.from({ length: OFFSET_REACH + SHIFT_REACH + 1 }, (_, distance) =>
      Math.exp(-(((distance * step) / spread) ** 2) / 2),
    );
    const sums = new Float64Array(2 * SHIFT_REACH + 1).map((_, shift) => {
      let sum = 0;
      for (let i = 0; i <= 2 * OFFSET_REACH; i += 1) sum += kernel[Math.abs(i - shift - OFFSET_REACH + SHIFT_REACH)]!;
      return sum;
    });
    return { variance: spread * spread, logPrior: Math.log(weights[k]! / total), kernel, sums };
  });
}

/** Adds what one fence says, its own offset integrated out, to the ln weight of each shift under one own spread. */
function addFence(logs: Float64Array, likelihoods: Float64Array, { kernel, sums }: OwnSpread): void {
  for (let shift = 0; shift < logs.length; shift += 1) {
    const centre = shift + OFFSET_REACH - SHIFT_REACH;
    let sum = 0;
    for (let i = 0; i < likelihoods.length; i += 1) sum += likelihoods[i]! * kernel[Math.abs(i - centre)]!;
    logs[shift] = logs[shift]! + Math.log(Math.max(LEAST, sum / sums[shift]!));
  }
}

/**
 * Partial pooling of the fences of a register: the offset of fence f from the published value is delta + u_f, with delta
 * N(0, tau_s) shared by all, u_f N(0, w) its own and w uncertain. Half of the published variance tau^2 is taken as shared
 * and half as own, so that without evidence the shift is 0 and the spread tau. Exact on a grid of delta and w; does not
 * depend on the order of the fences.
 * @param publishedSpread tau, spread from fence to fence [-], > 0
 * Source: normal hierarchical model (Gelman et al., Bayesian Data Analysis, ch. 5, memory); the halves and the prior of w
 * are judgement.
 */
export function poolFences(fences: readonly FenceLikelihood[], publishedSpread: number): RegisterBelief {
  const sharedSpread = publishedSpread * Math.sqrt(SHARED_VARIANCE);
  const values = poolOffsets(publishedSpread).subarray(OFFSET_REACH - SHIFT_REACH, OFFSET_REACH + SHIFT_REACH + 1);
  const own = ownSpreads(publishedSpread);
  const inOrder = [...fences].sort((a, b) => (a.ref < b.ref ? -1 : a.ref > b.ref ? 1 : 0));
  const likelihoods = inOrder.map(({ logLikelihoods }) => {
    const highest = logLikelihoods.reduce((a, b) => Math.max(a, b));
    return logLikelihoods.map((log) => Math.exp(log - highest));
  });
  const logs = own.map((each) => {
    const log = values.map((value) => each.logPrior - (value / sharedSpread) ** 2 / 2);
    for (const likelihood of likelihoods) addFence(log, likelihood, each);
    return log;
  });
  const highest = Math.max(...logs.map((log) => log.reduce((a, b) => Math.max(a, b))));
  const probabilities = new Float64Array(values.length);
  let ownVariance = 0;
  let total = 0;
  for (const [k, log] of logs.entries()) {
    for (let shift = 0; shift < values.length; shift += 1) {
      const weight = Math.exp(log[shift]! - highest);
      probabilities[shift] = probabilities[shift]! + weight;
      ownVariance += weight * own[k]!.variance;
      total += weight;
    }
  }
  for (let shift = 0; shift < values.length; shift += 1) probabilities[shift] = probabilities[shift]! / total;
  const logShift = values.reduce((sum, value, i) => sum + value * probabilities[i]!, 0);
  const variance = values.reduce((sum, value, i) => sum + (value - logShift) ** 2 * probabilities[i]!, 0);
  const [low, high] = INTERVAL.map((level) => gridQuantile({ values, probabilities }, level)) as [number, number];
  const half = INTERVAL_SCORE * sharedSpread;
  return {
    fences: fences.length,
    logShift,
    low,
    high,
    spread: Math.sqrt(variance + ownVariance / total),
    published: { low: -half, high: half, spread: publishedSpread },
  };
}
