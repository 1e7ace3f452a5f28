import type { Provenance } from '../units/provenance.ts';
import type { PostSection } from './post-section.ts';

interface SpeciesParameters {
  readonly name: string;
  /** Median green bending strength of a No.2 4x4 [MPa]. */
  readonly sawnMedianMpa: number;
  /** Green clear-wood modulus of rupture [MPa], for round posts. */
  readonly clearGreenMpa: number;
}

/** Species the register knows. Sawn medians are judgement, clear-wood values read or memory as the table's provenance says. */
export const SPECIES = {
  'southern-pine': { name: 'southern pine', sawnMedianMpa: 32.5, clearGreenMpa: 51 },
  'douglas-fir': { name: 'Douglas-fir', sawnMedianMpa: 32.5, clearGreenMpa: 53.1 },
  'hem-fir': { name: 'hem-fir', sawnMedianMpa: 27, clearGreenMpa: 45.5 },
  'spruce-pine-fir': { name: 'spruce-pine-fir', sawnMedianMpa: 22, clearGreenMpa: 37.9 },
  'western-redcedar': { name: 'western redcedar', sawnMedianMpa: 22, clearGreenMpa: 35.9 },
  redwood: { name: 'redwood', sawnMedianMpa: 27, clearGreenMpa: 41 },
  'northern-white-cedar': { name: 'northern white-cedar', sawnMedianMpa: 18, clearGreenMpa: 29 },
  'eastern-redcedar': { name: 'eastern redcedar', sawnMedianMpa: 29, clearGreenMpa: 48.3 },
  baldcypress: { name: 'baldcypress', sawnMedianMpa: 28, clearGreenMpa: 45.5 },
  'ponderosa-pine': { name: 'ponderosa pine', sawnMedianMpa: 21, clearGreenMpa: 35 },
  'black-locust': { name: 'black locust', sawnMedianMpa: 58, clearGreenMpa: 95 },
  /** Not recorded: a low-middling median with a wider spread stands in. */
  unknown: { name: 'species not known', sawnMedianMpa: 26, clearGreenMpa: 42 },
} as const satisfies Record<string, SpeciesParameters>;

export type Species = keyof typeof SPECIES;
export const SPECIES_KEYS = Object.keys(SPECIES) as readonly Species[];

export const GRADES = ['no-1', 'no-2', 'no-3', 'unknown'] as const;
/** Visual grade of a sawn post. */
export type Grade = (typeof GRADES)[number];

export const WOOD_STRENGTH_PROVENANCE: Provenance = {
  source:
    'mean 5,000 psi, COV 0.35 for a wet pith-centred No.2 southern pine 4x4; others roughly in the ratio of green clear-wood strength, rounded by judgement',
  tag: 'judgement',
};

/** Spread of ln strength from fence to fence [-]; judgement. */
export const FIBRE_SPREAD_FENCE = 0.15;
/** Spread of ln strength from post to post within a fence [-]; judgement. */
export const FIBRE_SPREAD_POST = 0.32;
/** Further fence-level spread of ln strength where the species is not recorded [-]; judgement. */
export const FIBRE_SPREAD_UNKNOWN_SPECIES = 0.25;

const GRADE_FACTOR: Record<Grade, number> = { 'no-1': 1.15, 'no-2': 1, 'no-3': 0.8, unknown: 1 };
const LARGE_SAWN_FACTOR = 0.9;
const ROUND_FACTOR = 0.9;
/** Smallest side from which a sawn post counts as 5x5 and larger [mm]: 4.5 in dressed. */
export const TIMBER_SIDE_MM = 114;

/**
 * What a post's median bending strength is made of: the species' value [MPa], the grade factor and the size or shape factor [-].
 * Source: model choice, judgement (see `medianBendingStrength`).
 */
export function strengthFactors(
  species: Species,
  grade: Grade,
  section: PostSection,
): { readonly base: number; readonly grade: number; readonly size: number } {
  const { sawnMedianMpa, clearGreenMpa } = SPECIES[species];
  if (section.kind === 'round') return { base: clearGreenMpa, grade: 1, size: ROUND_FACTOR };
  const size = Math.min(section.widthMm, section.depthMm) >= TIMBER_SIDE_MM ? LARGE_SAWN_FACTOR : 1;
  return { base: sawnMedianMpa, grade: GRADE_FACTOR[grade], size };
}

/**
 * Median green bending strength of a post, basis `expected` [MPa].
 * Sawn: the species' No.2 4x4 median x 1.15 for No.1 x 0.9 for 6x6 and other timbers; round: 0.9 x green clear strength.
 * Source: model choice, judgement throughout (clear-wood ratios: Wood Handbook FPL-GTR-190 Table 5-3a, read and memory).
 */
export function medianBendingStrength(species: Species, grade: Grade, section: PostSection): number {
  const factors = strengthFactors(species, grade, section);
  return factors.base * factors.grade * factors.size;
}

export const SHEAR_STRENGTH_PROVENANCE: Provenance = {
  source: 'green shear over bending strength of clear loblolly pine, about 860/7,300 psi, Wood Handbook',
  tag: 'memory',
};
/** Green shear strength over green bending strength [-]: about 860/7,300 psi for loblolly pine (Wood Handbook, memory). */
const SHEAR_TO_BENDING = 0.118;

/**
 * Median green shear strength of a post along the grain, basis `expected` [MPa], as a fixed share of its bending strength.
 * Source: ratio of green clear-wood shear to bending of loblolly pine, Wood Handbook (memory).
 */
export const medianShearStrength = (species: Species, grade: Grade, section: PostSection): number =>
  SHEAR_TO_BENDING * medianBendingStrength(species, grade, section);
