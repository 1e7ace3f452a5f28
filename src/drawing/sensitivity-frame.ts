import type { ScaleLinear } from 'd3-scale';
import { scaleLinear } from 'd3-scale';
import type { RowEnd, SensitivityRow, SensitivityRows } from './sensitivity-rows.ts';
import { textWidthPx } from './text-width.ts';

/** Width under which an input's name stands over its bar instead of beside it [px]. */
const STACKED_UNDER_PX = 620;
/** Room between the end of a bar and its label [px]. */
export const LABEL_GAP_PX = 6;
const MARGIN_PX = 8;
/** Share of the plot that the bars need; with less, notes in the labels are left out [-]. */
const LEAST_BARS_SHARE = 0.3;
/** Room past the last year for bars that end beyond it [px]. */
const OPEN_PX = 18;
/** Fewest years that the axis shows. */
const LEAST_YEARS = 8;

/** Scales and columns of a picture of sensitivity. */
export interface SensitivityFrame {
  readonly stacked: boolean;
  readonly fontPx: number;
  readonly labelPx: number;
  readonly left: number;
  readonly right: number;
  /** Right edge of the swings [px]. */
  readonly swingX: number;
  readonly rowPx: number;
  /** Calendar year to x [px]. */
  readonly xOf: ScaleLinear<number, number>;
  /** x of an end [px]; of one beyond the years looked at, past the last year. */
  readonly xOfEnd: (year: number | null) => number;
  /** Label of an end, as long as there is room for. */
  readonly labelOf: (end: RowEnd) => string;
}

/** Years that the axis has to show: every end, season 1, and the fence as it stands. */
function yearRange({ rows, seasonOneYear, middleYear }: SensitivityRows): readonly [number, number] {
  const years = [seasonOneYear, middleYear, ...rows.flatMap(({ sooner, later }) => [sooner.year, later.year])].filter(
    (year) => year !== null,
  );
  const [from, to] = [Math.min(...years), Math.max(...years)];
  return [from, Math.max(to, from + LEAST_YEARS)];
}

/** Room that the columns beside the plot take [px]: names at the left, swings at the right; none where they stand above it. */
function columnsPx({ rows, words }: SensitivityRows, fontPx: number): readonly [number, number] {
  const names = rows.map(({ input }) => textWidthPx(input, fontPx, 600));
  const swings = [...rows.map(({ swing }) => swing), words.swing].map((text) => textWidthPx(text, fontPx - 1, 400));
  return [Math.max(0, ...names) + 14, Math.max(...swings) + 14];
}

/** Lays out a picture of sensitivity, so wide inside that every label has room beside its bar. */
export function sensitivityFrame(drawn: SensitivityRows, widthPx: number): SensitivityFrame {
  const stacked = widthPx < STACKED_UNDER_PX;
  const fontPx = stacked ? 12.5 : 14;
  const labelPx = fontPx - 1;
  const [names, swings] = stacked ? [0, 0] : columnsPx(drawn, fontPx);
  const edges = { left: MARGIN_PX + names, right: widthPx - MARGIN_PX - swings };
  const noted = (end: RowEnd): string => `${end.value}${end.note}`;
  const bare = (end: RowEnd): string => end.value;
  const scaleOf = (labelOf: (end: RowEnd) => string): OpenScale => fittedScale(drawn, edges, labelOf, labelPx);
  const withNotes = scaleOf(noted);
  const [from = 0, to = 0] = withNotes.xOf.range();
  const hasRoom = to - from >= LEAST_BARS_SHARE * (edges.right - edges.left);
  const { xOf, xOfEnd } = hasRoom ? withNotes : scaleOf(bare);
  return {
    stacked,
    fontPx,
    labelPx,
    ...edges,
    swingX: widthPx - MARGIN_PX,
    rowPx: stacked ? 42 : 27,
    xOf,
    xOfEnd,
    labelOf: hasRoom ? noted : bare,
  };
}

/** A scale on which years beyond those looked at have a place too. */
type OpenScale = Pick<SensitivityFrame, 'xOf' | 'xOfEnd'>;

function fittedScale(
  drawn: SensitivityRows,
  edges: { readonly left: number; readonly right: number },
  labelOf: (end: RowEnd) => string,
  labelPx: number,
): OpenScale {
  const { rows } = drawn;
  const hasOpen = [drawn.middleYear, ...rows.map(({ later }) => later.year)].includes(null);
  const roomPx = (end: RowEnd): number =>
    end.value === '' ? 4 : textWidthPx(labelOf(end), labelPx, 400) + LABEL_GAP_PX;
  const domain = yearRange(drawn);
  const scale = (pads: readonly [number, number]): OpenScale => {
    const last = edges.right - pads[1] - (hasOpen ? OPEN_PX : 0);
    const xOf = scaleLinear()
      .domain(domain)
      .range([edges.left + pads[0], last]);
    return { xOf, xOfEnd: (year) => (year === null ? last + OPEN_PX : xOf(year)) };
  };
  let pads: readonly [number, number] = [4, 4];
  // Each pass gives the labels that stick out the room they miss; what one side gains moves the other but little.
  for (let pass = 0; pass < 12; pass += 1) {
    const { xOfEnd } = scale(pads);
    const missing = (side: (row: SensitivityRow) => number): number => Math.max(0, ...rows.map(side));
    pads = [
      pads[0] + missing(({ sooner }) => edges.left - (xOfEnd(sooner.year) - roomPx(sooner))),
      pads[1] + missing(({ later }) => xOfEnd(later.year) + roomPx(later) - edges.right),
    ];
  }
  return scale(pads);
}
