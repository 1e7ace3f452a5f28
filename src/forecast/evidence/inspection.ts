import type { CalendarDay } from '../../units/calendar-day.ts';

/** How posts were looked at. What each measures and how well is in `reading-method.ts`. */
export const INSPECTION_METHODS = [
  'awl-or-probe',
  'caliper',
  'drill-resistance',
  'circumference-tape',
  'level',
  'eye',
] as const;
export type InspectionMethod = (typeof INSPECTION_METHODS)[number];

/**
 * What was found at the groundline of one post. A depth is what rot took from each face; a width or a circumference is what
 * is left sound: the kind says which, so the two are never confused.
 */
export type GroundlineReading =
  | { readonly kind: 'depth'; readonly depthMm: number }
  /** Sound width left, across the side that is `widthMm` of the section (the diameter of a round post). */
  | { readonly kind: 'residual-width'; readonly widthMm: number }
  /** Sound girth left. */
  | { readonly kind: 'residual-circumference'; readonly circumferenceMm: number }
  /** No rot found down to a depth. */
  | { readonly kind: 'sound-to'; readonly depthMm: number }
  /** Soft at least down to a depth: the awl or the bit reached no further. */
  | { readonly kind: 'soft-to'; readonly depthMm: number }
  /** Broken at the groundline by rot: gave way under a push, or was found down. */
  | { readonly kind: 'broken' };

/** What an inspection found at one post; null is not looked at. */
export interface PostReading {
  readonly post: number;
  readonly groundline: GroundlineReading | null;
  /** Diameter of a hollow in the heart [mm]; 0 where looked for and not found. */
  readonly cavityMm: number | null;
  /** Out of plumb [deg]. */
  readonly leanDegrees: number | null;
  readonly collarCracked: boolean | null;
  /** Strength left in the worst rail connection at the post over a sound one [-], 0 to 1. */
  readonly railConnection: number | null;
  /** Depth a trimmer or mower has cut into one face [mm]. */
  readonly trimmerCutMm: number | null;
  /** Found dangerous and closed off. */
  readonly closedOff: boolean;
}

/** One inspection of a fence, as far as the forecast needs it. */
export interface InspectionFacts {
  readonly ref: string;
  readonly day: CalendarDay;
  readonly method: InspectionMethod;
  readonly readings: readonly PostReading[];
}
