import type { ClimateFacts } from '../decay/climate-factor.ts';
import { medianDecayRate } from '../decay/decay-rate.ts';
import { TREATMENT_CLASSES, type TreatmentClass } from '../decay/treatment-class.ts';
import type { LearnedFacts } from './evidence/learned-facts.ts';

/** Prior of ln r of the fences of one treatment class in one climate: median rate and spread from fence to fence. */
export interface PacePrior {
  /** Median rate [mm/a per face]; 0 for what does not rot. */
  readonly medianRate: number;
  /** Spread of ln r from fence to fence [-]. */
  readonly spread: number;
}

/**
 * The prior of rot pace: the published rate and spread of a class, or what the register learned of it and the office
 * accepted [mm/a, -].
 * Source: see `medianDecayRate` and `TREATMENT_CLASSES`; learned values from the readings of the register.
 */
export function pacePrior(
  treatmentClass: TreatmentClass,
  climate: ClimateFacts,
  learned: LearnedFacts | null,
): PacePrior {
  const published = medianDecayRate(treatmentClass, climate);
  const own = learned?.paces.find((pace) => pace.treatmentClass === treatmentClass);
  return own
    ? { medianRate: published * Math.exp(own.logShift), spread: own.spread }
    : { medianRate: published, spread: TREATMENT_CLASSES[treatmentClass].paceSpread };
}
