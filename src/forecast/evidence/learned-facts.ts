import type { TreatmentClass } from '../../decay/treatment-class.ts';

/** What the register has learned of one treatment class in one climate band, as accepted by the office. */
interface LearnedPace {
  readonly treatmentClass: TreatmentClass;
  /** Shift of ln r from the published value [-]. */
  readonly logShift: number;
  /** Spread of ln r from fence to fence, in place of the published one [-]. */
  readonly spread: number;
}

/** What the office has accepted of what its register learned, for one fence's climate band and soil. */
export interface LearnedFacts {
  /** Number of the acceptance. */
  readonly version: number;
  readonly paces: readonly LearnedPace[];
  /** Footing resistance: shift and spread of ln R in place of the published ones [-]; null where not accepted. */
  readonly footing: { readonly logShift: number; readonly spread: number } | null;
}
