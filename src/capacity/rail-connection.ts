import { newtonsFromLbf } from '../units/force.ts';
import { inchesFromMm, mmFromInches } from '../units/length.ts';
import type { Provenance } from '../units/provenance.ts';
import { LOAD_DURATION_WIND } from './allowable-stress.ts';
import type { Species } from './wood-strength.ts';

export const NAIL_WITHDRAWAL_PROVENANCE: Provenance = {
  source:
    'NDS withdrawal of common nails from side grain, W = 1,380 G^2.5 D lb/in, as reproduced with its worked table',
  tag: 'read at second hand',
};
export const NAIL_ULTIMATE_PROVENANCE: Provenance = {
  source: 'Wood Handbook ch. 8: mean ultimate withdrawal of a nail from side grain, P = 7,850 G^2.5 D L lb',
  tag: 'memory',
};
export const RAIL_CONNECTION_PROVENANCE: Provenance = {
  source:
    'three rails, the middle one takes about half the panel; two 16d common nails, 2 in deep in the post, stand in for want of a record',
  tag: 'judgement',
};
export const SPECIFIC_GRAVITY_PROVENANCE: Provenance = {
  source: 'NDS 2018 Table 12.3.3A, and Wood Handbook for species it does not list',
  tag: 'memory',
};

/** Withdrawal constant of the design value [lb/in for D in in]. Source: NDS (read at second hand). */
const DESIGN_LBF_PER_IN = 1380;
/** Withdrawal constant of the mean ultimate [lb for D and L in in]. Source: Wood Handbook ch. 8 (memory). */
const ULTIMATE_LBF = 7850;
const GRAVITY_EXPONENT = 2.5;
/** Share left to a smooth nail in side grain where the wood wets and dries by turns [-]. Source: NDS 11.3.3 (memory). */
const CYCLIC_MOISTURE_FACTOR = 0.25;
/** Withdrawal of a toe-nail over that of a face-driven nail [-]; wet service does not lower it further. Source: NDS 12.5.4 (memory; in part read). */
const TOE_NAIL_FACTOR = 0.67;
/** Share of a bay's wind that the middle one of three rails carries [-]; judgement: statics of three equal strips. */
const MIDDLE_RAIL_SHARE = 0.5;

/** Oven-dry specific gravity of the wood that holds the nails [-]. */
const SPECIFIC_GRAVITIES: Readonly<Record<Species, number>> = {
  'southern-pine': 0.55,
  'douglas-fir': 0.5,
  'hem-fir': 0.43,
  'spruce-pine-fir': 0.42,
  'western-redcedar': 0.36,
  redwood: 0.37,
  'northern-white-cedar': 0.31,
  'eastern-redcedar': 0.44,
  baldcypress: 0.43,
  'ponderosa-pine': 0.43,
  'black-locust': 0.66,
  /** Western woods stand in, on the low side. */
  unknown: 0.36,
};

/**
 * Specific gravity of the wood that holds the nails, oven-dry [-]. Redwood as open grain; eastern redcedar and black locust
 * as green clear wood; an unknown species as western woods.
 * Source: NDS 2018 Table 12.3.3A and Wood Handbook ch. 5 (memory).
 */
export const specificGravity = (species: Species): number => SPECIFIC_GRAVITIES[species];

/** How one end of a rail is held to its post. */
export interface RailConnection {
  readonly nailCount: number;
  /** Shank diameter D [mm]. */
  readonly nailDiameterMm: number;
  /** Length of shank in the post L [mm]. */
  readonly penetrationMm: number;
  readonly driven: 'face-nailed' | 'toe-nailed';
  /** G of the post, oven-dry [-]. */
  readonly specificGravity: number;
}

/**
 * The connection taken where none is recorded, which is always: two 16d common nails, face-nailed.
 * Nail 0.162 in [4.115 mm], 2.0 in [50.8 mm] in the post.
 * @param species wood of the post
 * Source: judgement, see `RAIL_CONNECTION_PROVENANCE`; nail diameter ASTM F1667 (memory).
 */
