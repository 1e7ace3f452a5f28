import { CHART_PALETTE } from '../../drawing/chart-palette.ts';
import type { ReportCell, ReportTable } from '../../drawing/report/report.ts';
import { putDrawing, type ReadDrawing, readDrawing } from './pdf-drawing.ts';
import { lineHeight, type PdfElement, type PdfPen, type TextLook } from './pdf-pen.ts';
import { sharedWidths } from './shared-widths.ts';

const SIZE = 8.6;
const SMALL: TextLook = { size: 7.6, colour: CHART_PALETTE.muted };
const GAP = 9;
/** Between figures, which stand right, and a text after them, which stands left. */
const WIDE_GAP = 18;
const PAD = 3.2;
const RULE = '#c9c5ba';
const TICK_PT = 17;
const BLANK_PT: readonly [number, number] = [46, 22];

/** Something in a cell, one below the other. */
type Piece =
  | { readonly kind: 'line'; readonly text: string; readonly look: TextLook; readonly height: number }
  | { readonly kind: 'tick' | 'blank'; readonly height: number }
  | { readonly kind: 'drawn'; readonly drawing: ReadDrawing; readonly widthPt: number; readonly height: number };

interface LaidColumn {
  readonly x: number;
  readonly width: number;
  readonly figures: boolean;
}

const textsOf = (cell: ReportCell): readonly string[] => {
  if (typeof cell === 'string') return [cell];
  if (cell.kind === 'text') return [cell.text, cell.under ?? ''];
  return cell.kind === 'drawn' ? [cell.text] : [];
};

const leastOf = (cell: ReportCell): number =>
  typeof cell === 'object' && cell.kind === 'tick'
    ? TICK_PT
    : typeof cell === 'object' && cell.kind === 'blank'
      ? BLANK_PT[0]
      : 0;

/** Widths by the columns' weights, but none narrower than its longest word, as far as the paper goes. */
function layColumns(pen: PdfPen, { columns, rows, sums = [] }: ReportTable): readonly LaidColumn[] {
  const gaps: readonly number[] = columns.map(({ figures }, index) =>
    index === columns.length - 1 ? 0 : figures && !columns[index + 1]?.figures ? WIDE_GAP : GAP,
  );
  const room = pen.width - gaps.reduce((sum, gap) => sum + gap, 0);
  const all = [...rows, ...sums];
  const least = columns.map(({ heading, unit = '' }, index) => {
    const heads = `${heading} ${unit}`.split(/[\s]+/).map((word) => pen.widthOf(word, { size: SIZE, weight: 600 }));
    const words = all.flatMap((row) => textsOf(row[index] ?? '').flatMap((text) => text.split(/\s+/)));
    const cells = [...new Set(words)].map((word) => pen.widthOf(word, { size: SIZE, weight: 600 }));
    const fields = all.map((row) => leastOf(row[index] ?? ''));
    return Math.min(Math.max(0, ...heads, ...cells, ...fields) + 0.5, room * 0.3);
  });
  const widths = sharedWidths(
    room,
    columns.map(({ weight }, index) => ({ weight, least: least[index]! })),
  );
  let x = pen.frame.left;
  return widths.map((width, index) => {
    const laid = { x, width, figures: columns[index]?.figures ?? false };
    x += width + gaps[index]!;
    return laid;
  });
}

function piecesOf(pen: PdfPen, cell: ReportCell, { width }: LaidColumn, weight: 400 | 600): readonly Piece[] {
  const written = (text: string, look: TextLook): readonly Piece[] =>
    text === ''
      ? []
      : pen.lines(text, look, width).map((line) => ({ kind: 'line', text: line, look, height: lineHeight(look.size) }));
  if (typeof cell === 'string') return written(cell, { size: SIZE, weight });
  switch (cell.kind) {
    case 'text':
      return [
        ...written(cell.text, { size: SIZE, weight: cell.strong ? 600 : weight }),
        ...written(cell.under ?? '', SMALL),
      ];
    case 'tick':
      return [{ kind: 'tick', height: TICK_PT + 3 }];
    case 'blank':
      return [{ kind: 'blank', height: BLANK_PT[1] + 3 }];
    case 'drawn': {
      const words = written(cell.text, { size: SIZE, weight });
      if (cell.svg === '') return words;
      const drawing = readDrawing(cell.svg);
      const widthPt = Math.min(width, drawing.widthPx * 0.75);
      return [
        ...words,
        { kind: 'drawn', drawing, widthPt, height: (widthPt / drawing.widthPx) * drawing.heightPx + 2 },
      ];
    }
  }
}

const heightOf = (pieces: readonly Piece[]): number => pieces.reduce((sum, { height }) => sum + height, 0);

function drawPiece(pen: PdfPen, piece: Piece, { x, width, figures }: LaidColumn, y: number): void {
  switch (piece.kind) {
    case 'line':
      pen.write(piece.text, figures ? x + width - pen.widthOf(piece.text, piece.look) : x, y, piece.look);
      return;
    case 'tick':
      pen.doc
        .lineWidth(1.3)
        .strokeColor(CHART_PALETTE.ink)
        .roundedRect(x + 0.7, y + 1, TICK_PT - 2, TICK_PT - 2, 2)
        .stroke();
      return;
    case 'blank':
      pen.doc
        .lineWidth(0.8)
        .strokeColor('#8b949b')
        .roundedRect(x + 0.4, y + 1, Math.min(width, BLANK_PT[0]) - 1, BLANK_PT[1], 2)
        .stroke();
      return;
    case 'drawn':
      putDrawing(pen, piece.drawing, { x, y: y + 1, widthPt: piece.widthPt });
      return;
  }
}

