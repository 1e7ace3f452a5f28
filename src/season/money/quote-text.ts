import { type Money, moneyText } from './money.ts';
import type { Quote } from './quote.ts';

const WIDTH = 72;
const AMOUNT_WIDTH = 14;
const WHAT_WIDTH = WIDTH - AMOUNT_WIDTH;

/** Text broken at spaces into lines of at most `width` characters; a longer word is cut. */
function folded(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).flatMap((part) => part.match(new RegExp(`.{1,${width}}`, 'gu')) ?? [])) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (longer.length > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
}

function amountLines(what: string, amount: Money): readonly string[] {
  const [first = '', ...rest] = folded(what, WHAT_WIDTH);
  return [`${first.padEnd(WHAT_WIDTH)}${moneyText(amount).padStart(AMOUNT_WIDTH)}`, ...rest];
}

/** Units that are words and take an s. */
const COUNTED: ReadonlySet<string> = new Set(['post', 'visit', 'fence', 'site', 'piece', 'bag']);

/** A quantity with its unit: `2 posts`. */
export const quantityText = (quantity: number, unit: string): string =>
  `${quantity} ${unit}${quantity !== 1 && COUNTED.has(unit) ? 's' : ''}`;

/** A quote as plain text, no line wider than 72 characters. */
export function quoteText(quote: Quote): string {
  const { currency } = quote;
  const rule = '-'.repeat(WIDTH);
  return [
    `Quote ${quote.number}`,
    ...folded(`${quote.owner}, ${quote.site}`, WIDTH),
    ...folded(`${quote.fenceRefs.length === 1 ? 'Fence' : 'Fences'}: ${quote.fenceRefs.join(', ')}`, WIDTH),
    `Issued ${quote.issued}, valid until ${quote.validUntil}. Amounts in ${currency}.`,
    '',
    ...quote.lines.flatMap(({ what, quantity, unit, unitPrice, amount }) =>
      amountLines(`${what}: ${quantityText(quantity, unit)} at ${moneyText(unitPrice)}`, amount),
    ),
    rule,
    ...amountLines('Subtotal', quote.subtotal),
    ...amountLines(`Tax ${quote.taxPercent} %`, quote.tax),
    ...amountLines(`Total ${currency}`, quote.total),
    ...quote.cautions.flatMap((caution) => ['', ...folded(caution, WIDTH)]),
    '',
  ].join('\n');
}
