import { writeFileSync } from 'node:fs';
import { postNumbersText, worksName } from '../drawing/what-if-words.ts';
import { writeCsv } from '../register/csv/csv-text.ts';
import { withdrawQuote } from '../register/offered-quote-store.ts';
import { amountOf } from '../season/money/money.ts';
import type { Quote } from '../season/money/quote.ts';
import { quoteRows } from '../season/money/quote-rows.ts';
import { quoteText } from '../season/money/quote-text.ts';
import { isoUtc } from '../service/clock.ts';
import { type FenceQuoteResult, fenceQuote, WHOLE_FENCE } from '../service/fence-quote.ts';
import { rowsAsCells } from '../service/owner-money-rows.ts';
import { offerToOwners } from '../service/owner-quotes.ts';
import { CAUTION_LIST } from './cautions.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { jsonText } from './terminal.ts';
import { wantedWorks } from './works-argument.ts';

/** Options of `quote`. */
export interface QuoteOptions extends GlobalOptions {
  /** Posts of the works that name none of their own. */
  readonly posts?: readonly number[];
  /** Per cent. */
  readonly tax: number;
  readonly validDays: number;
  /** The register's where left out. */
  readonly currency?: string;
  /** Files to write, or `-` for standard output. */
  readonly csv?: string;
  readonly out?: string;
  /** True where the owners are offered it. */
  readonly offer?: boolean;
  readonly json?: boolean;
}

function quoted(
  result: FenceQuoteResult,
  ref: string,
  works: readonly string[],
): Extract<FenceQuoteResult, { kind: 'quoted' }> {
  if (result.kind === 'quoted') return result;
  if (result.kind === 'refused') {
    throw new CliError(
      EXIT.refused,
      `quote for fence ${ref}, ${works.join(' ')}: ${result.reason}`,
      `nothing was quoted; "stormpale what-if ${ref}" shows what can be done there`,
    );
  }
  throw new CliError(
    EXIT.notFound,
    `no fence ${JSON.stringify(ref)} in the register${result.nearest === null ? '' : `; did you mean ${result.nearest}?`}`,
    'refs are compared letter by letter; "stormpale export fences" lists them, --data names another register',
  );
}

/** Writes a file that is not there yet: a quote that was sent out is not written over. */
function writeNew(option: string, path: string, text: string): void {
  try {
    writeFileSync(path, text, { flag: 'wx' });
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    throw code === 'EEXIST'
      ? new CliError(
          EXIT.refused,
          `${option} ${path}: there is such a file already`,
          'nothing was written over; name another',
        )
      : new CliError(
          EXIT.refused,
          `${option} ${path}: it cannot be written (${code ?? String(error)})`,
          'name a file in a folder that is there and may be written to',
        );
  }
}

/** The quote as JSON: every amount a decimal number of the currency. */
const quoteJson = ({ lines, subtotal, tax, total, ...rest }: Quote) => ({
  ...rest,
  lines: lines.map(({ unitPrice, amount, ...line }) => ({
    ...line,
    unitPrice: amountOf(unitPrice),
    amount: amountOf(amount),
  })),
  subtotal: amountOf(subtotal),
  tax: amountOf(tax),
  total: amountOf(total),
});

/** Draws up a quote for works at one fence. */
export async function runQuote(
  context: CliContext,
  ref: string,
  names: readonly string[],
  options: QuoteOptions,
): Promise<void> {
  const { terminal } = context;
  const { csv, out, json } = options;
  if ([csv === '-', out === '-', json === true].filter(Boolean).length > 1) {
    throw new CliError(EXIT.usage, 'only one of --csv -, --out - and --json can have standard output', 'name files');
  }
  const works = wantedWorks(names, options.posts);
  const whole = works.filter(({ kind }) => WHOLE_FENCE.has(kind));
  if (options.posts !== undefined && whole.length === works.length) {
    throw new CliError(
      EXIT.usage,
      `--posts ${postNumbersText(options.posts)}: ${whole.map(({ kind }) => kind).join(' and ')} is always done to the whole fence`,
      'leave --posts out',
    );
  }
  const result = await withExistingRegister(configOf(context, options), async (register) => {
    const drawnUp = quoted(
      await fenceQuote(register, {
        fenceRef: ref,
        works,
        taxPercent: options.tax,
        validDays: options.validDays,
        currency: options.currency ?? null,
        cautions: CAUTION_LIST,
        now: context.clock,
      }),
      ref,
      names,
    );
    const { quote, parts } = drawnUp;
    return {
      ...drawnUp,
      offered: options.offer ? await offerToOwners(register, { quote, parts }, context.clock) : null,
    };
  });
  const { quote, parts, shippedPrices, offered } = result;
  const [text, cells] = [quoteText(quote), writeCsv(rowsAsCells(quoteRows(quote)))];
  for (const [option, path, content] of [
    ['--out', out, text],
    ['--csv', csv, cells],
  ] as const) {
    if (path === undefined || path === '-') continue;
    writeNew(option, path, content);
    terminal.err(`Written: ${path}\n`);
  }
  if (json) terminal.out(jsonText({ ...quoteJson(quote), parts, shippedPrices, offered }));
  else if (csv === '-') terminal.out(cells);
  else if (out === undefined || out === '-') terminal.out(text);
  for (const { kind, leftOut } of parts) {
    if (leftOut.length > 0) {
      terminal.err(
        `Not quoted: ${worksName(kind)} at post${leftOut.length === 1 ? '' : 's'} ${postNumbersText(leftOut)}, where it does nothing ("stormpale what-if ${ref}").\n`,
      );
    }
  }
  if (offered !== null) {
    terminal.err(
      `Offered: the owners of ${ref} can accept ${quote.number} by their links until ${quote.validUntil} (SHA-256 ${offered}). To take it back: stormpale quote-withdraw ${quote.number}\n`,
    );
  }
  if (shippedPrices.length > 0) {
    terminal.err(
      `Prices of ${shippedPrices.map(worksName).join(', ')} are orders of magnitude that come with the program: check them before this goes out.\n`,
    );
  }
}

/** Takes back a quote that owners were offered: it cannot be accepted any more. */
export async function runQuoteWithdraw(context: CliContext, number: string, options: GlobalOptions): Promise<void> {
  const at = isoUtc(context.clock());
  const done = await withExistingRegister(configOf(context, options), ({ db }) => withdrawQuote(db, number, at));
  if (!done) {
    throw new CliError(
      EXIT.notFound,
      `no quote ${JSON.stringify(number)} is offered`,
      'write its number as the quote has it; what was taken back stays so',
    );
  }
  context.terminal.out(`Quote ${number} is taken back and cannot be accepted any more.\n`);
}
