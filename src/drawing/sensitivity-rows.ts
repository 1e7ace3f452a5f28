import type { Sensitivity, SensitivityBar, SensitivityEnd } from '../forecast/sensitivity.ts';
import { SENSITIVITY_YEARS_AHEAD, type ShortTime } from '../forecast/short-time.ts';
import { dayNumber, yearOf } from '../units/calendar-day.ts';
import type { ChartLanguage } from './chart-words.ts';
import { SENSITIVITY_WORDS } from './sensitivity-words.ts';
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

const capitalised = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);

/** The rows, words and years of a sensitivity, the input that moves most first. */
export function sensitivityRows(
  sensitivity: Sensitivity,
  units: DisplayUnits,
  language: ChartLanguage = 'en',
): SensitivityRows {
  const { baseline, bars, fenceRef, fromDay, seasonOneLabel, without } = sensitivity;
  const say = SENSITIVITY_WORDS[language];
  const beyond = say.beyond(SENSITIVITY_YEARS_AHEAD);
  const opens = yearOf(fromDay);
  const start = dayNumber(`${opens}-01-01`);
  const seasonOneYear = opens + (dayNumber(fromDay) - start) / (dayNumber(`${opens}-12-31`) - start + 1);
  const yearAt = ({ yearsAhead }: ShortTime): number | null =>
    yearsAhead === null ? null : seasonOneYear + yearsAhead;
  const rowEnd = (end: SensitivityEnd): RowEnd => {
    const recorded = end.label[units] === 'as recorded';
    const year = yearAt(end);
    if (recorded) return { year, value: '', note: '', brief: '' };
    const value = say.value(end.label[units]);
    const note = end.fromNew ? ` (${say.fromNew})` : year === null ? ` (${beyond})` : '';
    const when = end.fromNew ? say.whenNew : year === null ? `${SENSITIVITY_YEARS_AHEAD}+` : String(Math.floor(year));
    return { year, value, note, brief: `${value} → ${when}` };
  };
  const rows = bars.map((bar): SensitivityRow => {
    const ends = [bar.low, bar.high].sort((a, b) => time(a) - time(b)) as [SensitivityEnd, SensitivityEnd];
    const open = ends[1].yearsAhead === null ? `${say.over} ` : '';
    return {
      input: capitalised(say.input(bar.input)),
      kind: bar.kind,
      narrowedBy: bar.narrowedBy,
      sooner: rowEnd(ends[0]),
      later: rowEnd(ends[1]),
      swing: `${open}${say.years(bar.swingYears)}`,
    };
  });
  const middleYear = yearAt(baseline);
  const asItStands =
    middleYear === null ? beyond : baseline.fromNew ? say.shortFromNew : String(Math.floor(middleYear));
  const idle =
    middleYear === null ? say.idleBeyond(SENSITIVITY_YEARS_AHEAD) : baseline.fromNew ? say.idleFromNew : say.idle;
  const whenText = (end: RowEnd): string => (end.brief === '' ? say.asRecorded : end.brief.replace('→', say.in));
  const none = say.none(asItStands);
  return {
    rows,
    seasonOneYear,
    middleYear,
    words: {
      title: say.title(fenceRef),
      axis: say.axis,
      swing: say.swing,
      seasonOne: say.season(seasonOneLabel),
      middle: say.asItStands(asItStands),
      unknown: say.unknown,
      recorded: say.recorded,
      without: without.length === 0 ? '' : `${idle}: ${without.map(say.input).join(', ')}.`,
      none: rows.length === 0 ? none : '',
      summary:
        rows.length === 0
          ? none
          : `${say.asItStands(asItStands)}. ${rows.map((row) => `${row.input}: ${whenText(row.sooner)} ${say.to} ${whenText(row.later)}, ${row.swing}`).join('. ')}.`,
    },
  };
}

const time = ({ yearsAhead }: ShortTime): number => yearsAhead ?? Number.POSITIVE_INFINITY;
