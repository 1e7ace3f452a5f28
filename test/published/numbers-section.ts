import { type Move, REPRESENTATIVE_FENCES } from './number-effects.ts';
import { markedValue, type NumberRow } from './number-row.ts';
import { NUMBER_ROWS, WITHOUT_ROW } from './number-rows.ts';
import { storedEffects } from './numbers-file.ts';
import { table } from './page-table.ts';
import { seasonNumbersTable } from './season-number-rows.ts';

const signed = (value: number, count: number): string => {
  const text = value.toFixed(count);
  return Number(text) === 0 ? '0' : value > 0 ? `+${text}` : text;
};

function shiftText({ shiftMedian, shiftLargest, beyond }: Move): string {
  if (shiftMedian === null || shiftLargest === null) return 'none goes short';
  if (shiftLargest === 0) return '0';
  return `${signed(shiftMedian, 1)} (${signed(shiftLargest, 1)}${beyond ? ' or more' : ''})`;
}

const pair = (low: number, high: number, count: number): string =>
  Number(low.toFixed(count)) === 0 && Number(high.toFixed(count)) === 0
    ? '0'
    : `${signed(low, count)} / ${signed(high, count)}`;

/** What else moves, where neither the short season nor the lean speed do. */
function besides(low: Move, high: Move): string {
  const moved: string[] = [];
  const add = (
    name: string,
    of: (besides: NonNullable<Move['besides']>) => number,
    count: number,
    unit: string,
  ): void => {
    const text = pair(low.besides ? of(low.besides) : 0, high.besides ? of(high.besides) : 0, count);
    if (text !== '0') moved.push(`${name} ${text}${unit}`);
  };
  add('code verdict', (each) => each.codeMph, 1, ' mph');
  add('chance to snap', (each) => 100 * each.snapChance, 1, ' points');
  add('posts short', (each) => each.postsShort, 1, '');
  add('rails looked at', (each) => each.lookYears, 0, ' a');
  return moved.join('; ');
}

interface Shown {
  readonly row: NumberRow;
  readonly low: Move;
  readonly high: Move;
}

const size = ({ low, high }: Shown): number =>
  Math.max(Math.abs(low.shiftMedian ?? 0), Math.abs(high.shiftMedian ?? 0));

const oneLine = (text: string): string => text.replace(/\s+/g, ' ');

function shown(): readonly Shown[] {
  const effects = new Map((storedEffects()?.effects ?? []).map((effect) => [effect.id, effect]));
  return NUMBER_ROWS.flatMap((row) => {
    const effect = effects.get(row.id);
    return effect ? [{ row, low: effect.low, high: effect.high }] : [];
  });
}

/** The numbers from memory or judgement that weigh most, in a sentence. */
export function numbersSummary(): string {
  const most = [...shown()]
    .filter(({ row }) => row.asIf === null)
    .sort((a, b) => size(b) - size(a))
    .slice(0, 4)
    .map(
      (each) =>
        `${each.row.what} (${each.row.movedBy}: ${signed(each.low.shiftMedian ?? 0, 1)} / ${signed(each.high.shiftMedian ?? 0, 1)} years)`,
    );
  const own = shown().find(({ row }) => row.id === 'class.ground-contact');
  const ownText = own
    ? ` The factor of a fence's own treatment weighs more than any of these (${own.row.what}, ${own.row.movedBy}: ${signed(own.low.shiftMedian ?? 0, 1)} / ${signed(own.high.shiftMedian ?? 0, 1)} years).`
    : '';
  return `**${NUMBER_ROWS.length} numbers are from memory or judgement.** Moved one at a time, these move the short season of the demo fences most: ${most.join('; ')}.${ownText}`;
}

/** Every number from memory or judgement, and what moving it does. */
export function numbersSection(): string {
  const rows = [...shown()]
    .sort((a, b) => size(b) - size(a))
    .map(({ row, low, high }) => [
      row.what + (row.asIf ? ` (${row.asIf.said})` : ''),
      `\`${row.file}\``,
      oneLine(markedValue(row.text)),
      row.movedBy,
      shiftText(low),
      shiftText(high),
      pair(low.leanMph, high.leanMph, 1),
      besides(low, high),
      row.tag,
      oneLine(row.source),
    ]);
  const head = [
    'number',
    'file under src/',
    'value',
    'moved by',
    'short season, down [a]',
    'short season, up [a]',
    'lean speed [mph]',
    'besides',
    'tag',
    'source or reason',
  ];
  const without = Object.entries(WITHOUT_ROW).map(([name, reason]) => [`\`${name}\``, reason]);
  return `Each number was moved down and up in a copy of the program, and the copy forecast the demo fences ${REPRESENTATIVE_FENCES.join(', ')}. The shift of the **short season** is how much later (+) or sooner (-) the p50 snap speed of the line posts falls under the design gust, in years:
the median over the fences, and in brackets the largest; the numbers that move it most stand first. A number that concerns none of these fences as they are is tried on four of them "as if" it did. **Lean speed**: the largest change in season 1, down / up. **Besides**, where neither of these moves: largest changes, on two of the fences, of the code verdict (snap and lean speeds together), of
the chance to snap in season 1, of the posts expected short, and of the season in which rails should be looked at. A spread moves the middle little and the bands much; that is not shown. "None goes short" where no fence tried passes its design gust between its installation and the end of the forecast.

${table(head, rows)}

The sources also call these memory or judgement, without a row here:

${table(['name', 'why it has none'], without)}

These are of the season plan and of the money ([what they do](engineering.md#7-the-season-plan-and-the-money)). They do not move the forecast: no speed, no standing and no chance depends on them, so they were not tried on it. They move what is planned, when, and what it costs; how far was not measured.

${seasonNumbersTable()}`;
}
