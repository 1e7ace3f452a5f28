import type { CheckedPost } from '../season/visit/check-list.ts';
import { CHART_PALETTE } from './chart-palette.ts';
import { svgElement } from './svg-element.ts';

const WIDTH_PX = 84;
const HEIGHT_PX = 14;

/**
 * The sound width believed to be left beside the width as set: the frame is the post when new, the bar its likely range, the
 * stroke its middle. As SVG; empty where there is nothing to show.
 */
export function widthBar({ believedWidthMm, wood: { section } }: CheckedPost): string {
  if (believedWidthMm === null) return '';
  const { ink, muted, paper, lean } = CHART_PALETTE;
  const wholeMm = section.kind === 'round' ? section.diameterMm : section.widthMm;
  const x = (mm: number): number => 1 + ((WIDTH_PX - 2) * Math.min(mm, wholeMm)) / wholeMm;
  const { p10, p50, p90 } = believedWidthMm;
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${WIDTH_PX} ${HEIGHT_PX}`,
      width: WIDTH_PX,
      height: HEIGHT_PX,
      'aria-hidden': 'true',
    },
    [
      svgElement('rect', {
        x: 1,
        y: 3,
        width: WIDTH_PX - 2,
        height: 8,
        fill: paper,
        stroke: muted,
        'stroke-width': 0.8,
      }),
      svgElement('rect', {
        x: x(p10),
        y: 4,
        width: Math.max(1, x(p90) - x(p10)),
        height: 6,
        fill: lean,
        opacity: 0.45,
      }),
      svgElement('line', { x1: x(p50), x2: x(p50), y1: 1, y2: HEIGHT_PX - 1, stroke: ink, 'stroke-width': 2 }),
    ],
  );
}
