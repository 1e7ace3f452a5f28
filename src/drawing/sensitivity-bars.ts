import type { Sensitivity } from '../forecast/sensitivity.ts';
import { CHART_FONT, CHART_PALETTE } from './chart-palette.ts';
import type { ChartLanguage } from './chart-words.ts';
import { type TextAnchor, textBox } from './label-placement.ts';
import { LABEL_GAP_PX, type SensitivityFrame, sensitivityFrame } from './sensitivity-frame.ts';
import { type SensitivityRow, type SensitivityRows, sensitivityRows } from './sensitivity-rows.ts';
import type { DisplayUnits } from './speed-text.ts';
import { escapeXml, svgElement } from './svg-element.ts';
import { CAP_HEIGHT, textWidthPx, wrapText } from './text-width.ts';

/** How the bars of a sensitivity are drawn. */
export interface SensitivityBarsOptions {
  readonly units: DisplayUnits;
  /** English unless given. */
  readonly language?: ChartLanguage;
  /** Width of the picture [px], 320 or more; its height follows from the rows. */
  readonly widthPx: number;
  /** Prefix of the ids inside, where one page holds the picture more than once. */
  readonly idPrefix?: string;
}

const HEAD_PX = 64;
const AXIS_PX = 30;
const BAR_PX = 12;
const NOTE_PX = 12;
const NOTE_LINE_PX = 18;
const EMPTY_TEXT_PX = 14;

type TextLook = Readonly<Record<string, string | number | undefined>> & {
  readonly x: number;
  readonly y: number;
  readonly 'font-size': number;
};

const text = (content: string, look: TextLook): string => svgElement('text', look, [escapeXml(content)]);

/** A text on a patch of paper, so that no line runs through it. */
function patchedText(content: string, look: TextLook, anchor: TextAnchor, weight: 400 | 600 = 400): readonly string[] {
  const box = textBox({ text: content, x: look.x, y: look.y, sizePx: look['font-size'], weight, anchor });
  return [
    svgElement('rect', {
      class: 'fy-paper',
      x: box.left - 2,
      y: box.top - 2,
      width: box.right - box.left + 4,
      height: box.bottom - box.top + 3,
      fill: CHART_PALETTE.paper,
    }),
    text(content, {
      ...look,
      'text-anchor': anchor === 'start' ? undefined : anchor,
      'font-weight': weight === 600 ? 600 : undefined,
    }),
  ];
}

const ink = (sizePx: number) => ({ class: 'fy-ink-text', 'font-size': sizePx, fill: CHART_PALETTE.ink });
const muted = (sizePx: number) => ({ class: 'fy-muted-text', 'font-size': sizePx, fill: CHART_PALETTE.muted });

/**
 * The picture of what moves the short season: a bar for each input from the year in which the fence goes short at one end of
 * it to the year at the other, the longest first; filled where the input is not known, pale where it is recorded but may be
 * off. Returns a complete SVG document; the same sensitivity and options give the same bytes.
 */
export function sensitivityBarsSvg(sensitivity: Sensitivity, options: SensitivityBarsOptions): string {
  const { widthPx } = options;
  const drawn = sensitivityRows(sensitivity, options.units, options.language);
  const frame = sensitivityFrame(drawn, widthPx);
  const { words, rows } = drawn;
  const empty = wrapText(words.none, EMPTY_TEXT_PX, widthPx - 16);
  const bottom = HEAD_PX + rows.length * frame.rowPx;
  const notes = footNotes(drawn, widthPx, rows.length === 0 ? 18 + empty.length * 20 : bottom + AXIS_PX + 14);
  const heightPx = notes.bottom;
  const prefix = options.idPrefix ?? 'sensitivity';
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'sensitivity-bars',
      viewBox: `0 0 ${widthPx} ${heightPx}`,
      width: widthPx,
      height: heightPx,
      role: 'img',
      'aria-labelledby': `${prefix}-title ${prefix}-desc`,
      'font-family': CHART_FONT,
    },
    [
      svgElement('title', { id: `${prefix}-title` }, [escapeXml(words.title)]),
      svgElement('desc', { id: `${prefix}-desc` }, [escapeXml(words.summary)]),
      svgElement('rect', { class: 'fy-paper', width: widthPx, height: heightPx, fill: CHART_PALETTE.paper }),
      ...(rows.length === 0
        ? empty.map((line, index) => text(line, { ...ink(EMPTY_TEXT_PX), x: 8, y: 26 + index * 20 }))
        : [
            ...axis(drawn, frame, bottom),
            ...seasonOne(drawn, frame, bottom),
            ...rows.flatMap((row, index) => rowMarks(row, index, drawn, frame)),
            ...asItStands(drawn, frame, bottom),
          ]),
      ...notes.elements,
    ],
  );
}

