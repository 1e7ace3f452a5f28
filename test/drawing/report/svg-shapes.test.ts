import { describe, expect, it } from 'vitest';
import { type SvgShape, svgShapes } from '../../../src/drawing/report/svg-shapes.ts';
import { reserveChartSvg } from '../../../src/drawing/reserve-chart.ts';
import { escapeXml } from '../../../src/drawing/svg-element.ts';
import { drawnReserve } from '../made-up-reserve.ts';

const written = ({ name, attributes, children, text }: SvgShape): string => {
  const inside = `${escapeXml(text)}${children.map(written).join('')}`;
  const said = Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${escapeXml(value)}"`)
    .join('');
  return inside === '' ? `<${name}${said}/>` : `<${name}${said}>${inside}</${name}>`;
};

describe('the shapes of a drawing', () => {
  it('are those that were drawn: written again they are the same drawing', () => {
    const svg = reserveChartSvg(drawnReserve(), { currency: 'USD', widthPx: 680 });
    expect(written(svgShapes(svg))).toBe(svg);
  });

  it('have their texts and attributes as people read them', () => {
    const shape = svgShapes(
      '<svg viewBox="0 0 4 2"><text fill="a &amp; b">3 &lt; 4 &#38; &quot;x&quot;</text><line x1="1"/></svg>',
    );
    expect(shape.children.map(({ name }) => name)).toEqual(['text', 'line']);
    expect(shape.children[0]).toMatchObject({ attributes: { fill: 'a & b' }, text: '3 < 4 & "x"' });
  });

  it('are refused where a tag is not closed, closes nothing, or is no tag', () => {
    for (const wrong of ['<svg>', '<svg></g>', '</svg>', '<svg a=1/>', '', '<svg/>x<']) {
      expect(() => svgShapes(wrong), wrong).toThrow(RangeError);
    }
  });
});
