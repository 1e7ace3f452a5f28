import { type Band, bandOf } from '../../forecast/band.ts';
import { fenceBelief } from '../../forecast/evidence/fence-belief.ts';
import type { FenceFacts } from '../../forecast/fence-facts.ts';
import { fenceStates, stateOn } from '../../forecast/fence-state.ts';
import { NORMAL_QUADRATURE } from '../../forecast/normal-distribution.ts';
import type { PostState } from '../../forecast/post-state.ts';
import { type StateModel, stateModel } from '../../forecast/state-model.ts';
import { type CalendarDay, dayNumber } from '../../units/calendar-day.ts';

const FACES = 2;

/** Width that a caliper is laid across [mm]: the side along the fence, or the diameter. */
const widthAsSetMm = ({ wood: { section } }: PostState): number =>
  section.kind === 'round' ? section.diameterMm : section.widthMm;

/** Sound width left of a post of one kind, over the belief points and the scatter from post to post [mm]. */
function widthBand(model: StateModel, kind: number, day: number): Band {
  const { points, rots, classes } = model;
  const rot = rots[kind]!;
  const wholeMm = widthAsSetMm(classes.kinds[kind]!.sample.post);
  const { nodes, weights } = NORMAL_QUADRATURE;
  const widths = new Float64Array(points.count * nodes.length);
  const worths = new Float64Array(widths.length);
  for (let point = 0; point < points.count; point += 1) {
    const at = rot.moment(point, day);
    const worth = points.weights?.[point] ?? 1 / points.count;
    for (const [node, weight] of weights.entries()) {
      const index = point * nodes.length + node;
      widths[index] = Math.max(0, wholeMm - FACES * rot.depthMm(point, at, node));
      worths[index] = worth * weight;
    }
  }
  return bandOf(widths, 1, worths);
}

/**
 * Sound width believed to be left at the groundline of each post on a day [mm], by the post's number: across the side along
 * the fence, or the diameter. Posts that do not rot, are broken or stand in a sleeve are left out: there is nothing to compare a
 * caliper with. Hollows and trimmer cuts are not taken off.
 * Source: rot as in `kindRot`; width less the depth on two faces (geometry).
 */
export function believedWidths(facts: FenceFacts, day: CalendarDay): ReadonlyMap<number, Band> {
  const states = fenceStates(facts);
  const model = stateModel(facts.site, stateOn(states, day), fenceBelief(facts, states).points);
  const today = dayNumber(day);
  const bands = new Map<number, Band>();
  const widths = new Map<number, Band>();
  for (const { kind, sample, numbers } of model.classes.classes) {
    const { wood, condition, sleeveNm } = sample.post;
    if (wood.momentCapacityNm !== null || condition.broken || sleeveNm !== null) continue;
    const band = bands.get(kind) ?? widthBand(model, kind, today);
    bands.set(kind, band);
    for (const number of numbers) widths.set(number, band);
  }
  return widths;
}
