import { CHART_FONT, CHART_PALETTE } from './chart-palette.ts';
import type { ChartLanguage } from './chart-words.ts';
import { placeRunLabels } from './run-labels.ts';
import { type RowHeights, runPost } from './run-posts.ts';
import { type RunRow, runRows } from './run-rows.ts';
import { markedStretches, marksOf, RUN_MARKS, type RunView, runSummary, runWords } from './run-words.ts';
import type { DisplayUnits } from './speed-text.ts';
import { escapeXml, svgElement } from './svg-element.ts';
import { textWidthPx, wrapText } from './text-width.ts';

/** How a run is drawn. */
export interface RunOptions {
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
  /** Width of the picture [px], 300 or more. */
  readonly widthPx: number;
  /** Prefix of the ids inside, where one page holds several drawings. */
  readonly idPrefix?: string;
}

const SIDE_PX = 14;
const LANE_PX = 21;
const FENCE_PX = 52;
const GROUND_PX = 16;
const NUMBER_PX = 26;
const ROW_GAP_PX = 16;
const NOTE_PX = 16;

/** What one row of the drawing shows, and how tall it is. */
interface DrawnRow {
  readonly shapes: readonly string[];
  readonly heightPx: number;
}

interface RowContext {
  readonly view: RunView;
  readonly options: RunOptions;
  readonly pxPerM: number;
  readonly fontPx: number;
}

const text = (content: string, attributes: Readonly<Record<string, string | number>>): string =>
  svgElement('text', attributes, [escapeXml(content)]);

/** Boards between the posts, torn off where the run goes on. */
function boards(row: RunRow, xOf: (m: number) => number, { topY, groundY }: RowHeights): readonly string[] {
  const { muted, grid } = CHART_PALETTE;
  const [left, right] = [xOf(row.fromM), xOf(row.toM)];
  const edge = (x: number, open: boolean): readonly string[] =>
    open
      ? [
          svgElement('line', {
            class: 'run-torn',
            x1: x,
            x2: x,
            y1: topY - 2,
            y2: groundY + 6,
            stroke: muted,
            'stroke-dasharray': '3 3',
          }),
        ]
      : [];
  const rail = (y: number): string =>
    svgElement('line', { class: 'run-rail', x1: left, x2: right, y1: y, y2: y, stroke: muted });
  return [
    svgElement('rect', {
      class: 'run-boards',
      x: left,
      y: topY + 4,
      width: Math.max(1, right - left),
      height: groundY - topY - 7,
      fill: grid,
      'fill-opacity': '0.6',
    }),
    rail(topY + 12),
    rail(groundY - 12),
    svgElement('line', {
      class: 'run-ground',
      x1: Math.max(2, left - 10),
      x2: right + 10,
      y1: groundY,
      y2: groundY,
      stroke: CHART_PALETTE.ink,
    }),
    ...edge(left, row.openLeft),
    ...edge(right, row.openRight),
  ];
}

/** Numbers of the posts under the ground, those that are marked first, then whatever has room. */
function numbers(row: RunRow, xOf: (m: number) => number, y: number, context: RowContext): readonly string[] {
  const { view, fontPx } = context;
  const sizePx = fontPx - 1.5;
  const last = row.posts.length - 1;
  const rank = (index: number): number =>
    marksOf(row.posts[index]!, view).some((mark) => mark !== 'decides' && mark !== 'short')
      ? 0
      : index === 0 || index === last
        ? 1
        : row.posts[index]!.number % 10 === 0
          ? 2
          : row.posts[index]!.number % 5 === 0
            ? 3
            : 4;
  const taken: { readonly from: number; readonly to: number }[] = [];
  const shown: string[] = [];
  const inTurn = row.posts.map((post, index) => ({ post, index })).sort((a, b) => rank(a.index) - rank(b.index));
  for (const { post, index } of inTurn) {
    const x = xOf(post.positionM);
    const half = textWidthPx(String(post.number), sizePx, 400) / 2 + 2;
    if (taken.some(({ from, to }) => from < x + half && to > x - half)) continue;
    taken.push({ from: x - half, to: x + half });
    const heavy = rank(index) === 0;
    shown.push(
      text(String(post.number), {
        class: heavy ? 'fy-ink-text' : 'fy-muted-text',
        x,
        y,
        'text-anchor': 'middle',
        'font-size': sizePx,
        'font-weight': heavy ? 600 : 400,
        fill: heavy ? CHART_PALETTE.ink : CHART_PALETTE.muted,
      }),
    );
  }
  return shown;
}

