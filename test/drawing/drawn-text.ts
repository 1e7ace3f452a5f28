import type { TextAnchor } from '../../src/drawing/label-placement.ts';
import { textBox } from '../../src/drawing/label-placement.ts';
import type { Box } from '../../src/drawing/picture-box.ts';

/** One text element of a drawing, read back from the SVG. */
export interface DrawnText {
  readonly text: string;
  readonly className: string;
  readonly box: Box;
}

export function attribute(element: string, name: string): string {
  const found = new RegExp(` ${name}="([^"]*)"`).exec(element);
  if (!found) throw new Error(`no ${name} in ${element}`);
  return found[1] as string;
}

/** Every text element of an SVG document with the rectangle it covers. */
export function drawnTexts(svg: string): readonly DrawnText[] {
  return [...svg.matchAll(/<text([^>]*)>([^<]*)<\/text>/g)].map(([element, attributes, content]) => {
    const text = (content as string).replaceAll('&amp;', '&').replaceAll('&lt;', '<').replaceAll('&quot;', '"');
    const anchor = / text-anchor="(\w+)"/.exec(attributes as string)?.[1] ?? 'start';
    return {
      text,
      className: attribute(element, 'class'),
      box: textBox({
        text,
        x: Number(attribute(element, 'x')),
        y: Number(attribute(element, 'y')),
        sizePx: Number(attribute(element, 'font-size')),
        weight: / font-weight="600"/.test(attributes as string) ? 600 : 400,
        anchor: anchor as TextAnchor,
      }),
    };
  });
}
