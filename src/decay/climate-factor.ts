import type { Provenance } from '../units/provenance.ts';

/** What the register knows of a site's climate: measured means, or only a decay hazard zone 1 to 5. */
export type ClimateFacts =
  | {
      readonly kind: 'measured';
      /** Mean annual rain [mm/a]. */
      readonly rainMmPerYear: number;
      /** Mean annual temperature [degC]. */
      readonly meanTemperatureC: number;
      /** Months with 5 mm of rain or less [-]. */
      readonly dryMonths: number;
    }
  | { readonly kind: 'decay-zone'; readonly zone: 1 | 2 | 3 | 4 | 5 };

export const CLIMATE_FACTOR_PROVENANCE: Provenance = {
  source: 'Wang, Leicester, Nguyen 2008, Manual No. 3 "Decay in ground contact" (FWPA PN07.1052), climate index',
  tag: 'memory',
};

/** Lowest climate factor the product uses [-]; without it dry or cold sites would have immortal posts. */
export const CLIMATE_FACTOR_FLOOR = 0.5;

/** Climate factor of decay zones 1 to 5 [-]; judgement, spans the range computed for United States sites. */
export const DECAY_ZONE_FACTORS = { 1: 1.0, 2: 1.3, 3: 1.6, 4: 2.0, 5: 2.4 } as const;

/**
 * Rain part f(R, N) of the climate factor [-].
 * f = 10 (1 - exp(-0.001 (R - 250))) (1 - N/6) for R > 250 mm and 0 <= N <= 6, else 0.
 * @param rainMmPerYear R, mean annual rain [mm/a], >= 0
 * @param dryMonths N, months with 5 mm or less [-], 0 to 12
 * Source: Wang, Leicester, Nguyen 2008, Manual No. 3 (memory).
 */
export function rainFunction(rainMmPerYear: number, dryMonths: number): number {
  if (rainMmPerYear <= 250 || dryMonths < 0 || dryMonths > 6) return 0;
  return 10 * (1 - Math.exp(-0.001 * (rainMmPerYear - 250))) * (1 - dryMonths / 6);
}

/**
 * Temperature part g(T) of the climate factor [-]: 0 to 5 degC, -1 + 0.2 T to 20 degC, -25 + 1.4 T above.
 * @param meanTemperatureC T, mean annual temperature [degC]
 * Source: Wang, Leicester, Nguyen 2008, Manual No. 3 (memory).
 */
export function temperatureFunction(meanTemperatureC: number): number {
  if (meanTemperatureC <= 5) return 0;
  return meanTemperatureC <= 20 ? -1 + 0.2 * meanTemperatureC : -25 + 1.4 * meanTemperatureC;
}

/**
 * Climate factor before the floor, k = f(R, N)^0.3 g(T)^0.2 [-].
 * @param rainMmPerYear R [mm/a], >= 0
 * @param meanTemperatureC T [degC]
 * @param dryMonths N [-], 0 to 12
 * Source: Wang, Leicester, Nguyen 2008, Manual No. 3 (memory).
 */
export function unflooredClimateFactor(rainMmPerYear: number, meanTemperatureC: number, dryMonths: number): number {
  return rainFunction(rainMmPerYear, dryMonths) ** 0.3 * temperatureFunction(meanTemperatureC) ** 0.2;
}

/**
 * Climate factor k_climate of a site [-], never below `CLIMATE_FACTOR_FLOOR`.
 * Source: Manual No. 3 (memory) for measured climates; the zone values and the floor are judgement.
 */
export function climateFactor(climate: ClimateFacts): number {
  if (climate.kind === 'decay-zone') return DECAY_ZONE_FACTORS[climate.zone];
  const { rainMmPerYear, meanTemperatureC, dryMonths } = climate;
  return Math.max(CLIMATE_FACTOR_FLOOR, unflooredClimateFactor(rainMmPerYear, meanTemperatureC, dryMonths));
}
