import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { Prospect } from '../season/what-if.ts';
import { CHART_FONT, CHART_PALETTE } from './chart-palette.ts';
import type { ChartLanguage } from './chart-words.ts';
import { heldText } from './held-text.ts';
import type { DisplayUnits } from './speed-text.ts';
import { displaySpeed, speedText, speedUnit } from './speed-text.ts';
import { escapeXml, svgElement } from './svg-element.ts';

/** How the lines are drawn. */
export interface WhatIfLinesOptions {
  readonly units: DisplayUnits;
  /** English unless given. */
  readonly language?: ChartLanguage;
  /** Width and height of the picture [px], 320 and 220 or more. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly idPrefix: string;
}

type Speed = 'snapMps' | 'leanMps';

const WORDS = {
  en: {
    title: 'Snap and lean speed as it is and after the works',
    lines: ['Snap, after', 'Snap, as it is', 'Lean, after', 'Lean, as it is'],
    gust: (speed: string): string => `Gust ${speed}`,
    axis: (unit: string): string => `3-second gust, ${unit}`,
    summary: (
      before: readonly [string, string],
      after: readonly [string, string],
      seasons: number,
      gust: string,
    ): string =>
      `Snap speed where nothing is done ${before[0]} now and ${before[1]} in ${seasons} seasons; after the works ${after[0]} and ${after[1]}. Design gust ${gust}.`,
  },
  es: {
    title: 'Velocidad de rotura y de inclinación, como está y después de los trabajos',
    lines: ['Rotura, después', 'Rotura, hoy', 'Inclin., después', 'Inclin., hoy'],
    gust: (speed: string): string => `Ráfaga ${speed}`,
    axis: (unit: string): string => `ráfaga de 3 segundos, ${unit}`,
    summary: (
      before: readonly [string, string],
      after: readonly [string, string],
      seasons: number,
      gust: string,
    ): string =>
      `Velocidad de rotura si no se hace nada: ${before[0]} ahora y ${before[1]} en ${seasons} temporadas; después de los trabajos, ${after[0]} y ${after[1]}. Ráfaga de diseño ${gust}.`,
  },
} as const;

const LABEL_GAP_PX = 17;

/** Heights of labels, moved apart where they would lie over one another, none under the lowest [px]. */
function spread(wanted: readonly number[], lowest: number): readonly number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => wanted[a]! - wanted[b]!);
  const placed = [...wanted];
  let free = Number.NEGATIVE_INFINITY;
  for (const index of order) {
    placed[index] = Math.max(wanted[index]!, free);
    free = placed[index] + LABEL_GAP_PX;
  }
  let ceiling = lowest;
  for (const index of order.toReversed()) {
    placed[index] = Math.min(placed[index]!, ceiling);
    ceiling = placed[index] - LABEL_GAP_PX;
  }
  return placed;
}

/**
 * Snap and lean speed season by season where nothing is done and where works are done, with the design gust: the one in thin,
 * the other in heavy lines, named at their ends. As a complete SVG document; the same prospects give the same bytes.
 */
