import { bendingMoment } from '../capacity/post-resistance.ts';
import { NO_LOSS, sectionModulus } from '../capacity/section-properties.ts';
import { medianBendingStrength } from '../capacity/wood-strength.ts';
import { NORMAL_QUADRATURE } from './normal-distribution.ts';
import { fibreSpread, snapResistance } from './snap-resistance.ts';
import type { StateModel } from './state-model.ts';

/** Bending resistance of a kind of post at one belief point: one value where nothing scatters, else one a node of the pace scatter. */
export type NodeMoments =
  | { readonly kind: 'rigid'; readonly momentNm: number }
  /** At median fibre of the post; its ln scatters by 0.32 about each. */
  | { readonly kind: 'wood'; readonly momentsNm: readonly number[] };

/**
 * Bending moment that posts of one kind resist on a day at a belief point, at each node of the post-to-post scatter of pace
 * [N m]. Steel, sleeved and broken posts do not scatter.
 * @param at.day day counted from 1970-01-01 [d]
 * Source: statics on the residual section; see `sectionModulus`, `medianBendingStrength`.
 */
export function nodeMoments(
  model: StateModel,
  at: { readonly kind: number; readonly point: number; readonly day: number },
): NodeMoments {
  const { post } = model.classes.kinds[at.kind]!.sample;
  const { wood, condition } = post;
  const fibre = Math.exp(fibreSpread(wood) * model.points.scores['fibre strength'][at.point]!);
  if (wood.momentCapacityNm !== null || post.sleeveNm !== null || condition.broken) {
    return { kind: 'rigid', momentNm: snapResistance(post, NO_LOSS, fibre).momentNm };
  }
  const rot = model.rots[at.kind]!;
  const strengthMpa = medianBendingStrength(wood.species, wood.grade, wood.section) * fibre;
  const moment = rot.moment(at.point, at.day);
  const oneFaceMm = rot.cutMm(at.point, at.day);
  const { cavityDiameterMm } = condition;
  const momentsNm = NORMAL_QUADRATURE.nodes.map((_, node) => {
    const depthMm = rot.depthMm(at.point, moment, node);
    return bendingMoment(strengthMpa, sectionModulus(wood.section, { depthMm, oneFaceMm, cavityDiameterMm }));
  });
  return { kind: 'wood', momentsNm };
}