/** What the rows say, above them; years under them, with a hair up through them. */
function axis({ words }: SensitivityRows, frame: SensitivityFrame, bottom: number): readonly string[] {
  const { xOf, fontPx } = frame;
  const [from = 0, to = 0] = xOf.range();
  const look = muted(fontPx - 1);
  const years = xOf.ticks(Math.max(3, Math.floor((to - from) / 62))).filter((year) => Number.isInteger(year));
  return [
    text(words.axis, { ...look, x: 8, y: 17 }),
    text(words.swing, { ...look, x: frame.swingX, y: 17, 'text-anchor': 'end' }),
    ...years.flatMap((year) => [
      svgElement('line', {
        class: 'fy-grid',
        x1: xOf(year),
        x2: xOf(year),
        y1: HEAD_PX - 6,
        y2: bottom + 4,
        stroke: CHART_PALETTE.grid,
      }),
      text(String(year), { ...look, x: xOf(year), y: bottom + 20, 'text-anchor': 'middle' }),
    ]),
  ];
}

/** Top of a row's bar [px]. */
const barTop = (index: number, frame: SensitivityFrame): number =>
  HEAD_PX + index * frame.rowPx + (frame.stacked ? 22 : (frame.rowPx - BAR_PX) / 2);

function rowMarks(
  row: SensitivityRow,
  index: number,
  drawn: SensitivityRows,
  frame: SensitivityFrame,
): readonly string[] {
  const { fontPx, labelPx, stacked } = frame;
  const top = barTop(index, frame);
  const level = top + (BAR_PX + CAP_HEIGHT * labelPx) / 2;
  const nameY = stacked ? top - 8 : top + (BAR_PX + CAP_HEIGHT * fontPx) / 2;
  const [x1, x2] = [frame.xOfEnd(row.sooner.year), frame.xOfEnd(row.later.year)];
  const end = (content: string, x: number, anchor: 'start' | 'end'): readonly string[] =>
    content === '' ? [] : patchedText(content, { ...muted(labelPx), x, y: level }, anchor);
  const middleX = frame.xOfEnd(drawn.middleYear);
  // On the dark bars the upright of the fence as it stands needs paper about it to be seen.
  const notched = row.kind === 'unknown' && middleX > x1 + 2 && middleX < x2 - 2;
  return [
    ...patchedText(row.input, { ...ink(fontPx), x: 8, y: nameY }, 'start', 600),
    ...patchedText(row.swing, { ...ink(labelPx), x: frame.swingX, y: stacked ? nameY : level }, 'end'),
    ...end(frame.labelOf(row.sooner), x1 - LABEL_GAP_PX, 'end'),
    ...end(frame.labelOf(row.later), x2 + LABEL_GAP_PX, 'start'),
    barShape(row, x1, x2, top),
    ...(notched
      ? [
          svgElement('rect', {
            class: 'fy-paper',
            x: middleX - 1.75,
            y: top - 1,
            width: 3.5,
            height: BAR_PX + 2,
            fill: CHART_PALETTE.paper,
          }),
        ]
      : []),
  ];
}