export const usualRailConnection = (species: Species): RailConnection => ({
  nailCount: 2,
  nailDiameterMm: mmFromInches(0.162),
  penetrationMm: mmFromInches(2),
  driven: 'face-nailed',
  specificGravity: specificGravity(species),
});

type Nail = Pick<RailConnection, 'nailDiameterMm' | 'penetrationMm' | 'specificGravity'>;

/** G^2.5 D L [in2], common to both constants. */
const nailMeasure = (nail: Nail): number =>
  nail.specificGravity ** GRAVITY_EXPONENT * inchesFromMm(nail.nailDiameterMm) * inchesFromMm(nail.penetrationMm);

/**
 * Reference design value of one nail in withdrawal from side grain, 1,380 G^2.5 D L, before any adjustment [N].
 * Nothing is allowed from end grain.
 * Source: NDS 2018 12.2.3 (read at second hand).
 */
export const referenceWithdrawal = (nail: Nail): number => newtonsFromLbf(DESIGN_LBF_PER_IN * nailMeasure(nail));

/**
 * Mean ultimate withdrawal of one nail from side grain, 7,850 G^2.5 D L, in wood that has not wetted and dried since [N].
 * Source: Wood Handbook ch. 8 (memory).
 */
const ultimateWithdrawal = (nail: Nail): number => newtonsFromLbf(ULTIMATE_LBF * nailMeasure(nail));

const drivenFactor = (connection: RailConnection): number => (connection.driven === 'toe-nailed' ? TOE_NAIL_FACTOR : 1);

/** Post force [N] at which the worst rail end carries `railEndN`. */
const postForceAt = (railEndN: number, bays: 1 | 2): number => (railEndN * bays) / MIDDLE_RAIL_SHARE;

function requireShare(state: number): void {
  if (!(state >= 0 && state <= 1)) {
    throw new RangeError(
      `rail connection: state ${state} is outside 0 to 1, the share of a sound connection that is left`,
    );
  }
}

/**
 * Horizontal wind force on a post at which its worst rail end pulls out, basis `expected` [N]: the mean ultimate of the nails
 * times what is left of the connection. Throws RangeError for a state outside 0 to 1.
 * @param state share of a sound connection left, as reported [-], 0 to 1
 * @param bays bays that hang on the post: 2, so that a rail end carries a quarter of the post's force; 1 for a post at an
 * end of the run, whose one rail end carries half of it
 * Source: Wood Handbook ch. 8 (memory); shares of the rails judgement.
 */
export function railConnectionForce(connection: RailConnection, state: number, bays: 1 | 2 = 2): number {
  requireShare(state);
  const railEndN = connection.nailCount * ultimateWithdrawal(connection) * drivenFactor(connection) * state;
  return postForceAt(railEndN, bays);
}

/**
 * Allowable horizontal wind force on a post by its worst rail end, basis `code` [N]: allowable stress level (hold it against
 * 0.6 W), 1,380 G^2.5 D L x CD 1.6 x CM 0.25 for wetting and drying (toe-nails: Ctn 0.67 instead) times what is left of
 * the connection. Throws RangeError for a state outside 0 to 1.
 * @param state share of a sound connection left, as reported [-], 0 to 1
 * @param moisture `dry` leaves CM out; a fence wets and dries
 * @param bays as in `railConnectionForce`
 * Source: NDS 2018 12.2.3 (read at second hand), Table 11.3.3 and 12.5.4 (memory); shares of the rails judgement.
 */
export function allowableRailConnectionForce(
  connection: RailConnection,
  state: number,
  { moisture = 'cyclic', bays = 2 }: { readonly moisture?: 'cyclic' | 'dry'; readonly bays?: 1 | 2 } = {},
): number {
  requireShare(state);
  const wet = moisture === 'cyclic' && connection.driven === 'face-nailed' ? CYCLIC_MOISTURE_FACTOR : 1;
  const nailN = referenceWithdrawal(connection) * LOAD_DURATION_WIND * wet * drivenFactor(connection);
  return postForceAt(connection.nailCount * nailN * state, bays);
}
