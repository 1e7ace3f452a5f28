import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { amountOf, cents, type Money } from '../season/money/money.ts';
import type { ReservePlan, ReserveYear } from '../season/money/reserve-plan.ts';
import { CHART_FONT, CHART_PALETTE } from './chart-palette.ts';
import { figureText } from './quantity-text.ts';
import { wholeText } from './reserve-fences.ts';
import type { ReserveNaming } from './reserve-naming.ts';
import { reserveWords } from './reserve-words.ts';
import { escapeXml, svgElement } from './svg-element.ts';
import { textWidthPx, wrapText } from './text-width.ts';

/** How a reserve plan is drawn. */
export interface ReserveChartOptions extends ReserveNaming {
  /** Width of the picture [px], 320 or more; its height follows. */
  readonly widthPx: number;
  /** Prefix of the ids inside, where one page holds the picture more than once. */
  readonly idPrefix?: string;
}

const FONT_PX = 13;
const LINE_PX = 18;
const PLOT_PX = 260;
const MARGIN_PX = 8;
const KEY_PX = 24;

const text = (content: string, look: Readonly<Record<string, string | number | undefined>>): string =>
  svgElement('text', { class: 'fy-muted-text', 'font-size': FONT_PX, fill: CHART_PALETTE.muted, ...look }, [
    escapeXml(content),
  ]);

interface Frame {
  readonly x: (year: ReserveYear) => number;
  readonly barPx: number;
  readonly y: ScaleLinear<number, number>;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly ticks: readonly number[];
}

function frameOf({ years, floor }: ReservePlan, widthPx: number, top: number): Frame {
  const amounts = years.flatMap((year) => [
    amountOf(year.closing),
    amountOf(year.spending),
    amountOf(cents(year.spendingBand.p90)),
    amountOf(cents(year.closingBand.p10)),
    amountOf(cents(year.closingBand.p90)),
  ]);
  const bottom = top + PLOT_PX;
  const y = scaleLinear()
    .domain([Math.min(0, ...amounts), Math.max(1, amountOf(floor), ...amounts)])
    .nice(6)
    .range([bottom, top]);
  const ticks = y.ticks(6);
  const left = MARGIN_PX + Math.max(...ticks.map((tick) => textWidthPx(tickText(tick), FONT_PX, 400))) + 8;
  const right = widthPx - MARGIN_PX;
  const step = (right - left) / years.length;
  const firstYear = years[0]?.year ?? 0;
  return { x: ({ year }) => left + (year - firstYear + 0.5) * step, barPx: step * 0.6, y, left, right, bottom, ticks };
}

const tickText = (amount: number): string => figureText(amount, 9);

/**
 * The picture of a reserve plan: a bar for each year's expected spending with its 10th to 90th percentile as an upright, the fund
 * at each year's end as a line with its band, and the floor. Returns a complete SVG document; the same plan and options give the
 * same bytes.
 */
export function reserveChartSvg(plan: ReservePlan, options: ReserveChartOptions): string {
  const { widthPx } = options;
  const words = reserveWords(plan, options);
  const prefix = options.idPrefix ?? 'reserve';
  const keys = keyLines(words.keys, widthPx);
  const frame = frameOf(plan, widthPx, keys.bottom + 14);
  const notes = words.notes.flatMap((note) => wrapText(note, FONT_PX, widthPx - 2 * MARGIN_PX));
  const notesTop = frame.bottom + 2 * LINE_PX + 8;
  const heightPx = notesTop + notes.length * LINE_PX;
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'reserve-chart',
      viewBox: `0 0 ${widthPx} ${heightPx}`,
      width: widthPx,
      height: heightPx,
      role: 'img',
      'aria-labelledby': `${prefix}-title ${prefix}-desc`,
      'font-family': CHART_FONT,
    },
    [
      svgElement('title', { id: `${prefix}-title` }, [escapeXml(words.title)]),
      svgElement('desc', { id: `${prefix}-desc` }, [escapeXml(`${words.title}. ${words.summary}`)]),
      svgElement('rect', { class: 'fy-paper', width: widthPx, height: heightPx, fill: CHART_PALETTE.paper }),
      ...keys.elements,
      ...axes(plan, frame),
      fundBand(plan, frame),
      ...spendingBars(plan, frame, options.currency),
      fundLine(plan, frame),
      ...notes.map((line, index) => text(line, { x: MARGIN_PX, y: notesTop + index * LINE_PX })),
    ],
  );
}

type KeyKind = 'spending' | 'fund' | 'floor';

