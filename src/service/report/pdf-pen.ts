import PDFDocument from 'pdfkit';
import { CHART_PALETTE } from '../../drawing/chart-palette.ts';
import type { Paper, Report } from '../../drawing/report/report.ts';

/** The two faces of the open font that ships with the program, as the bytes of their files. */
export interface ReportFonts {
  readonly regular: Uint8Array;
  readonly semibold: Uint8Array;
}

type Weight = 400 | 600;

/** How a line of text looks. */
export interface TextLook {
  /** Size of the letters [pt]. */
  readonly size: number;
  readonly weight?: Weight;
  readonly colour?: string;
}

/** Where on the paper something may be drawn [pt]. */
interface PageFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** An element of the structure by which a reader of the text finds its way. */
export type PdfElement = PDFKit.PDFStructureElement;

/** Height of a line over the size of its letters [-], and where in it the letters stand [-]. */
const LINE_FACTOR = 1.32;
const BASELINE = 0.95;

const SIZES: Readonly<Record<Paper, readonly [number, number]>> = { letter: [612, 792], a4: [595.28, 841.89] };
const MARGIN_PT = 50;
const FOOT_PT = 62;

/** Height of a line of that size [pt]. */
export const lineHeight = (size: number): number => size * LINE_FACTOR;

/**
 * A pen that writes a report on paper: it knows where it stands and how wide texts are, turns the page where there is no room, and
 * keeps what it writes in a structure. Moments come from the report, so that the same report has the same bytes.
 */
export class PdfPen {
  readonly doc: PDFKit.PDFDocument;
  readonly frame: PageFrame;
  /** Where the next thing goes, from the top of the paper [pt]. */
  y: number;
  readonly #root: PdfElement;
  readonly #widths = new Map<string, number>();
  readonly #done: Promise<Uint8Array>;

