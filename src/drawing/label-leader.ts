import type { Box, LabelCandidate, Spot } from './label-placement.ts';

/** A thin line from a label that stands apart to what it speaks of [px]. */
export interface Leader {
  readonly from: Spot;
  readonly to: Spot;
}

/** Shorter leaders than this say nothing: the label stands beside its spot [px]. */
const SHORTEST_PX = 10;
/** Steps of the places that are tried away from the spot [px]. */
const STEP_PX = { across: 16, down: 9 } as const;
/** What a place away from the spot costs beside its distance; dearer than any place beside it, cheaper than crossing a line. */
const APART_COST = 24;

/** The point of a rectangle nearest to a spot. */
const nearestOf = ({ left, right, top, bottom }: Box, { x, y }: Spot): Spot => ({
  x: Math.min(Math.max(x, left), right),
  y: Math.min(Math.max(y, top), bottom),
});

const distance = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y);

/** The leader from a label's rectangle to the nearest of the spots that it may speak of; null where it stands beside one. */
export function leaderTo(box: Box, targets: readonly Spot[]): Leader | null {
  let best: Leader | null = null;
  for (const to of targets) {
    const from = nearestOf(box, to);
    if (!best || distance(from, to) < distance(best.from, best.to)) best = { from, to };
  }
  return best && distance(best.from, best.to) >= SHORTEST_PX ? best : null;
}

/** Places within reach of a target, as the left ends of labels; dearer the further from the nearest one. */
export function placesApart(bounds: Box, targets: readonly Spot[], reachPx: number): readonly LabelCandidate[] {
  const places: LabelCandidate[] = [];
  for (let x = bounds.left + 2; x < bounds.right; x += STEP_PX.across) {
    for (let y = bounds.top + STEP_PX.down; y < bounds.bottom; y += STEP_PX.down) {
      const away = Math.min(...targets.map((target) => distance({ x, y }, target)));
      if (away <= reachPx) places.push({ x, y, anchor: 'start', cost: APART_COST + away / 9 });
    }
  }
  return places;
}

/** True where a leader runs through a rectangle. */
export function crossesBox({ from, to }: Leader, { left, right, top, bottom }: Box): boolean {
  let [enters, leaves] = [0, 1];
  for (const [start, length, low, high] of [
    [from.x, to.x - from.x, left, right],
    [from.y, to.y - from.y, top, bottom],
  ] as const) {
    if (length === 0) {
      if (start < low || start > high) return false;
      continue;
    }
    const [first, second] = [(low - start) / length, (high - start) / length];
    enters = Math.max(enters, Math.min(first, second));
    leaves = Math.min(leaves, Math.max(first, second));
  }
  return enters < leaves;
}
