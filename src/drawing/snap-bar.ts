import { CHART_PALETTE } from './chart-palette.ts';
import { svgElement } from './svg-element.ts';

const WIDTH_PX = 112;
const HEIGHT_PX = 14;
/** Snap speed over design gust at the bar's full length [-]. */
const FULL = 1.6;

/**
 * A small bar of a fence's snap speed against its design gust, the gust as an upright.
 * It is decoration beside the same numbers in words, so it is hidden from readers of the text.
 */
export function drawSnapBar(speeds: { readonly snapMps: number; readonly designGustMps: number }): string {
  const scale = (speedMps: number): number =>
    Math.min(1, Math.max(0, speedMps / speeds.designGustMps / FULL)) * (WIDTH_PX - 2) + 1;
  const gustX = scale(speeds.designGustMps);
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'snap-bar',
      viewBox: `0 0 ${WIDTH_PX} ${HEIGHT_PX}`,
      width: WIDTH_PX,
      height: HEIGHT_PX,
      'aria-hidden': 'true',
      focusable: 'false',
    },
    [
      svgElement('rect', { class: 'sb-track', x: 1, y: 6.5, width: WIDTH_PX - 2, height: 1, fill: CHART_PALETTE.grid }),
      svgElement('rect', {
        class: 'sb-bar',
        x: 1,
        y: 4,
        width: Math.max(1, scale(speeds.snapMps) - 1),
        height: 6,
        fill: CHART_PALETTE.snap,
      }),
      svgElement('line', {
        class: 'sb-gust',
        x1: gustX,
        x2: gustX,
        y1: 0,
        y2: HEIGHT_PX,
        stroke: CHART_PALETTE.ink,
        'stroke-width': 1.5,
      }),
    ],
  );
}
