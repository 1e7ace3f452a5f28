import { CHART_PALETTE } from './chart-palette.ts';
import { svgElement } from './svg-element.ts';

const HEIGHT_PX = 14;

/** A part of a whole: `full` in the darkest ink, `half` hatched, `rest` empty within the frame. */
export interface BarPart {
  readonly amount: number;
  readonly ink: 'full' | 'half' | 'rest';
}

/**
 * A bar of parts of a whole from the left, told apart by full ink, half ink and none, never by hue. What goes beyond the whole
 * stands out past the frame's end as a stroke. It is decoration beside the same numbers in words, so it is hidden from readers of the text.
 * @param whole amount of the full length, in the unit of the parts
 * @param widthPx length of the bar [px]
 */
export function drawPartsBar(parts: readonly BarPart[], whole: number, widthPx: number): string {
  const inner = widthPx - 6;
  const scale = (amount: number): number => (whole > 0 ? Math.min(1, Math.max(0, amount / whole)) * inner : 0);
  let sum = 0;
  const drawn = parts.flatMap(({ amount, ink }) => {
    const from = scale(sum);
    sum += Math.max(0, amount);
    const to = scale(sum);
    return ink === 'rest' || to - from <= 0
      ? []
      : [
          svgElement('rect', {
            class: ink === 'full' ? 'pb-full' : 'pb-half',
            x: 1 + from,
            y: 3,
            width: Math.max(1, to - from),
            height: 8,
            fill: ink === 'full' ? CHART_PALETTE.snap : CHART_PALETTE.ends,
            ...(ink === 'half' ? { opacity: 0.5 } : {}),
          }),
        ];
  });
  const beyond = sum > whole + 1e-9 && whole >= 0 && parts.every(({ ink }) => ink !== 'rest');
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'parts-bar',
      viewBox: `0 0 ${widthPx} ${HEIGHT_PX}`,
      width: widthPx,
      height: HEIGHT_PX,
      'aria-hidden': 'true',
      focusable: 'false',
    },
    [
      svgElement('rect', {
        class: 'pb-frame',
        x: 1,
        y: 3,
        width: inner,
        height: 8,
        fill: 'none',
        stroke: CHART_PALETTE.muted,
        'stroke-width': 0.8,
      }),
      ...drawn,
      ...(beyond
        ? [
            svgElement('line', {
              class: 'pb-beyond',
              x1: widthPx - 2,
              x2: widthPx - 2,
              y1: 0,
              y2: HEIGHT_PX,
              stroke: CHART_PALETTE.ink,
              'stroke-width': 2.5,
            }),
          ]
        : []),
    ],
  );
}
