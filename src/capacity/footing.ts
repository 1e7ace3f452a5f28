import { M_PER_FT } from '../units/length.ts';
import { paFromPsf } from '../units/pressure.ts';
import type { Provenance } from '../units/provenance.ts';

export const FOOTING_KINDS = ['concrete', 'soil', 'gravel'] as const;
/** How a post is set: in a concrete collar, or direct-buried in tamped soil or gravel. */
export type FootingKind = (typeof FOOTING_KINDS)[number];

export const PRESUMPTIVE_FOOTING_PROVENANCE: Provenance = {
  source: 'IBC 1807.3.2.1, Eq. 18-1 (nonconstrained pole), closed form',
  tag: 'read',
};
export const BROMS_SAND_PROVENANCE: Provenance = {
  source:
    'Broms 1964, JSMFD 90(SM3): short rigid free-head pile in sand, x 0.8 between pivot statics 0.65 and Broms 1.0',
  tag: 'judgement',
};
export const BROMS_CLAY_PROVENANCE: Provenance = {
  source: 'Broms 1964, JSMFD 90(SM2): short rigid free-head pile in clay',
  tag: 'read at second hand',
};

/** A rigid post in the ground. Lengths [m]. */
export interface RigidPost {
  /** Embedment L [m], > 0. */
  readonly embedmentM: number;
  /** Bearing width b: the concrete's diameter where there is concrete, else the post's diagonal [m], > 0. */
  readonly widthM: number;
  /** Height e of the horizontal force above ground [m], >= 0. */
  readonly armM: number;
}

/** Share of Broms' ultimate resistance taken for sand, basis `expected` [-]; judgement between pivot statics and Broms. */
export const SAND_MODEL_FACTOR = 0.8;

/** Depth beyond which allowable bearing does not grow [m]: 12 ft. Source: IBC 1807.3.2.1 (read). */
const DEEPEST_BEARING_M = 12 * M_PER_FT;

/**
 * Allowable horizontal force on a nonconstrained post [N]: P = S b d^3 / (7.02 d + 7.65 h) for d <= 12 ft.
 * @param post d = embedment, b = width, h = arm
 * @param bearingPsfPerFt S, allowable lateral bearing per depth, doubled already where the code lets it [psf/ft]
 * Source: IBC 1807.3.2.1 Eq. 18-1 with A = d^2 / (d + 1.09 h) (read; closed form derived).
 */
export function presumptiveForce(post: RigidPost, bearingPsfPerFt: number): number {
  const { embedmentM: d, widthM: b, armM: h } = post;
  const bearingPaPerM = paFromPsf(bearingPsfPerFt) / M_PER_FT;
  const pressure = (bearingPaPerM * Math.min(d, DEEPEST_BEARING_M)) / 3;
  return ((d * d) / (d + 1.09 * h)) * ((pressure * b) / 2.34);
}

/**
 * Embedment that a nonconstrained post needs [m]: the root of d = A/2 (1 + sqrt(1 + 4.36 h / A)), A = 2.34 P / (S1 b).
 * @param load force P [N] at height h [m], bearing width b [m]
 * @param bearingPsfPerFt S [psf/ft], doubled already where the code lets it
 * Source: IBC 1807.3.2.1 Eq. 18-1 (read), iterated as printed.
 */
export function presumptiveDepth(
  load: { readonly forceN: number; readonly armM: number; readonly widthM: number },
  bearingPsfPerFt: number,
): number {
  const bearingPaPerM = paFromPsf(bearingPsfPerFt) / M_PER_FT;
  let d = 1;
  for (let i = 0; i < 200; i += 1) {
    const a = (2.34 * load.forceN) / (((bearingPaPerM * Math.min(d, DEEPEST_BEARING_M)) / 3) * load.widthM);
    d = (d + 0.5 * a * (1 + Math.sqrt(1 + (4.36 * load.armM) / a))) / 2;
  }
  return d;
}

