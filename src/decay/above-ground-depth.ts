import type { Provenance } from '../units/provenance.ts';
import { type ClimateFacts, climateFactor } from './climate-factor.ts';
import { type DecayLaw, START_DEPTH_MM } from './decay-depth.ts';
import type { TreatmentClass } from './treatment-class.ts';

export const ABOVE_GROUND_PROVENANCE: Provenance = {
  source:
    'Wang, Leicester, Nguyen 2008, Manual No. 4 "Decay above-ground" (FWPA PN07.1052): depth law, k_wood and zones',
  tag: 'memory',
};

const LAG_COEFFICIENT = 8.5;
const LAG_EXPONENT = -0.85;

/** k_wood above ground of heartwood classes 1 to 4, and of sapwood [-]. Source: Manual No. 4 (memory). */
const HEARTWOOD = [0.5, 0.62, 1.14, 2.2] as const;
const SAPWOOD = 6.52;

/** k_wood above ground [-]; null where no published law covers the class. */
const WOOD_FACTORS: Readonly<Record<TreatmentClass, number | null>> = {
  'untreated-softwood': SAPWOOD,
  'untreated-hardwood': SAPWOOD,
  // Rails of mixed wood go soft in their sapwood first.
  'untreated-douglas-fir': SAPWOOD,
  'heartwood-class-1': HEARTWOOD[0],
  'heartwood-class-2': HEARTWOOD[1],
  'heartwood-class-3': HEARTWOOD[2],
  'heartwood-class-4': HEARTWOOD[3],
  'redcedar-redwood-heartwood': HEARTWOOD[1],
  'black-locust': HEARTWOOD[0],
  'juniper-osage-orange': null,
  'above-ground-stock': null,
  'refractory-unincised': null,
  'refractory-incised': null,
  'ground-contact': null,
  'heavy-duty': null,
  'extreme-duty': null,
  'round-pine-cca': null,
  'round-pine-penta': null,
  'round-pine-acza': null,
  'round-pine-creosote': null,
  'round-pine-copper-naphthenate': null,
  'unknown-treated': null,
  'does-not-rot': null,
};

/** Zones A to D: climate factor in the ground and above it [-]. Source: Manuals No. 3 and No. 4 (memory). */
const ZONES = [
  { zone: 'A', inGround: 0.5, aboveGround: 0.4 },
  { zone: 'B', inGround: 1.5, aboveGround: 0.5 },
  { zone: 'C', inGround: 2.5, aboveGround: 0.65 },
  { zone: 'D', inGround: 3, aboveGround: 0.75 },
] as const;

/**
 * Hazard zone above ground of a climate, with its k_climate [-]: the zone whose in-ground factor is nearest, the drier of two
 * that are equally near.
 * Source: zones from Manuals No. 3 and No. 4 (memory); the mapping is judgement.
 */
export function aboveGroundZone(climate: ClimateFacts): {
  readonly zone: 'A' | 'B' | 'C' | 'D';
  readonly factor: number;
} {
  const inGround = climateFactor(climate);
  const nearest = ZONES.reduce((best, zone) =>
    Math.abs(zone.inGround - inGround) < Math.abs(best.inGround - inGround) ? zone : best,
  );
  return { zone: nearest.zone, factor: nearest.aboveGround };
}

/**
 * Median rate of rot above ground, r = k_wood k_climate, in rails and infill of a class [mm/a per exposed face]; null where no
 * published law covers the class (preservative-treated stock, and what does not rot). Factors for paint, thickness, width,
 * fastener and geometry are left at 1. An in-ground durability class is taken for the same class above ground; redcedar and
 * redwood count as class 2, black locust as class 1 (judgement).
 * Source: Wang, Leicester, Nguyen 2008, Manual No. 4 (memory).
 */
export function aboveGroundRate(treatmentClass: TreatmentClass, climate: ClimateFacts): number | null {
  const woodFactor = WOOD_FACTORS[treatmentClass];
  return woodFactor === null ? null : woodFactor * aboveGroundZone(climate).factor;
}

/**
 * The depth law of a rate above ground [mm, a]: t_lag = 8.5 r^-0.85, a parabola to 5 mm, then r (t - t_lag); read its depth
 * with `depthByLaw`.
 * @param rateMmPerYear r [mm/a per face], > 0
 * Source: Wang, Leicester, Nguyen 2008, Manual No. 4 (memory).
 */
export function aboveGroundLaw(rateMmPerYear: number): DecayLaw {
  const lagYears = LAG_COEFFICIENT * rateMmPerYear ** LAG_EXPONENT;
  return { rateMmPerYear, lagYears, startEndsYears: lagYears + START_DEPTH_MM / rateMmPerYear };
}
