/** How sure we are of a number: the tags of the engineering notes, shown wherever the number is shown. */
export type Standing =
  | 'recorded'
  | 'read'
  | 'read at second hand'
  | 'memory'
  | 'derived'
  | 'judgement'
  | 'common practice, no source';

/** Where a formula or a number comes from and how sure we are of it. */
export interface Provenance {
  readonly source: string;
  readonly tag: Standing;
}
