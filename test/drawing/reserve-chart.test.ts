import { describe, expect, it } from 'vitest';
import { boxesOverlap } from '../../src/drawing/label-placement.ts';
import { reserveChartSvg } from '../../src/drawing/reserve-chart.ts';
import { amountOf, cents, NO_MONEY } from '../../src/season/money/money.ts';
import { attribute, drawnTexts } from './drawn-text.ts';
import { drawnReserve } from './made-up-reserve.ts';

const plan = drawnReserve();
const plansOf = { 10: drawnReserve({ years: 10 }), 30: drawnReserve({ years: 30 }) } as const;
const draw = (of = plan, widthPx = 860): string => reserveChartSvg(of, { currency: 'USD', widthPx });

/** Amount to y [px], by the labels of the picture's own axis. */
function amountAtY(svg: string): (y: number) => number {
  const hairs = [...svg.matchAll(/<line class="fy-grid"[^>]*>/g)].map(([line]) => Number(attribute(line, 'y1')));
  const labels = drawnTexts(svg)
    .filter(({ text }) => /^-?[\d,]+$/.test(text) && !/^20\d\d$/.test(text))
    .map(({ text }) => Number(text.replaceAll(',', '')));
  expect(labels).toHaveLength(hairs.length);
  const [y0, y1] = [hairs[0]!, hairs.at(-1)!];
  const [a0, a1] = [labels[0]!, labels.at(-1)!];
  return (y) => a0 + ((a1 - a0) * (y - y0)) / (y1 - y0);
}

const bars = (svg: string): readonly string[] =>
  [...svg.matchAll(/<rect class="sy-unknown"[^>]*>(?=<title>)/g)].map(([bar]) => bar);

describe('the picture of a reserve plan', () => {
  it.each([320, 390, 620, 860, 1100].flatMap((widthPx) => ([10, 30] as const).map((years) => ({ widthPx, years }))))(
    'writes no text over another nor past its edge: $widthPx px, $years years',
    ({ widthPx, years }) => {
      const svg = draw(plansOf[years], widthPx);
      const texts = drawnTexts(svg);
      const heightPx = Number(attribute(svg, 'height'));
      const faults = texts.flatMap(({ box, text }, index) => [
        ...(box.left < 0 || box.right > widthPx || box.bottom > heightPx ? [`${text} sticks out`] : []),
        ...texts
          .slice(index + 1)
          .filter((other) => boxesOverlap(box, other.box))
          .map((other) => `${text} / ${other.text}`),
      ]);
      expect(texts.length).toBeGreaterThan(12);
      expect(faults).toEqual([]);
    },
  );

  it('draws every bar and the fund as high as its own axis says', () => {
    const svg = draw();
    const amountAt = amountAtY(svg);
    const drawn = bars(svg);
    expect(drawn).toHaveLength(20);
    for (const [index, bar] of drawn.entries()) {
      const top = Number(attribute(bar, 'y'));
      expect(Math.abs(amountAt(top) - amountOf(plan.years[index]!.spending))).toBeLessThan(5);
      expect(Math.abs(amountAt(top + Number(attribute(bar, 'height'))))).toBeLessThan(5);
    }
    const fund = /<polyline [^>]*>/.exec(svg)![0];
    const heights = attribute(fund, 'points')
      .split(' ')
      .map((point) => amountAt(Number(point.split(',')[1])));
    for (const [index, height] of heights.entries())
      expect(Math.abs(height - amountOf(plan.years[index]!.closing))).toBeLessThan(5);
    const band = attribute(/<polygon [^>]*>/.exec(svg)![0], 'points').split(' ');
    expect(band).toHaveLength(40);
    expect(Math.abs(amountAt(Number(band[0]!.split(',')[1])) - plan.years[0]!.closingBand.p90 / 100)).toBeLessThan(5);
    expect(Math.abs(amountAt(Number(band[39]!.split(',')[1])) - plan.years[0]!.closingBand.p10 / 100)).toBeLessThan(5);
  });

  it('draws an upright from the 10th to the 90th percentile, where they differ', () => {
    const svg = draw();
    const amountAt = amountAtY(svg);
    const uprights = [...svg.matchAll(/<line class="fy-today"[^>]*>/g)].map(([line]) => line);
    const spread = plan.years.filter(({ spendingBand }) => spendingBand.p90 > spendingBand.p10);
    expect(spread.length).toBeGreaterThan(5);
    expect(uprights).toHaveLength(spread.length);
    for (const [index, upright] of uprights.entries()) {
      const { p10, p90 } = spread[index]!.spendingBand;
      expect(Math.abs(amountAt(Number(attribute(upright, 'y1'))) - p10 / 100)).toBeLessThan(5);
      expect(Math.abs(amountAt(Number(attribute(upright, 'y2'))) - p90 / 100)).toBeLessThan(5);
    }
  });

  it('says what is paid in, where the floor is, what waiting costs and what the plan is', () => {
    const svg = draw(plan, 1400);
    const written = drawnTexts(svg)
      .map(({ text }) => text)
      .join(' ');
    expect(written).toContain('in the first year, rising with prices');
    expect(written).toContain('floor 2,000 USD');
    expect(written).toMatch(/Putting every planned replacement off by a year (costs|saves) [\d,.]+ USD/);
    expect(written).toContain('each fence by itself');
    expect(written).toContain('This is a planning aid, not a statutory reserve study.');
    expect(svg).toContain('<title id="reserve-title">Reserve plan 2027 to 2046, paid by the association</title>');
    expect(svg).toContain('It never stands below 2,000 USD.');
  });

  it('names the years in which the fund stands below the floor, and the shortfall is drawn', () => {
    const poor = drawnReserve({
      openingBalance: cents(0),
      contribution: { kind: 'given', course: 'flat', firstYear: cents(10_000), atOnce: NO_MONEY },
      dependence: 'together',
    });
    const svg = draw(poor, 1400);
    expect(svg).toMatch(/It stands below 2,000 USD in 2027, 2028, /);
    expect(svg).toContain('100 USD every year');
    expect(svg).toContain('all fences early or all late together');
    const amountAt = amountAtY(svg);
    const last = attribute(/<polyline [^>]*>/.exec(svg)![0], 'points')
      .split(' ')
      .at(-1)!;
    expect(amountAt(Number(last.split(',')[1]))).toBeLessThan(-1000);
  });

  it('draws a plan without fences, and the same bytes for the same plan', () => {
    const bare = drawnReserve({ fences: [], openingBalance: cents(0), floor: cents(0) });
    const svg = draw(bare, 400);
    expect(svg).not.toContain('NaN');
    expect(bars(svg)).toHaveLength(20);
    expect(svg).toContain('changes nothing');
    expect(draw()).toBe(draw());
    expect(reserveChartSvg(plan, { currency: 'USD', widthPx: 400, idPrefix: 'b' })).toContain(
      'aria-labelledby="b-title b-desc"',
    );
  });
});
