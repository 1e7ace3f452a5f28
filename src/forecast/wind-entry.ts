/** Basis on which a design wind speed was entered. */
export const WIND_BASES = ['ultimate', 'nominal', 'asd', 'fastest-mile'] as const;
export type WindBasis = (typeof WIND_BASES)[number];

/** A design wind speed as entered, and what it means. */
export interface WindEntry {
  /** `map`: a point of the site's hazard curve; `local-rule`: an ordinance's number, used as it stands. */
  readonly kind: 'map' | 'local-rule';
  /**
   * ultimate: 3-s gust, ASCE 7-10 on. nominal: 3-s gust, ASCE 7-95 to 7-05, 50 years.
   * asd: IBC V_asd = V_ult sqrt(0.6). fastest-mile: before 1995.
   */
  readonly basis: WindBasis;
  /** Speed as entered, before any conversion [m/s]. */
  readonly speedMps: number;
  /** Return period of the entered speed [a]; 50 for nominal and fastest-mile; null for a local rule. */
  readonly returnPeriodYears: number | null;
  /** A second point of the curve, on the same basis; for a local rule the only point. Null where none was entered. */
  readonly second: { readonly speedMps: number; readonly returnPeriodYears: number } | null;
  readonly hurricane: boolean;
}