  constructor(report: Report, fonts: ReportFonts) {
    const [width, height] = SIZES[report.paper];
    const made = new Date(report.madeAt);
    this.doc = new PDFDocument({
      size: [width, height],
      margin: 0,
      bufferPages: true,
      pdfVersion: '1.7',
      tagged: true,
      lang: report.language === 'es' ? 'es-US' : 'en-US',
      displayTitle: true,
      font: '',
      info: {
        Title: report.title,
        Author: report.author,
        Subject: report.subject,
        Creator: 'Stormpale',
        Producer: 'Stormpale',
        CreationDate: made,
        ModDate: made,
      },
    });
    const parts: Uint8Array[] = [];
    this.#done = new Promise((resolve, reject) => {
      this.doc.on('data', (part: Uint8Array) => parts.push(part));
      this.doc.on('error', reject);
      this.doc.on('end', () => resolve(new Uint8Array(Buffer.concat(parts))));
    });
    this.doc.registerFont('400', Buffer.from(fonts.regular));
    this.doc.registerFont('600', Buffer.from(fonts.semibold));
    this.#root = this.doc.struct('Document');
    this.doc.addStructure(this.#root);
    this.frame = { left: MARGIN_PT, right: width - MARGIN_PT, top: MARGIN_PT, bottom: height - FOOT_PT };
    this.y = this.frame.top;
  }

  /** Width that can be written on [pt]. */
  get width(): number {
    return this.frame.right - this.frame.left;
  }

  /** Height from here to the foot [pt]. */
  get room(): number {
    return this.frame.bottom - this.y;
  }

  turnPage(): void {
    this.doc.addPage();
    this.y = this.frame.top;
  }

  /** Turns the page where that much does not fit on it and something stands there already. */
  need(heightPt: number): void {
    if (heightPt > this.room && this.y > this.frame.top) this.turnPage();
  }

  /** Goes down, but never leaves a blank at the head of a page. */
  skip(heightPt: number): void {
    if (this.y > this.frame.top) this.y += heightPt;
  }

  /** A new element of the structure, in another or in the report itself. */
  element(type: string, inside: PdfElement = this.#root, options: { readonly alt?: string } = {}): PdfElement {
    const made = this.doc.struct(type, options);
    inside.add(made);
    return made;
  }

  /** Does some drawing as content of an element. */
  within(element: PdfElement, type: string, draw: () => void): void {
    const content = this.doc.markStructureContent(type);
    draw();
    this.doc.endMarkedContent();
    element.add(content);
  }

  /** Draws what says nothing: rules, frames, heads and feet. */
  beside(draw: () => void): void {
    this.doc.markContent('Artifact', { type: 'Layout' });
    draw();
    this.doc.endMarkedContent();
  }

  /** Width of a text [pt]. */
  widthOf(text: string, { size, weight = 400 }: TextLook): number {
    const key = `${weight}${text}`;
    let width = this.#widths.get(key);
    if (width === undefined) {
      width = this.doc.font(String(weight)).fontSize(100).widthOfString(text) / 100;
      this.#widths.set(key, width);
    }
    return width * size;
  }

  /** A text in lines no wider than that [pt], broken at blanks, and within a word where the word alone is wider. */
  lines(text: string, look: TextLook, widthPt: number): readonly string[] {
    const lines: string[] = [];
    const blank = this.widthOf(' ', look);
    for (const paragraph of text.split('\n')) {
      let [line, width] = ['', 0];
      for (const word of paragraph.split(/ +/).flatMap((each) => this.#pieces(each, look, widthPt))) {
        const wordWidth = this.widthOf(word, look);
        if (line !== '' && width + blank + wordWidth > widthPt) {
          lines.push(line);
          [line, width] = [word, wordWidth];
        } else if (line === '') [line, width] = [word, wordWidth];
        else [line, width] = [`${line} ${word}`, width + blank + wordWidth];
      }
      lines.push(line);
    }
    return lines;
  }

  #pieces(word: string, look: TextLook, widthPt: number): readonly string[] {
    if (this.widthOf(word, look) <= widthPt) return [word];
    const pieces: string[] = [];
    let piece = '';
    for (const character of word) {
      if (piece !== '' && this.widthOf(piece + character, look) > widthPt) {
        pieces.push(piece);
        piece = character;
      } else piece += character;
    }
    return [...pieces, piece];
  }

  /** Writes one line at a place; `y` is the top of the line. */
  write(line: string, x: number, y: number, look: TextLook): void {
    const { size, weight = 400, colour = CHART_PALETTE.ink } = look;
    this.doc
      .font(String(weight))
      .fontSize(size)
      .fillColor(colour)
      .text(line, x, y + lineHeight(size) * BASELINE - size * 0.24, { lineBreak: false, baseline: 'alphabetic' });
  }

  /** Writes a text down the page as one element, turning pages on its way. */
  paragraph(
    text: string,
    look: TextLook,
    options: {
      readonly type?: string;
      readonly indent?: number;
      readonly inside?: PdfElement;
      readonly mark?: (y: number) => void;
    } = {},
  ): void {
    const { type = 'P', indent = 0, mark } = options;
    const element = this.element(type, options.inside);
    const height = lineHeight(look.size);
    const lines = this.lines(text, look, this.width - indent);
    for (const [index, line] of lines.entries()) {
      // neither the first line of a paragraph nor its last stands alone
      const together = index === 0 || index === lines.length - 2 ? Math.min(2, lines.length - index) : 1;
      this.need(together * height);
      if (mark) this.beside(() => mark(this.y));
      this.within(element, type, () => this.write(line, this.frame.left + indent, this.y, look));
      this.y += height;
    }
  }

  /** Ends the document: the foot of every page is drawn, then its bytes are given. */
  async finish(drawFoot: (page: number, pages: number) => void): Promise<Uint8Array> {
    const { count } = this.doc.bufferedPageRange();
    for (let page = 0; page < count; page += 1) {
      this.doc.switchToPage(page);
      this.doc.markContent('Artifact', { type: 'Pagination' });
      drawFoot(page + 1, count);
      this.doc.endMarkedContent();
    }
    this.#root.end();
    this.doc.end();
    return this.#done;
  }
}
