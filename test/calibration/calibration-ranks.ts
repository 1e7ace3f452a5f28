import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { BeliefPoints } from '../../src/forecast/belief-points.ts';
import { fenceBelief } from '../../src/forecast/evidence/fence-belief.ts';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { fenceStates } from '../../src/forecast/fence-state.ts';
import { simulatedFence, type TrueScores, uniform } from './simulated-fence.ts';

/** Draws from each posterior; the rank of the truth among them takes one of 20 values. */
const DRAWS = 19;
export const RANKS = DRAWS + 1;
export const UNKNOWNS = [
  'pace',
  'fibre strength',
  'footing',
  'permanent load',
] as const satisfies readonly (keyof TrueScores)[];

/** How often the truth had each rank, by unknown. */
export type RankCounts = Readonly<Record<keyof TrueScores, readonly number[]>>;

/** What may be done wrong on purpose, to see that the check can fail. */
export const MISTAKES = {
  none: (facts: FenceFacts): FenceFacts => facts,
  /** A likelihood that leaves out what stood, and so learns of storms by what they broke alone. */
  'what stood left out': (facts: FenceFacts): FenceFacts => ({
    ...facts,
    outcomes: facts.outcomes.filter(({ result }) => result !== 'stood'),
  }),
  /** A likelihood that takes the width lost for the depth lost. */
  'width taken for depth': (facts: FenceFacts): FenceFacts => ({
    ...facts,
    inspections: facts.inspections.map((inspection) => ({
      ...inspection,
      readings: inspection.readings.map((reading) =>
        reading.groundline && 'depthMm' in reading.groundline
          ? { ...reading, groundline: { ...reading.groundline, depthMm: 2 * reading.groundline.depthMm } }
          : reading,
      ),
    })),
  }),
} as const;
export type Mistake = keyof typeof MISTAKES;

function drawnPoint({ count, weights }: BeliefPoints, level: number): number {
  if (!weights) return Math.floor(level * count);
  let below = 0;
  for (let point = 0; point < count; point += 1) {
    below += weights[point]!;
    if (below >= level) return point;
  }
  return count - 1;
}

/**
 * Ranks of the truth among draws from the posterior, over made-up fences drawn from the model (Talts et al. 2018).
 * @param fences the numbers of the fences: each is drawn by its own generator, so that they can be shared out
 */
export function calibrationRanks(seed: number, fences: readonly number[], mistake: Mistake): RankCounts {
  const counts = Object.fromEntries(UNKNOWNS.map((unknown) => [unknown, new Array<number>(RANKS).fill(0)])) as Record<
    keyof TrueScores,
    number[]
  >;
  for (const fence of fences) {
    // Neighbouring seeds start alike: spread them, and leave the first numbers out.
    const random = xoroshiro128plus(Math.imul(seed + fence, 0x9e3779b1));
    for (let i = 0; i < 32; i += 1) random.next();
    const { facts, truth } = simulatedFence(random);
    const told = MISTAKES[mistake](facts);
    const { points } = fenceBelief(told, fenceStates(told));
    const draws = Array.from({ length: DRAWS }, () => drawnPoint(points, uniform(random)));
    for (const unknown of UNKNOWNS) {
      const rank = draws.filter((point) => points.scores[unknown][point]! < truth[unknown]).length;
      counts[unknown][rank]! += 1;
    }
  }
  return counts;
}
