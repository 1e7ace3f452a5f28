import { N_PER_LBF } from './force.ts';
import { M_PER_FT, MM_PER_IN } from './length.ts';

/** Pascals in one pound per square foot [Pa/psf], derived from the pound-force and the foot. */
const PA_PER_PSF = N_PER_LBF / (M_PER_FT * M_PER_FT);
/** Megapascals in one pound per square inch [MPa/psi], derived from the pound-force and the inch. */
export const MPA_PER_PSI = N_PER_LBF / (MM_PER_IN * MM_PER_IN);

/** Pounds per square inch [psi] to megapascals [MPa = N/mm2]. Source: exact definitions of pound-force and inch. */
export const mpaFromPsi = (psi: number): number => psi * MPA_PER_PSI;
/** Megapascals [MPa] to pounds per square inch [psi]. Source: exact definitions of pound-force and inch. */
export const psiFromMpa = (mpa: number): number => mpa / MPA_PER_PSI;
/** Pounds per square foot [psf] to pascals [Pa]. Source: exact definitions of pound-force and foot. */
export const paFromPsf = (psf: number): number => psf * PA_PER_PSF;
/** Pascals [Pa] to pounds per square foot [psf]. Source: exact definitions of pound-force and foot. */
export const psfFromPa = (pa: number): number => pa / PA_PER_PSF;
