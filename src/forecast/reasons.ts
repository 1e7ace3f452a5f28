import { yearsBetween } from '../units/calendar-day.ts';
import { bandOf } from './band.ts';
import { BELIEF_DIMENSIONS, type BeliefDimension, type BeliefPoints } from './belief-points.ts';
import type { EvidenceSummary } from './evidence/evidence-summary.ts';
import type { FenceFacts, ForecastSettings } from './fence-facts.ts';
import type { UnknownInput } from './fence-forecast.ts';
import { type ReasonAsk, reasonChain } from './reason-chain.ts';
import type { ReasonStep } from './reason-step.ts';
import { type Sensitivity, type SensitivityBelief, sensitivityOf } from './sensitivity.ts';

/** Which post and season a chain explains, and the chain. */
export interface Reasons {
  readonly fenceRef: string;
  readonly modelVersion: string;
  readonly season: string;
  readonly day: string;
  readonly ageYears: number;
  readonly postNumbers: readonly number[];
  readonly group: 'line posts' | 'ends';
  readonly steps: readonly ReasonStep[];
  /** What was seen of the fence, prior beside posterior; null where nothing was. */
  readonly evidence: EvidenceSummary | null;
  /** Inputs the register does not know, the one that weighs most first. */
  readonly unknowns: readonly UnknownInput[];
  /** How far each input moves the short season, with what was seen taken in; of the whole fence, whichever posts are explained. */
  readonly sensitivity: Sensitivity;
  /** Number of the acceptance whose learned values stand in for published priors; null where the published ones hold. */
  readonly learnedVersion: number | null;
}

/** Scores at which the unknowns are likely after what was seen: 10th, 50th and 90th percentile; none where nothing was. */
function scoresSeen(points: BeliefPoints): SensitivityBelief['scores'] | null {
  if (!points.weights && points.piecePaces.size === 0) return null;
  const scores: Partial<Record<BeliefDimension, ReturnType<typeof bandOf>>> = {};
  for (const dimension of BELIEF_DIMENSIONS) scores[dimension] = bandOf(points.scores[dimension], 9, points.weights);
  return scores;
}

/** Number of the acceptance that changes this fence's priors; null where there is none, or what was accepted is of other wood. */
export function learnedVersion({ learned, wood }: FenceFacts): number | null {
  if (!learned) return null;
  const isOfPace = learned.paces.some(({ treatmentClass }) => treatmentClass === wood.treatmentClass);
  return isOfPace || learned.footing ? learned.version : null;
}

/**
 * The chain from inputs to speeds for the posts that decide a fence in one season: each step with symbol, number, unit,
 * equation, source and tag. Unknowns stand at their medians; what the belief makes of them is the band of the forecast.
 * Throws RangeError where the season is not in the forecast, naming those that are.
 * @param seasonLabel label of a season, or `new`; season 1 where not given
 * @param which explain the posts that decide the line (default) or the ends
 * Source: the same functions that `forecastFence` composes.
 */
export function explainForecast(
  facts: FenceFacts,
  seasonOneYear: number,
  settings: ForecastSettings,
  ask: ReasonAsk = {},
): Reasons {
  const { context, group, steps } = reasonChain(facts, seasonOneYear, settings, ask);
  const { forecast, season, belief, postClass } = context;
  const scores = scoresSeen(belief);
  return {
    fenceRef: facts.ref,
    modelVersion: forecast.modelVersion,
    season: season.label,
    day: season.day,
    ageYears: Math.max(0, yearsBetween(postClass.sample.post.installed.earliest, season.day)),
    postNumbers: postClass.numbers,
    group,
    steps,
    evidence: forecast.evidence,
    unknowns: forecast.unknowns,
    sensitivity: sensitivityOf(facts, seasonOneYear, settings, { base: belief, ...(scores ? { scores } : {}) }),
    learnedVersion: learnedVersion(facts),
  };
}
