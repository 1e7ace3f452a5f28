import type { TreatmentClass } from '../decay/treatment-class.ts';

interface LearnedActsTable {
  readonly number: number;
  readonly act: 'accepted' | 'reverted';
  readonly reverted: number | null;
  readonly at: string;
  readonly by: string;
  readonly note: string;
}

export interface LearnedValuesTable {
  readonly acceptance: number;
  readonly key: string;
  readonly kind: 'pace' | 'footing';
  readonly treatment_class: TreatmentClass | null;
  readonly climate_band: 1 | 2 | 3 | 4 | 5 | null;
  readonly soil_kind: 'sand' | 'clay' | null;
  readonly log_shift: number;
  readonly low: number;
  readonly high: number;
  readonly spread: number;
  readonly fences: number;
  readonly seen: number;
  readonly leaned: number | null;
  readonly since: number;
}

/** Tables of what the office accepted of what its register learned; rows are written once. */
export interface LearnedTables {
  readonly learned_acts: LearnedActsTable;
  readonly learned_values: LearnedValuesTable;
}
