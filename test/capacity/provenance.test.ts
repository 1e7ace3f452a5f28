import { describe, expect, it } from 'vitest';
import { ALLOWABLE_STRESS_PROVENANCE } from '../../src/capacity/allowable-stress.ts';
import { COLLAR_PROVENANCE } from '../../src/capacity/collar.ts';
import {
  BROMS_CLAY_PROVENANCE,
  BROMS_SAND_PROVENANCE,
  PRESUMPTIVE_FOOTING_PROVENANCE,
} from '../../src/capacity/footing.ts';
import { FORCE_COEFFICIENT_PROVENANCE } from '../../src/capacity/force-coefficient.ts';
import { OPEN_SIGN_PROVENANCE, OPENINGS_PROVENANCE } from '../../src/capacity/openings.ts';
import {
  NAIL_ULTIMATE_PROVENANCE,
  NAIL_WITHDRAWAL_PROVENANCE,
  RAIL_CONNECTION_PROVENANCE,
  SPECIFIC_GRAVITY_PROVENANCE,
} from '../../src/capacity/rail-connection.ts';
import { LATERAL_BEARING_PROVENANCE, SOIL_PROVENANCE } from '../../src/capacity/soil-class.ts';
import { EXPOSURE_PROVENANCE, VELOCITY_PRESSURE_PROVENANCE } from '../../src/capacity/velocity-pressure.ts';
import { SHEAR_STRENGTH_PROVENANCE, WOOD_STRENGTH_PROVENANCE } from '../../src/capacity/wood-strength.ts';

/** What each number of the room rests on: the work it names, and how sure anybody can be of it. */
const STANDINGS = [
  ['allowable stresses', ALLOWABLE_STRESS_PROVENANCE, 'memory', 'NDS 2018'],
  ['bursting collars', COLLAR_PROVENANCE, 'derived', 'ring'],
  ['footings in sand', BROMS_SAND_PROVENANCE, 'judgement', 'Broms 1964'],
  ['footings in clay', BROMS_CLAY_PROVENANCE, 'read at second hand', 'Broms 1964'],
  ['footings by the code', PRESUMPTIVE_FOOTING_PROVENANCE, 'read', 'IBC 1807.3.2.1'],
  ['force coefficients', FORCE_COEFFICIENT_PROVENANCE, 'read at second hand', 'Figure 29.3-1'],
  ['openings', OPENINGS_PROVENANCE, 'read at second hand', 'Figure 29.3-1'],
  ['open fences', OPEN_SIGN_PROVENANCE, 'read', 'Figure 29.4-2'],
  ['nails by the code', NAIL_WITHDRAWAL_PROVENANCE, 'read at second hand', '1,380 G^2.5 D'],
  ['nails as tested', NAIL_ULTIMATE_PROVENANCE, 'memory', '7,850 G^2.5 D L'],
  ['rails', RAIL_CONNECTION_PROVENANCE, 'judgement', 'three rails'],
  ['specific gravities', SPECIFIC_GRAVITY_PROVENANCE, 'memory', 'NDS 2018 Table 12.3.3A'],
  ['soil strengths', SOIL_PROVENANCE, 'judgement', 'six classes'],
  ['bearing of soils', LATERAL_BEARING_PROVENANCE, 'read', 'IBC 2012 Table 1806.2'],
  ['velocity pressure', VELOCITY_PRESSURE_PROVENANCE, 'read', 'ASCE 7-16'],
  ['exposure', EXPOSURE_PROVENANCE, 'read at second hand', 'ASCE 7-16'],
  ['bending strengths', WOOD_STRENGTH_PROVENANCE, 'judgement', '5,000 psi'],
  ['shear strengths', SHEAR_STRENGTH_PROVENANCE, 'memory', 'Wood Handbook'],
] as const;

describe('what is known of the numbers', () => {
  it.each(STANDINGS)('of %s says where they come from and how sure they are', (_, provenance, tag, work) => {
    expect(provenance.tag).toBe(tag);
    expect(provenance.source).toContain(work);
  });
});
