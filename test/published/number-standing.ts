import { ALLOWABLE_STRESS_PROVENANCE } from '../../src/capacity/allowable-stress.ts';
import { COLLAR_PROVENANCE } from '../../src/capacity/collar.ts';
import {
  BROMS_CLAY_PROVENANCE,
  BROMS_SAND_PROVENANCE,
  PRESUMPTIVE_FOOTING_PROVENANCE,
  SAND_MODEL_FACTOR,
} from '../../src/capacity/footing.ts';
import { FORCE_COEFFICIENT_PROVENANCE } from '../../src/capacity/force-coefficient.ts';
import { OPEN_SIGN_PROVENANCE, OPENINGS_PROVENANCE } from '../../src/capacity/openings.ts';
import {
  FOOTING_SPREAD,
  LATERAL_BEARING_PROVENANCE,
  SOIL_CLASS_KEYS,
  SOIL_CLASSES,
  SOIL_PROVENANCE,
} from '../../src/capacity/soil-class.ts';
import { EXPOSURE_PROVENANCE, VELOCITY_PRESSURE_PROVENANCE } from '../../src/capacity/velocity-pressure.ts';
import {
  FIBRE_SPREAD_FENCE,
  FIBRE_SPREAD_POST,
  FIBRE_SPREAD_UNKNOWN_SPECIES,
  SHEAR_STRENGTH_PROVENANCE,
  SPECIES,
  SPECIES_KEYS,
  WOOD_STRENGTH_PROVENANCE,
} from '../../src/capacity/wood-strength.ts';
import { CLIMATE_FACTOR_FLOOR, CLIMATE_FACTOR_PROVENANCE, DECAY_ZONE_FACTORS } from '../../src/decay/climate-factor.ts';
import { DECAY_DEPTH_PROVENANCE } from '../../src/decay/decay-depth.ts';
import { PACE_SPREAD_PROVENANCE, TREATMENT_CLASS_KEYS, TREATMENT_CLASSES } from '../../src/decay/treatment-class.ts';
import { HAZARD_PROVENANCE } from '../../src/forecast/hazard-curve.ts';
import { ASSUMED_RETURN_RATIO } from '../../src/forecast/post-demand.ts';
import { STORM_LOAD_SPREAD } from '../../src/forecast/risk.ts';
import { LINER_PACE } from '../../src/forecast/rot-clock.ts';
import { PERMANENT_LOAD_SPREAD } from '../../src/forecast/state-model.ts';
import { FOOTING_PRIOR } from '../../src/forecast/unknown-priors.ts';
import { GROUNDLINE_TREATMENT_YEARS } from '../../src/forecast/works.ts';
import { inchesFromMm } from '../../src/units/length.ts';
import type { Provenance } from '../../src/units/provenance.ts';

/** Every provenance constant of the program, by its name there. */
export const PROVENANCES: Readonly<Record<string, Provenance>> = {
  ALLOWABLE_STRESS_PROVENANCE,
  BROMS_CLAY_PROVENANCE,
  BROMS_SAND_PROVENANCE,
  CLIMATE_FACTOR_PROVENANCE,
  COLLAR_PROVENANCE,
  DECAY_DEPTH_PROVENANCE,
  EXPOSURE_PROVENANCE,
  FORCE_COEFFICIENT_PROVENANCE,
  HAZARD_PROVENANCE,
  LATERAL_BEARING_PROVENANCE,
  OPENINGS_PROVENANCE,
  OPEN_SIGN_PROVENANCE,
  PACE_SPREAD_PROVENANCE,
  PRESUMPTIVE_FOOTING_PROVENANCE,
  SHEAR_STRENGTH_PROVENANCE,
  SOIL_PROVENANCE,
  VELOCITY_PRESSURE_PROVENANCE,
  WOOD_STRENGTH_PROVENANCE,
};

/** What each provenance constant speaks of, in plain words. */
const SPEAKS_OF: Readonly<Record<string, string>> = {
  ALLOWABLE_STRESS_PROVENANCE: 'allowable stresses of wood (`code`)',
  BROMS_SAND_PROVENANCE: 'ultimate footing resistance in sand',
  CLIMATE_FACTOR_PROVENANCE: 'climate factor of rot',
  DECAY_DEPTH_PROVENANCE: 'depth law of rot',
  HAZARD_PROVENANCE: 'curve of yearly maximum gusts from one map speed',
  SOIL_PROVENANCE: 'soil strengths (`expected`)',
  SHEAR_STRENGTH_PROVENANCE: 'green shear strength (`expected`)',
  PACE_SPREAD_PROVENANCE: 'spread of pace from fence to fence',
  WOOD_STRENGTH_PROVENANCE: 'median bending strengths (`expected`)',
};

