import type { ReservePlan, ReserveYear } from '../season/money/reserve-plan.ts';
import { wholeText } from './reserve-fences.ts';
import type { ReserveNaming } from './reserve-naming.ts';
import { reserveWords } from './reserve-words.ts';

/** Size of a reserve plan for a terminal. */
export interface ReserveTerminalOptions extends ReserveNaming {
  /** Width in characters, 60 or more. */
  readonly columns: number;
}

const YEAR_WIDTH = 6;
const GAP = 2;
const LEAST_BAR = 8;

/**
 * A reserve plan as lines of text: a bar of blocks for each year's expected spending, dots on to its 90th percentile, the fund at
 * the year's end beside it, with a mark where it stands below the floor. No line is wider than `columns`.
 */
export function reserveTerminal(plan: ReservePlan, { columns, ...naming }: ReserveTerminalOptions): readonly string[] {
  const words = reserveWords(plan, naming);
  const rows = plan.years.map((year) => ({
    year,
    spending: wholeText(year.spending),
    fund: `${wholeText(year.closing)}${year.lowest < plan.floor ? ' *' : '  '}`,
  }));
  const [spendingHead, fundHead] = ['spending', 'fund at end'];
  const spendingWidth = Math.max(spendingHead.length, ...rows.map(({ spending }) => spending.length));
  const fundWidth = Math.max(fundHead.length + 2, ...rows.map(({ fund }) => fund.length));
  const barWidth = Math.max(LEAST_BAR, columns - YEAR_WIDTH - 2 * GAP - spendingWidth - fundWidth);
  const highest = Math.max(1, ...plan.years.map(({ spending, spendingBand }) => Math.max(spending, spendingBand.p90)));
  const line = (year: string, bar: string, spending: string, fund: string): string =>
    `${year.padEnd(YEAR_WIDTH)}${bar.padEnd(barWidth)}${' '.repeat(GAP)}${spending.padStart(spendingWidth)}${' '.repeat(GAP)}${fund.padStart(fundWidth)}`.trimEnd();
  return [
    ...wordsFolded(words.title, columns),
    line('', '', spendingHead, `${fundHead}  `),
    ...rows.map(({ year, spending, fund }) => line(String(year.year), barOf(year, highest, barWidth), spending, fund)),
    ...(rows.some(({ fund }) => fund.endsWith('*'))
      ? wordsFolded(`* below the floor of ${wholeText(plan.floor)} in the year`, columns)
      : []),
    ...wordsFolded(`█ ${words.keys.spending.split(';')[0]}; · on to its 90th percentile`, columns),
    ...[words.summary, ...words.notes].flatMap((note) => wordsFolded(note, columns)),
  ];
}

function barOf({ spending, spendingBand }: ReserveYear, highest: number, width: number): string {
  const cells = (amount: number): number => Math.round((amount / highest) * width);
  const blocks = cells(spending);
  return '█'.repeat(blocks) + '·'.repeat(Math.max(0, cells(spendingBand.p90) - blocks));
}

/** Text broken at spaces into lines of at most so many characters; a longer word stands alone. */
export function wordsFolded(text: string, columns: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > columns) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
