import type { Provenance } from '../units/provenance.ts';

export const OPENINGS_PROVENANCE: Provenance = {
  source: 'ASCE 7-16 Figure 29.3-1, notes: 1 - (1 - eps)^1.5 for eps >= 0.7',
  tag: 'read at second hand',
};
export const OPEN_SIGN_PROVENANCE: Provenance = {
  source:
    'ASCE 7-16 Figure 29.4-2 (open signs, flat-sided), as reproduced in a City of Everett permit calculation, 2022',
  tag: 'read',
};

/** Solidity from which a fence counts as solid with openings [-]; below it the open-sign table holds. */
export const SOLID_FROM = 0.7;

/**
 * Reduction F_eps of the force coefficient for openings [-], 1 - (1 - eps)^1.5.
 * @param solidity eps, solid over gross area [-], 0.7 to 1; throws RangeError outside
 * Source: ASCE 7-16 Figure 29.3-1, notes (read at second hand).
 */
export function openingsFactor(solidity: number): number {
  if (!(solidity >= SOLID_FROM && solidity <= 1)) {
    throw new RangeError(`openings factor: solidity ${solidity} is outside ${SOLID_FROM} to 1`);
  }
  return 1 - (1 - solidity) ** 1.5;
}

/**
 * Force coefficient of an open fence of flat members, on its solid area [-].
 * @param solidity eps [-], 0 < eps < 0.7; throws RangeError outside
 * Source: ASCE 7-16 Figure 29.4-2, flat-sided members (read).
 */
export function openSignCoefficient(solidity: number): number {
  if (!(solidity > 0 && solidity < SOLID_FROM)) {
    throw new RangeError(`open sign: solidity ${solidity} is not between 0 and ${SOLID_FROM}`);
  }
  if (solidity < 0.1) return 2;
  return solidity < 0.3 ? 1.8 : 1.6;
}
