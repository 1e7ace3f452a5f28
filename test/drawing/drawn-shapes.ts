import type { Box } from '../../src/drawing/picture-box.ts';
import { attribute, drawnTexts } from './drawn-text.ts';

/** The elements of a drawing that have a class, as they are written. */
export const shapesOf = (svg: string, className: string): readonly string[] =>
  [...svg.matchAll(/<(?:rect|circle|path|line)\b[^>]*>/g)]
    .map(([element]) => element)
    .filter((element) => element.includes(` class="${className}"`));

/** A number attribute of an element. */
export const numberOf = (element: string, name: string): number => Number(attribute(element, name));

/** Width and height of a drawing [px]. */
export function sizeOf(svg: string): { readonly width: number; readonly height: number } {
  const root = /<svg[^>]*>/.exec(svg)?.[0] ?? '';
  return { width: numberOf(root, 'width'), height: numberOf(root, 'height') };
}

/** Boxes of all that is drawn, of paths by the points that are given outright (M, L, H, V). */
function shapeBoxes(svg: string): readonly Box[] {
  const body = svg.replace(/<defs>.*?<\/defs>/s, '');
  return [...body.matchAll(/<(rect|circle|line)\b[^>]*>/g)].map(([element, kind]): Box => {
    const of = (name: string): number => numberOf(element, name);
    if (kind === 'circle')
      return {
        left: of('cx') - of('r'),
        right: of('cx') + of('r'),
        top: of('cy') - of('r'),
        bottom: of('cy') + of('r'),
      };
    if (kind === 'line')
      return {
        left: Math.min(of('x1'), of('x2')),
        right: Math.max(of('x1'), of('x2')),
        top: Math.min(of('y1'), of('y2')),
        bottom: Math.max(of('y1'), of('y2')),
      };
    const [x, y] = [/ x="/.test(element) ? of('x') : 0, / y="/.test(element) ? of('y') : 0];
    return { left: x, right: x + of('width'), top: y, bottom: y + of('height') };
  });
}

/** What is wrong with a drawing: a number that is none, something outside its frame. Empty where all is well. */
export function faultsOf(svg: string): readonly string[] {
  const { width, height } = sizeOf(svg);
  const out = ({ left, right, top, bottom }: Box): boolean =>
    left < -0.5 || top < -0.5 || right > width + 0.5 || bottom > height + 0.5;
  return [
    ...(/NaN|Infinity|undefined|null/.test(svg) ? ['a number that is none'] : []),
    ...shapeBoxes(svg)
      .filter(out)
      .map((box) => `a shape outside: ${JSON.stringify(box)}`),
    ...drawnTexts(svg)
      .filter(({ box }) => out(box))
      .map(({ text, box }) => `“${text}” outside: ${JSON.stringify(box)}`),
  ];
}
