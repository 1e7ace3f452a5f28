import { scaleLinear } from 'd3-scale';
import { describe, expect, it } from 'vitest';
import { boxesOverlap } from '../../src/drawing/label-placement.ts';
import { sensitivityBarsSvg } from '../../src/drawing/sensitivity-bars.ts';
import type { Sensitivity } from '../../src/forecast/sensitivity.ts';
import { attribute, drawnTexts } from './drawn-text.ts';
import { SENSITIVE_FENCES, sensitivityNamed } from './sensitivity-fences.ts';

const draw = (sensitivity: Sensitivity, widthPx = 860): string =>
  sensitivityBarsSvg(sensitivity, { units: 'us', widthPx });
const USUAL = sensitivityNamed('usual');

/** Left and right end of every bar [px], in the order of the rows. */
const barsOf = (svg: string): readonly (readonly [number, number])[] =>
  [...svg.matchAll(/<polygon [^>]*>/g)].map(([polygon]) => {
    const xs = attribute(polygon, 'points')
      .split(' ')
      .map((point) => Number(point.split(',')[0]));
    return [Math.min(...xs), Math.max(...xs)];
  });

/** x of the picture to calendar years, by the labels of its own axis. */
function yearAtX(svg: string): (x: number) => number {
  const hairs = [...svg.matchAll(/<line class="fy-grid"[^>]*>/g)].map(([line]) => Number(attribute(line, 'x1')));
  const years = drawnTexts(svg).filter(({ text, className }) => className === 'fy-muted-text' && /^\d{4}$/.test(text));
  expect(years).toHaveLength(hairs.length);
  return scaleLinear()
    .domain([hairs[0] as number, hairs.at(-1) as number])
    .range([Number(years[0]?.text), Number(years.at(-1)?.text)]);
}

describe('the picture of what moves the short season', () => {
  const cases = SENSITIVE_FENCES.flatMap((name) =>
    [320, 390, 620, 860, 1100].flatMap((widthPx) =>
      (['us', 'metric'] as const).map((units) => ({ name, widthPx, units })),
    ),
  );

  it.each(cases)(
    'writes no text over another, nor over a bar: $name, $widthPx px, $units',
    ({ name, widthPx, units }) => {
      const svg = sensitivityBarsSvg(sensitivityNamed(name), { units, widthPx });
      const texts = drawnTexts(svg);
      const heightPx = Number(/ height="(\d+)"/.exec(svg)?.[1]);
      const bars = [...svg.matchAll(/<polygon [^>]*>/g)].map(([polygon]) => {
        const points = attribute(polygon, 'points')
          .split(' ')
          .map((point) => point.split(',').map(Number));
        const [xs, ys] = [points.map(([x]) => x as number), points.map(([, y]) => y as number)];
        return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
      });
      expect(texts.length).toBeGreaterThan(1);
      const faults = texts.flatMap(({ box, text }, index) => [
        ...(box.left < 0 || box.right > widthPx || box.bottom > heightPx ? [`${text} sticks out`] : []),
        ...texts
          .slice(index + 1)
          .filter((other) => boxesOverlap(box, other.box))
          .map((other) => `${text} / ${other.text}`),
        ...(bars.some((bar) => boxesOverlap(box, bar)) ? [`${text} over a bar`] : []),
      ]);
      expect(faults).toEqual([]);
    },
  );

  it.each([390, 860])('draws every bar where its own axis says its years are, at %s px', (widthPx) => {
    const svg = draw(USUAL, widthPx);
    const years = yearAtX(svg);
    const bars = barsOf(svg);
    expect(bars).toHaveLength(USUAL.bars.length);
    // Season 1 opens on 1 March 2027, the 60th day of the year.
    const opens = 2027 + 59 / 365;
    for (const [index, { low, high }] of USUAL.bars.entries()) {
      const [from, to] = [low.yearsAhead!, high.yearsAhead!].sort((a, b) => a - b) as [number, number];
      expect(years(bars[index]![0])).toBeCloseTo(opens + from, 1);
      expect(years(bars[index]![1])).toBeCloseTo(opens + to, 1);
    }
  });

  it('fills what is not known and pales what is recorded, and keys both', () => {
    const svg = draw(USUAL);
    const fills = [...svg.matchAll(/<polygon class="(\w+-\w+)"/g)].map(([, className]) => className);
    expect(fills).toEqual(USUAL.bars.map(({ kind }) => (kind === 'unknown' ? 'sy-unknown' : 'sy-recorded')));
    expect(svg).toContain('Not known: from its 10th to its 90th percentile');
    expect(svg).toContain('Recorded: moved by a plausible error of the record');
  });

  it('ends a bar that runs beyond sixty years in a point, no other', () => {
    const sensitivity = sensitivityNamed('with an end beyond sixty years');
    const points = [...draw(sensitivity).matchAll(/<polygon [^>]*>/g)].map(
      ([polygon]) => attribute(polygon, 'points').split(' ').length,
    );
    const open = sensitivity.bars.map(({ low, high }) => low.yearsAhead === null || high.yearsAhead === null);
    expect(points).toEqual(open.map((isOpen) => (isOpen ? 5 : 4)));
    expect(open).toContain(true);
    expect(open).toContain(false);
  });

  it('names inputs, values, years and what moves nothing', () => {
    const texts = drawnTexts(draw(USUAL)).map(({ text }) => text);
    for (const text of [
      'Rot pace',
      'fast, 1 in 10',
      'Season 2027',
      'As it stands: 2031',
      'heavy duty',
      '−5 %',
      'C (from new)',
    ]) {
      expect(texts).toContain(text);
    }
    expect(texts).toContain('Without effect on it: footing strength.');
    expect(drawnTexts(draw(sensitivityNamed('short from new'))).map(({ text }) => text)).toContain(
      'As it stands: short from new',
    );
  });

  it('says that inputs leave a fence short from new, or beyond sixty years, rather than that they do nothing', () => {
    expect(draw(sensitivityNamed('short from new'))).toContain('Leave it short from new: rot pace,');
    expect(draw(sensitivityNamed('not short within sixty years'))).toContain('Do not bring it within 60 years:');
  });

  it('says so in a sentence where nothing moves it', () => {
    const svg = draw(sensitivityNamed('of steel'));
    expect(svg).toContain('No input, moved by itself, changes when this fence goes short (not in 60 years).');
    expect(svg).not.toContain('<polygon');
  });

  it('carries its whole content as a description that its role refers to', () => {
    const svg = sensitivityBarsSvg(
      { ...USUAL, fenceRef: 'A&B <7>' },
      { units: 'metric', widthPx: 390, idPrefix: 'narrow' },
    );
    expect(svg).toContain('role="img"');
    expect(svg).toContain('aria-labelledby="narrow-title narrow-desc"');
    expect(svg).toContain('<title id="narrow-title">What moves the short season of fence A&amp;B &lt;7&gt;</title>');
    const description = /<desc [^>]*>([^<]*)</.exec(svg)?.[1] ?? '';
    expect(description).toMatch(
      /^As it stands: 2031\. Rot pace: fast, 1 in 10 in 2022 to slow, 1 in 10 in 2050, 27 years\. /,
    );
    for (const { input } of USUAL.bars) expect(description.toLowerCase()).toContain(input);
  });

  it('gives the same bytes for the same sensitivity', () => {
    expect(draw(structuredClone(USUAL))).toBe(draw(USUAL));
  });
});
