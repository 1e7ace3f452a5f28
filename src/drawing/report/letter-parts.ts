import type { ReportBlock } from './report.ts';
import { type SvgShape, svgShapes } from './svg-shapes.ts';

const wholeText = ({ text, children }: SvgShape): string => `${text}${children.map(wholeText).join('')}`.trim();

const all = (shape: SvgShape, name: string): readonly SvgShape[] =>
  shape.children.flatMap((child) => (child.name === name ? [child, ...all(child, name)] : all(child, name)));

function paragraph(shape: SvgShape): ReportBlock {
  const [picture] = all(shape, 'img');
  if (picture) {
    const { alt = '', src = '', width = '0' } = picture.attributes;
    return { kind: 'picture', alt, source: src, widthPx: Number(width) };
  }
  const text = wholeText(shape);
  return shape.attributes.class === 'small' ? { kind: 'paragraph', text, look: 'small' } : { kind: 'paragraph', text };
}

function table(shape: SvgShape): ReportBlock {
  const [head, ...rows] = all(shape, 'tr');
  const cells = (row: SvgShape | undefined): readonly string[] => (row?.children ?? []).map(wholeText);
  return {
    kind: 'table',
    caption: all(shape, 'caption').map(wholeText).join(' '),
    columns: cells(head).map((heading) => ({ heading, weight: 1 })),
    rows: rows.map(cells),
  };
}

function blocksOf(shape: SvgShape): readonly ReportBlock[] {
  switch (shape.name) {
    case 'h2':
      return [{ kind: 'heading', level: 2, text: wholeText(shape) }];
    case 'p':
      return [paragraph(shape)];
    case 'ul':
      return [{ kind: 'list', items: shape.children.map(wholeText) }];
    case 'table':
      return [table(shape)];
    case 'div': {
      if (shape.attributes.class !== 'answer') return shape.children.flatMap(blocksOf);
      const lines = shape.children.filter(({ attributes }) => attributes.class !== 'title').map(wholeText);
      const about = shape.children.filter(({ attributes }) => attributes.class === 'title').map(wholeText);
      return [{ kind: 'answer', lines, about: about.join(' ') }];
    }
    default:
      throw new RangeError(
        `letter: a part <${shape.name}> that letters do not have; print the page of the letter instead`,
      );
  }
}

/** A letter as it was written. */
export interface WrittenLetter {
  readonly language: 'en' | 'es';
  readonly title: string;
  readonly blocks: readonly ReportBlock[];
}

/**
 * The parts of a letter from the page as which it was stored, word for word: what is printed is what was written, whatever has
 * become of the fence since. Throws RangeError where the page is none that this program wrote.
 */
export function letterParts(html: string): WrittenLetter {
  const language = /<html lang="(en|es)">/.exec(html)?.[1];
  const title = /<title>([^<]*)<\/title>/.exec(html)?.[1];
  const body = /<body>([\s\S]*)<\/body>/.exec(html)?.[1];
  if ((language !== 'en' && language !== 'es') || title === undefined || body === undefined) {
    throw new RangeError('letter: not a page that this program wrote; print it from the outbox instead');
  }
  // pictures stand without a closing tag in HTML
  const closed = body.trim().replace(/<img([^>]*)>/g, '<img$1/>');
  return { language, title: wholeText(svgShapes(`<t>${title}</t>`)), blocks: blocksOf(svgShapes(closed)) };
}
