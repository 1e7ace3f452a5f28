import { CHART_PALETTE } from '../../drawing/chart-palette.ts';
import type { Report, ReportBlock, ReportDrawing, ReportFact } from '../../drawing/report/report.ts';
import { pageOf } from '../../drawing/report/report-words.ts';
import { putDrawing, readDrawing } from './pdf-drawing.ts';
import { lineHeight, PdfPen, type ReportFonts, type TextLook } from './pdf-pen.ts';
import { PdfTable } from './pdf-table.ts';

const { ink, muted, snap } = CHART_PALETTE;
const BODY: TextLook = { size: 10 };
const LOOKS = {
  lead: { size: 13 },
  small: { size: 8.6, colour: muted },
  strong: { size: 10.5, weight: 600 },
} as const satisfies Record<string, TextLook>;
const NAME: TextLook = { size: 8.2, colour: muted };
const FOOT: TextLook = { size: 7.8, colour: muted };
/** Width at which a drawing is made for paper [px]: its letters are then as large as the text beside it. */
const DRAWN_PX = 680;
const FACT_COLUMNS = 3;
const FACT_GAP = 16;

/** How much has to be on the page with a heading, so that it never stands alone at its foot [pt]. */
const WITH_HEADING: Partial<Record<ReportBlock['kind'], number>> = { table: 90, drawing: 260, facts: 60, picture: 200 };

function putHeading(
  pen: PdfPen,
  { level, text }: Extract<ReportBlock, { kind: 'heading' }>,
  next: ReportBlock | undefined,
): void {
  const size = level === 2 ? 13 : 10.5;
  pen.skip(level === 2 ? 13 : 8);
  pen.need(lineHeight(size) + (next === undefined ? 0 : (WITH_HEADING[next.kind] ?? 34)));
  pen.paragraph(text, { size, weight: 600 }, { type: `H${level}` });
  pen.y += 4;
}

function putFacts(pen: PdfPen, facts: readonly ReportFact[]): void {
  const width = (pen.width - FACT_GAP * (FACT_COLUMNS - 1)) / FACT_COLUMNS;
  const list = pen.element('L');
  for (let start = 0; start < facts.length; start += FACT_COLUMNS) {
    const laid = facts
      .slice(start, start + FACT_COLUMNS)
      .map(({ name, value, small = '' }) => [
        ...pen.lines(name, NAME, width).map((text) => ({ text, look: NAME })),
        ...pen.lines(value, BODY, width).map((text) => ({ text, look: BODY })),
        ...(small === '' ? [] : pen.lines(small, NAME, width).map((text) => ({ text, look: NAME }))),
      ]);
    const height = Math.max(...laid.map((lines) => lines.reduce((sum, { look }) => sum + lineHeight(look.size), 0)));
    pen.need(Math.min(height, pen.frame.bottom - pen.frame.top));
    for (const [column, lines] of laid.entries()) {
      const item = pen.element('LBody', pen.element('LI', list));
      pen.within(item, 'LBody', () => {
        let { y } = pen;
        for (const { text, look } of lines) {
          pen.write(text, pen.frame.left + column * (width + FACT_GAP), y, look);
          y += lineHeight(look.size);
        }
      });
    }
    pen.y += height + 7;
  }
}

function putDrawn(pen: PdfPen, { svg, alt, caption }: ReportDrawing): void {
  const drawing = readDrawing(svg(DRAWN_PX, 'paper'));
  const scale = Math.min(1, pen.width / drawing.widthPx);
  const [widthPt, heightPt] = [drawing.widthPx * scale, drawing.heightPx * scale];
  const lines = caption === undefined ? [] : pen.lines(caption, LOOKS.small, pen.width);
  pen.need(heightPt + lines.length * lineHeight(LOOKS.small.size) + 6);
  const figure = pen.element('Figure', undefined, { alt });
  pen.within(figure, 'Figure', () => putDrawing(pen, drawing, { x: pen.frame.left, y: pen.y, widthPt }));
  pen.y += heightPt + 2;
  if (caption !== undefined) pen.paragraph(caption, LOOKS.small, { type: 'Caption' });
  pen.y += 6;
}

function putPicture(pen: PdfPen, { source, alt, widthPx }: Extract<ReportBlock, { kind: 'picture' }>): void {
  const bytes = Buffer.from(source.slice(source.indexOf(',') + 1), 'base64');
  const picture = (
    pen.doc as unknown as { openImage(bytes: Buffer): { readonly width: number; readonly height: number } }
  ).openImage(bytes);
  const widthPt = Math.min(pen.width, widthPx * 0.75);
  const heightPt = (widthPt * picture.height) / picture.width;
  pen.need(heightPt + 6);
  const figure = pen.element('Figure', undefined, { alt });
  pen.within(figure, 'Figure', () => {
    pen.doc.image(bytes, pen.frame.left, pen.y, { width: widthPt });
  });
  pen.y += heightPt + 8;
}

const bullet =
  (pen: PdfPen, isTick: boolean) =>
  (y: number): void => {
    if (isTick)
      pen.doc
        .lineWidth(1.2)
        .strokeColor(ink)
        .roundedRect(pen.frame.left + 0.6, y, 12, 12, 2)
        .stroke();
    else
      pen.doc
        .fillColor(muted)
        .circle(pen.frame.left + 4, y + 6.6, 1.5)
        .fill();
  };

