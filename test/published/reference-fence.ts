import { allowableStress } from '../../src/capacity/allowable-stress.ts';
import { type LoadedRun, loadArm, postLoads, solidHeight } from '../../src/capacity/post-load.ts';
import { bendingForce, speedAtResistance } from '../../src/capacity/post-resistance.ts';
import { nominalSection } from '../../src/capacity/post-section.ts';
import { NO_LOSS, type SectionLoss, sectionModulus } from '../../src/capacity/section-properties.ts';
import {
  CODE_HEIGHT_FLOOR_M,
  type Exposure,
  exposureCoefficient,
  GUST_EFFECT_FACTOR,
  pressurePerSpeedSquared,
} from '../../src/capacity/velocity-pressure.ts';
import { generatePostPositions } from '../../src/forecast/post-positions.ts';
import { metresFromFeet, mmFromInches } from '../../src/units/length.ts';
import { mpaFromPsi } from '../../src/units/pressure.ts';
import { mphFromMps } from '../../src/units/speed.ts';

/** The worked fence: 6 ft solid boards, 8 ft bays, 80 ft run, both ends free. */
export const REFERENCE_RUN: LoadedRun = {
  heightM: metresFromFeet(6),
  bottomGapM: 0,
  runLengthM: metresFromFeet(80),
  solidity: 1,
  returnLengthsM: [0, 0],
  postPositionsM: generatePostPositions(metresFromFeet(80), metresFromFeet(8)),
};
export const REFERENCE_LOADS = postLoads(REFERENCE_RUN);
/** Arm of the wind force [m]: 3.3 ft. */
export const REFERENCE_ARM_M = loadArm(REFERENCE_RUN);

/** Posts of the table, with their Cf L [m]. */
export const PLACES = {
  'interior, Case A': REFERENCE_LOADS[5]!.caseAM,
  'end, Case C': REFERENCE_LOADS[0]!.caseCM,
  'first interior, Case C': REFERENCE_LOADS[1]!.caseCM,
  'second interior, Case C': REFERENCE_LOADS[2]!.caseCM,
} as const;
export type Place = keyof typeof PLACES;
export const PLACE_NAMES = Object.keys(PLACES) as readonly Place[];

export const POST_4X4 = nominalSection('4x4');
const SOUTHERN_PINE_2 = allowableStress({
  species: 'southern-pine',
  grade: 'no-2',
  incised: false,
  section: POST_4X4,
});
/** Wind in allowable stress design [-]: 0.6 W. */
export const ASD_WIND = 0.6;
/** KF phi of bending in load and resistance factor design [-]: 2.54 x 0.85. */
const LRFD_ON_FB = 2.54 * 0.85;
/** Best estimate of a wet No.2 southern pine 4x4 in the worked case [psi]. */
const BEST_PSI = 5000;

export type Basis = 'ASD' | 'LRFD' | 'best';
export const BASES = ['ASD', 'LRFD', 'best'] as const;

/** Bending force at strength level of a 4x4 No.2 southern pine post [N]. */
export function bendingForceN(basis: Basis, loss: SectionLoss = NO_LOSS): number {
  const modulus = sectionModulus(POST_4X4, loss);
  const at = (strengthMpa: number): number => bendingForce(strengthMpa, modulus, REFERENCE_ARM_M);
  switch (basis) {
    case 'ASD':
      return at(SOUTHERN_PINE_2.bendingMpa) / ASD_WIND;
    case 'LRFD':
      return at(mpaFromPsi(LRFD_ON_FB * SOUTHERN_PINE_2.referenceFbPsi * SOUTHERN_PINE_2.wetServiceFactor));
    case 'best':
      return at(mpaFromPsi(BEST_PSI));
  }
}

/** Loss of a shell of so many inches all round. */
export const shellLoss = (inches: number): SectionLoss => ({ ...NO_LOSS, depthMm: mmFromInches(inches) });

/** Gust at which a post of the worked fence meets a resisting force, 15 ft floor, ASCE 7-16 constants [mph]. */
export function referenceSpeedMph(forceN: number, place: Place, exposure: Exposure): number {
  const pressure = pressurePerSpeedSquared({
    exposureCoefficient: exposureCoefficient(REFERENCE_RUN.heightM, exposure, CODE_HEIGHT_FLOOR_M),
    topographicFactor: 1,
    elevationFactor: 1,
  });
  const forcePerV2 = pressure * GUST_EFFECT_FACTOR * PLACES[place] * solidHeight(REFERENCE_RUN);
  return mphFromMps(speedAtResistance(forceN, forcePerV2));
}