/** A number or table that nobody has read in a source. */
export interface WeakNumber {
  readonly what: string;
  readonly value: string;
  readonly tag: 'memory' | 'judgement';
  readonly source: string;
}

const judged = (what: string, value: number | string, source = 'model choice'): WeakNumber => ({
  what,
  value: String(value),
  tag: 'judgement',
  source,
});

const soils = SOIL_CLASS_KEYS.map((key) => {
  const { name, strength } = SOIL_CLASSES[key];
  return strength.kind === 'sand'
    ? `${name} phi ${strength.frictionAngleDeg}, ${strength.unitWeightNPerM3 / 1000} kN/m3`
    : `${name} cu ${strength.undrainedShearPa / 1000} kPa`;
}).join('; ');
const strengths = SPECIES_KEYS.map((key) => `${SPECIES[key].name} ${SPECIES[key].sawnMedianMpa}`).join('; ');

const isWeak = (provenance: Provenance): provenance is Provenance & { readonly tag: 'memory' | 'judgement' } =>
  provenance.tag === 'memory' || provenance.tag === 'judgement';

/** Everything tagged memory or judgement, from the program's own constants. */
export const WEAK_NUMBERS: readonly WeakNumber[] = [
  ...Object.entries(PROVENANCES).flatMap(([name, provenance]): WeakNumber[] =>
    isWeak(provenance)
      ? [{ what: SPEAKS_OF[name] ?? name, value: 'table or formula', tag: provenance.tag, source: provenance.source }]
      : [],
  ),
  ...TREATMENT_CLASS_KEYS.flatMap((key): WeakNumber[] => {
    const { name, woodFactor, treatmentFactor, paceSpread, rots, provenance } = TREATMENT_CLASSES[key];
    return rots && isWeak(provenance)
      ? [
          {
            what: `rot of ${name}`,
            value: `k_wood ${woodFactor}, phi ${treatmentFactor}, tau ${paceSpread}`,
            tag: provenance.tag,
            source: provenance.source,
          },
        ]
      : [];
  }),
  judged('soil strengths, medians', soils),
  judged('median green bending strength of a No.2 4x4 [MPa]', strengths, WOOD_STRENGTH_PROVENANCE.source),
  judged('share of Broms in sand', SAND_MODEL_FACTOR),
  judged('spread of ln(footing resistance)', FOOTING_SPREAD),
  judged('spread of ln(strength), fence to fence', FIBRE_SPREAD_FENCE),
  judged('spread of ln(strength), post to post', FIBRE_SPREAD_POST),
  judged('further spread where the species is not recorded', FIBRE_SPREAD_UNKNOWN_SPECIES),
  judged('spread of ln(force), lasting', PERMANENT_LOAD_SPREAD),
  judged('spread of ln(force), storm to storm', STORM_LOAD_SPREAD),
  judged('lowest climate factor', CLIMATE_FACTOR_FLOOR),
  judged('climate factor of decay zones 1 to 5', Object.values(DECAY_ZONE_FACTORS).join(', ')),
  judged(
    'pace of rot behind a full-height liner',
    LINER_PACE,
    'IRG 08-20384, IRG 96-40067 (read); the half is judgement',
  ),
  judged(
    'years a groundline treatment holds',
    GROUNDLINE_TREATMENT_YEARS,
    'IRG/WP 3222 (read: at least five); the use is judgement',
  ),
  judged('return length where an end is not recorded, over the height', ASSUMED_RETURN_RATIO),
  judged(
    'footing where none is recorded',
    `concrete, ${inchesFromMm(FOOTING_PRIOR.embedmentM * 1000).toFixed(0)} in deep (spread ${FOOTING_PRIOR.embedmentSpread}), ${inchesFromMm(FOOTING_PRIOR.diameterM * 1000).toFixed(0)} in wide (spread ${FOOTING_PRIOR.diameterSpread})`,
  ),
];
