import { describe, expect, it } from 'vitest';
import { drawSeasonStrip } from '../../src/drawing/season-strip.ts';

const seasons = (svg: string): readonly (readonly [x: number, width: number])[] =>
  [...svg.matchAll(/class="ss-season" x="([\d.]+)" y="7" width="([\d.]+)"/g)].map(([, x, width]) => [
    Number(x),
    Number(width),
  ]);

describe('the strip of the year ahead', () => {
  it('shows each season where it lies, and leaves out those that are over', () => {
    const svg = drawSeasonStrip('2027-01-01', [
      { opensOn: '2026-06-01', closesOn: '2026-11-30' },
      { opensOn: '2027-06-01', closesOn: '2027-11-30' },
    ]);
    expect(seasons(svg)).toHaveLength(1);
    const [[x, width]] = seasons(svg) as [[number, number]];
    // 30 days before today and 365 after it on 258 px: opening after 181 days, 183 days long
    expect(x).toBeCloseTo(1 + (181 / 395) * 258, 1);
    expect(width).toBeCloseTo((183 / 395) * 258, 1);
  });

  it('cuts a season that runs at the edge', () => {
    const [[x]] = seasons(drawSeasonStrip('2027-07-15', [{ opensOn: '2027-03-01', closesOn: '2027-11-30' }])) as [
      [number, number],
    ];
    expect(x).toBe(1);
  });

  it('has the same bytes for the same day', () => {
    expect(drawSeasonStrip('2027-07-15', [])).toBe(drawSeasonStrip('2027-07-15', []));
  });
});
