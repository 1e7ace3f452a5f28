import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawWhatIfLines } from '../../src/drawing/what-if-lines.ts';
import type { Prospect } from '../../src/season/what-if.ts';
import { faultsOf, shapesOf } from './drawn-shapes.ts';
import { drawnTexts } from './drawn-text.ts';

const prospect = (snap: (index: number) => number, leanMps: number): Prospect => ({
  seasons: Array.from({ length: 30 }, (_, index) => ({
    label: String(2027 + index),
    season: index + 1,
    day: `${2027 + index}-06-01`,
    snapMps: snap(index),
    leanMps,
    endsSnapMps: null,
  })),
  onceInYears: 30,
  shortSeason: null,
  standing: 'clear',
  endsStanding: null,
  pSnap: 0.01,
  expectedPostsShort: 0,
  life: { years: 29, atLeast: true },
});

describe('the lines of what if', () => {
  const options = { units: 'us', widthPx: 680, heightPx: 340, idPrefix: 'w' } as const;
  const nothing = prospect((index) => 40 - index, 27);
  const after = prospect((index) => 58 - index / 3, 27);

  it('draw both, the works heavier, and name them with the gust', () => {
    const svg = drawWhatIfLines({ nothing, after, designGustMps: 45 }, options);
    const widths = shapesOf(svg, 'fy-snap-line').map((element) => Number(/stroke-width="([\d.]+)"/.exec(element)?.[1]));
    expect(widths).toHaveLength(2);
    expect(widths[1]).toBeGreaterThan(widths[0]!);
    const words = drawnTexts(svg).map(({ text }) => text);
    expect(words).toEqual(expect.arrayContaining(['Snap, after', 'Snap, as it is', 'Lean, after', 'Gust 101 mph']));
    expect(svg).toContain('after the works 130 mph');
  });

  it('stay within their frame, no name over another, whatever the speeds', () => {
    const speed = fc.double({ min: 0, max: 90, noNaN: true });
    fc.assert(
      fc.property(
        speed,
        speed,
        speed,
        speed,
        fc.double({ min: 20, max: 80, noNaN: true }),
        fc.constantFrom(358, 680, 1080),
        (a, b, c, d, gust, widthPx) => {
          const svg = drawWhatIfLines(
            {
              nothing: prospect((index) => (a * (30 - index)) / 30, c),
              after: prospect((index) => (b * (30 - index)) / 30, d),
              designGustMps: gust,
            },
            { ...options, widthPx },
          );
          expect(faultsOf(svg)).toEqual([]);
          const names = drawnTexts(svg).filter(({ text }) => /^(Snap|Lean|Gust)/.test(text));
          for (const [index, one] of names.entries()) {
            for (const other of names.slice(index + 1)) {
              const apart = one.box.bottom <= other.box.top + 1 || other.box.bottom <= one.box.top + 1;
              if (!apart) expect(`${one.text} over ${other.text}`).toBe('');
            }
          }
        },
      ),
    );
  });
});
