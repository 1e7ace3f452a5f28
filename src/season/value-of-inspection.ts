/** What may be seen: for each outcome its probability at every belief point; over all outcomes they sum to 1 at each point. */
export type Signal = readonly Float64Array[];

/** What is decided, and on what. */
export interface Decision {
  /** Probability of each belief point, summing to 1 [-]. */
  readonly weights: Float64Array;
  /** Net benefit of each thing that can be done, doing nothing among them, at each point, in one unit of money. */
  readonly benefits: readonly Float64Array[];
}

/** What is best after one outcome. */
interface OutcomeChoice {
  /** Probability of the outcome before it is seen [-]. */
  readonly probability: number;
  /** Index of what is then best. */
  readonly best: number;
  /** Its expected net benefit then. */
  readonly benefit: number;
}

/** What information is worth to a decision, before its own cost; money as in the benefits. */
export interface ValueOfInformation {
  /** Index of what is best now, and its expected net benefit. */
  readonly bestNow: number;
  readonly benefitNow: number;
  readonly outcomes: readonly OutcomeChoice[];
  /** Expected value of the sample information: what deciding after it gains over deciding now. */
  readonly evsi: number;
  /** Expected value of perfect information: no signal is worth more. */
  readonly evpi: number;
}

/** The best by expected benefit; of equals the first. */
function best(
  benefits: readonly Float64Array[],
  weights: Float64Array,
): { readonly index: number; readonly sum: number } {
  let found = { index: 0, sum: Number.NEGATIVE_INFINITY };
  for (const [index, benefit] of benefits.entries()) {
    let sum = 0;
    for (let point = 0; point < weights.length; point += 1) sum += weights[point]! * benefit[point]!;
    if (sum > found.sum) found = { index, sum };
  }
  return found;
}

/**
 * Preposterior analysis: for every outcome of a signal the belief is weighed anew and the best is chosen; what that gains
 * over choosing now is the value of the signal. It is never negative and never over that of perfect information.
 * Throws RangeError where nothing can be chosen.
 * Source: Raiffa & Schlaifer 1961, Applied Statistical Decision Theory (memory).
 */
export function valueOfInformation({ weights, benefits }: Decision, signal: Signal): ValueOfInformation {
  if (benefits.length === 0)
    throw new RangeError('value of information: nothing to choose from; list doing nothing at least');
  const now = best(benefits, weights);
  let after = 0;
  const outcomes = signal.map((likelihood): OutcomeChoice => {
    const joint = weights.map((weight, point) => weight * likelihood[point]!);
    const probability = joint.reduce((sum, each) => sum + each, 0);
    const then = best(benefits, joint);
    after += then.sum;
    return { probability, best: then.index, benefit: probability > 0 ? then.sum / probability : 0 };
  });
  let perfect = 0;
  for (let point = 0; point < weights.length; point += 1) {
    perfect += weights[point]! * Math.max(...benefits.map((benefit) => benefit[point]!));
  }
  return {
    bestNow: now.index,
    benefitNow: now.sum,
    outcomes,
    // Rounding must make knowledge neither harmful nor, where it changes nothing, worth a trifle.
    evsi: outcomes.some(({ best: then }) => then !== now.index) ? Math.max(0, after - now.sum) : 0,
    evpi: Math.max(0, perfect - now.sum),
  };
}
