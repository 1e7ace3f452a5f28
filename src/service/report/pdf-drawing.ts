import { CHART_PALETTE } from '../../drawing/chart-palette.ts';
import { type SvgShape, svgShapes } from '../../drawing/report/svg-shapes.ts';
import type { PdfPen } from './pdf-pen.ts';

/** How large a drawing is in its own units [px]. */
interface DrawingSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Size of a drawing by its view box. Throws RangeError where it has none. */
function sizeOf({ attributes }: SvgShape): DrawingSize {
  const [, , widthPx, heightPx] = (attributes.viewBox ?? '').split(' ').map(Number);
  if (!(widthPx && heightPx))
    throw new RangeError(`drawing: view box ${JSON.stringify(attributes.viewBox)}; it needs a width and a height`);
  return { widthPx, heightPx };
}

/** A drawing that is ready for paper. */
export interface ReadDrawing extends DrawingSize {
  readonly shape: SvgShape;
}

/** Reads a drawing as this program makes them. */
export function readDrawing(svg: string): ReadDrawing {
  const shape = svgShapes(svg);
  return { shape, ...sizeOf(shape) };
}

type Doc = PDFKit.PDFDocument;

const number = (shape: SvgShape, name: string, other = 0): number => {
  const written = shape.attributes[name];
  return written === undefined ? other : Number(written);
};

/** A dotted ground: dots that far apart, as on the screen [px], each a small square at such a place. */
const DOTS_APART = 5;
const DOT = '0.5 0.5 2 2 re f';

/** Fills and strokes the path that was just laid down. */
function paint(doc: Doc, { attributes }: SvgShape, plainFill: string | null): void {
  const asked = attributes.fill ?? plainFill ?? 'none';
  const isDotted = asked.startsWith('url(');
  const fill: string | PDFKit.Mixins.ColorValue = isDotted
    ? [doc.pattern([0, 0, DOTS_APART, DOTS_APART], DOTS_APART, DOTS_APART, DOT), CHART_PALETTE.lean]
    : asked;
  const stroke = attributes.stroke ?? 'none';
  const opacity = Number(attributes.opacity ?? 1);
  doc.fillOpacity(opacity * Number(attributes['fill-opacity'] ?? 1)).strokeOpacity(opacity);
  doc.lineWidth(Number(attributes['stroke-width'] ?? 1));
  doc.lineJoin(attributes['stroke-linejoin'] === 'round' ? 'round' : 'miter');
  doc.lineCap(attributes['stroke-linecap'] === 'round' ? 'round' : 'butt');
  const dash = attributes['stroke-dasharray'];
  if (dash === undefined) doc.undash();
  else {
    const [length = 1, space = length] = dash.split(/[ ,]+/).map(Number);
    doc.dash(length, { space });
  }
  if (fill !== 'none' && stroke !== 'none') doc.fillAndStroke(fill, stroke);
  else if (stroke !== 'none') doc.strokeColor(stroke).stroke();
  else if (fill !== 'none') doc.fillColor(fill).fill();
  doc.undash().fillOpacity(1).strokeOpacity(1);
}

const points = (written = ''): string => `M${written.trim().split(/\s+/).join('L')}`;

function drawText(pen: PdfPen, shape: SvgShape, inherited: Readonly<Record<string, string>>): void {
  const { attributes, text } = shape;
  const size = Number(attributes['font-size'] ?? inherited['font-size'] ?? 13);
  const weight = Number(attributes['font-weight'] ?? inherited['font-weight'] ?? 400) >= 600 ? 600 : 400;
  const width = pen.widthOf(text, { size, weight });
  const anchor = attributes['text-anchor'] ?? inherited['text-anchor'] ?? 'start';
  const x = number(shape, 'x') - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0);
  pen.doc
    .font(String(weight))
    .fontSize(size)
    .fillColor(attributes.fill ?? inherited.fill ?? CHART_PALETTE.ink)
    .text(text, x, number(shape, 'y'), { lineBreak: false, baseline: 'alphabetic' });
}

function drawShape(pen: PdfPen, shape: SvgShape, inherited: Readonly<Record<string, string>>): void {
  const { doc } = pen;
  const { name, attributes } = shape;
  switch (name) {
    case 'title':
    case 'desc':
    case 'defs':
      return;
    case 'svg':
    case 'g': {
      doc.save();
      const moved = /translate\(([-\d.]+)[ ,]+([-\d.]+)\)/.exec(attributes.transform ?? '');
      if (moved) doc.translate(Number(moved[1]), Number(moved[2]));
      for (const child of shape.children) drawShape(pen, child, { ...inherited, ...attributes });
      doc.restore();
      return;
    }
    case 'text':
      drawText(pen, shape, inherited);
      return;
    case 'rect': {
      const [width, height] = [number(shape, 'width'), number(shape, 'height')];
      if (width <= 0 || height <= 0) return;
      const radius = number(shape, 'rx');
      if (radius > 0) doc.roundedRect(number(shape, 'x'), number(shape, 'y'), width, height, radius);
      else doc.rect(number(shape, 'x'), number(shape, 'y'), width, height);
      paint(doc, shape, inherited.fill ?? CHART_PALETTE.ink);
      return;
    }
    case 'line':
      doc.moveTo(number(shape, 'x1'), number(shape, 'y1')).lineTo(number(shape, 'x2'), number(shape, 'y2'));
      paint(doc, { ...shape, attributes: { ...attributes, fill: 'none' } }, null);
      return;
    case 'circle':
      doc.circle(number(shape, 'cx'), number(shape, 'cy'), number(shape, 'r'));
      paint(doc, shape, inherited.fill ?? CHART_PALETTE.ink);
      return;
    case 'path':
      doc.path(attributes.d ?? '');
      paint(doc, shape, inherited.fill ?? CHART_PALETTE.ink);
      return;
    case 'polyline':
      doc.path(points(attributes.points));
      paint(doc, shape, inherited.fill ?? CHART_PALETTE.ink);
      return;
    case 'polygon':
      doc.path(`${points(attributes.points)}Z`);
      paint(doc, shape, inherited.fill ?? CHART_PALETTE.ink);
      return;
    default:
      throw new RangeError(
        `drawing: no way to put <${name}> on paper; draw it with lines, paths, boxes, circles and texts`,
      );
  }
}

/** Draws a drawing with its upper left corner at a place, that wide [pt]: lines and letters, no picture. */
export function putDrawing(
  pen: PdfPen,
  drawing: ReadDrawing,
  place: { readonly x: number; readonly y: number; readonly widthPt: number },
): void {
  const { doc } = pen;
  const scale = place.widthPt / drawing.widthPx;
  doc.save().translate(place.x, place.y).scale(scale);
  drawShape(pen, drawing.shape, {});
  doc.restore();
}