function putList(pen: PdfPen, { items, ticks = false }: Extract<ReportBlock, { kind: 'list' }>): void {
  const list = pen.element('L');
  for (const item of items) {
    pen.need(lineHeight(BODY.size));
    const top = pen.y;
    pen.beside(() => bullet(pen, ticks)(top));
    pen.paragraph(item, BODY, { type: 'LBody', indent: ticks ? 20 : 12, inside: pen.element('LI', list) });
    pen.y += ticks ? 5 : 2;
  }
  pen.y += 4;
}

function putAnswer(pen: PdfPen, { lines, about }: Extract<ReportBlock, { kind: 'answer' }>): void {
  const bar = (y: number): void => {
    pen.doc
      .lineWidth(2.5)
      .strokeColor(snap)
      .moveTo(pen.frame.left + 1.2, y)
      .lineTo(pen.frame.left + 1.2, y + 19)
      .stroke();
  };
  pen.skip(7);
  for (const line of lines) pen.paragraph(line, { size: 12.5 }, { indent: 12, mark: bar });
  pen.paragraph(
    about,
    { size: 9, colour: muted },
    {
      indent: 12,
      mark: (y) =>
        void pen.doc
          .lineWidth(2.5)
          .strokeColor(snap)
          .moveTo(pen.frame.left + 1.2, y - 2)
          .lineTo(pen.frame.left + 1.2, y + 12)
          .stroke(),
    },
  );
  pen.y += 9;
}

function putLines(pen: PdfPen, labels: readonly string[]): void {
  for (const label of labels) {
    const width = Math.min(pen.widthOf(label, BODY), pen.width * 0.6);
    pen.need(26);
    pen.y += 10;
    const y = pen.y + lineHeight(BODY.size) - 1;
    pen.beside(() => {
      pen.doc
        .lineWidth(0.7)
        .strokeColor('#8b949b')
        .moveTo(pen.frame.left + width + 8, y)
        .lineTo(pen.frame.right, y)
        .stroke();
    });
    pen.paragraph(label, BODY);
  }
  pen.y += 6;
}

function putCautions(pen: PdfPen, { heading, items }: Extract<ReportBlock, { kind: 'cautions' }>): void {
  const look: TextLook = { size: 8.8, colour: muted };
  const lines = items.reduce((sum, item) => sum + pen.lines(item, look, pen.width).length, 0);
  pen.skip(14);
  pen.need(lines * lineHeight(look.size) + items.length * 3 + 26);
  pen.beside(() => {
    pen.doc.lineWidth(0.6).strokeColor('#c9c5ba').moveTo(pen.frame.left, pen.y).lineTo(pen.frame.right, pen.y).stroke();
  });
  pen.y += 8;
  pen.paragraph(heading, { size: 9.6, weight: 600 }, { type: 'H2' });
  for (const item of items) {
    pen.paragraph(item, look);
    pen.y += 3;
  }
}

function putBlock(pen: PdfPen, block: ReportBlock, next: ReportBlock | undefined): void {
  switch (block.kind) {
    case 'heading':
      putHeading(pen, block, next);
      return;
    case 'paragraph':
      pen.paragraph(block.text, block.look === undefined ? BODY : LOOKS[block.look]);
      pen.y += block.look === 'lead' ? 7 : 5;
      return;
    case 'answer':
      putAnswer(pen, block);
      return;
    case 'facts':
      putFacts(pen, block.facts);
      return;
    case 'list':
      putList(pen, block);
      return;
    case 'table':
      new PdfTable(pen, block).put();
      return;
    case 'drawing':
      putDrawn(pen, block);
      return;
    case 'picture':
      putPicture(pen, block);
      return;
    case 'lines':
      putLines(pen, block.labels);
      return;
    case 'cautions':
      putCautions(pen, block);
      return;
    case 'new page':
      if (pen.y > pen.frame.top) pen.turnPage();
  }
}

/** The foot of a page: what the report rests on, and which page it is; from the second page on its title stands at the head. */
function drawFoot(pen: PdfPen, report: Report, page: number, pages: number): void {
  const { left, right, bottom } = pen.frame;
  const number = pageOf(page, pages, report.language);
  const numberX = right - pen.widthOf(number, FOOT);
  pen.doc
    .lineWidth(0.5)
    .strokeColor('#c9c5ba')
    .moveTo(left, bottom + 12)
    .lineTo(right, bottom + 12)
    .stroke();
  const lines = pen.lines(report.foot.join(' · '), FOOT, numberX - left - 24);
  for (const [index, line] of lines.slice(0, 3).entries())
    pen.write(line, left, bottom + 16 + index * lineHeight(FOOT.size), FOOT);
  pen.write(number, numberX, bottom + 16, FOOT);
  if (page > 1) pen.write(pen.lines(report.title, FOOT, right - left)[0] ?? '', left, 26, FOOT);
}

/**
 * A report on paper: text that can be found and copied, drawings as lines, the open font inside, a structure for whoever has it read
 * aloud. The same report has the same bytes.
 */
export async function reportPdf(report: Report, fonts: ReportFonts): Promise<Uint8Array> {
  const pen = new PdfPen(report, fonts);
  pen.paragraph(report.title, { size: 21, weight: 600 }, { type: 'H1' });
  pen.y += 2;
  for (const line of report.under) pen.paragraph(line, { size: 10.5, colour: muted });
  pen.y += 10;
  for (const [index, block] of report.blocks.entries()) putBlock(pen, block, report.blocks[index + 1]);
  return pen.finish((page, pages) => drawFoot(pen, report, page, pages));
}
