import { type Money, moneyText } from '../../season/money/money.ts';
import type { Quote } from '../../season/money/quote.ts';
import type { ReportMaking } from './fence-report.ts';
import type { Paper, Report } from './report.ts';
import { footParts, writtenDay } from './report-words.ts';

interface QuoteWords {
  readonly title: (number: string) => string;
  readonly subject: (fences: string) => string;
  readonly forWhom: (owner: string) => string;
  readonly fences: (refs: readonly string[]) => string;
  readonly lead: (total: string, day: string) => string;
  readonly columns: readonly [what: string, quantity: string, price: string, amount: string];
  readonly caption: (currency: string) => string;
  readonly unit: (unit: string, quantity: number) => string;
  readonly subtotal: string;
  readonly tax: (percent: number) => string;
  readonly total: string;
  readonly conditions: string;
  readonly shipped: string;
  readonly sign: readonly [accepted: string, day: string];
}

const EN: QuoteWords = {
  title: (number) => `Quote ${number}`,
  subject: (fences) => `Quote for works at ${fences}`,
  forWhom: (owner) => `For ${owner}`,
  fences: (refs) => `${refs.length === 1 ? 'Fence' : 'Fences'} ${refs.join(', ')}`,
  lead: (total, day) => `${total} in all. It may be accepted until ${day}.`,
  columns: ['Works', 'Quantity', 'Price each', 'Amount'],
  caption: (currency) => `Amounts in ${currency}`,
  unit: (unit, quantity) => (quantity === 1 ? unit : `${unit}s`),
  subtotal: 'Subtotal',
  tax: (percent) => `Tax ${percent} %`,
  total: 'Total',
  conditions: 'What goes with it',
  shipped:
    'Prices that the office has not set are orders of magnitude that come with the program: they are to be checked before this goes out.',
  sign: ['Accepted, name and signature', 'Day'],
};

const UNITS_ES: Readonly<Record<string, readonly [string, string]>> = {
  post: ['poste', 'postes'],
  visit: ['visita', 'visitas'],
  fence: ['cerca', 'cercas'],
};

const ES: QuoteWords = {
  title: (number) => `Cotización ${number}`,
  subject: (fences) => `Cotización de trabajos: ${fences}`,
  forWhom: (owner) => `Para ${owner}`,
  fences: (refs) => `${refs.length === 1 ? 'Cerca' : 'Cercas'} ${refs.join(', ')}`,
  lead: (total, day) => `${total} en total. Se puede aceptar hasta el ${day}.`,
  columns: ['Trabajos', 'Cantidad', 'Precio unitario', 'Importe'],
  caption: (currency) => `Importes en ${currency}`,
  unit: (unit, quantity) => UNITS_ES[unit]?.[quantity === 1 ? 0 : 1] ?? unit,
  subtotal: 'Subtotal',
  tax: (percent) => `Impuesto ${percent} %`,
  total: 'Total',
  conditions: 'Lo que la acompaña',
  shipped:
    'Los precios que la oficina no fijó son órdenes de magnitud que trae el programa: hay que revisarlos antes de enviarla.',
  sign: ['Aceptada, nombre y firma', 'Día'],
};

/** A quote as a report: what is done, what it costs, what goes with it, and a line to accept it on. */
export function quoteReport(
  quote: Quote,
  making: ReportMaking & { readonly paper: Paper; readonly hasShippedPrices: boolean },
): Report {
  const { language } = making;
  const words: QuoteWords = language === 'es' ? ES : EN;
  const { currency } = quote;
  const fences = words.fences(quote.fenceRefs);
  const sum = (name: string, amount: Money) => [name, '', '', moneyText(amount)];
  return {
    language,
    paper: making.paper,
    title: words.title(quote.number),
    under: [words.forWhom(quote.owner), `${fences} · ${quote.site}`],
    subject: words.subject(fences),
    author: making.author,
    madeAt: making.madeAt,
    foot: footParts({ madeOn: quote.issued, modelVersion: null, asOf: quote.issued }, language),
    blocks: [
      {
        kind: 'paragraph',
        text: words.lead(`${moneyText(quote.total)} ${currency}`, writtenDay(quote.validUntil, language)),
        look: 'lead',
      },
      ...(making.hasShippedPrices ? [{ kind: 'paragraph', text: words.shipped, look: 'strong' } as const] : []),
      {
        kind: 'table',
        caption: words.caption(currency),
        columns: words.columns.map((heading, index) => ({
          heading,
          figures: index > 0,
          weight: [3.4, 1.1, 1.1, 1.1][index] ?? 1,
        })),
        rows: quote.lines.map(({ what, quantity, unit, unitPrice, amount }) => [
          what,
          `${quantity} ${words.unit(unit, quantity)}`,
          moneyText(unitPrice),
          moneyText(amount),
        ]),
        sums: [
          sum(words.subtotal, quote.subtotal),
          sum(words.tax(quote.taxPercent), quote.tax),
          sum(`${words.total} ${currency}`, quote.total),
        ],
      },
      { kind: 'heading', level: 2, text: words.conditions },
      { kind: 'list', items: quote.cautions },
      { kind: 'lines', labels: words.sign },
    ],
  };
}
