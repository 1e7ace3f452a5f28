import { decayDepth } from '../../decay/decay-depth.ts';
import { POST_PACE_SPREAD } from '../../decay/decay-rate.ts';
import { rateToDepth } from '../../decay/implied-rate.ts';
import { normalCdf, normalQuantile } from '../normal-distribution.ts';
import type { PacePrior } from '../pace-prior.ts';
import type { PieceEvidence } from './groundline-evidence.ts';
import type { TimedReading } from './piece-likelihood.ts';

/** Readings less probable than this before they were taken disagree with the model [-]; model choice. */
export const DISAGREEMENT_BELOW = 0.01;

/** Cells of the prior of one post's ln r, and how many standard deviations they reach. */
const CELLS = 240;
const REACH = 6;
const LEAST = 1e-9;

/** Probability under the prior that a reading would have come out as low as this one, or, for a bound, the middle of what it leaves open [-]. */
function predictiveLevel({ seen, exposureYears }: TimedReading, prior: PacePrior): number {
  const centre = Math.log(prior.medianRate);
  const sd = Math.hypot(prior.spread, POST_PACE_SPREAD);
  if (seen.kind !== 'measured') {
    const under = normalCdf((Math.log(rateToDepth(seen.depthMm, exposureYears)) - centre) / sd);
    return seen.kind === 'below' ? under / 2 : (1 + under) / 2;
  }
  let sum = 0;
  let total = 0;
  for (let i = 0; i < CELLS; i += 1) {
    const score = REACH * ((2 * i + 1) / CELLS - 1);
    const weight = Math.exp((-score * score) / 2);
    const depthMm = decayDepth(exposureYears, Math.exp(centre + sd * score));
    sum += weight * normalCdf((seen.depthMm - depthMm) / seen.errorMm);
    total += weight;
  }
  return sum / total;
}

/**
 * Probability, before they were taken, of readings at least as far from the forecast as these, either way [-]. Each
 * post's last reading is turned into a normal score; the posts share their fence's pace, so the mean of n scores has
 * variance rho + (1 - rho)/n with rho = tau^2/(tau^2 + 0.54^2).
 * @param pieces what was read, with the prior of each; at least one
 * @param dateLevel level of the install date, 0 to 1
 * Source: prior predictive check (Box 1980), for the mean score of the fence (derived).
 */
export function priorSurprise(
  pieces: readonly { readonly evidence: PieceEvidence; readonly prior: PacePrior }[],
  dateLevel: number,
): number {
  let scoreSum = 0;
  let rhoSum = 0;
  for (const { evidence, prior } of pieces) {
    const last = evidence.readings.at(-1)!;
    const level = predictiveLevel({ seen: last.seen, exposureYears: last.exposureAt(dateLevel) }, prior);
    scoreSum += normalQuantile(Math.min(1 - LEAST, Math.max(LEAST, level)));
    rhoSum += prior.spread ** 2 / (prior.spread ** 2 + POST_PACE_SPREAD ** 2);
  }
  const count = pieces.length;
  const rho = rhoSum / count;
  const sd = Math.sqrt(rho + (1 - rho) / count);
  return 2 * normalCdf(-Math.abs(scoreSum / count) / sd);
}
