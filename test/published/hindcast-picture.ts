import { scaleLog } from 'd3-scale';
import { CHART_FONT, CHART_PALETTE } from '../../src/drawing/chart-palette.ts';
import { escapeXml, svgElement } from '../../src/drawing/svg-element.ts';
import { textWidthPx, wrapText } from '../../src/drawing/text-width.ts';
import { agrees, BAND_SCORES, FIELD_ROWS, type FieldRow, observedYears, predictedYears } from './field-rows.ts';

/** Widths of the picture on a page and on a phone [px]. */
export const HINDCAST_WIDTHS = { wide: 900, phone: 380 } as const;

interface Group {
  readonly heading: string;
  readonly rows: readonly FieldRow[];
}

const GROUPS: readonly Group[] = [
  {
    heading: 'Used for nothing: what the program says beforehand',
    rows: FIELD_ROWS.filter((row) => row.use === 'used for nothing' && row.tag !== 'memory'),
  },
  {
    heading: 'Used for nothing, but what was seen is from memory',
    rows: FIELD_ROWS.filter((row) => row.use === 'used for nothing' && row.tag === 'memory'),
  },
  {
    heading: 'Calibration: their scatter set the spread 0.45; their middle set nothing',
    rows: FIELD_ROWS.filter((row) => row.use === 'set the spread'),
  },
  {
    heading: 'Calibration: each set the pace of its class',
    rows: FIELD_ROWS.filter((row) => row.use === 'set a pace'),
  },
];

const TICKS = [1, 2, 5, 10, 20, 50, 100, 200, 500];
const { ink, muted, grid, paper, snap } = CHART_PALETTE;

const text = (content: string, attributes: Readonly<Record<string, string | number>>): string =>
  svgElement('text', attributes, [escapeXml(content)]);

/** The mark of what was seen: a square for rows used for nothing (hollow from memory), a circle and a diamond for calibration. */
function mark(row: Pick<FieldRow, 'use' | 'tag'>, x: number, y: number): string {
  const pen = { fill: row.tag === 'memory' ? paper : ink, stroke: ink, 'stroke-width': 1.6 };
  if (row.use === 'set the spread') return svgElement('circle', { cx: x, cy: y, r: 4.6, ...pen, fill: paper });
  if (row.use === 'set a pace') {
    return svgElement('path', {
      d: `M${x - 5.4} ${y}L${x} ${y - 5.4}L${x + 5.4} ${y}L${x} ${y + 5.4}Z`,
      ...pen,
      fill: paper,
    });
  }
  return svgElement('rect', { x: x - 4.4, y: y - 4.4, width: 8.8, height: 8.8, ...pen });
}

const stroke = (x1: number, x2: number, y1: number, y2: number, width: number): string =>
  svgElement('line', { x1, x2, y1, y2, stroke: ink, 'stroke-width': width });

/** What was seen of one row: a mark, with a bar for a range and an arrow for "longer than". */
function seen(row: FieldRow, x: (years: number) => number, y: number): readonly string[] {
  const at = x(observedYears(row));
  const { observed } = row;
  if (observed.kind === 'between') {
    const [from, to] = [x(observed.from), x(observed.to)];
    return [
      stroke(from, to, y, y, 1.6),
      stroke(from, from, y - 5, y + 5, 1.6),
      stroke(to, to, y - 5, y + 5, 1.6),
      mark(row, at, y),
    ];
  }
  if (observed.kind === 'longer') {
    const tip = at + 26;
    const head = svgElement('path', {
      d: `M${tip - 6} ${y - 4}L${tip} ${y}L${tip - 6} ${y + 4}`,
      fill: 'none',
      stroke: ink,
      'stroke-width': 1.6,
    });
    return [stroke(at, tip, y, y, 1.6), head, mark(row, at, y)];
  }
  return [mark(row, at, y)];
}

const seenText = ({ observed }: FieldRow): string => {
  if (observed.kind === 'longer') return `over ${observed.years}`;
  return observed.kind === 'between' ? `${observed.from}-${observed.to}` : String(observed.years);
};

function legend(widthPx: number, top: number): { readonly parts: readonly string[]; readonly heightPx: number } {
  const row = (use: FieldRow['use'], tag: FieldRow['tag'] = 'read') => ({ use, tag });
  const bar =
    (height: number, opacity: number) =>
    (x: number, y: number): string =>
      svgElement('rect', { x: x - 9, y: y - height / 2, width: 18, height, fill: snap, 'fill-opacity': opacity });
  const entries: readonly (readonly [string, (x: number, y: number) => string])[] = [
    ['seen, used for nothing', (x, y) => mark(row('used for nothing'), x, y)],
    ['the same, from memory', (x, y) => mark(row('used for nothing', 'memory'), x, y)],
    ['seen, set the spread', (x, y) => mark(row('set the spread'), x, y)],
    ['seen, set a pace', (x, y) => mark(row('set a pace'), x, y)],
    [
      'seen: longer than',
      (x, y) =>
        stroke(x - 9, x + 8, y, y, 1.6) +
        svgElement('path', {
          d: `M${x + 3} ${y - 4}L${x + 9} ${y}L${x + 3} ${y + 4}`,
          fill: 'none',
          stroke: ink,
          'stroke-width': 1.6,
        }),
    ],
    ['forecast: middle 50 %', bar(11, 0.42)],
    ['middle 90 %', bar(5, 0.2)],
  ];
  const parts: string[] = [];
  let x = 8;
  let y = top;
  for (const [label, draw] of entries) {
    const width = 26 + textWidthPx(label, 13, 400) + 18;
    if (x > 8 && x + width > widthPx) {
      x = 8;
      y += 22;
    }
    parts.push(draw(x + 10, y - 4.5), text(label, { x: x + 26, y, 'font-size': 13, fill: ink }));
    x += width;
  }
  return { parts, heightPx: y - top + 22 };
}

