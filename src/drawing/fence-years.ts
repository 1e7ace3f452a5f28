import { area, line } from 'd3-shape';
import type { Band } from '../forecast/band.ts';
import type { FenceForecast } from '../forecast/fence-forecast.ts';
import { CHART_FONT, CHART_PALETTE } from './chart-palette.ts';
import type { ChartLanguage, ChartWords } from './chart-words.ts';
import { chartWords } from './chart-words.ts';
import type { FenceFrame } from './fence-frame.ts';
import { fenceFrame, yearTicks } from './fence-frame.ts';
import { fenceLabels } from './fence-labels.ts';
import type { FenceSeries, SeriesPoint } from './fence-series.ts';
import { fenceSeries } from './fence-series.ts';
import { givesFirstStrip, STRIP_ROOM_PX } from './gives-first.ts';
import { heldText } from './held-text.ts';
import type { DisplayUnits } from './speed-text.ts';
import { speedText, speedUnit } from './speed-text.ts';
import { escapeXml, svgElement } from './svg-element.ts';
import { wrapText } from './text-width.ts';

/** How a fence's chart is drawn. */
export interface FenceYearsOptions {
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
  /** Width of the picture [px], 320 or more. */
  readonly widthPx: number;
  /** Height of the picture [px], 260 or more. */
  readonly heightPx: number;
  /** Prefix of the ids inside, where one page holds the picture more than once. */
  readonly idPrefix?: string;
}

/**
 * The picture of a fence's years: snap and lean speed with their bands from installation to 30 seasons ahead, the ends' snap
 * speed, the design gust, season 1, the turnover, the short season and the marks, labelled in place.
 * Returns a complete SVG document; the same forecast and options give the same bytes.
 */
export function drawFenceYears(forecast: FenceForecast, options: FenceYearsOptions): string {
  const { units, widthPx, heightPx } = options;
  const words = chartWords(options.language);
  const series = fenceSeries(forecast);
  const noteSize = 12;
  const note = wrapText(words.note, noteSize, widthPx - 16);
  const footPx = 8 + note.length * 16 + STRIP_ROOM_PX;
  const frame = fenceFrame(series, { units, widthPx, heightPx, footPx });
  const prefix = options.idPrefix ?? 'fence-years';
  const text = (content: string, attributes: Readonly<Record<string, string | number>>): string =>
    svgElement('text', attributes, [escapeXml(content)]);

  const placed = fenceLabels(series, frame, words, units);
  const leaders = placed.flatMap(({ leader }) =>
    leader
      ? [
          svgElement('line', {
            class: 'fy-leader',
            x1: leader.from.x,
            y1: leader.from.y,
            x2: leader.to.x,
            y2: leader.to.y,
            stroke: CHART_PALETTE.muted,
            'stroke-width': 0.9,
          }),
        ]
      : [],
  );
  const labels = placed.map((label) =>
    text(label.text, {
      class: label.className,
      x: label.x,
      y: label.y,
      'text-anchor': label.anchor,
      'font-size': label.sizePx,
      'font-weight': label.weight,
      fill: label.fill,
    }),
  );
  const notes = note.map((content, index) =>
    text(content, {
      class: 'fy-muted-text',
      x: 8,
      y: heightPx - 8 - 16 * (note.length - 1 - index),
      'font-size': noteSize,
      fill: CHART_PALETTE.muted,
    }),
  );
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'fence-years',
      viewBox: `0 0 ${widthPx} ${heightPx}`,
      width: widthPx,
      height: heightPx,
      role: 'img',
      'aria-labelledby': `${prefix}-title ${prefix}-desc`,
      'font-family': CHART_FONT,
    },
    [
      svgElement('title', { id: `${prefix}-title` }, [escapeXml(words.title(forecast.fenceRef))]),
      svgElement('desc', { id: `${prefix}-desc` }, [escapeXml(summary(series, words, options))]),
      svgElement('rect', { class: 'fy-paper', width: widthPx, height: heightPx, fill: CHART_PALETTE.paper }),
      ...axes(frame, words, units),
      ...bands(series, frame),
      ...lines(series, frame),
      ...events(series, frame),
      ...givesFirstStrip(series, frame, words),
      ...leaders,
      ...labels,
      ...notes,
    ],
  );
}

function summary(
  series: FenceSeries,
  words: ChartWords,
  { units, language }: Pick<FenceYearsOptions, 'units' | 'language'>,
): string {
  return words.summary({
    season: series.today.label,
    snap: heldText(series.today.snapMps.p50, units, language),
    lean: speedText(series.today.leanMps.p50, units),
    gust: speedText(series.designGustMps, units),
  });
}

