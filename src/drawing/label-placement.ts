import { crossesBox, type Leader, leaderTo, placesApart } from './label-leader.ts';
import type { Box, Spot } from './picture-box.ts';
import { CAP_HEIGHT, DESCENT, textWidthPx } from './text-width.ts';

export type TextAnchor = 'start' | 'middle' | 'end';

/** One place where a label could stand; the lower the cost, the better. */
export interface LabelCandidate extends Spot {
  readonly anchor: TextAnchor;
  readonly cost: number;
}

/** A text as it is written. */
interface LabelLook {
  readonly text: string;
  readonly sizePx: number;
  readonly weight: 400 | 600;
  /** Class and colour of the text. */
  readonly className: string;
  readonly fill: string;
}

/** A label that looks for a place. */
export interface LabelRequest extends LabelLook {
  readonly candidates: readonly LabelCandidate[];
  /** True where the label is left out rather than written across a line. */
  readonly dispensable?: boolean;
  /** What it speaks of: where no place beside it is free, it stands apart with a thin line to the nearest of these. */
  readonly targets?: readonly Spot[];
  /** How far from them it may stand [px]; as far as it must where left out. */
  readonly reachPx?: number;
}

export interface PlacedLabel extends LabelLook, Spot {
  readonly anchor: TextAnchor;
  readonly box: Box;
  /** Null where it stands beside what it speaks of. */
  readonly leader: Leader | null;
}

const CROSSING_COST = 60;
const CLEARANCE_PX = 3;

/** The rectangle that a text covers [px]. */
export function textBox(label: {
  readonly text: string;
  readonly sizePx: number;
  readonly weight: 400 | 600;
  readonly x: number;
  readonly y: number;
  readonly anchor: TextAnchor;
}): Box {
  const width = textWidthPx(label.text, label.sizePx, label.weight);
  const left = label.x - (label.anchor === 'start' ? 0 : label.anchor === 'middle' ? width / 2 : width);
  return {
    left,
    right: left + width,
    top: label.y - CAP_HEIGHT * label.sizePx,
    bottom: label.y + DESCENT * label.sizePx,
  };
}

/** True where two rectangles share any area once each side is pushed out by half the clearance [px]. */
export const boxesOverlap = (a: Box, b: Box, clearancePx = 0): boolean =>
  a.left < b.right + clearancePx &&
  b.left < a.right + clearancePx &&
  a.top < b.bottom + clearancePx &&
  b.top < a.bottom + clearancePx;

/** Height of a polyline (x ascending) at a place [px]; null outside its range. */
function heightAt(line: readonly Spot[], x: number): number | null {
  let [low, high] = [0, line.length - 1];
  const [first, last] = [line[low], line[high]];
  if (!first || !last || x < first.x || x > last.x) return null;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((line[middle] as Spot).x < x) low = middle;
    else high = middle;
  }
  const [from, to] = [line[low] as Spot, line[high] as Spot];
  return to.x === from.x ? to.y : from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x);
}

/** True where any part of a polyline (x ascending) runs through a rectangle or within 2 px above or below it; steep lines too. */
export function crossesLine(box: Box, line: readonly Spot[]): boolean {
  const near: Box = { ...box, top: box.top - 2, bottom: box.bottom + 2 };
  return line.some((to, index) => {
    const from = line[index - 1];
    if (!from || to.x < near.left || from.x > near.right) return false;
    return crossesBox({ from, to }, near);
  });
}

const crossings = (box: Box, ground: LabelGround): number =>
  ground.lines.filter((line) => crossesLine(box, line)).length +
  ground.uprights.filter((upright) => boxesOverlap(box, upright, 2)).length;

/** What labels have to live with: the area they may stand in, lines and uprights better not crossed, places already taken. */
export interface LabelGround {
  readonly bounds: Box;
  readonly lines: readonly (readonly Spot[])[];
  readonly uprights: readonly Box[];
  readonly taken: readonly Box[];
}

