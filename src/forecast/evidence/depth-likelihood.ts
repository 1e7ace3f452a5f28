import type { PostSection } from '../../capacity/post-section.ts';
import { failedDepth } from './failed-depth.ts';
import type { GroundlineReading, InspectionMethod } from './inspection.ts';
import { READING_METHODS } from './reading-method.ts';

/** A reading as it speaks of the rot depth per face: a value with its error, or a bound. */
export type DepthSeen =
  | { readonly kind: 'measured'; readonly depthMm: number; readonly errorMm: number }
  | { readonly kind: 'below'; readonly depthMm: number }
  | { readonly kind: 'above'; readonly depthMm: number };

/** Depth per face from a sound width left: half of what is gone, for half the error [mm]. */
const fromWidth = (section: PostSection, widthMm: number, errorMm: number): DepthSeen => {
  const installed = section.kind === 'round' ? section.diameterMm : section.widthMm;
  return { kind: 'measured', depthMm: (installed - widthMm) / 2, errorMm: errorMm / 2 };
};

/** Depth per face from a sound girth left [mm]: a round loses 2 pi, a rectangle 8 times the depth of its girth. */
const fromGirth = (section: PostSection, girthMm: number, errorMm: number): DepthSeen => {
  const [installed, perDepth] =
    section.kind === 'round'
      ? [Math.PI * section.diameterMm, 2 * Math.PI]
      : [2 * (section.widthMm + section.depthMm), 8];
  return { kind: 'measured', depthMm: (installed - girthMm) / perDepth, errorMm: errorMm / perDepth };
};

/**
 * What a groundline reading says of the rot depth per face of a post [mm]. A width or a girth is turned into a depth here
 * and nowhere else.
 * @param section the post as installed
 * Source: geometry; errors of the methods and the depth of a broken post are judgement.
 */
export function depthSeen(reading: GroundlineReading, section: PostSection, method: InspectionMethod): DepthSeen {
  const { errorMm } = READING_METHODS[method];
  switch (reading.kind) {
    case 'depth':
      return { kind: 'measured', depthMm: reading.depthMm, errorMm };
    case 'residual-width':
      return fromWidth(section, reading.widthMm, errorMm);
    case 'residual-circumference':
      return fromGirth(section, reading.circumferenceMm, errorMm);
    case 'sound-to':
      return { kind: 'below', depthMm: reading.depthMm };
    case 'soft-to':
      return { kind: 'above', depthMm: reading.depthMm };
    case 'broken':
      return { kind: 'above', depthMm: failedDepth(section) };
  }
}

/**
 * Likelihood of a reading where the rot is so deep [-]: a normal density (without its constant) for a measured depth, 0 or
 * 1 for a bound.
 * @param depthMm true depth per face [mm]
 */
export function depthLikelihood(seen: DepthSeen, depthMm: number): number {
  if (seen.kind === 'below') return depthMm < seen.depthMm ? 1 : 0;
  if (seen.kind === 'above') return depthMm >= seen.depthMm ? 1 : 0;
  const off = (seen.depthMm - depthMm) / seen.errorMm;
  return Math.exp((-off * off) / 2);
}