function drawRow(row: RunRow, topPx: number, context: RowContext): DrawnRow {
  const { view, options, pxPerM, fontPx } = context;
  const xOf = (positionM: number): number => SIDE_PX + (positionM - row.fromM) * pxPerM;
  const rightPx = options.widthPx - 4;
  const labels = placeRunLabels(markedStretches(row.posts, view, options.language), {
    xOf,
    fontPx,
    leftPx: 4,
    rightPx,
  });
  const lanes = labels.reduce((most, { lane }) => Math.max(most, lane + 1), 0);
  const topY = topPx + lanes * LANE_PX + 8;
  const heights: RowHeights = { topY, groundY: topY + FENCE_PX, footY: topY + FENCE_PX + GROUND_PX };
  const labelShapes = labels.flatMap((label) => {
    const y = topY - 6 - label.lane * LANE_PX;
    return [
      svgElement('path', {
        class: 'run-bracket',
        d: `M${label.fromX.toFixed(2)} ${(y + 3).toFixed(2)}v-4H${label.toX.toFixed(2)}v4`,
        fill: 'none',
        stroke: CHART_PALETTE.muted,
      }),
      text(label.text, {
        class: 'fy-ink-text',
        x: label.x,
        y: y - 5,
        'text-anchor': 'middle',
        'font-size': fontPx,
        'font-weight': 600,
        fill: CHART_PALETTE.ink,
      }),
    ];
  });
  return {
    heightPx: heights.footY + NUMBER_PX - topPx,
    shapes: [
      ...boards(row, xOf, heights),
      ...row.posts.flatMap((post) => runPost(post, xOf(post.positionM), heights, marksOf(post, view))),
      ...labelShapes,
      ...numbers(row, xOf, heights.footY + NUMBER_PX - 4, context),
    ],
  };
}

/** What the marks of a run mean, as far as it has them. */
function keyOf(view: RunView, language: ChartLanguage): string {
  const words = runWords(language);
  const has = new Set(view.posts.flatMap((post) => marksOf(post, view)));
  return [...RUN_MARKS.filter((mark) => has.has(mark)).map((mark) => words.key[mark]), words.note].join(' ');
}

/**
 * A fence seen from the side, its posts where they stand along the run, to scale: filled where short, and each post at which
 * something was found drawn so and named. A long run goes on in further rows of the same scale. As a complete SVG document;
 * the same view and options give the same bytes. Empty where there are no posts.
 */
export function drawRun(view: RunView, options: RunOptions): string {
  const { widthPx, language } = options;
  if (view.posts.length === 0) return '';
  const words = runWords(language);
  const prefix = options.idPrefix ?? 'run';
  const fontPx = widthPx < 520 ? 12.5 : 14;
  const { rows, pxPerM } = runRows(view.posts, widthPx - 2 * SIDE_PX);
  const context: RowContext = { view, options, pxPerM, fontPx };
  let y = 4;
  const shapes: string[] = [];
  for (const row of rows) {
    const drawn = drawRow(row, y, context);
    shapes.push(...drawn.shapes);
    y += drawn.heightPx + ROW_GAP_PX;
  }
  const note = wrapText(keyOf(view, language), fontPx - 1, widthPx - 16);
  const noteTop = y + 4;
  const heightPx = Math.ceil(noteTop + note.length * NOTE_PX);
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'run-drawing',
      viewBox: `0 0 ${widthPx} ${heightPx}`,
      width: widthPx,
      height: heightPx,
      role: 'img',
      'aria-labelledby': `${prefix}-title ${prefix}-desc`,
      'font-family': CHART_FONT,
    },
    [
      svgElement('title', { id: `${prefix}-title` }, [escapeXml(words.title(view.fenceRef))]),
      svgElement('desc', { id: `${prefix}-desc` }, [escapeXml(runSummary(view, options))]),
      svgElement('rect', { class: 'fy-paper', width: widthPx, height: heightPx, fill: CHART_PALETTE.paper }),
      ...shapes,
      ...note.map((content, index) =>
        text(content, {
          class: 'fy-muted-text',
          x: 8,
          y: noteTop + index * NOTE_PX,
          'font-size': fontPx - 1,
          fill: CHART_PALETTE.muted,
        }),
      ),
    ],
  );
}