/** One row: name, band of the forecast, what was seen, and whether it lies outside. */
function drawRow(
  row: FieldRow,
  x: (years: number) => number,
  at: { readonly y: number; readonly widthPx: number; readonly phone: boolean },
): readonly string[] {
  const { y, widthPx, phone } = at;
  const bar = (score: number, height: number, opacity: number): string => {
    const [from, to] = [x(predictedYears(row, -score)), x(predictedYears(row, score))];
    return svgElement('rect', {
      x: from,
      y: y - height / 2,
      width: to - from,
      height,
      fill: snap,
      'fill-opacity': opacity,
    });
  };
  const middle = x(predictedYears(row, 0));
  const outside = !agrees(row, BAND_SCORES.wide);
  const name = `${row.name}, ${row.site}`;
  const size = 13;
  const verdict = outside ? `seen ${seenText(row)} · outside` : `seen ${seenText(row)}`;
  const side = { 'font-size': size, fill: outside ? ink : muted, 'font-weight': outside ? 600 : 400 };
  return [
    text(name, { x: 8, y: phone ? y - 13 : y + 4.5, 'font-size': size, fill: ink }),
    text(verdict, { x: widthPx - 8, y: phone ? y - 13 : y + 4.5, 'text-anchor': 'end', ...side }),
    bar(BAND_SCORES.wide, 5, 0.2),
    bar(BAND_SCORES.half, 11, 0.42),
    svgElement('line', { x1: middle, x2: middle, y1: y - 7, y2: y + 7, stroke: snap, 'stroke-width': 2 }),
    ...seen(row, x, y),
  ];
}

/**
 * The hindcast as a picture: of every field data set the predicted life with its bands, on a logarithmic scale of years, and
 * what was seen. A complete SVG document; the same rows give the same bytes.
 * @param widthPx width of the picture [px]; under 600 the names stand over their rows
 */
export function hindcastPicture(widthPx: number): string {
  const phone = widthPx < 600;
  const size = phone ? 15 : 17;
  const title = wrapText('Years until posts and stakes in the ground failed: forecast and seen', size, widthPx - 16);
  const titlePx = 12 + title.length * (size + 4);
  const key = legend(widthPx, titlePx + 16);
  const top = titlePx + 16 + key.heightPx;
  const rowPx = phone ? 42 : 23;
  const headPx = 34;
  const x = scaleLog()
    .domain([0.5, 1000])
    .range(phone ? [10, widthPx - 10] : [330, widthPx - 125]);
  const drawn: string[] = [];
  let y = top;
  for (const { heading, rows } of GROUPS) {
    const lines = wrapText(heading, 14, widthPx - 16);
    for (const [index, line] of lines.entries()) {
      drawn.push(text(line, { x: 8, y: y + 22 + 18 * index, 'font-size': 14, 'font-weight': 600, fill: ink }));
    }
    y += headPx + 18 * (lines.length - 1) + (phone ? 10 : 4);
    for (const row of rows) {
      drawn.push(...drawRow(row, x, { y: y + rowPx / 2 + (phone ? 6 : -4), widthPx, phone }));
      y += rowPx;
    }
  }
  const bottom = y + 6;
  const axis = TICKS.flatMap((years) => [
    svgElement('line', { x1: x(years), x2: x(years), y1: top, y2: bottom, stroke: grid }),
    text(String(years), { x: x(years), y: bottom + 17, 'text-anchor': 'middle', 'font-size': 13, fill: muted }),
  ]);
  const heightPx = bottom + 44;
  const caption = text('years, logarithmic', {
    x: (x(1) + x(500)) / 2,
    y: bottom + 36,
    'text-anchor': 'middle',
    'font-size': 13,
    fill: muted,
  });
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${widthPx} ${heightPx}`,
      width: widthPx,
      height: heightPx,
      role: 'img',
      'font-family': CHART_FONT,
    },
    [
      svgElement('title', {}, ['Forecast and seen lives of posts and stakes in the ground']),
      svgElement('rect', { width: widthPx, height: heightPx, fill: paper }),
      ...axis,
      ...title.map((line, index) =>
        text(line, { x: 8, y: 22 + index * (size + 4), 'font-size': size, 'font-weight': 600, fill: ink }),
      ),
      ...key.parts,
      ...drawn,
      caption,
    ],
  );
}
