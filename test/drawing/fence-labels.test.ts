import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chartWords } from '../../src/drawing/chart-words.ts';
import { fenceFrame } from '../../src/drawing/fence-frame.ts';
import { fenceLabels } from '../../src/drawing/fence-labels.ts';
import { fenceSeries } from '../../src/drawing/fence-series.ts';
import { drawFenceYears } from '../../src/drawing/fence-years.ts';
import { stretchesOf } from '../../src/drawing/gives-first.ts';
import { crossesBox } from '../../src/drawing/label-leader.ts';
import { boxesOverlap, crossesLine } from '../../src/drawing/label-placement.ts';
import type { Box } from '../../src/drawing/picture-box.ts';
import { CHART_SIZES } from '../../src/web/frame/chart-sizes.ts';
import { drawnTexts } from './drawn-text.ts';
import { type FixtureShape, forecastFixture } from './forecast-fixture.ts';
import { MADE_UP_FENCES } from './made-up-fences.ts';

const MPH = 0.44704;

/** Fences from new to rotted away, weak and strong, light footings and heavy ones, also such as nobody builds. */
const shapes: fc.Arbitrary<FixtureShape> = fc.record({
  installed: fc.integer({ min: 1965, max: 2026 }).map((year) => `${year}-05-02`),
  newSnapMps: fc.double({ min: 15, max: 170, noNaN: true }).map((mph) => mph * MPH),
  leanMps: fc.double({ min: 2, max: 150, noNaN: true }).map((mph) => mph * MPH),
  gustMps: fc.double({ min: 75, max: 180, noNaN: true }).map((mph) => mph * MPH),
  rotMmPerYear: fc.oneof(fc.double({ min: 0, max: 1.5, noNaN: true }), fc.double({ min: 1.5, max: 9, noNaN: true })),
  hasLine: fc.boolean(),
  endsShare: fc.constantFrom(0.6, 0.82, 1.5),
  wrapsYearEnd: fc.boolean(),
});
const charts = fc.record({
  shape: shapes,
  size: fc.constantFrom(...CHART_SIZES),
  language: fc.constantFrom('en', 'es'),
  units: fc.constantFrom('us', 'metric'),
} as const);

const pairs = <T>(all: readonly T[]): readonly (readonly [T, T])[] =>
  all.flatMap((one, index) => all.slice(index + 1).map((other) => [one, other] as const));

describe("the labels of a fence's chart", { timeout: 120_000 }, () => {
  it('never cover one another, the ends of a line or a dot, and no leader runs through one', () => {
    fc.assert(
      fc.property(charts, ({ shape, size, language, units }) => {
        const series = fenceSeries(forecastFixture(shape));
        const frame = fenceFrame(series, { units, ...size, footPx: 60 });
        const labels = fenceLabels(series, frame, chartWords(language), units);
        const leaders = labels.flatMap(({ leader }) => (leader ? [leader] : []));
        for (const [one, other] of pairs(labels)) {
          expect(boxesOverlap(one.box, other.box), `${one.text} / ${other.text}`).toBe(false);
        }
        for (const { text, box } of labels) {
          for (const leader of leaders) expect(crossesBox(leader, box), `a leader through ${text}`).toBe(false);
        }
        const dots = [series.today.snapMps.p50, series.today.leanMps.p50].map((mps) => frame.spotOf(series.today, mps));
        const ends = [series.drawn[0]!, series.drawn.at(-1)!].flatMap((point) => [
          frame.spotOf(point, point.snapMps.p50),
          frame.spotOf(point, point.leanMps.p50),
        ]);
        const at = ({ x, y }: { readonly x: number; readonly y: number }): Box => ({
          left: x,
          right: x,
          top: y,
          bottom: y,
        });
        for (const spot of [...dots, ...ends]) {
          for (const { text, box } of labels) expect(boxesOverlap(box, at(spot)), text).toBe(false);
        }
        // what the chart cannot do without is always named
        const words = chartWords(language);
        const texts = labels.map(({ text }) => text);
        expect(texts).toContain(words.leanSpeed);
        const snapNames = [words.snapSpeed(series.judged), words.snapSpeedShort(series.judged)];
        expect(texts.filter((text) => snapNames.includes(text)).length).toBeGreaterThanOrEqual(1);
        expect(texts.filter((text) => /^\d+$/.test(text))).toHaveLength(2);
      }),
      { numRuns: 300, seed: 20_261_126 },
    );
  });

  it('never cover the axis, the strip or the note under the chart either', () => {
    fc.assert(
      fc.property(charts, ({ shape, size, language, units }) => {
        const texts = drawnTexts(drawFenceYears(forecastFixture(shape), { ...size, language, units }));
        for (const { text, box } of texts) {
          expect(box.left, text).toBeGreaterThanOrEqual(0);
          expect(box.right, text).toBeLessThanOrEqual(size.widthPx);
        }
        for (const [one, other] of pairs(texts)) {
          expect(boxesOverlap(one.box, other.box), `${one.text} / ${other.text}`).toBe(false);
        }
      }),
      { numRuns: 150, seed: 20_261_127 },
    );
  });

  it('stand beside what they speak of where they can, and apart with a leader where a line would be crossed', () => {
    const labelsOf = (shape: FixtureShape) => {
      const series = fenceSeries(forecastFixture(shape));
      const frame = fenceFrame(series, { units: 'us', ...CHART_SIZES[0], footPx: 60 });
      return fenceLabels(series, frame, chartWords('en'), 'us');
    };
    expect(labelsOf(MADE_UP_FENCES.new!).every(({ leader }) => leader === null)).toBe(true);
    const steep = labelsOf({
      installed: '2019-05-02',
      newSnapMps: 110 * MPH,
      leanMps: 50 * MPH,
      gustMps: 105 * MPH,
      rotMmPerYear: 4,
    });
    expect(steep.some(({ leader }) => leader !== null)).toBe(true);
  });
});

