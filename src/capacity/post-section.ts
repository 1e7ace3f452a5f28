import { mmFromInches } from '../units/length.ts';

/** Cross-section of a post as installed [mm]. `depthMm` lies in the wind's direction, `widthMm` along the fence. */
export type PostSection =
  | { readonly kind: 'rectangular'; readonly widthMm: number; readonly depthMm: number }
  | { readonly kind: 'round'; readonly diameterMm: number };

/** Dressed sizes of nominal posts [in]. Source: American Softwood Lumber Standard PS 20 dressed sizes (memory). */
export const NOMINAL_SECTIONS_IN = {
  '4x4': [3.5, 3.5],
  '4x6': [3.5, 5.5],
  '6x4': [5.5, 3.5],
  '5x5': [4.5, 4.5],
  '6x6': [5.5, 5.5],
  '8x8': [7.25, 7.25],
} as const;

export type NominalSection = keyof typeof NOMINAL_SECTIONS_IN;

/** The dressed section of a nominal post: first number along the fence, second in the wind's direction [mm]. Source: see `NOMINAL_SECTIONS_IN`. */
export function nominalSection(name: NominalSection): PostSection {
  const [width, depth] = NOMINAL_SECTIONS_IN[name];
  return { kind: 'rectangular', widthMm: mmFromInches(width), depthMm: mmFromInches(depth) };
}

/** Widest dimension across a post [mm]: the diagonal of a rectangle, the diameter of a round. Source: geometry; IBC 1807.3.2.1 asks for the diagonal (read). */
export const postDiagonalMm = (section: PostSection): number =>
  section.kind === 'round' ? section.diameterMm : Math.hypot(section.widthMm, section.depthMm);

/** Dimension of a post that a collar surrounds [mm]: the wider side, or the diameter. Source: geometry. */
export const postBreadthMm = (section: PostSection): number =>
  section.kind === 'round' ? section.diameterMm : Math.max(section.widthMm, section.depthMm);

/** Narrowest dimension of a post [mm]: the shorter side, or the diameter. Source: geometry. */
export const shortestSideMm = (section: PostSection): number =>
  section.kind === 'round' ? section.diameterMm : Math.min(section.widthMm, section.depthMm);