/** A label at the cheapest free place among some, and what that costs; null where none is free. */
function cheapest(
  label: LabelLook,
  { candidates, targets }: { readonly candidates: readonly LabelCandidate[]; readonly targets: readonly Spot[] },
  ground: LabelGround,
  placed: readonly PlacedLabel[],
): { readonly cost: number; readonly label: PlacedLabel } | null {
  const { bounds } = ground;
  const boxes = [...placed.map((other) => other.box), ...ground.taken];
  const leaders = placed.flatMap((other) => (other.leader ? [other.leader] : []));
  let best: { readonly cost: number; readonly label: PlacedLabel } | null = null;
  for (const { x, y, anchor, cost } of candidates) {
    if (best && cost >= best.cost) continue;
    const box = textBox({ ...label, x, y, anchor });
    if (box.left < bounds.left || box.right > bounds.right || box.top < bounds.top || box.bottom > bounds.bottom)
      continue;
    if (boxes.some((other) => boxesOverlap(box, other, CLEARANCE_PX))) continue;
    if (leaders.some((leader) => crossesBox(leader, box))) continue;
    const leader = leaderTo(box, targets);
    if (leader && placed.some((other) => crossesBox(leader, other.box))) continue;
    const total = cost + CROSSING_COST * crossings(box, ground);
    if (!best || total < best.cost) best = { cost: total, label: { ...label, x, y, anchor, box, leader } };
  }
  return best;
}

/**
 * Gives each label, in the order of its importance, the cheapest place that lies inside the bounds and touches no label and no
 * leader placed before; crossing a line costs, covering a text is refused. Where no place beside its spot is clear of lines, a
 * label that has targets stands apart, with a leader. A label without any free place is left out.
 */
export function placeLabels(requests: readonly LabelRequest[], ground: LabelGround): readonly PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const request of requests) {
    const { candidates, targets, dispensable, reachPx = Number.POSITIVE_INFINITY, ...look } = request;
    const beside = cheapest(look, { candidates, targets: [] }, ground, placed);
    const isClear = beside !== null && beside.cost < CROSSING_COST;
    const apart =
      isClear || !targets
        ? null
        : cheapest(look, { candidates: placesApart(ground.bounds, targets, reachPx), targets }, ground, placed);
    const best = apart && (!beside || apart.cost < beside.cost) ? apart : beside;
    if (best && !(dispensable && best.cost >= CROSSING_COST)) placed.push(best.label);
  }
  return placed;
}

/** Places above and below a polyline (x ascending), spread over its length; dearer the further from `preferredX` [px]. */
export function placesAlong(
  line: readonly Spot[],
  label: { readonly text: string; readonly sizePx: number; readonly weight: 400 | 600 },
  preference: { readonly preferredX: number; readonly belowCost: number; readonly gapPx?: number },
): readonly LabelCandidate[] {
  const [first, last] = [line[0], line.at(-1)];
  if (!first || !last) return [];
  const gap = preference.gapPx ?? 6;
  const width = textWidthPx(label.text, label.sizePx, label.weight);
  const steps = 48;
  const candidates: LabelCandidate[] = [];
  for (let step = 0; step <= steps; step += 1) {
    const left = first.x + ((last.x - width - first.x) * step) / steps;
    const heights = [0, 0.25, 0.5, 0.75, 1]
      .map((part) => heightAt(line, left + width * part))
      .filter((y) => y !== null);
    if (heights.length === 0) continue;
    const away = Math.abs(left + width / 2 - preference.preferredX) / 12;
    for (const extra of [0, 10, 22]) {
      const above = Math.min(...heights) - gap - extra - DESCENT * label.sizePx;
      const below = Math.max(...heights) + gap + extra + CAP_HEIGHT * label.sizePx;
      candidates.push({ x: left, y: above, anchor: 'start', cost: away + extra });
      candidates.push({ x: left, y: below, anchor: 'start', cost: away + extra + preference.belowCost });
    }
  }
  return candidates;
}

/** Places around one spot: beside, above and below, at growing distances [px]. */
export function placesAround(
  spot: Spot,
  sizePx: number,
  distancesPx: readonly number[] = [8, 16, 28],
): readonly LabelCandidate[] {
  return distancesPx.flatMap((distance, index) => {
    const up = spot.y - distance - DESCENT * sizePx;
    const level = spot.y + (CAP_HEIGHT * sizePx) / 2;
    const down = spot.y + distance + CAP_HEIGHT * sizePx;
    const [right, left] = [spot.x + distance, spot.x - distance];
    const places: readonly (readonly [number, number, TextAnchor])[] = [
      [right, up, 'start'],
      [right, level, 'start'],
      [right, down, 'start'],
      [spot.x, up, 'middle'],
      [left, down, 'end'],
      [left, level, 'end'],
      [left, up, 'end'],
      [spot.x, down, 'middle'],
    ];
    return places.map(([x, y, anchor], rank) => ({ x, y, anchor, cost: index * 10 + rank }));
  });
}