export function drawWhatIfLines(
  {
    nothing,
    after,
    designGustMps,
  }: { readonly nothing: Prospect; readonly after: Prospect; readonly designGustMps: number },
  options: WhatIfLinesOptions,
): string {
  const { units, widthPx, heightPx, idPrefix, language = 'en' } = options;
  const words = WORDS[language];
  const narrow = widthPx < 520;
  const fontPx = narrow ? 12.5 : 14;
  const plot = { left: 40, right: widthPx - (narrow ? 112 : 150), top: 30, bottom: heightPx - 28 };
  const all = [nothing, after].flatMap(({ seasons }) => seasons.flatMap(({ snapMps, leanMps }) => [snapMps, leanMps]));
  const top = displaySpeed(Math.max(designGustMps, ...all), units) * 1.06;
  const x = scaleLinear()
    .domain([0, Math.max(1, nothing.seasons.length - 1)])
    .range([plot.left, plot.right]);
  const y = scaleLinear().domain([0, top]).range([plot.bottom, plot.top]);
  const yOf = (speedMps: number): number => y(displaySpeed(speedMps, units));
  const path = ({ seasons }: Prospect, speed: Speed): string =>
    line<Prospect['seasons'][number]>()
      .x((_, index) => x(index))
      .y((season) => yOf(season[speed]))
      .digits(2)(seasons as Prospect['seasons'][number][]) ?? '';
  const stroke = (className: string, d: string, colour: string, width: number, dash?: string): string =>
    svgElement('path', {
      class: className,
      d,
      fill: 'none',
      stroke: colour,
      'stroke-width': width,
      'stroke-dasharray': dash,
    });
  const muted = { class: 'fy-muted-text', 'font-size': fontPx - 1, fill: CHART_PALETTE.muted };
  const last = ({ seasons }: Prospect, speed: Speed): number => yOf(seasons.at(-1)![speed]);
  const labels = [
    { text: words.lines[0], y: last(after, 'snapMps'), weight: 600 },
    { text: words.lines[1], y: last(nothing, 'snapMps'), weight: 400 },
    { text: words.lines[2], y: last(after, 'leanMps'), weight: 600 },
    { text: words.lines[3], y: last(nothing, 'leanMps'), weight: 400 },
    { text: words.gust(speedText(designGustMps, units)), y: yOf(designGustMps), weight: 400 },
  ];
  const heights = spread(
    labels.map((label) => label.y + 4),
    plot.bottom + 4,
  );
  const ticks = y.ticks(5).flatMap((speed) => [
    svgElement('line', {
      class: 'fy-grid',
      x1: plot.left,
      x2: plot.right,
      y1: y(speed),
      y2: y(speed),
      stroke: CHART_PALETTE.grid,
    }),
    svgElement('text', { ...muted, x: plot.left - 7, y: y(speed) + 4, 'text-anchor': 'end' }, [String(speed)]),
  ]);
  const every = narrow ? 10 : 5;
  const years = nothing.seasons.flatMap(({ label }, index) =>
    index % every === 0
      ? [
          svgElement(
            'text',
            { ...muted, x: x(index), y: plot.bottom + 20, 'text-anchor': index === 0 ? 'start' : 'middle' },
            [escapeXml(label)],
          ),
        ]
      : [],
  );
  const nowAndLast = ({ seasons }: Prospect): readonly [string, string] => [
    heldText(seasons[0]!.snapMps, units, language),
    heldText(seasons.at(-1)!.snapMps, units, language),
  ];
  const summary = words.summary(
    nowAndLast(nothing),
    nowAndLast(after),
    nothing.seasons.length - 1,
    speedText(designGustMps, units),
  );
  const gustY = yOf(designGustMps);
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'fence-years',
      viewBox: `0 0 ${widthPx} ${heightPx}`,
      width: widthPx,
      height: heightPx,
      role: 'img',
      'aria-labelledby': `${idPrefix}-title ${idPrefix}-desc`,
      'font-family': CHART_FONT,
    },
    [
      svgElement('title', { id: `${idPrefix}-title` }, [words.title]),
      svgElement('desc', { id: `${idPrefix}-desc` }, [escapeXml(summary)]),
      svgElement('rect', { class: 'fy-paper', width: widthPx, height: heightPx, fill: CHART_PALETTE.paper }),
      ...ticks,
      ...years,
      svgElement('text', { ...muted, x: 8, y: 17 }, [escapeXml(words.axis(speedUnit(units)))]),
      svgElement('line', {
        class: 'fy-gust',
        x1: plot.left,
        x2: plot.right,
        y1: gustY,
        y2: gustY,
        stroke: CHART_PALETTE.ink,
        'stroke-width': 1.25,
      }),
      stroke('fy-lean-line', path(nothing, 'leanMps'), CHART_PALETTE.lean, 1.2, '7 4'),
      stroke('fy-lean-line', path(after, 'leanMps'), CHART_PALETTE.lean, 3, '7 4'),
      stroke('fy-snap-line', path(nothing, 'snapMps'), CHART_PALETTE.snap, 1.4),
      stroke('fy-snap-line', path(after, 'snapMps'), CHART_PALETTE.snap, 3.4),
      ...labels.map((label, index) =>
        svgElement(
          'text',
          {
            class: index < 2 ? 'fy-snap-text' : index < 4 ? 'fy-lean-text' : 'fy-ink-text',
            x: plot.right + 8,
            y: heights[index]!,
            'font-size': fontPx,
            'font-weight': label.weight,
            fill: index < 2 ? CHART_PALETTE.snap : index < 4 ? CHART_PALETTE.lean : CHART_PALETTE.ink,
          },
          [escapeXml(label.text)],
        ),
      ),
    ],
  );
}
