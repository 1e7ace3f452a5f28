import type { PostSection } from '../../src/capacity/post-section.ts';
import { NO_LOSS, sectionModulus } from '../../src/capacity/section-properties.ts';

/** Sections of the field trials and of fence posts; a stake is bent about its weak axis. */
export const SECTIONS = {
  sawn89: { kind: 'rectangular', widthMm: 89, depthMm: 89 },
  sawn140: { kind: 'rectangular', widthMm: 140, depthMm: 140 },
  sawn75x100: { kind: 'rectangular', widthMm: 75, depthMm: 100 },
  stake38x89: { kind: 'rectangular', widthMm: 89, depthMm: 38 },
  stake50: { kind: 'rectangular', widthMm: 50, depthMm: 50 },
  round115: { kind: 'round', diameterMm: 115 },
} as const satisfies Record<string, PostSection>;

/** Section modulus left at a depth of rot, as a share of the whole [-]. */
export const modulusShare = (section: PostSection, depthMm: number): number =>
  sectionModulus(section, { ...NO_LOSS, depthMm }) / sectionModulus(section, NO_LOSS);

/** Depth at which a section keeps a share of its modulus [mm]. */
export function depthAtShare(section: PostSection, share: number): number {
  let low = 0;
  let high = section.kind === 'round' ? section.diameterMm / 2 : Math.min(section.widthMm, section.depthMm) / 2;
  for (let i = 0; i < 100; i += 1) {
    const middle = (low + high) / 2;
    if (modulusShare(section, middle) > share) low = middle;
    else high = middle;
  }
  return low;
}
