import { interpolate } from '../units/interpolation.ts';
import type { Provenance } from '../units/provenance.ts';

export const FORCE_COEFFICIENT_PROVENANCE: Provenance = {
  source: 'ASCE 7-16 Figure 29.3-1 (solid freestanding walls), Cases A and C with its notes',
  tag: 'read at second hand',
};

const ASPECTS_A = [0.05, 0.1, 0.2, 0.5, 1, 2, 4, 5, 10, 20, 30, 45];
const CLEARANCES_A = [0.16, 0.2, 0.3, 0.5, 0.7, 0.9, 1];
/** Rows by s/h as in `CLEARANCES_A`, columns by B/s as in `ASPECTS_A`. */
const CASE_A = [
  [1.95, 1.9, 1.85, 1.85, 1.8, 1.8, 1.85, 1.85, 1.85, 1.9, 1.9, 1.95],
  [1.95, 1.9, 1.85, 1.8, 1.8, 1.8, 1.8, 1.8, 1.85, 1.9, 1.9, 1.95],
  [1.95, 1.9, 1.85, 1.8, 1.8, 1.8, 1.8, 1.8, 1.8, 1.85, 1.85, 1.85],
  [1.95, 1.85, 1.8, 1.75, 1.75, 1.7, 1.7, 1.7, 1.7, 1.7, 1.7, 1.75],
  [1.9, 1.85, 1.75, 1.7, 1.65, 1.6, 1.6, 1.55, 1.55, 1.55, 1.55, 1.55],
  [1.85, 1.75, 1.7, 1.6, 1.55, 1.5, 1.45, 1.45, 1.4, 1.4, 1.4, 1.4],
  [1.8, 1.7, 1.65, 1.55, 1.45, 1.4, 1.35, 1.35, 1.3, 1.3, 1.3, 1.3],
];

/** Bands of Case C: distance from the windward edge in multiples of s at which each begins, its B/s columns and values. */
const CASE_C: readonly {
  readonly from: number;
  readonly aspects: readonly number[];
  readonly values: readonly number[];
}[] = [
  {
    from: 0,
    aspects: [2, 3, 4, 5, 6, 7, 8, 9, 10, 13, 45],
    values: [2.25, 2.6, 2.9, 3.1, 3.3, 3.4, 3.55, 3.65, 3.75, 4, 4.3],
  },
  {
    from: 1,
    aspects: [2, 3, 4, 5, 6, 7, 8, 9, 10, 13, 45],
    values: [1.5, 1.7, 1.9, 2, 2.15, 2.25, 2.3, 2.35, 2.45, 2.6, 2.55],
  },
  {
    from: 2,
    aspects: [3, 4, 5, 6, 7, 8, 9, 10, 13, 45],
    values: [1.15, 1.3, 1.45, 1.55, 1.65, 1.7, 1.75, 1.85, 2, 1.95],
  },
  { from: 3, aspects: [4, 5, 6, 7, 8, 9, 10, 13, 45], values: [1.1, 1.05, 1.05, 1.05, 1.05, 1, 0.95, 1.5, 1.85] },
  { from: 4, aspects: [5, 6, 7, 8, 9, 10, 13, 45], values: [1.05, 1.05, 1.05, 1.05, 1, 0.95, 1.35, 1.85] },
  { from: 5, aspects: [6, 7, 8, 9, 10, 13, 45], values: [1.05, 1.05, 1.05, 1, 0.95, 0.9, 1.1] },
  { from: 10, aspects: [13, 45], values: [0.55, 0.55] },
];

/** Distances from the windward edge, in multiples of s, at which Case C's coefficient steps [-]. */
export const CASE_C_STEPS: readonly number[] = CASE_C.map((band) => band.from);

/** Aspect ratio B/s from which Case C applies [-]. Source: ASCE 7-16 Figure 29.3-1, notes (memory). */
export const CASE_C_FROM_ASPECT = 2;

/**
 * Net force coefficient Cf of a solid freestanding wall, Cases A and B [-].
 * @param clearance s/h, height of the solid part over height to its top [-], 0 < s/h <= 1 (below 0.16 as at 0.16)
 * @param aspect B/s, run length over height of the solid part [-], > 0 (beyond 0.05 to 45 as at the ends)
 * Source: ASCE 7-16 Figure 29.3-1 (read at second hand), linear interpolation.
 */
export function forceCoefficientA(clearance: number, aspect: number): number {
  const column = CASE_A.map((row) => interpolate(aspect, ASPECTS_A, row));
  return interpolate(clearance, CLEARANCES_A, column);
}

/**
 * Reduction for a return corner at the windward edge, on the 0-to-s band and B/s >= 5 only [-]:
 * 0.90 at Lr/s = 0.3, 0.75 at 1.0, 0.60 from 2.0; none below 0.3.
 * @param returnRatio Lr/s, return length over height of the solid part [-], >= 0; 0 for a free edge
 * @param aspect B/s [-]
 * Source: ASCE 7-16 Figure 29.3-1, notes (read at second hand).
 */
export function returnCornerFactor(returnRatio: number, aspect: number): number {
  if (aspect < 5 || returnRatio < 0.3) return 1;
  return interpolate(returnRatio, [0.3, 1, 2], [0.9, 0.75, 0.6]);
}

/**
 * Net force coefficient Cf of Case C at a distance from the windward edge [-], including (1.8 - s/h) for s/h > 0.8,
 * before any return-corner reduction. Zero where B/s < 2, where the case does not apply.
 * @param clearance s/h [-], 0 < s/h <= 1
 * @param aspect B/s [-]
 * @param distance x/s, distance from the windward edge over s [-], >= 0
 * Source: ASCE 7-16 Figure 29.3-1 (read at second hand).
 */
export function forceCoefficientC(clearance: number, aspect: number, distance: number): number {
  if (aspect < CASE_C_FROM_ASPECT) return 0;
  let band = CASE_C[0]!;
  for (const next of CASE_C) if (distance >= next.from) band = next;
  const coefficient = interpolate(aspect, band.aspects, band.values);
  return coefficient * (clearance > 0.8 ? 1.8 - clearance : 1);
}
