import type { CalendarDay } from '../units/calendar-day.ts';
import { feetFromMetres, inchesFromMm } from '../units/length.ts';
import { bandOf, rounded } from './band.ts';
import { BELIEF_DIMENSIONS, type BeliefDimension, type BeliefPoints, singlePoint } from './belief-points.ts';
import type { FenceFacts, RunFacts } from './fence-facts.ts';
import type { UnknownInput } from './fence-forecast.ts';
import { normalCdf } from './normal-distribution.ts';
import { groupValue, postGroups } from './post-group.ts';
import type { FenceState } from './post-state.ts';
import { classValues, stateModel } from './state-model.ts';
import { FOOTING_PRIOR } from './unknown-priors.ts';

/** Score of the 90th percentile of a standard normal variable [-]. */
const P90_SCORE = 1.2815515655446004;

interface Question {
  readonly input: UnknownInput['input'];
  readonly standsIn: string;
  readonly moves: 'snap' | 'lean';
  readonly dimension: BeliefDimension;
}

const inches = (metres: number): string => `${Math.round(inchesFromMm(metres * 1000))} in (${metres.toFixed(2)} m)`;

function questions(facts: FenceFacts): readonly Question[] {
  const { installed, ground, wood } = facts;
  const asked: Question[] = [];
  if (installed.earliest !== installed.latest) {
    asked.push({
      input: 'install date',
      standsIn: `any day from ${installed.earliest} to ${installed.latest}`,
      moves: 'snap',
      dimension: 'install date',
    });
  }
  if (wood.treatmentClass === 'unknown-treated') {
    asked.push({
      input: 'treatment class',
      standsIn: 'a pace between ground-contact and above-ground stock, with a wider spread',
      moves: 'snap',
      dimension: 'pace',
    });
  }
  if (wood.species === 'unknown') {
    asked.push({
      input: 'species',
      standsIn: 'a low-middling bending strength with a wider spread',
      moves: 'snap',
      dimension: 'fibre strength',
    });
  }
  if (ground.embedmentM === null) {
    asked.push({
      input: 'embedment',
      standsIn: `about ${inches(FOOTING_PRIOR.embedmentM)}`,
      moves: 'lean',
      dimension: 'embedment',
    });
  }
  if (ground.footing === null || (ground.footing === 'concrete' && ground.footingDiameterM === null)) {
    asked.push({
      input: 'footing',
      standsIn: `a concrete collar of about ${inches(FOOTING_PRIOR.diameterM)}`,
      moves: 'lean',
      dimension: 'footing diameter',
    });
  }
  return asked;
}

const freed = (run: RunFacts): RunFacts => ({
  ...run,
  ends: [
    run.ends[0].kind === 'unknown' ? { kind: 'free' } : run.ends[0],
    run.ends[1].kind === 'unknown' ? { kind: 'free' } : run.ends[1],
  ],
});

/**
 * Inputs of a fence that the register does not know, what stands in for each, and how far it moves the speed it moves
 * most as it runs from its 10th to its 90th percentile, all else at the median [m/s]; the one that weighs most first.
 * @param state the fence in season 1
 * @param day the day of season 1
 * @param belief what is believed after all that was seen: its points, and every unknown at its median as one point
 * Source: one-at-a-time sensitivity over the priors of the model (judgement).
 */
export function unknownInputs(
  facts: FenceFacts,
  state: FenceState,
  day: CalendarDay,
  { median, points }: { readonly median: BeliefPoints; readonly points: BeliefPoints },
): readonly UnknownInput[] {
  const seen = points.weights !== null || points.piecePaces.size > 0;
  const ends = (dimension: BeliefDimension): { readonly low: number; readonly high: number } => {
    if (!seen) return { low: -P90_SCORE, high: P90_SCORE };
    const { p10, p90 } = bandOf(points.scores[dimension], 9, points.weights);
    return { low: p10, high: p90 };
  };
  const middle = Object.fromEntries(BELIEF_DIMENSIONS.map((dimension) => [dimension, median.scores[dimension][0]!]));
  const speedAt = (
    scores: Partial<Record<BeliefDimension, number>>,
    moves: 'snap' | 'lean' | 'ends',
    run: RunFacts = state.run,
  ): number => {
    const model = stateModel(facts.site, { ...state, run }, singlePoint({ ...middle, ...scores }, normalCdf, median));
    const { line, ends } = postGroups(model.classes.classes);
    const group = moves === 'ends' ? (ends ?? line)! : (line ?? ends)!;
    const byClass = moves === 'lean' ? model.leanMps : classValues(model, day).snapMps;
    return groupValue(group, byClass, 'lowest')[0]!;
  };
  const found = questions(facts).map(({ input, standsIn, moves, dimension }): UnknownInput => {
    const { low, high } = ends(dimension);
    const swing = Math.abs(speedAt({ [dimension]: high }, moves) - speedAt({ [dimension]: low }, moves));
    return { input, standsIn, moves, swingMps: rounded(swing, 3) };
  });
  if (state.run.ends.some((end) => end.kind === 'unknown')) {
    const swing = Math.abs(speedAt({}, 'ends', freed(state.run)) - speedAt({}, 'ends'));
    found.push({
      input: 'end kind',
      standsIn: `a return at least ${Math.round(feetFromMetres(2 * state.run.heightM))} ft (${(2 * state.run.heightM).toFixed(1)} m) long`,
      moves: 'snap',
      swingMps: rounded(swing, 3),
    });
  }
  return found.sort((a, b) => b.swingMps - a.swingMps || (a.input < b.input ? -1 : 1));
}