function keyMark(kind: KeyKind, y: number): string {
  const middle = y - 4;
  const line = { x1: MARGIN_PX, x2: MARGIN_PX + 16, y1: middle, y2: middle };
  if (kind === 'fund') return svgElement('line', { ...line, ...FUND_LOOK });
  if (kind === 'floor') return svgElement('line', { ...line, ...FLOOR_LOOK });
  return svgElement('rect', { ...BAR_LOOK, x: MARGIN_PX, y: y - 9, width: 16, height: 9 });
}

const BAR_LOOK = { class: 'sy-unknown', fill: CHART_PALETTE.snap } as const;
const FUND_LOOK = { class: 'fy-lean-line', stroke: CHART_PALETTE.lean, 'stroke-width': 2.25, fill: 'none' } as const;
const FLOOR_LOOK = { class: 'fy-turnover', stroke: CHART_PALETTE.ink, 'stroke-dasharray': '2 3' } as const;
const UPRIGHT_LOOK = { class: 'fy-today', stroke: CHART_PALETTE.ink, 'stroke-width': 1.25 } as const;

function keyLines(
  keys: Readonly<Record<KeyKind, string>>,
  widthPx: number,
): { readonly elements: readonly string[]; readonly bottom: number } {
  const elements: string[] = [];
  let y = 18;
  for (const kind of ['spending', 'fund', 'floor'] as const) {
    elements.push(keyMark(kind, y));
    for (const line of wrapText(keys[kind], FONT_PX, widthPx - KEY_PX - 2 * MARGIN_PX)) {
      elements.push(text(line, { x: MARGIN_PX + KEY_PX, y }));
      y += LINE_PX;
    }
  }
  return { elements, bottom: y - LINE_PX + 6 };
}

function axes({ years, floor }: ReservePlan, frame: Frame): readonly string[] {
  const { left, right, bottom, y } = frame;
  const across = (at: number, look: Readonly<Record<string, string | number>>): string =>
    svgElement('line', { ...look, x1: left, x2: right, y1: at, y2: at });
  const every = Math.ceil((textWidthPx('2000', FONT_PX, 400) + 10) / ((right - left) / years.length));
  return [
    ...frame.ticks.flatMap((tick) => [
      across(y(tick), { class: 'fy-grid', stroke: CHART_PALETTE.grid }),
      text(tickText(tick), { x: left - 6, y: y(tick) + 4, 'text-anchor': 'end' }),
    ]),
    across(y(amountOf(floor)), FLOOR_LOOK),
    ...years
      .filter((_, index) => index % every === 0)
      .map((year) => text(String(year.year), { x: frame.x(year), y: bottom + LINE_PX, 'text-anchor': 'middle' })),
  ];
}

function spendingBars({ years }: ReservePlan, { x, y, barPx }: Frame, currency: string): readonly string[] {
  return years.flatMap((year) => {
    const { p10, p90 } = year.spendingBand;
    const top = y(amountOf(year.spending));
    const title = svgElement('title', {}, [escapeXml(`${year.year}: ${wholeText(year.spending)} ${currency}`)]);
    return [
      svgElement('rect', { ...BAR_LOOK, x: x(year) - barPx / 2, y: top, width: barPx, height: y(0) - top }, [title]),
      ...(p90 > p10
        ? [
            svgElement('line', {
              ...UPRIGHT_LOOK,
              x1: x(year),
              x2: x(year),
              y1: y(amountOf(cents(p10))),
              y2: y(amountOf(cents(p90))),
            }),
          ]
        : []),
    ];
  });
}

const pointAt = ({ x, y }: Frame, year: ReserveYear, amount: Money): string =>
  `${x(year).toFixed(2)},${y(amountOf(amount)).toFixed(2)}`;

/** The band of the fund, behind the bars. */
function fundBand({ years }: ReservePlan, frame: Frame): string {
  const along = (of: readonly ReserveYear[], percentile: 'p10' | 'p90'): readonly string[] =>
    of.map((year) => pointAt(frame, year, cents(year.closingBand[percentile])));
  return svgElement('polygon', {
    class: 'fy-lean-band',
    fill: CHART_PALETTE.leanBand,
    'fill-opacity': '0.3',
    points: [...along(years, 'p90'), ...along(years.toReversed(), 'p10')].join(' '),
  });
}

const fundLine = ({ years }: ReservePlan, frame: Frame): string =>
  svgElement('polyline', { ...FUND_LOOK, points: years.map((year) => pointAt(frame, year, year.closing)).join(' ') });
