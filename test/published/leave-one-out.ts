import { BAND_SCORES, FIELD_ROWS, type FieldRow, observedYears, predictedYears } from './field-rows.ts';

/** What the other sites say of one site's rows. */
export interface LeftOut {
  readonly site: string;
  readonly rows: readonly {
    readonly row: FieldRow;
    readonly ratio: number;
    readonly score: number;
    readonly scoreShifted: number;
  }[];
  /** Geometric mean of observed over predicted at the other sites [-]. */
  readonly bias: number;
  /** Standard deviation of ln(observed / predicted) at the other sites [-]. */
  readonly tau: number;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** ln(observed / predicted) [-]. */
const residual = (row: FieldRow): number => Math.log(observedYears(row) / predictedYears(row, 0));

/** True within the middle nine tenths. */
export const isInside = (score: number): boolean => Math.abs(score) <= BAND_SCORES.wide;

/**
 * Leave-one-site-out over the rows that set the spread tau: for each site, bias and spread from the other sites, and how
 * many of those spreads its rows lie off: from the prediction as the program makes it, and from it times the others' bias.
 */
export function leaveOneSiteOut(): readonly LeftOut[] {
  const rows = FIELD_ROWS.filter((row) => row.use === 'set the spread');
  return [...new Set(rows.map((row) => row.site))].map((site) => {
    const others = rows.filter((row) => row.site !== site).map(residual);
    const middle = mean(others);
    const tau = Math.sqrt(others.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (others.length - 1));
    return {
      site,
      bias: Math.exp(middle),
      tau,
      rows: rows
        .filter((row) => row.site === site)
        .map((row) => {
          const off = residual(row);
          return { row, ratio: Math.exp(off), score: off / tau, scoreShifted: (off - middle) / tau };
        }),
    };
  });
}