function rule(pen: PdfPen, colour: string, width: number): void {
  pen.beside(() => {
    pen.doc.lineWidth(width).strokeColor(colour).moveTo(pen.frame.left, pen.y).lineTo(pen.frame.right, pen.y).stroke();
  });
}

/** Writes a table down the pages: its headings on each of them, a row kept together unless it is higher than a page. */
export class PdfTable {
  readonly #pen: PdfPen;
  readonly #table: ReportTable;
  readonly #columns: readonly LaidColumn[];
  readonly #element: PdfElement;
  readonly #heads: readonly (readonly Piece[])[];

  constructor(pen: PdfPen, table: ReportTable) {
    this.#pen = pen;
    this.#table = table;
    this.#columns = layColumns(pen, table);
    this.#element = pen.element('Table');
    this.#heads = table.columns.map(({ heading, unit }, index) => [
      ...piecesOf(pen, { kind: 'text', text: heading, under: unit ?? '', strong: true }, this.#columns[index]!, 600),
    ]);
  }

  put(): void {
    const pen = this.#pen;
    const { caption, rows, sums = [] } = this.#table;
    const headHeight = Math.max(0, ...this.#heads.map(heightOf)) + PAD * 2;
    const captionLook: TextLook = { size: 8.6, colour: CHART_PALETTE.muted };
    const captionLines = pen.lines(caption, captionLook, pen.width);
    const first = rows[0] === undefined ? 0 : this.#rowHeight(rows[0]);
    pen.need(captionLines.length * lineHeight(8.6) + headHeight + Math.min(first, 120) + 4);
    const captionElement = pen.element('Caption', this.#element);
    for (const line of captionLines) {
      pen.within(captionElement, 'Caption', () => pen.write(line, pen.frame.left, pen.y, captionLook));
      pen.y += lineHeight(8.6);
    }
    this.#putHeads(true);
    for (const row of rows) this.#putRow(row, headHeight, false);
    for (const row of sums) this.#putRow(row, headHeight, true);
    pen.y += 9;
  }

  #rowHeight(row: readonly ReportCell[]): number {
    return (
      Math.max(0, ...row.map((cell, index) => heightOf(piecesOf(this.#pen, cell, this.#columns[index]!, 400)))) +
      2 * PAD
    );
  }

  #putHeads(isFirst: boolean): void {
    const pen = this.#pen;
    const height = Math.max(0, ...this.#heads.map(heightOf));
    pen.y += PAD;
    const row = isFirst ? pen.element('TR', this.#element) : null;
    for (const [index, pieces] of this.#heads.entries()) {
      const draw = (): void => {
        let y = pen.y + height - heightOf(pieces);
        for (const piece of pieces) {
          drawPiece(pen, piece, this.#columns[index]!, y);
          y += piece.height;
        }
      };
      // headings that are said again on a further page are for the eye
      if (row) pen.within(pen.element('TH', row), 'TH', draw);
      else pen.beside(draw);
    }
    pen.y += height + PAD;
    rule(pen, CHART_PALETTE.muted, 0.8);
  }

  #putRow(row: readonly ReportCell[], headHeight: number, isSum: boolean): void {
    const pen = this.#pen;
    let left = row.map((cell, index) => [
      ...piecesOf(pen, cell, this.#columns[index]!, isSum || index === 0 ? 600 : 400),
    ]);
    const element = pen.element('TR', this.#element);
    const cells = row.map((_, index) => pen.element(index === 0 ? 'TH' : 'TD', element));
    const height = Math.max(0, ...left.map(heightOf)) + 2 * PAD;
    const page = pen.frame.bottom - pen.frame.top - headHeight;
    if (height > pen.room && (height <= page || pen.room < 60)) this.#turn();
    while (left.some((pieces) => pieces.length > 0)) {
      const room = pen.room - 2 * PAD;
      const now = left.map((pieces) => {
        let used = 0;
        const fits = pieces.findIndex((piece) => {
          used += piece.height;
          return used > room;
        });
        return pieces.slice(0, fits === -1 ? pieces.length : Math.max(1, fits));
      });
      pen.y += PAD;
      for (const [index, pieces] of now.entries()) {
        if (pieces.length === 0) continue;
        pen.within(cells[index]!, index === 0 ? 'TH' : 'TD', () => {
          let { y } = pen;
          for (const piece of pieces) {
            drawPiece(pen, piece, this.#columns[index]!, y);
            y += piece.height;
          }
        });
      }
      pen.y += Math.max(0, ...now.map(heightOf)) + PAD;
      left = left.map((pieces, index) => pieces.slice(now[index]!.length));
      if (left.some((pieces) => pieces.length > 0)) this.#turn();
    }
    rule(pen, isSum ? CHART_PALETTE.ink : RULE, 0.5);
  }

  #turn(): void {
    this.#pen.turnPage();
    this.#putHeads(false);
  }
}
