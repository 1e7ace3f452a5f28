import type { Provenance } from '../units/provenance.ts';

/** Soil around a footing: median strength for `expected`, tabulated lateral bearing for `code`. */
export interface SoilParameters {
  readonly name: string;
  readonly strength:
    | { readonly kind: 'sand'; readonly frictionAngleDeg: number; readonly unitWeightNPerM3: number }
    | { readonly kind: 'clay'; readonly undrainedShearPa: number };
  /** Allowable lateral bearing per depth, IBC Table 1806.2 [psf/ft]. */
  readonly lateralBearingPsfPerFt: 100 | 150 | 200;
}

export const SOIL_PROVENANCE: Provenance = { source: 'typical values of the six classes', tag: 'judgement' };
export const LATERAL_BEARING_PROVENANCE: Provenance = {
  source: 'IBC 2012 Table 1806.2, as reproduced in Day, Geotechnical Earthquake Engineering Handbook, Table 14.6',
  tag: 'read',
};

const sand = (
  name: string,
  frictionAngleDeg: number,
  unitWeightKnPerM3: number,
  lateralBearingPsfPerFt: 150 | 200,
): SoilParameters => ({
  name,
  strength: { kind: 'sand', frictionAngleDeg, unitWeightNPerM3: unitWeightKnPerM3 * 1000 },
  lateralBearingPsfPerFt,
});

const clay = (name: string, undrainedShearKpa: number): SoilParameters => ({
  name,
  strength: { kind: 'clay', undrainedShearPa: undrainedShearKpa * 1000 },
  lateralBearingPsfPerFt: 100,
});

/** The six soil classes. Strengths are medians by judgement; lateral bearing is read (IBC Table 1806.2). */
export const SOIL_CLASSES = {
  'loose-sand': sand('loose sand or fill', 30, 17, 150),
  'medium-sand': sand('medium sand', 34, 18, 150),
  'dense-sand': sand('dense sand or gravel', 38, 19.5, 200),
  'soft-clay': clay('soft clay', 25),
  'firm-clay': clay('firm clay or silt', 50),
  'stiff-clay': clay('stiff clay', 100),
} as const satisfies Record<string, SoilParameters>;

export type SoilClass = keyof typeof SOIL_CLASSES;
export const SOIL_CLASS_KEYS = Object.keys(SOIL_CLASSES) as readonly SoilClass[];

/** Unit weight of water [N/m3]. */
export const WATER_UNIT_WEIGHT_N_PER_M3 = 9810;
/** Standard deviation of ln(footing resistance), fence level [-]; judgement. */
export const FOOTING_SPREAD = 0.4;