/**
 * Embedment that a post held at the ground surface by a rigid floor needs [m]: d^3 = 4.25 P h / (S b).
 * @param load force P [N] at height h [m], bearing width b [m]
 * @param bearingPsfPerFt S [psf/ft]
 * Source: IBC 1807.3.2.2 Eq. 18-2 (read).
 */
export function constrainedDepth(
  load: { readonly forceN: number; readonly armM: number; readonly widthM: number },
  bearingPsfPerFt: number,
): number {
  const bearingPaPerM = paFromPsf(bearingPsfPerFt) / M_PER_FT;
  return Math.cbrt((4.25 * load.forceN * load.armM) / (bearingPaPerM * load.widthM));
}

/** Passive earth pressure coefficient Kp = tan^2(45 + phi/2) [-]; phi in degrees. Source: Rankine. */
export const passiveCoefficient = (frictionAngleDeg: number): number =>
  Math.tan(((45 + frictionAngleDeg / 2) * Math.PI) / 180) ** 2;

/**
 * Ultimate horizontal force on a short rigid post in sand [N]: H = 0.5 gamma b L^3 Kp / (e + L).
 * @param post embedment L, width b, arm e
 * @param sand friction angle [deg] and unit weight (submerged where saturated) [N/m3]
 * Source: Broms 1964, JSMFD 90(SM3) (memory; moment and Kp read in a worked example).
 */
export const bromsSandForce = (
  post: RigidPost,
  sand: { readonly frictionAngleDeg: number; readonly unitWeightNPerM3: number },
): number =>
  (0.5 * sand.unitWeightNPerM3 * post.widthM * post.embedmentM ** 3 * passiveCoefficient(sand.frictionAngleDeg)) /
  (post.armM + post.embedmentM);

/**
 * Ultimate horizontal force on a rigid post in sand by true statics about a pivot [N]: pressure 3 Kp gamma z on either
 * side of a pivot at z0, k = 3 Kp gamma b; H = k (z0^2 - L^2/2), H e = k (L^3 - 2 z0^3)/3.
 * @param post embedment L, width b, arm e
 * @param sand friction angle [deg] and unit weight [N/m3]
 * Source: derived; the pressure model is that of ANSI/ASAE EP486 (memory).
 */
export function pivotSandForce(
  post: RigidPost,
  sand: { readonly frictionAngleDeg: number; readonly unitWeightNPerM3: number },
): number {
  const { embedmentM: L, armM: e } = post;
  const k = 3 * sand.unitWeightNPerM3 * passiveCoefficient(sand.frictionAngleDeg) * post.widthM;
  let low = L / Math.SQRT2;
  let high = L;
  for (let i = 0; i < 100; i += 1) {
    const z = (low + high) / 2;
    if ((z * z - (L * L) / 2) * e - (L ** 3 - 2 * z ** 3) / 3 > 0) high = z;
    else low = z;
  }
  return k * (low * low - (L * L) / 2);
}

/**
 * Ultimate horizontal force on a short rigid post in clay [N]: 9 cu b below 1.5 b, f + g = L - 1.5 b,
 * H (e + 1.5 b + 0.5 f) = 2.25 b cu g^2 with H = 9 cu b f. Zero where L <= 1.5 b.
 * @param post embedment L, width b, arm e
 * @param undrainedShearPa cu [Pa]
 * Source: Broms 1964, JSMFD 90(SM2) (read at second hand; the 2.25 term memory).
 */
export function bromsClayForce(post: RigidPost, undrainedShearPa: number): number {
  const { embedmentM: L, widthM: b, armM: e } = post;
  const a = L - 1.5 * b;
  if (a <= 0) return 0;
  // 9 f (e + 1.5 b + f/2) = 2.25 (a - f)^2 is a quadratic in f.
  const p = 4.5 - 2.25;
  const q = 9 * (e + 1.5 * b) + 4.5 * a;
  const f = (-q + Math.sqrt(q * q + 4 * p * 2.25 * a * a)) / (2 * p);
  return 9 * undrainedShearPa * b * f;
}
