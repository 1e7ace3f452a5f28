import { type PostSection, shortestSideMm } from '../../capacity/post-section.ts';
import { NO_LOSS, sectionModulus } from '../../capacity/section-properties.ts';

/** Share of the section modulus at which a post gives way under a push [-]; judgement, as field trials of posts are read. */
const FAILED_SHARE = 0.05;
const HALVINGS = 60;

/**
 * Rot depth per face at which a post counts as broken by rot: a twentieth of the section modulus is left [mm].
 * Source: failure of posts in field trials under a light push at S/S0 = 0.05 (judgement).
 */
export function failedDepth(section: PostSection): number {
  const wanted = FAILED_SHARE * sectionModulus(section, NO_LOSS);
  let low = 0;
  let high = shortestSideMm(section) / 2;
  for (let i = 0; i < HALVINGS; i += 1) {
    const depthMm = (low + high) / 2;
    if (sectionModulus(section, { ...NO_LOSS, depthMm }) > wanted) low = depthMm;
    else high = depthMm;
  }
  return (low + high) / 2;
}
