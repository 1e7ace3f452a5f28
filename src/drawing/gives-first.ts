import { CHART_PALETTE } from './chart-palette.ts';
import type { ChartWords } from './chart-words.ts';
import type { FenceFrame } from './fence-frame.ts';
import type { FenceSeries, SeriesPoint } from './fence-series.ts';
import { escapeXml, svgElement } from './svg-element.ts';
import { CAP_HEIGHT, textWidthPx } from './text-width.ts';

/** Height of the strip, and its distance from the axis, whose years stand between [px]. */
const STRIP_PX = 22;
const BELOW_AXIS_PX = 30;
/** Room that the strip takes under the axis, beside that of the years [px]. */
export const STRIP_ROOM_PX = 34;
const PAD_PX = 8;

/** Years in which the same gives way first: the ground, or the wood. */
interface Stretch {
  readonly kind: 'leans' | 'snaps';
  readonly from: SeriesPoint;
  readonly to: SeriesPoint;
  /** True where nothing came before it. */
  readonly sinceNew: boolean;
}

/** What gives way first, stretch by stretch, over the years that a chart shows. */
export function stretchesOf({ points }: Pick<FenceSeries, 'points'>): readonly Stretch[] {
  const stretches: Stretch[] = [];
  for (const point of points) {
    const kind = point.snapMps.p50 < point.leanMps.p50 ? 'snaps' : 'leans';
    const last = stretches.at(-1);
    if (last?.kind === kind) stretches[stretches.length - 1] = { ...last, to: point };
    else {
      if (last) stretches[stretches.length - 1] = { ...last, to: point };
      stretches.push({ kind, from: point, to: point, sinceNew: last === undefined });
    }
  }
  return stretches;
}

/** The longest text of some that fits; null where none does. */
const fitting = (texts: readonly string[], widthPx: number, sizePx: number): string | null =>
  texts.find((text) => textWidthPx(text, sizePx, 600) <= widthPx - 2 * PAD_PX) ?? null;

/**
 * The strip under a fence's chart that says which gives way first, the ground or the wood: pale while it leans, which is a
 * repair, dark from the season on in which it snaps, which is a replacement.
 */
export function givesFirstStrip(series: FenceSeries, frame: FenceFrame, words: ChartWords): readonly string[] {
  const { plot, xOf, fontPx } = frame;
  const top = plot.bottom + BELOW_AXIS_PX;
  return stretchesOf(series).flatMap(({ kind, from, to, sinceNew }, index, all) => {
    const [x, end] = [xOf(from.year), xOf(to.year)];
    const snaps = kind === 'snaps';
    const next = all[index + 1];
    const texts = snaps
      ? words.snapsFirst(sinceNew ? null : from.label)
      : words.leansFirst(next ? next.from.label : null);
    const text = fitting(texts, end - x, fontPx - 1);
    return [
      svgElement('rect', {
        class: snaps ? 'fy-snaps-first' : 'fy-leans-first',
        x,
        y: top,
        width: Math.max(0, end - x),
        height: STRIP_PX,
        fill: snaps ? CHART_PALETTE.snap : CHART_PALETTE.leanBand,
        ...(snaps ? {} : { 'fill-opacity': '0.35' }),
      }),
      ...(text === null
        ? []
        : [
            svgElement(
              'text',
              {
                class: snaps ? 'fy-on-snap-text' : 'fy-lean-text',
                x: x + PAD_PX,
                y: top + STRIP_PX / 2 + (CAP_HEIGHT * (fontPx - 1)) / 2,
                'font-size': fontPx - 1,
                'font-weight': 600,
                fill: snaps ? CHART_PALETTE.paper : CHART_PALETTE.lean,
              },
              [escapeXml(text)],
            ),
          ]),
    ];
  });
}
