import { dayNumber } from '../../units/calendar-day.ts';
import type { FenceFacts } from '../fence-facts.ts';
import type { fenceStates } from '../fence-state.ts';
import { pacePrior } from '../pace-prior.ts';
import { groundlineEvidence, type PieceEvidence } from './groundline-evidence.ts';
import { type GridBelief, gridPosterior, gridQuantile, priorGrid } from './pace-grid.ts';
import { type PieceGrid, pieceGrid } from './piece-grid.ts';
import type { PiecePace } from './piece-pace.ts';
import { DISAGREEMENT_BELOW, priorSurprise } from './prior-surprise.ts';

/** How many install dates stand for a range, evenly. A power of two that divides the number of belief points. */
const DATE_BINS = 16;
/** Spread of the pace prior where readings disagree with the model, over the usual one [-]; model choice. */
const DISAGREEMENT_SPREAD = 2;
/** Level of the depth under which no forecast of a read post starts [-]; model choice. */
const FLOOR_LEVEL = 0.1;

/** What readings say of the pace of a fence. */
export interface PaceBelief {
  readonly pieces: readonly PieceEvidence[];
  readonly piecePaces: ReadonlyMap<string, PiecePace>;
  /** Posterior of the pace score for each stretch of the install date's range; one where the date is known. */
  readonly byDate: readonly GridBelief[];
  /** Probability of the readings before they were taken [-]; under `DISAGREEMENT_BELOW` they disagree with the model. */
  readonly surprise: number;
  readonly disagrees: boolean;
}

/** Quantile of the pace score at a level of pace and of the install date [-]. */
export const paceScore = ({ byDate }: Pick<PaceBelief, 'byDate'>, level: number, dateLevel: number): number =>
  gridQuantile(byDate[binOf(byDate.length, dateLevel)]!, level);

/** ln of how probable the readings are where the install date lies at a level, against the other dates [-]. */
export const dateLogEvidence = ({ byDate }: PaceBelief, dateLevel: number): number =>
  byDate[binOf(byDate.length, dateLevel)]!.logEvidence;

const binOf = (bins: number, level: number): number => Math.min(bins - 1, Math.floor(level * bins));

/**
 * The belief about the rot pace of a fence after its groundline readings: exact on a grid of 401 pace scores, the scatter
 * of the posts integrated out; null where nothing was read. Where the readings disagree with the model the prior's spread
 * is doubled.
 * Source: Bayes' rule; model as in decay/ (depth law, fence pace, post scatter).
 */
export function paceBelief(facts: FenceFacts, states: ReturnType<typeof fenceStates>): PaceBelief | null {
  const pieces = groundlineEvidence(facts, states);
  if (pieces.length === 0) return null;
  const withPriors = pieces.map((evidence) => ({
    evidence,
    prior: pacePrior(evidence.treatmentClass, facts.site.climate, facts.learned),
  }));
  const bins = pieces.some((piece) => piece.dateIsRange) ? DATE_BINS : 1;
  const levels = Array.from({ length: bins }, (_, bin) => (bin + 0.5) / bins);
  const surprise = levels.reduce((sum, level) => sum + priorSurprise(withPriors, level) / bins, 0);
  const disagrees = surprise < DISAGREEMENT_BELOW;
  const prior = { mean: 0, sd: disagrees ? DISAGREEMENT_SPREAD : 1 };
  const scores = priorGrid(prior.mean, prior.sd);
  const grids: (readonly PieceGrid[])[] = [];
  const byDate: GridBelief[] = [];
  for (const level of levels) {
    const each = withPriors.map(({ evidence, prior: pace }) => pieceGrid(evidence, pace, scores, level));
    grids.push(each);
    byDate.push(
      gridPosterior(
        prior,
        each.map((grid) => (_: number, index: number) => grid.logLikelihoods[index]!),
      ),
    );
  }
  const piecePaces = pieces.map((piece, index): readonly [string, PiecePace] => {
    const gridAt = (dateLevel: number): PieceGrid => grids[binOf(bins, dateLevel)]![index]!;
    const floors = byDate.map((belief, bin) =>
      grids[bin]![index]!.depthAtLastReading(belief.probabilities, FLOOR_LEVEL),
    );
    return [
      piece.piece,
      {
        logRates: (score, dateLevel, levels) => gridAt(dateLevel).quantiles(score, levels),
        floorFromDay: dayNumber(piece.readings.at(-1)!.day),
        floorMm: (dateLevel) => floors[binOf(bins, dateLevel)]!,
      },
    ];
  });
  return { pieces, piecePaces: new Map(piecePaces), byDate, surprise, disagrees };
}
