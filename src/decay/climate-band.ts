import { type ClimateFacts, climateFactor, DECAY_ZONE_FACTORS } from './climate-factor.ts';

/** The decay zones as bands of the climate factor, mildest first. */
export const CLIMATE_BANDS = [1, 2, 3, 4, 5] as const;
export type ClimateBand = (typeof CLIMATE_BANDS)[number];

/**
 * The decay zone whose climate factor lies nearest to that of a site [-]: 1 to 5. Boundaries lie half-way, at factors of
 * 1.15, 1.45, 1.8 and 2.2 [-]; a factor on a boundary belongs to the upper band.
 * Source: judgement (zone values of `DECAY_ZONE_FACTORS`).
 */
export function climateBand(climate: ClimateFacts): ClimateBand {
  const factor = climateFactor(climate);
  let band: ClimateBand = 1;
  for (const next of [2, 3, 4, 5] as const) {
    if (factor >= (DECAY_ZONE_FACTORS[band] + DECAY_ZONE_FACTORS[next]) / 2) band = next;
  }
  return band;
}
