import type { PostSection } from './post-section.ts';

/** What has been lost of a section [mm]: rot per exposed face, a cut into one wind face, a centred round cavity. */
export interface SectionLoss {
  readonly depthMm: number;
  readonly oneFaceMm: number;
  readonly cavityDiameterMm: number;
}

export const NO_LOSS: SectionLoss = { depthMm: 0, oneFaceMm: 0, cavityDiameterMm: 0 };

/** Shell thickness under which a hollow section counts as failed, as a share of the width [-]; judgement (shells crush or split earlier). */
const THINNEST_SHELL_SHARE = 1 / 8;

/**
 * Section modulus of a residual section about the axis along the fence [mm3]; 0 where nothing sound is left.
 * Rectangle b x h: (b - 2d)(h - 2d - c)^2 / 6; round: pi (D - 2d - c)^3 / 32 (a one-face cut taken all round, on the safe
 * side); a cavity takes its moment of inertia away, and a shell thinner than an eighth of the width counts as nothing.
 * @param section as installed
 * @param loss what is lost
 * Source: statics; rot counts as no wood inside the depth and full strength outside it (IRG/WP 03-20260, read).
 */
export function sectionModulus(section: PostSection, loss: SectionLoss): number {
  const cavity = loss.cavityDiameterMm;
  if (section.kind === 'round') {
    const diameter = section.diameterMm - 2 * loss.depthMm - loss.oneFaceMm;
    if (diameter <= 0 || (cavity > 0 && (diameter - cavity) / 2 < THINNEST_SHELL_SHARE * diameter)) return 0;
    const solid = (Math.PI * diameter * diameter * diameter) / 32;
    return cavity > 0 ? solid - (Math.PI * cavity ** 4) / (32 * diameter) : solid;
  }
  const width = section.widthMm - 2 * loss.depthMm;
  const depth = section.depthMm - 2 * loss.depthMm - loss.oneFaceMm;
  if (width <= 0 || depth <= 0) return 0;
  const narrow = Math.min(width, depth);
  if (cavity > 0 && (narrow - cavity) / 2 < THINNEST_SHELL_SHARE * narrow) return 0;
  const solid = (width * depth * depth) / 6;
  return cavity > 0 ? solid - (Math.PI * cavity ** 4) / 64 / (depth / 2) : solid;
}

/**
 * Area of a residual section [mm2]; 0 where nothing sound is left.
 * Source: geometry, same loss rule as `sectionModulus`.
 */
export function sectionArea(section: PostSection, loss: SectionLoss): number {
  const cavityArea = (Math.PI * loss.cavityDiameterMm ** 2) / 4;
  if (section.kind === 'round') {
    const diameter = Math.max(0, section.diameterMm - 2 * loss.depthMm - loss.oneFaceMm);
    return Math.max(0, (Math.PI * diameter ** 2) / 4 - cavityArea);
  }
  const width = Math.max(0, section.widthMm - 2 * loss.depthMm);
  const depth = Math.max(0, section.depthMm - 2 * loss.depthMm - loss.oneFaceMm);
  return Math.max(0, width * depth - cavityArea);
}
