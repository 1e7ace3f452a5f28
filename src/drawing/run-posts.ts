import type { PostOutlook } from '../forecast/post-outlook.ts';
import { CHART_PALETTE } from './chart-palette.ts';
import type { RunMark } from './run-words.ts';
import { svgElement } from './svg-element.ts';

/** Heights of one row of the drawing of a run [px]. */
export interface RowHeights {
  readonly topY: number;
  readonly groundY: number;
  readonly footY: number;
}

const HALF_PX = 2.6;

const two = (value: number): string => String(Math.round(value * 100) / 100);

const line = (className: string, d: string, width: number): string =>
  svgElement('path', { class: className, d, fill: 'none', stroke: CHART_PALETTE.ink, 'stroke-width': width });

/** The shaft of a post: upright, slanting where it leans, a stump with the rest fallen over where it is broken. */
function shaft(x: number, { topY, groundY, footY }: RowHeights, marks: ReadonlySet<RunMark>): readonly string[] {
  const filled = marks.has('short') || marks.has('broken');
  const paint = {
    class: filled ? 'run-post-short' : 'run-post',
    fill: filled ? CHART_PALETTE.snap : CHART_PALETTE.paper,
    stroke: CHART_PALETTE.ink,
    'stroke-width': 1.1,
  };
  const piece = (d: string): string => svgElement('path', { ...paint, d });
  const below = piece(`M${two(x - HALF_PX)} ${two(groundY)}h${two(2 * HALF_PX)}V${two(footY)}h${two(-2 * HALF_PX)}z`);
  const above = groundY - topY;
  if (marks.has('broken')) {
    const stumpY = groundY - 7;
    const slant = Math.min(4, above / 4);
    return [
      below,
      piece(
        `M${two(x - HALF_PX)} ${two(groundY)}V${two(stumpY)}l${two(HALF_PX)} -3l${two(HALF_PX)} 4V${two(groundY)}z`,
      ),
      piece(
        `M${two(x - HALF_PX)} ${two(stumpY - 6)}l${two(HALF_PX)} -3l${two(HALF_PX)} 3L${two(x + HALF_PX + slant)} ${two(topY)}h${two(-2 * HALF_PX)}z`,
      ),
      line('run-cross', `M${two(x - 6)} ${two(groundY - 18)}l12 12m0 -12l-12 12`, 2.2),
    ];
  }
  const slant = marks.has('leaning') ? Math.min(9, above / 4) : 0;
  return [
    below,
    piece(
      `M${two(x - HALF_PX)} ${two(groundY)}L${two(x - HALF_PX + slant)} ${two(topY)}h${two(2 * HALF_PX)}L${two(x + HALF_PX)} ${two(groundY)}z`,
    ),
  ];
}

/** One post of a run with its marks. */
export function runPost(
  { condition }: Pick<PostOutlook, 'condition'>,
  x: number,
  heights: RowHeights,
  marks: readonly RunMark[],
): readonly string[] {
  const { topY, groundY, footY } = heights;
  const has = new Set(marks);
  const middleY = (topY + groundY) / 2;
  return [
    ...shaft(x, heights, has),
    ...(condition.cavityDiameterMm > 0
      ? [
          svgElement('circle', {
            class: 'run-ring',
            cx: x,
            cy: groundY,
            r: 4,
            fill: CHART_PALETTE.paper,
            stroke: CHART_PALETTE.ink,
            'stroke-width': 1.5,
          }),
        ]
      : []),
    ...(has.has('cracked collar')
      ? [line('run-crack', `M${two(x - 6)} ${two(groundY + 5)}l3 4l3 -4l3 4l3 -4`, 1.5)]
      : []),
    ...(has.has('closed off')
      ? [line('run-bars', [-8, 0, 8].map((dy) => `M${two(x - 7)} ${two(middleY + dy + 3)}l14 -6`).join(''), 2.2)]
      : []),
    ...(has.has('decides')
      ? [
          svgElement('path', {
            class: 'run-wedge',
            d: `M${two(x)} ${two(footY + 2)}l4.5 7h-9z`,
            fill: CHART_PALETTE.ink,
          }),
        ]
      : []),
  ];
}
