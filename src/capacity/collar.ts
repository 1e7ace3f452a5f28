import { MM_PER_M } from '../units/length.ts';
import { MPA_PER_PSI } from '../units/pressure.ts';
import type { Provenance } from '../units/provenance.ts';

export const COLLAR_PROVENANCE: Provenance = {
  source:
    'thin-ring bursting: two walls in tension plus a fixed-end strip, modulus of rupture 7.5 sqrt(fc) at fc = 2,500 psi',
  tag: 'derived',
};

/** Modulus of rupture of site-mixed bag concrete, 7.5 sqrt(2,500) = 375 psi [MPa]. Source: 7.5 sqrt(fc) read; fc judgement. */
export const COLLAR_TENSION_MPA = 7.5 * Math.sqrt(2500) * MPA_PER_PSI;
/** Design tension of the same by LRFD, 0.6 x 5 sqrt(2,500) = 150 psi [MPa]. Source: ACI 318-14 ch. 14 (memory). */
export const COLLAR_TENSION_LRFD_MPA = 0.6 * 5 * Math.sqrt(2500) * MPA_PER_PSI;

/** A concrete collar around a post. */
export interface Collar {
  /** Outer diameter D [m]. */
  readonly diameterM: number;
  /** Breadth b of the post inside it [m]. */
  readonly postBreadthM: number;
  /** Depth L of the concrete [m]. */
  readonly depthM: number;
  /** Height of the wind force above ground [m]. */
  readonly armM: number;
}

/**
 * Horizontal force that bursts a concrete collar [N]. Rigid post, linear bearing: w(top) = 4 V/L + 6 M/L^2; ring stress
 * w [1/(2c) + 0.75 b/c^2] with wall c = (D - b)/2 equals the tension. Zero where the concrete does not cover the post.
 * @param collar dimensions
 * @param tensionMpa tension the concrete carries [MPa]
 * Source: derived (thin-ring statics); tension by ACI 318 (memory).
 */
export function collarForce(collar: Collar, tensionMpa: number): number {
  const wallMm = ((collar.diameterM - collar.postBreadthM) / 2) * MM_PER_M;
  if (wallMm <= 0) return 0;
  const breadthMm = collar.postBreadthM * MM_PER_M;
  const stressPerLineLoad = 1 / (2 * wallMm) + (0.75 * breadthMm) / wallMm ** 2;
  const depthMm = collar.depthM * MM_PER_M;
  const lineLoadPerForce = 4 / depthMm + (6 * collar.armM * MM_PER_M) / depthMm ** 2;
  return tensionMpa / stressPerLineLoad / lineLoadPerForce;
}