/** Fences of old whose posts hold next to nothing in season 1. */
const NEARLY_GONE: readonly FixtureShape[] = [
  { installed: '2004-05-02', newSnapMps: 108 * MPH, leanMps: 102 * MPH, gustMps: 105 * MPH, rotMmPerYear: 1.9 },
  {
    installed: '2003-09-02',
    newSnapMps: 109 * MPH,
    leanMps: 73 * MPH,
    gustMps: 105 * MPH,
    rotMmPerYear: 2,
    endsShare: 1.5,
  },
];

describe('the chart of a fence that holds next to nothing', () => {
  const cases = NEARLY_GONE.flatMap((shape) =>
    CHART_SIZES.flatMap((size) => (['en', 'es'] as const).map((language) => ({ shape, size, language }))),
  );
  it.each(cases)(
    'writes no name across a line, $size.name, $language, $shape.installed',
    ({ shape, size, language }) => {
      const series = fenceSeries(forecastFixture(shape));
      const frame = fenceFrame(series, { units: 'us', ...size, footPx: 60 });
      const words = chartWords(language);
      const lines = (['snapMps', 'leanMps'] as const).map((speed) =>
        series.drawn.map((point) => frame.spotOf(point, point[speed].p50)),
      );
      const todayX = frame.xOf(series.today.year);
      const labels = fenceLabels(series, frame, words, 'us');
      const short = words.shortSince(series.short!.point.label);
      expect(labels.map(({ text }) => text)).toContain(short);
      for (const { text, box } of labels.slice(1)) {
        for (const line of lines) expect(crossesLine(box, line), text).toBe(false);
        expect(box.left < todayX && box.right > todayX, text).toBe(false);
      }
    },
  );

  it('keeps every curve and band inside its frame', () => {
    fc.assert(
      fc.property(charts, ({ shape, size, units }) => {
        const series = fenceSeries(forecastFixture(shape));
        const frame = fenceFrame(series, { units, ...size, footPx: 60 });
        for (const point of series.drawn) {
          for (const mps of [point.snapMps.p90, point.leanMps.p90, point.endsSnapMps ?? 0, series.designGustMps])
            expect(frame.yOfMps(mps)).toBeGreaterThanOrEqual(frame.plot.top);
        }
      }),
      { numRuns: 200, seed: 20_261_128 },
    );
  });
});

describe('what gives way first', () => {
  it('is the ground while the wood is new, and the wood once it is old', () => {
    const stretches = stretchesOf(fenceSeries(forecastFixture(MADE_UP_FENCES.old!)));
    expect(stretches.map(({ kind }) => kind)).toEqual(['leans', 'snaps']);
    expect(stretches[0]!.to.label).toBe(stretches[1]!.from.label);
    expect(stretches[1]!.from.label).toBe(forecastFixture(MADE_UP_FENCES.old!).turnover);
  });

  it('is told in a strip that covers every year of the chart, in words that fit', () => {
    for (const [name, shape] of Object.entries(MADE_UP_FENCES)) {
      for (const size of CHART_SIZES) {
        const svg = drawFenceYears(forecastFixture(shape), { ...size, language: 'en', units: 'us' });
        const parts = [...svg.matchAll(/class="fy-(?:leans|snaps)-first" x="([\d.]+)" y="[\d.]+" width="([\d.]+)"/g)];
        const gust = /class="fy-gust" x1="([\d.]+)" x2="([\d.]+)"/.exec(svg)!;
        const widths = parts.reduce((sum, [, , width]) => sum + Number(width), 0);
        expect(widths, name).toBeCloseTo(Number(gust[2]) - Number(gust[1]), 0);
        expect(svg, name).toMatch(/>(?:Leans|Snaps) first/);
      }
    }
  });
});
