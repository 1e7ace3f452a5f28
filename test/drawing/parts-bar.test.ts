import { describe, expect, it } from 'vitest';
import { drawPartsBar } from '../../src/drawing/parts-bar.ts';

const widths = (svg: string, name: string): readonly number[] =>
  [...svg.matchAll(new RegExp(`class="${name}" x="([\\d.]+)" y="3" width="([\\d.]+)"`, 'g'))].map(([, , width]) =>
    Number(width),
  );

describe('a bar of parts', () => {
  it('is as long as its parts are of the whole, full ones before half ones', () => {
    const svg = drawPartsBar(
      [
        { amount: 10, ink: 'full' },
        { amount: 20, ink: 'half' },
        { amount: 10, ink: 'rest' },
      ],
      40,
      106,
    );
    expect(widths(svg, 'pb-full')).toEqual([25]);
    expect(widths(svg, 'pb-half')).toEqual([50]);
    expect(svg).not.toContain('pb-beyond');
    expect(svg).toContain('aria-hidden="true"');
  });

  it('marks what goes beyond the whole, and draws nothing of nothing', () => {
    expect(drawPartsBar([{ amount: 50, ink: 'full' }], 40, 106)).toContain('pb-beyond');
    const empty = drawPartsBar([{ amount: 0, ink: 'full' }], 0, 106);
    expect(widths(empty, 'pb-full')).toEqual([]);
    expect(empty).not.toContain('pb-beyond');
  });
});
