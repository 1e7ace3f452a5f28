import { dayNumber, yearsBetween } from '../units/calendar-day.ts';
import { bandOf } from './band.ts';
import { BELIEF_DIMENSIONS, type BeliefDimension, type BeliefPoints } from './belief-points.ts';
import type { EvidenceSummary } from './evidence/evidence-summary.ts';
import { fenceBelief, medianOf } from './evidence/fence-belief.ts';
import type { FenceFacts, ForecastSettings } from './fence-facts.ts';
import { judgedGroup, type UnknownInput } from './fence-forecast.ts';
import { fenceStates, stateOn } from './fence-state.ts';
import { forecastFence } from './forecast-fence.ts';
import type { ReasonContext } from './reason-context.ts';
import type { ReasonStep } from './reason-step.ts';
import { codeSteps } from './reasons-code.ts';
import { hazardSteps, standingSteps } from './reasons-hazard.ts';
import { leanSteps } from './reasons-lean.ts';
import { pressureSteps } from './reasons-pressure.ts';
import { rotSteps } from './reasons-rot.ts';
import { sectionSteps } from './reasons-section.ts';
import { shapeSteps } from './reasons-shape.ts';
import { snapSteps } from './reasons-snap.ts';
import { type Sensitivity, type SensitivityBelief, sensitivityOf } from './sensitivity.ts';
import { sectionLossOn, stateModel } from './state-model.ts';

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
  ask: { readonly seasonLabel?: string; readonly which?: 'line posts' | 'ends' } = {},
): Reasons {
  const forecast = forecastFence(facts, seasonOneYear, settings);
  const { seasons } = forecast;
  const season = ask.seasonLabel
    ? seasons.find(({ label }) => label === ask.seasonLabel)
    : seasons.find((entry) => entry.season === 1);
  if (!season) {
    throw new RangeError(
      `no season ${JSON.stringify(ask.seasonLabel)}: fence ${facts.ref} is forecast for new, ${seasons[1]!.label} to ${seasons.at(-1)!.label}`,
    );
  }
  const wantEnds = ask.which === 'ends' && season.ends !== null;
  const group = wantEnds ? season.ends : judgedGroup(season);
  const states = fenceStates(facts);
  const { points } = fenceBelief(facts, states);
  const scores = scoresSeen(points);
  const median = medianOf(points);
  const model = stateModel(facts.site, stateOn(states, season.day), median);
  const deciding = group.decidingPosts;
  const postClass = model.classes.classes.find(({ numbers }) => numbers.includes(deciding[0]!))!;
  const context: ReasonContext = { facts, forecast, season, model, postClass, sound: season.season === null };
  const loss = sectionLossOn(model, {
    kind: postClass.kind,
    point: 0,
    dayNumber: dayNumber(season.day),
    sound: context.sound,
  });
  return {
    fenceRef: facts.ref,
    modelVersion: forecast.modelVersion,
    season: season.label,
    day: season.day,
    ageYears: Math.max(0, yearsBetween(postClass.sample.post.installed.earliest, season.day)),
    postNumbers: postClass.numbers,
    group: wantEnds || season.line === null ? 'ends' : 'line posts',
    steps: [
      ...rotSteps(context, loss),
      ...sectionSteps(context, loss),
      ...shapeSteps(context),
      ...pressureSteps(context),
      ...snapSteps(context, loss),
      ...leanSteps(context),
      ...codeSteps(context, loss),
      ...hazardSteps(context),
      ...standingSteps(context, group),
    ],
    evidence: forecast.evidence,
    unknowns: forecast.unknowns,
    sensitivity: sensitivityOf(facts, seasonOneYear, settings, { base: points, ...(scores ? { scores } : {}) }),
    learnedVersion: learnedVersion(facts),
  };
}
