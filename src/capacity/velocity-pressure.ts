import type { Provenance } from '../units/provenance.ts';

/** Exposure category of a site. */
export type Exposure = 'B' | 'C' | 'D';
export const EXPOSURES = ['B', 'C', 'D'] as const;

export const VELOCITY_PRESSURE_PROVENANCE: Provenance = {
  source: 'ASCE 7-16 Eq. 26.10-1.si: q = 0.613 Kz Kzt Kd Ke V^2',
  tag: 'read',
};
export const EXPOSURE_PROVENANCE: Provenance = {
  source:
    'ASCE 7-16 Table 26.10-1 and 26.11-1: Kz = 2.01 (z/zg)^(2/alpha); alpha, zg read in ASCE 7-05 Table 6-2 as reproduced',
  tag: 'read at second hand',
};

/** Edition whose exposure constants are used. */
export type WindEdition = 'ASCE 7-16' | 'ASCE 7-22';

interface ExposureConstants {
  readonly alpha: number;
  /** Gradient height [m]. */
  readonly gradientHeightM: number;
}

const FT = 0.3048;
const EDITIONS: Record<WindEdition, { coefficient: number; exposures: Record<Exposure, ExposureConstants> }> = {
  'ASCE 7-16': {
    coefficient: 2.01,
    exposures: {
      B: { alpha: 7.0, gradientHeightM: 1200 * FT },
      C: { alpha: 9.5, gradientHeightM: 900 * FT },
      D: { alpha: 11.5, gradientHeightM: 700 * FT },
    },
  },
  'ASCE 7-22': {
    coefficient: 2.41,
    exposures: {
      B: { alpha: 7.5, gradientHeightM: 3280 * FT },
      C: { alpha: 9.8, gradientHeightM: 2460 * FT },
      D: { alpha: 11.5, gradientHeightM: 1935 * FT },
    },
  },
};

/** Height below which the codes take the wind as at that height [m]: 15 ft. Source: ASCE 7-16 Table 26.10-1 notes. */
export const CODE_HEIGHT_FLOOR_M = 15 * FT;
/** Directionality factor of solid freestanding walls [-]. Source: ASCE 7-16 Table 26.6-1 (read). */
export const DIRECTIONALITY_FACTOR = 0.85;
/** Gust-effect factor of a rigid structure [-]. Source: ASCE 7-16 26.11.1 (read); a fence at 2 to 4 Hz counts as rigid. */
export const GUST_EFFECT_FACTOR = 0.85;
/** Half the density of air, in q = 0.613 V^2 [kg/m3]. Source: ASCE 7-16 Eq. 26.10-1.si (read). */
const HALF_AIR_DENSITY = 0.613;

/**
 * Velocity pressure exposure coefficient Kz [-].
 * @param heightM z, height above ground [m], > 0
 * @param exposure exposure category B, C or D
 * @param floorM height below which z is not taken [m]; `CODE_HEIGHT_FLOOR_M` for code, 0 for `expected`
 * @param edition constants of ASCE 7-16 (2.01) or ASCE 7-22 (2.41, memory)
 * Source: ASCE 7-16 Table 26.10-1.
 */
export function exposureCoefficient(
  heightM: number,
  exposure: Exposure,
  floorM: number,
  edition: WindEdition = 'ASCE 7-16',
): number {
  const { coefficient, exposures } = EDITIONS[edition];
  const { alpha, gradientHeightM } = exposures[exposure];
  return coefficient * (Math.max(heightM, floorM) / gradientHeightM) ** (2 / alpha);
}

/** Constants alpha [-] and zg [m] of an exposure category. Source: ASCE 7-16 Table 26.11-1 (read at second hand). */
export const exposureConstants = (exposure: Exposure): ExposureConstants => EDITIONS['ASCE 7-16'].exposures[exposure];

/**
 * Ground elevation factor Ke = exp(-0.000119 z) [-].
 * @param elevationM ground elevation above sea level [m]
 * Source: ASCE 7-16 26.9 (memory).
 */
export const elevationFactor = (elevationM: number): number => Math.exp(-0.000119 * elevationM);

/** The factors of velocity pressure other than speed [-]. */
export interface PressureFactors {
  readonly exposureCoefficient: number;
  readonly topographicFactor: number;
  readonly elevationFactor: number;
}

/**
 * Velocity pressure at a gust of 1 m/s, q / V^2 = 0.613 Kz Kzt Kd Ke [Pa/(m/s)^2], directionality included.
 * Source: ASCE 7-16 Eq. 26.10-1.si.
 */
export const pressurePerSpeedSquared = (factors: PressureFactors): number =>
  HALF_AIR_DENSITY *
  factors.exposureCoefficient *
  factors.topographicFactor *
  DIRECTIONALITY_FACTOR *
  factors.elevationFactor;
