import { type CalendarDay, isCalendarDay } from '../../units/calendar-day.ts';
import { type Money, moneyCell, moneyTimes, percentOf, sumMoney } from './money.ts';

/** One line that is asked for. */
interface QuoteItem {
  /** What is done or delivered, in the owner's words. */
  readonly what: string;
  readonly quantity: number;
  /** What the quantity is counted in: `post`, `h`, `fence`. */
  readonly unit: string;
  readonly unitPrice: Money;
}

/** What a quote is made from. */
export interface QuoteRequest {
  /** Where and for whom it is, as a reader knows them. */
  readonly site: string;
  readonly owner: string;
  readonly fenceRefs: readonly string[];
  readonly issued: CalendarDay;
  /** What tells it from the day's other quotes: 1 to 12 digits and capital letters. */
  readonly mark: string;
  /** Last day on which it may be accepted. */
  readonly validUntil: CalendarDay;
  readonly currency: string;
  readonly items: readonly QuoteItem[];
  /** Tax on the subtotal [%]. */
  readonly taxPercent: number;
  readonly cautions: readonly string[];
}

interface QuoteLine extends QuoteItem {
  /** Quantity times unit price, rounded to the cent. */
  readonly amount: Money;
}

/** A quote as a document. subtotal = sum of lines; total = subtotal + tax; to the cent. */
export interface Quote extends Omit<QuoteRequest, 'items' | 'mark'> {
  /** The same for the same day and mark: `Q-20270301-002`. */
  readonly number: string;
  readonly lines: readonly QuoteLine[];
  readonly subtotal: Money;
  readonly tax: Money;
  readonly total: Money;
}

const MARK = /^[0-9A-Z]{1,12}$/;

/** The number of a quote. @param mark 1 to 12 digits and capital letters */
export function quoteNumber(issued: CalendarDay, mark: string): string {
  if (!isCalendarDay(issued)) throw new RangeError(`quote, issued: ${issued}; give a day as YYYY-MM-DD`);
  if (!MARK.test(mark))
    throw new RangeError(`quote, mark: ${JSON.stringify(mark)}; give 1 to 12 digits and capital letters`);
  return `Q-${issued.replaceAll('-', '')}-${mark}`;
}

/**
 * Draws up a quote. Each line is rounded to the cent, the tax once on the subtotal, halves up. Throws RangeError where a day,
 * quantity, price or tax does not hold.
 */
export function drawUpQuote({ items, mark, ...rest }: QuoteRequest): Quote {
  const number = quoteNumber(rest.issued, mark);
  if (!isCalendarDay(rest.validUntil) || rest.validUntil < rest.issued)
    throw new RangeError(
      `quote ${number}, valid until: ${rest.validUntil}; give a day as YYYY-MM-DD, not before ${rest.issued}`,
    );
  if (!(rest.taxPercent >= 0 && rest.taxPercent <= 100))
    throw new RangeError(`quote ${number}, tax: ${rest.taxPercent} %; give per cent from 0 to 100`);
  if (items.length === 0) throw new RangeError(`quote ${number}, lines: none; give one at least`);
  const lines = items.map((item) => {
    if (!(item.quantity > 0 && Number.isFinite(item.quantity)))
      throw new RangeError(`quote ${number}, ${item.what}: quantity ${item.quantity}; give one over 0`);
    if (!(item.unitPrice >= 0))
      throw new RangeError(`quote ${number}, ${item.what}: unit price ${moneyCell(item.unitPrice)}; give one from 0`);
    return { ...item, amount: moneyTimes(item.unitPrice, item.quantity) };
  });
  const subtotal = sumMoney(lines.map(({ amount }) => amount));
  const tax = percentOf(subtotal, rest.taxPercent);
  return { ...rest, number, lines, subtotal, tax, total: sumMoney([subtotal, tax]) };
}
