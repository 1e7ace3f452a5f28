import { dayNumber } from '../units/calendar-day.ts';
import { fenceBelief, medianOf } from './evidence/fence-belief.ts';
import type { FenceFacts, ForecastSettings } from './fence-facts.ts';
import { judgedGroup } from './fence-forecast.ts';
import { fenceStates, stateOn } from './fence-state.ts';
import { forecastFence } from './forecast-fence.ts';
import type { ReasonContext } from './reason-context.ts';
import type { ReasonStep } from './reason-step.ts';
import { codeSteps } from './reasons-code.ts';
import { hazardSteps } from './reasons-hazard.ts';
import { leanSteps } from './reasons-lean.ts';
import { pressureSteps } from './reasons-pressure.ts';
import { rotSteps } from './reasons-rot.ts';
import { sectionSteps } from './reasons-section.ts';
import { shapeSteps } from './reasons-shape.ts';
import { snapSteps } from './reasons-snap.ts';
import { snapChanceSteps } from './reasons-snap-chance.ts';
import { standingSteps } from './reasons-standing.ts';
import { sectionLossOn, stateModel } from './state-model.ts';

/** Which posts in which season are to be explained. */
export interface ReasonAsk {
  /** Label of a season, or `new`; season 1 where not given. */
  readonly seasonLabel?: string;
  /** The posts that decide the line (default) or the ends. */
  readonly which?: 'line posts' | 'ends';
}

/** The steps for the posts asked for, and what they were written from. */
export interface ReasonChain {
  readonly context: ReasonContext;
  readonly group: 'line posts' | 'ends';
  readonly steps: readonly ReasonStep[];
}

/** The least speed that steps end in [m/s]: what comes first of the ways to fail. */
const leastSpeed = (steps: readonly ReasonStep[]): number =>
  Math.min(...steps.flatMap(({ unit, value }) => (unit === 'm/s' && typeof value === 'number' ? [value] : [])));

/**
 * The steps from inputs to speeds and chances for the posts that decide a fence in one season. Unknowns stand at their
 * medians. Throws RangeError where the season is not in the forecast, naming those that are.
 * Source: the same functions that `forecastFence` composes.
 */
export function reasonChain(
  facts: FenceFacts,
  seasonOneYear: number,
  settings: ForecastSettings,
  ask: ReasonAsk = {},
): ReasonChain {
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
  const asked = ask.which === 'ends' ? season.ends : null;
  const group = asked ?? judgedGroup(season);
  const judged = group === judgedGroup(season);
  const states = fenceStates(facts);
  const { points } = fenceBelief(facts, states);
  const median = medianOf(points);
  const model = stateModel(facts.site, stateOn(states, season.day), median);
  const deciding = group.decidingPosts;
  const postClass = model.classes.classes.find(({ numbers }) => numbers.includes(deciding[0]!))!;
  const context: ReasonContext = {
    facts,
    forecast,
    season,
    belief: points,
    model,
    postClass,
    sound: season.season === null,
  };
  const loss = sectionLossOn(model, {
    kind: postClass.kind,
    point: 0,
    dayNumber: dayNumber(season.day),
    sound: context.sound,
  });
  const name = group === season.line ? 'line posts' : 'ends';
  const snap = snapSteps(context, loss);
  const lean = leanSteps(context);
  const worked = { snapMps: leastSpeed(snap), leanMps: leastSpeed(lean) };
  return {
    context,
    group: name,
    steps: [
      ...rotSteps(context, loss),
      ...sectionSteps(context, loss),
      ...shapeSteps(context),
      ...pressureSteps(context),
      ...snap,
      ...lean,
      ...codeSteps(context, loss),
      ...hazardSteps(context),
      ...standingSteps(context, { group, judged, name, worked }),
      ...(judged ? snapChanceSteps(context, group) : []),
    ],
  };
}