function axes(frame: FenceFrame, words: ChartWords, units: DisplayUnits): readonly string[] {
  const { plot, xOf, yOf, fontPx } = frame;
  const muted = { class: 'fy-muted-text', 'font-size': fontPx - 1, fill: CHART_PALETTE.muted };
  const rules = yOf.ticks(5).flatMap((speed) => [
    svgElement('line', {
      class: 'fy-grid',
      x1: plot.left,
      x2: plot.right,
      y1: yOf(speed),
      y2: yOf(speed),
      stroke: speed === 0 ? CHART_PALETTE.muted : CHART_PALETTE.grid,
    }),
    svgElement('text', { ...muted, x: plot.left - 7, y: yOf(speed) + 4, 'text-anchor': 'end' }, [String(speed)]),
  ]);
  const years = yearTicks(frame).flatMap((year) => {
    const x = xOf(year);
    return [
      svgElement('line', {
        class: 'fy-tick',
        x1: x,
        x2: x,
        y1: plot.bottom,
        y2: plot.bottom + 5,
        stroke: CHART_PALETTE.muted,
      }),
      svgElement('text', { ...muted, x: Math.min(x, plot.right - 8), y: plot.bottom + 20, 'text-anchor': 'middle' }, [
        String(year),
      ]),
    ];
  });
  const caption = svgElement('text', { ...muted, x: 8, y: 17 }, [escapeXml(words.axis(speedUnit(units)))]);
  return [...rules, ...years, caption];
}

function bands(series: FenceSeries, frame: FenceFrame): readonly string[] {
  const band = (of: (point: SeriesPoint) => Band): string =>
    area<SeriesPoint>()
      .x((point) => frame.xOf(point.year))
      .y0((point) => frame.yOfMps(of(point).p10))
      .y1((point) => frame.yOfMps(of(point).p90))
      .digits(2)(series.drawn as SeriesPoint[]) ?? '';
  return [
    svgElement('path', {
      class: 'fy-lean-band',
      d: band((point) => point.leanMps),
      fill: CHART_PALETTE.leanBand,
      'fill-opacity': '0.2',
    }),
    svgElement('path', {
      class: 'fy-snap-band',
      d: band((point) => point.snapMps),
      fill: CHART_PALETTE.snap,
      'fill-opacity': '0.15',
    }),
  ];
}

function lines(series: FenceSeries, frame: FenceFrame): readonly string[] {
  const path = (speed: (point: SeriesPoint) => number): string =>
    line<SeriesPoint>()
      .x((point) => frame.xOf(point.year))
      .y((point) => frame.yOfMps(speed(point)))
      .digits(2)(series.drawn as SeriesPoint[]) ?? '';
  const stroke = (className: string, d: string, colour: string, width: number, dash?: string): string =>
    svgElement('path', {
      class: className,
      d,
      fill: 'none',
      stroke: colour,
      'stroke-width': width,
      'stroke-linejoin': 'round',
      'stroke-dasharray': dash,
    });
  const gustY = frame.yOfMps(series.designGustMps);
  const hasEnds = series.points.every((point) => point.endsSnapMps !== null);
  return [
    svgElement('line', {
      class: 'fy-gust',
      x1: frame.plot.left,
      x2: frame.plot.right,
      y1: gustY,
      y2: gustY,
      stroke: CHART_PALETTE.ink,
      'stroke-width': 1.25,
    }),
    ...(hasEnds
      ? [
          stroke(
            'fy-ends-line',
            path((point) => point.endsSnapMps ?? 0),
            CHART_PALETTE.ends,
            1.1,
          ),
        ]
      : []),
    stroke(
      'fy-lean-line',
      path((point) => point.leanMps.p50),
      CHART_PALETTE.lean,
      2.2,
      '7 4',
    ),
    stroke(
      'fy-snap-line',
      path((point) => point.snapMps.p50),
      CHART_PALETTE.snap,
      3,
    ),
  ];
}

function events(series: FenceSeries, frame: FenceFrame): readonly string[] {
  const { plot } = frame;
  const upright = (className: string, x: number, y1: number, y2: number, dash?: string): string =>
    svgElement('line', { class: className, x1: x, x2: x, y1, y2, stroke: CHART_PALETTE.ink, 'stroke-dasharray': dash });
  const dot = (className: string, point: SeriesPoint, speedMps: number, fill: string, stroke: string): string => {
    const { x, y } = frame.spotOf(point, speedMps);
    return svgElement('circle', { class: className, cx: x, cy: y, r: 4.5, fill, stroke, 'stroke-width': 1.75 });
  };
  const { today } = series;
  const [short, turnover] = [series.short?.point, series.turnover?.point];
  const ticks = series.marks.map(({ point }) => {
    const { x, y } = frame.spotOf(point, point.snapMps.p50);
    return svgElement('line', {
      class: 'fy-mark',
      x1: x,
      x2: x,
      y1: y - 6,
      y2: y + 6,
      stroke: CHART_PALETTE.snap,
      'stroke-width': 1.5,
    });
  });
  return [
    upright('fy-today', frame.xOf(today.year), plot.top, plot.bottom),
    ...(turnover
      ? [upright('fy-turnover', frame.xOf(turnover.year), frame.yOfMps(turnover.leanMps.p50), plot.bottom, '2 3')]
      : []),
    ...ticks,
    ...(short ? [dot('fy-short', short, short.snapMps.p50, CHART_PALETTE.paper, CHART_PALETTE.ink)] : []),
    dot('fy-lean-dot', today, today.leanMps.p50, CHART_PALETTE.lean, CHART_PALETTE.paper),
    dot('fy-snap-dot', today, today.snapMps.p50, CHART_PALETTE.snap, CHART_PALETTE.paper),
  ];
}
