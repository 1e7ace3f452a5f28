import type { Sensitivity, SensitivityBar, SensitivityEnd } from '../forecast/sensitivity.ts';
import { SENSITIVITY_YEARS_AHEAD, type ShortTime } from '../forecast/short-time.ts';
import { dayNumber, yearOf } from '../units/calendar-day.ts';
import type { DisplayUnits } from './speed-text.ts';

/** One end of a row: when the fence goes short with the input there. */
export interface RowEnd {
  /** Calendar year with its fraction; null beyond the years looked at. */
  readonly year: number | null;
  /** The input's value there; empty where it is the recorded one. */
  readonly value: string;
  /** What the year does not say, ` (from new)`; mostly empty. */
  readonly note: string;
  /** Value and year in few characters. */
  readonly brief: string;
}

/** One input's row: the end at which the fence goes short sooner, the other, and what lies between. */
export interface SensitivityRow {
  readonly input: string;
  readonly kind: SensitivityBar['kind'];
  /** What can make an unknown better known; null for what is recorded. */
  readonly narrowedBy: SensitivityBar['narrowedBy'];
  readonly sooner: RowEnd;
  readonly later: RowEnd;
  /** `27 years`, `4.9 years`, `over 35 years`. */
  readonly swing: string;
}

/** A sensitivity ready to draw. */
export interface SensitivityRows {
  readonly rows: readonly SensitivityRow[];
  /** Opening of season 1, a calendar year with its fraction. */
  readonly seasonOneYear: number;
  /** When it goes short as it stands; null beyond the years looked at. */
  readonly middleYear: number | null;
  readonly words: {
    readonly title: string;
    readonly axis: string;
    readonly swing: string;
    readonly seasonOne: string;
    readonly middle: string;
    readonly unknown: string;
    readonly recorded: string;
    /** Inputs that move nothing; empty where there are none. */
    readonly without: string;
    /** Why there is no row; empty where there are rows. */
    readonly none: string;
    /** The whole picture in sentences, for those who do not see it. */
    readonly summary: string;
  };
}

const beyond = `not in ${SENSITIVITY_YEARS_AHEAD} years`;

const capitalised = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);

const yearsText = (years: number): string => {
  const text = years >= 9.95 ? String(Math.round(years)) : years.toFixed(1);
  return `${text} ${text === '1.0' ? 'year' : 'years'}`;
};

/** The rows, words and years of a sensitivity, the input that moves most first. */
export function sensitivityRows(sensitivity: Sensitivity, units: DisplayUnits): SensitivityRows {
  const { baseline, bars, fenceRef, fromDay, seasonOneLabel, without } = sensitivity;
  const opens = yearOf(fromDay);
  const start = dayNumber(`${opens}-01-01`);
  const seasonOneYear = opens + (dayNumber(fromDay) - start) / (dayNumber(`${opens}-12-31`) - start + 1);
  const yearAt = ({ yearsAhead }: ShortTime): number | null =>
    yearsAhead === null ? null : seasonOneYear + yearsAhead;
  const rowEnd = (end: SensitivityEnd): RowEnd => {
    const value = end.label[units];
    const year = yearAt(end);
    if (value === 'as recorded') return { year, value: '', note: '', brief: '' };
    const note = end.fromNew ? ' (from new)' : year === null ? ` (${beyond})` : '';
    const when = end.fromNew ? 'new' : year === null ? `${SENSITIVITY_YEARS_AHEAD}+` : String(Math.floor(year));
    return { year, value, note, brief: `${value} → ${when}` };
  };
  const rows = bars.map((bar): SensitivityRow => {
    const ends = [bar.low, bar.high].sort((a, b) => time(a) - time(b)) as [SensitivityEnd, SensitivityEnd];
    const open = ends[1].yearsAhead === null ? 'over ' : '';
    return {
      input: capitalised(bar.input),
      kind: bar.kind,
      narrowedBy: bar.narrowedBy,
      sooner: rowEnd(ends[0]),
      later: rowEnd(ends[1]),
      swing: `${open}${yearsText(bar.swingYears)}`,
    };
  });
  const middleYear = yearAt(baseline);
  const asItStands =
    middleYear === null ? beyond : baseline.fromNew ? 'short from new' : String(Math.floor(middleYear));
  const idle =
    middleYear === null
      ? `Do not bring it within ${SENSITIVITY_YEARS_AHEAD} years`
      : baseline.fromNew
        ? 'Leave it short from new'
        : 'Without effect on it';
  const whenText = (end: RowEnd): string => (end.brief === '' ? 'as recorded' : end.brief.replace('→', 'in'));
  const none = `No input, moved by itself, changes when this fence goes short (${asItStands}).`;
  return {
    rows,
    seasonOneYear,
    middleYear,
    words: {
      title: `What moves the short season of fence ${fenceRef}`,
      axis: 'Goes short in',
      swing: 'Moves it by',
      seasonOne: `Season ${seasonOneLabel}`,
      middle: `As it stands: ${asItStands}`,
      unknown: 'Not known: from its 10th to its 90th percentile',
      recorded: 'Recorded: moved by a plausible error of the record',
      without: without.length === 0 ? '' : `${idle}: ${without.join(', ')}.`,
      none: rows.length === 0 ? none : '',
      summary:
        rows.length === 0
          ? none
          : `As it stands: ${asItStands}. ${rows.map((row) => `${row.input}: ${whenText(row.sooner)} to ${whenText(row.later)}, ${row.swing}`).join('. ')}.`,
    },
  };
}

const time = ({ yearsAhead }: ShortTime): number => yearsAhead ?? Number.POSITIVE_INFINITY;
