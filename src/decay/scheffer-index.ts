/** One month of a climate record. */
export interface ClimateMonth {
  /** Mean temperature [degF]. */
  readonly meanTemperatureF: number;
  /** Days with at least 0.01 in (0.254 mm) of precipitation [d]. */
  readonly wetDays: number;
}

/**
 * Scheffer climate index of a year [-]: sum over 12 months of (T - 35)(D - 3) / 30, both factors clamped at zero.
 * For wood above ground only (rails, pickets): a sanity check here, never the groundline driver.
 * Throws RangeError unless 12 months are given.
 * Source: Scheffer 1971, Forest Prod. J. 21(10):25-31 (formula from memory; the clamp is judgement).
 */
export function schefferIndex(months: readonly ClimateMonth[]): number {
  if (months.length !== 12) throw new RangeError(`a Scheffer index needs 12 months, got ${months.length}`);
  return months.reduce(
    (sum, month) => sum + (Math.max(0, month.meanTemperatureF - 35) * Math.max(0, month.wetDays - 3)) / 30,
    0,
  );
}

/** Decay class of an index [-]: under 35 low, 35 to 65 moderate, above 65 high. Source: Scheffer 1971 (memory). */
export function schefferClass(index: number): 'low' | 'moderate' | 'high' {
  if (index < 35) return 'low';
  return index <= 65 ? 'moderate' : 'high';
}
