import { mpaFromPsi } from '../units/pressure.ts';
import type { Provenance } from '../units/provenance.ts';
import type { PostSection } from './post-section.ts';
import { type Grade, type Species, TIMBER_SIDE_MM } from './wood-strength.ts';

export const ALLOWABLE_STRESS_PROVENANCE: Provenance = {
  source: 'NDS 2018 Supplement Tables 4A, 4B, 4D and Table 4.3.1 (southern pine No.2 E and 5x5 Fb read)',
  tag: 'memory',
};

/** Load duration factor CD for wind [-]. Source: NDS 2018 Table 2.3.2 (memory). */
export const LOAD_DURATION_WIND = 1.6;
const INCISING_FACTOR = 0.8;
/** CF of Table 4A for members 2 to 4 in thick: 4 in wide, and 5 to 6 in wide [-] (memory). */
const SIZE_FACTOR = { narrow: 1.5, wide: 1.3 };
/** Bending of a round against the square of equal area [-]. Source: older NDS form factor (memory). */
const ROUND_FORM_FACTOR = 1.18;
const NO_3_TIMBER_SHARE = 0.6;

interface DesignValues {
  /** Fb of members 2 to 4 in thick, No.1, No.2, No.3 [psi]; for southern pine at 4 in wide with size included. */
  readonly lumberFb: readonly [number, number, number];
  /** Southern pine at 5 to 6 in wide, size included [psi]; null where Table 4A's size factor applies. */
  readonly wideFb: readonly [number, number, number] | null;
  readonly lumberFv: number;
  /** Fb of posts and timbers, 5x5 and larger, No.1 and No.2 [psi]. */
  readonly timberFb: readonly [number, number];
  readonly timberFv: number;
  /** Set where the standard's supplement lists no such species and another one stands in. */
  readonly standsIn: string | null;
}

const values = (
  lumberFb: DesignValues['lumberFb'],
  lumberFv: number,
  timberFb: DesignValues['timberFb'],
  timberFv: number,
  standsIn: string | null = null,
): DesignValues => ({ lumberFb, wideFb: null, lumberFv, timberFb, timberFv, standsIn });

const WESTERN_CEDARS = [[725, 700, 400], 155, [875, 550], 140] as const;
const REDWOOD = [[975, 925, 525], 160, [1200, 1000], 145] as const;
const WESTERN_WOODS = [[675, 675, 375], 135, [800, 500], 125] as const;

/** Reference design values [psi]; memory, except where the note of `ALLOWABLE_STRESS_PROVENANCE` says read. */
const DESIGN_VALUES: Record<Species, DesignValues> = {
  'southern-pine': {
    lumberFb: [1500, 1100, 650],
    wideFb: [1350, 1000, 575],
    lumberFv: 175,
    timberFb: [1350, 850],
    timberFv: 165,
    standsIn: null,
  },
  'douglas-fir': values([1000, 900, 525], 180, [1200, 750], 170),
  'hem-fir': values([975, 850, 500], 150, [975, 575], 140),
  'spruce-pine-fir': values([875, 875, 500], 135, [850, 500], 125),
  'western-redcedar': values(...WESTERN_CEDARS),
  redwood: values(...REDWOOD),
  'northern-white-cedar': values([575, 550, 325], 120, [700, 450], 115),
  'eastern-redcedar': values(...WESTERN_CEDARS, 'western cedars'),
  baldcypress: values([1000, 825, 475], 160, [1150, 750], 145),
  'ponderosa-pine': values(...WESTERN_WOODS),
  'black-locust': values(...REDWOOD, 'redwood'),
  unknown: values(...WESTERN_WOODS, 'western woods'),
};

/** Allowable stresses of a post under wind, with the factors that made them [MPa]. */
export interface AllowableStress {
  readonly bendingMpa: number;
  readonly shearMpa: number;
  /** Reference Fb with size included [psi]. */
  readonly referenceFbPsi: number;
  readonly wetServiceFactor: number;
  readonly incisingFactor: number;
  readonly standsIn: string | null;
}

/**
 * Allowable bending and shear stress of a post under wind, basis `code` (ASD) [MPa]:
 * F' = F CD CM Ci CF with CD = 1.6; CM for bending 0.85, but 1.0 where Fb CF <= 1,150 psi or for timbers; CM for shear 0.97.
 * @param wood species, visual grade, incised or not, section as installed
 * Source: NDS 2018 Supplement and Table 4.3.1 (memory).
 */
export function allowableStress(wood: {
  readonly species: Species;
  readonly grade: Grade;
  readonly incised: boolean;
  readonly section: PostSection;
}): AllowableStress {
  const table = DESIGN_VALUES[wood.species];
  const rank = wood.grade === 'no-1' ? 0 : wood.grade === 'no-3' ? 2 : 1;
  const { section } = wood;
  const round = section.kind === 'round';
  const timber = round || Math.min(section.widthMm, section.depthMm) >= TIMBER_SIDE_MM;
  const incisingFactor = wood.incised ? INCISING_FACTOR : 1;
  let referenceFbPsi: number;
  let wetServiceFactor = 1;
  if (timber) {
    referenceFbPsi = rank === 2 ? NO_3_TIMBER_SHARE * table.timberFb[1] : table.timberFb[rank];
    if (round) referenceFbPsi *= ROUND_FORM_FACTOR;
  } else {
    const wide = section.depthMm >= TIMBER_SIDE_MM;
    if (table.wideFb) referenceFbPsi = wide ? table.wideFb[rank] : table.lumberFb[rank];
    else referenceFbPsi = table.lumberFb[rank] * (wide ? SIZE_FACTOR.wide : SIZE_FACTOR.narrow);
    wetServiceFactor = referenceFbPsi <= 1150 ? 1 : 0.85;
  }
  const shearWet = timber ? 1 : 0.97;
  return {
    bendingMpa: mpaFromPsi(referenceFbPsi * LOAD_DURATION_WIND * wetServiceFactor * incisingFactor),
    shearMpa: mpaFromPsi((timber ? table.timberFv : table.lumberFv) * LOAD_DURATION_WIND * shearWet * incisingFactor),
    referenceFbPsi,
    wetServiceFactor,
    incisingFactor,
    standsIn: table.standsIn,
  };
}