/** A bar; one whose later end lies beyond the years looked at runs out in a point. */
function barShape(row: SensitivityRow, x1: number, x2: number, top: number): string {
  const [bottom, middle] = [top + BAR_PX, top + BAR_PX / 2];
  const tip = row.later.year === null ? BAR_PX / 2 : 0;
  const at = (x: number, y: number): string => `${Number(x.toFixed(2))},${Number(y.toFixed(2))}`;
  const points = [
    at(x1, top),
    at(Math.max(x1, x2 - tip), top),
    ...(tip > 0 ? [at(x2, middle)] : []),
    at(Math.max(x1, x2 - tip), bottom),
    at(x1, bottom),
  ].join(' ');
  const look =
    row.kind === 'unknown'
      ? { class: 'sy-unknown', fill: CHART_PALETTE.snap }
      : { class: 'sy-recorded', fill: CHART_PALETTE.snap, 'fill-opacity': '0.28' };
  return svgElement('polygon', { ...look, points });
}

const upright = (className: string, x: number, span: readonly [number, number], dash?: string): string =>
  svgElement('line', {
    class: className,
    x1: x,
    x2: x,
    y1: span[0],
    y2: span[1],
    stroke: CHART_PALETTE.ink,
    'stroke-width': dash ? 1 : 1.25,
    'stroke-dasharray': dash,
  });

/** Where a name over the rows stands: over its upright, as far as the picture is wide [px]. */
function nameX(content: string, x: number, frame: SensitivityFrame, weight: 400 | 600): number {
  const half = textWidthPx(content, frame.fontPx, weight) / 2;
  return Math.min(Math.max(x, frame.left + half), frame.right - half);
}

/** The upright of season 1 under the rows, its name on the first line over them. */
function seasonOne(drawn: SensitivityRows, frame: SensitivityFrame, bottom: number): readonly string[] {
  const name = drawn.words.seasonOne;
  const x = frame.xOf(drawn.seasonOneYear);
  return [
    upright('fy-turnover', x, [40, bottom + 4], '2 3'),
    text(name, { ...muted(frame.fontPx), x: nameX(name, x, frame, 400), y: 35, 'text-anchor': 'middle' }),
  ];
}

/** The upright of the fence as it stands through the bars, its name on the second line over them. */
function asItStands(drawn: SensitivityRows, frame: SensitivityFrame, bottom: number): readonly string[] {
  const name = drawn.words.middle;
  const x = frame.xOfEnd(drawn.middleYear);
  return [
    upright('fy-today', x, [58, bottom + 4]),
    ...patchedText(name, { ...ink(frame.fontPx), x: nameX(name, x, frame, 600), y: 53 }, 'middle', 600),
  ];
}

/** The key of the two kinds of bar, and what moves nothing. */
function footNotes(
  { words, rows }: SensitivityRows,
  widthPx: number,
  top: number,
): { readonly elements: readonly string[]; readonly bottom: number } {
  const elements: string[] = [];
  let y = top + 10;
  const write = (content: string, indent: number): void => {
    for (const line of wrapText(content, NOTE_PX, widthPx - 16 - indent)) {
      elements.push(text(line, { ...muted(NOTE_PX), x: 8 + indent, y }));
      y += NOTE_LINE_PX;
    }
  };
  const kinds = (['unknown', 'recorded'] as const).filter((kind) => rows.some((row) => row.kind === kind));
  for (const kind of kinds) {
    elements.push(
      svgElement('rect', {
        class: kind === 'unknown' ? 'sy-unknown' : 'sy-recorded',
        x: 8,
        y: y - 9,
        width: 20,
        height: 9,
        fill: CHART_PALETTE.snap,
        'fill-opacity': kind === 'unknown' ? undefined : '0.28',
      }),
    );
    write(words[kind], 28);
  }
  if (words.without !== '') write(words.without, 0);
  return { elements, bottom: Math.round(y) };
}
