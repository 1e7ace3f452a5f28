import { CHART_PALETTE } from './chart-palette.ts';
import type { ChartWords } from './chart-words.ts';
import type { FenceFrame } from './fence-frame.ts';
import type { FenceSeries } from './fence-series.ts';
import type { LabelRequest, PlacedLabel } from './label-placement.ts';
import { placeLabels, placesAlong, placesAround, textBox } from './label-placement.ts';
import type { Box, Spot } from './picture-box.ts';
import type { DisplayUnits } from './speed-text.ts';
import { displaySpeed, speedText } from './speed-text.ts';
import { textWidthPx } from './text-width.ts';

/** A mark that cannot be named within this distance is not named: the table has it [px]. */
const MARK_REACH_PX = 46;
/** What a name needs beside its own width between season 1 and the edge so as not to cross season 1 [px]. */
const BESIDE_TODAY_PX = 12;

type Style = Pick<LabelRequest, 'sizePx' | 'weight' | 'className' | 'fill'>;

/** Label of the moment from which the snap speed is under the design gust. */
function shortText({ short, today }: FenceSeries, words: ChartWords): string | null {
  if (!short) return null;
  if (short.sinceNew) return words.shortFromNew;
  const { year, label } = short.point;
  return year < today.year ? words.shortSince(label) : words.shortFrom(label);
}

/** Every label of a fence's chart in a place of its own, the most important first. */
export function fenceLabels(
  series: FenceSeries,
  frame: FenceFrame,
  words: ChartWords,
  units: DisplayUnits,
): readonly PlacedLabel[] {
  const { fontPx, plot } = frame;
  const line = (speed: (point: FenceSeries['points'][number]) => number): readonly Spot[] =>
    series.drawn.map((point) => frame.spotOf(point, speed(point)));
  const snap = line((point) => point.snapMps.p50);
  const lean = line((point) => point.leanMps.p50);
  const ends = line((point) => point.endsSnapMps ?? 0);
  const gustY = frame.yOfMps(series.designGustMps);
  const gust: readonly Spot[] = [
    { x: plot.left, y: gustY },
    { x: plot.right, y: gustY },
  ];
  const style = (className: string, fill: string, weight: 400 | 600 = 600, sizePx = fontPx): Style => ({
    sizePx,
    weight,
    className,
    fill,
  });
  const snapStyle = style('fy-snap-text', CHART_PALETTE.snap);
  const leanStyle = style('fy-lean-text', CHART_PALETTE.lean);
  const inkStyle = style('fy-ink-text', CHART_PALETTE.ink);
  const small = style('fy-ink-text', CHART_PALETTE.ink, 400, fontPx - 1);
  const todayX = frame.xOf(series.today.year);
  const middleX = (plot.left + plot.right) / 2;
  const requests: LabelRequest[] = [];
  const along = (
    text: string,
    of: readonly Spot[],
    look: Style,
    preferredX: number,
    belowCost: number,
    gapPx = 6,
  ): void => {
    requests.push({
      text,
      ...look,
      candidates: placesAlong(of, { text, ...look }, { preferredX, belowCost, gapPx }),
      targets: of,
    });
  };
  const around = (text: string, spot: Spot, look: Style, distances?: readonly number[]): void => {
    requests.push({ text, ...look, candidates: placesAround(spot, look.sizePx, distances), targets: [spot] });
  };

  along(words.designGust(speedText(series.designGustMps, units)), gust, inkStyle, plot.right - 60, 2);
  const now = (speedMps: number): string => String(Math.round(displaySpeed(speedMps, units)));
  around(now(series.today.snapMps.p50), frame.spotOf(series.today, series.today.snapMps.p50), snapStyle);
  around(now(series.today.leanMps.p50), frame.spotOf(series.today, series.today.leanMps.p50), leanStyle);
  const besideToday = Math.max(todayX - plot.left, plot.right - todayX) - BESIDE_TODAY_PX;
  const snapName = words.snapSpeed(series.judged);
  const snapFits = textWidthPx(snapName, snapStyle.sizePx, snapStyle.weight) <= besideToday;
  along(
    snapFits ? snapName : words.snapSpeedShort(series.judged),
    snap,
    snapStyle,
    todayX < middleX ? plot.left + (plot.right - plot.left) * 0.36 : plot.left + 110,
    3,
  );
  along(words.leanSpeed, lean, leanStyle, plot.left + (plot.right - plot.left) * 0.3, 1);
  const short = shortText(series, words);
  if (short && series.short)
    around(short, { x: frame.xOf(series.short.point.year), y: gustY }, small, [8, 14, 22, 32, 44]);
  if (series.judged === 'line' && series.today.endsSnapMps !== null) {
    along(
      words.endsSnapSpeed,
      ends,
      style('fy-ends-text', CHART_PALETTE.ends, 400, fontPx - 1),
      plot.left + (plot.right - plot.left) * 0.3,
      1,
      4,
    );
  }
  for (const { mark, point } of series.marks) {
    const look = style('fy-muted-text', CHART_PALETTE.muted, 400, fontPx - 2);
    const spot = frame.spotOf(point, point.snapMps.p50);
    const candidates = placesAround(spot, look.sizePx, [6, 10]);
    requests.push({
      text: words.marks[mark],
      ...look,
      candidates,
      targets: [spot],
      reachPx: MARK_REACH_PX,
      dispensable: true,
    });
  }

  const today = { text: words.today(series.today.label), ...inkStyle, y: plot.top - 8 };
  const half = textBox({ ...today, x: 0, anchor: 'start' }).right / 2;
  const x = Math.min(Math.max(todayX, plot.left + half), plot.right - half);
  const todayLabel: PlacedLabel = {
    ...today,
    x,
    anchor: 'middle',
    box: textBox({ ...today, x, anchor: 'middle' }),
    leader: null,
  };
  const uprights: Box[] = [{ left: todayX, right: todayX, top: plot.top, bottom: plot.bottom }];
  if (series.turnover) {
    const { x: turnoverX, y: top } = frame.spotOf(series.turnover.point, series.turnover.point.leanMps.p50);
    uprights.push({ left: turnoverX, right: turnoverX, top, bottom: plot.bottom });
  }
  const lines = [snap, lean, ...(series.judged === 'line' && series.today.endsSnapMps !== null ? [ends] : [])];
  return [
    todayLabel,
    ...placeLabels(requests, {
      bounds: { ...plot, left: plot.left + 2, bottom: plot.bottom - 2 },
      lines: [...lines, gust],
      uprights,
      taken: [todayLabel.box, ...dots(series, frame, lines)],
    }),
  ];
}

/** What no label may cover: the dots of season 1 and of the short season, and the ends of the lines. */
function dots(series: FenceSeries, frame: FenceFrame, lines: readonly (readonly Spot[])[]): readonly Box[] {
  const around = ({ x, y }: Spot, reachPx: number): Box => ({
    left: x - reachPx,
    right: x + reachPx,
    top: y - reachPx,
    bottom: y + reachPx,
  });
  const { today, short } = series;
  return [
    ...[today.snapMps.p50, today.leanMps.p50].map((speedMps) => around(frame.spotOf(today, speedMps), 3)),
    ...(short ? [around(frame.spotOf(short.point, short.point.snapMps.p50), 3)] : []),
    ...lines.flatMap((line) => [line[0], line.at(-1)]).flatMap((end) => (end ? [around(end, 2)] : [])),
  ];
}
