import { type ClimateBand, climateBand } from '../../decay/climate-band.ts';
import { medianDecayRate } from '../../decay/decay-rate.ts';
import { TREATMENT_CLASS_KEYS, TREATMENT_CLASSES, type TreatmentClass } from '../../decay/treatment-class.ts';
import type { FenceFacts } from '../fence-facts.ts';
import type { fenceStates } from '../fence-state.ts';
import { groundlineEvidence, type PieceEvidence } from './groundline-evidence.ts';
import { pieceGrid } from './piece-grid.ts';
import { type FenceLikelihood, poolFences, poolOffsets, type RegisterBelief } from './register-pool.ts';

/** Fences and readings from which the pace of a register may be accepted; judgement. */
export const LEAST_FENCES = 10;
export const LEAST_READINGS = 30;

/** Install dates that stand for a range, by level. */
const DATE_LEVELS = [0.125, 0.375, 0.625, 0.875];
const KNOWN_DATE = [0.5];

/** What the readings of one fence say of the pace of one treatment class, over the published rate in its climate. */
export interface FencePaceEvidence extends FenceLikelihood {
  readonly treatmentClass: TreatmentClass;
  readonly climateBand: ClimateBand;
  readonly readings: number;
}

/** What a register has shown of the pace of one treatment class in one climate band, as ln over the published rate. */
export interface RegisterPace extends RegisterBelief {
  readonly kind: 'pace';
  /** As `ground-contact/4`. */
  readonly key: string;
  readonly treatmentClass: TreatmentClass;
  readonly climateBand: ClimateBand;
  readonly readings: number;
  /** True from 10 fences and 30 readings on: the office may accept it. */
  readonly enough: boolean;
}

/** Pace of a treatment class in a climate band, as people name it: `ground-contact/4`. */
export const paceKey = (treatmentClass: TreatmentClass, band: ClimateBand): string => `${treatmentClass}/${band}`;

function logLikelihoods(pieces: readonly PieceEvidence[], medianRate: number, offsets: Float64Array): Float64Array {
  const levels = pieces.some((piece) => piece.dateIsRange) ? DATE_LEVELS : KNOWN_DATE;
  const byDate = levels.map((level) => {
    const sums = new Float64Array(offsets.length);
    for (const piece of pieces) {
      const grid = pieceGrid(piece, { medianRate, spread: 1 }, offsets, level);
      for (let i = 0; i < sums.length; i += 1) sums[i] = sums[i]! + grid.logLikelihoods[i]!;
    }
    return sums;
  });
  const highest = Math.max(...byDate.map((sums) => sums.reduce((a, b) => Math.max(a, b))));
  return offsets.map((_, i) =>
    Math.log(byDate.reduce((sum, logs) => sum + Math.exp(logs[i]! - highest), 0) / byDate.length),
  );
}

/**
 * What the groundline readings of a fence say of the pace of each treatment class in it: ln likelihood over
 * ln(r / published), the scatter of the posts integrated out, and the install date where it is known as a range. What the
 * office has accepted does not enter: the published rate is the measure.
 * Source: Bayes' rule; model as in `pieceGrid`.
 */
export function fencePaceEvidence(
  facts: FenceFacts,
  states: ReturnType<typeof fenceStates>,
): readonly FencePaceEvidence[] {
  const pieces = groundlineEvidence(facts, states);
  const { climate } = facts.site;
  return TREATMENT_CLASS_KEYS.flatMap((treatmentClass) => {
    const ofClass = pieces.filter((piece) => piece.treatmentClass === treatmentClass);
    if (ofClass.length === 0) return [];
    const offsets = poolOffsets(TREATMENT_CLASSES[treatmentClass].paceSpread);
    return [
      {
        ref: facts.ref,
        treatmentClass,
        climateBand: climateBand(climate),
        readings: ofClass.reduce((sum, { readings }) => sum + readings.length, 0),
        logLikelihoods: logLikelihoods(ofClass, medianDecayRate(treatmentClass, climate), offsets),
      },
    ];
  });
}

/** The pace of one treatment class in one climate band, from the fences of the register; with none, the published one. */
export function registerPace(
  treatmentClass: TreatmentClass,
  band: ClimateBand,
  fences: readonly FencePaceEvidence[],
): RegisterPace {
  const own = fences.filter((fence) => fence.treatmentClass === treatmentClass && fence.climateBand === band);
  const readings = own.reduce((sum, fence) => sum + fence.readings, 0);
  return {
    kind: 'pace',
    key: paceKey(treatmentClass, band),
    treatmentClass,
    climateBand: band,
    readings,
    enough: own.length >= LEAST_FENCES && readings >= LEAST_READINGS,
    ...poolFences(own, TREATMENT_CLASSES[treatmentClass].paceSpread),
  };
}
