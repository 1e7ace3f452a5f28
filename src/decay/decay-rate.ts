import { type ClimateFacts, climateFactor } from './climate-factor.ts';
import { TREATMENT_CLASSES, type TreatmentClass } from './treatment-class.ts';

/**
 * Median rot rate of a class in a climate, r = phi k_wood k_climate [mm/a per exposed face]; 0 for what does not rot.
 * Source: Leicester et al. 2003, IRG/WP 03-20260 (form); phi from field lives, see `TREATMENT_CLASSES`.
 */
export function medianDecayRate(treatmentClass: TreatmentClass, climate: ClimateFacts): number {
  const { treatmentFactor, woodFactor } = TREATMENT_CLASSES[treatmentClass];
  return treatmentFactor * woodFactor * climateFactor(climate);
}

/** Standard deviation of ln r from post to post within one fence [-]. Source: derived from Lebow et al. 2015, rows ACA and creosote. */
export const POST_PACE_SPREAD = 0.54;
