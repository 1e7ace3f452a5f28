import type { MarkedStretch } from './run-words.ts';
import { textWidthPx } from './text-width.ts';

/** The label of a stretch of posts over a row: its words, the bracket they stand on, and how high. */
export interface RunLabel {
  readonly stretch: MarkedStretch;
  readonly text: string;
  /** Middle of the words, and the ends of the bracket [px]. */
  readonly x: number;
  readonly fromX: number;
  readonly toX: number;
  /** 0 for the lowest lane, nearest to the fence. */
  readonly lane: number;
}

/** Gap between what stands in one lane [px]. */
const APART_PX = 8;

/**
 * Places the labels of a row in as few lanes as keep them apart, the most pressing lowest.
 * @param xOf x of a position [px]
 */
export function placeRunLabels(
  stretches: readonly MarkedStretch[],
  at: {
    readonly xOf: (positionM: number) => number;
    readonly fontPx: number;
    readonly leftPx: number;
    readonly rightPx: number;
  },
): readonly RunLabel[] {
  const lanes: { readonly from: number; readonly to: number }[][] = [];
  return stretches.map((stretch): RunLabel => {
    const xs = stretch.posts.map(({ positionM }) => at.xOf(positionM));
    const [fromX, toX] = [Math.min(...xs) - 3, Math.max(...xs) + 3];
    const half = textWidthPx(stretch.text, at.fontPx, 600) / 2;
    const middle = (fromX + toX) / 2;
    const x = Math.max(at.leftPx + half, Math.min(at.rightPx - half, middle));
    const span = { from: Math.min(fromX, x - half) - APART_PX / 2, to: Math.max(toX, x + half) + APART_PX / 2 };
    let lane = 0;
    while (lanes[lane]?.some(({ from, to }) => from < span.to && to > span.from)) lane += 1;
    const taken = lanes[lane] ?? [];
    taken.push(span);
    lanes[lane] = taken;
    return { stretch, text: stretch.text, x, fromX, toX, lane };
  });
}
