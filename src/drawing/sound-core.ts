import type { PostSection } from '../capacity/post-section.ts';
import type { SectionLoss } from '../capacity/section-properties.ts';

/** What is left of a post's section, from the middle of the post as set [mm]: x along the fence, y in the wind's direction. */
export type SoundCore =
  | {
      readonly kind: 'rectangle';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
    }
  | { readonly kind: 'circle'; readonly x: number; readonly y: number; readonly radius: number }
  | { readonly kind: 'nothing' };

/**
 * Outline of the sound wood left of a section [mm]: rot taken off every face, a cut off the one at negative y, of a round post
 * as its largest circle. A cavity is not taken out. With `NO_LOSS` the section as set.
 * Source: geometry, same loss rule as `sectionArea`, which its area equals where there is no cavity.
 */
export function soundCore(section: PostSection, loss: Pick<SectionLoss, 'depthMm' | 'oneFaceMm'>): SoundCore {
  const { depthMm, oneFaceMm } = loss;
  if (section.kind === 'round') {
    const radius = (section.diameterMm - 2 * depthMm - oneFaceMm) / 2;
    return radius > 0 ? { kind: 'circle', x: 0, y: oneFaceMm / 2, radius } : { kind: 'nothing' };
  }
  const width = section.widthMm - 2 * depthMm;
  const height = section.depthMm - 2 * depthMm - oneFaceMm;
  if (width <= 0 || height <= 0) return { kind: 'nothing' };
  return { kind: 'rectangle', x: -width / 2, y: -section.depthMm / 2 + depthMm + oneFaceMm, width, height };
}
