import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type FenceTable, reserveFenceTable } from '../drawing/reserve-fences.ts';
import { reserveTerminal, wordsFolded } from '../drawing/reserve-terminal.ts';
import { reserveYearTable, setAsideTable } from '../drawing/reserve-years.ts';
import { writeCsv } from '../register/csv/csv-text.ts';
import type { ReplacementRule } from '../season/money/fence-money.ts';
import { type Money, NO_MONEY } from '../season/money/money.ts';
import { inCurrency } from '../season/money/plain-row.ts';
import type { ReservePlanRequest } from '../season/money/reserve-request.ts';
import { currencyAsked } from '../service/currency-asked.ts';
import { type OwnerMoney, type OwnerMoneyResult, ownerMoney } from '../service/owner-money.ts';
import { ownerFenceRows, ownerMoneyJson, ownerYearRows, rowsAsCells } from '../service/owner-money-rows.ts';
import { CAUTION_LIST, CAUTIONS } from './cautions.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { plainTable } from './plain-table.ts';
import { counter, jsonText } from './terminal.ts';
import { chartColumns } from './terminal-columns.ts';

/** Options of `money`. */
export interface MoneyOptions extends GlobalOptions {
  readonly years: number;
  readonly opening: Money;
  readonly yearly?: Money;
  readonly atOnce?: Money;
  readonly rising?: boolean;
  readonly cover: 'expected' | 'nine-in-ten';
  /** Per cent a year. */
  readonly inflation: number;
  readonly interest: number;
  readonly floor: Money;
  readonly replace: 'cheapest' | 'before-short';
  /** Longest service of a fence [a]. */
  readonly life: number;
  readonly inspectEvery: number;
  readonly together?: boolean;
  /** What the owner pays of a fence with two owners [%]. */
  readonly sharedPart: number;
  /** The register's where left out. */
  readonly currency?: string;
  /** A folder, or `-` for the years on standard output. */
  readonly csv?: string;
  readonly json?: boolean;
}

const PER_CENT = 100;

function contributionOf(options: MoneyOptions): ReservePlanRequest['contribution'] {
  const course = options.rising ? 'rising' : 'flat';
  if (options.yearly !== undefined) {
    return { kind: 'given', firstYear: options.yearly, course, atOnce: options.atOnce ?? NO_MONEY };
  }
  if (options.atOnce !== undefined) {
    throw new CliError(
      EXIT.usage,
      '--at-once is what is paid in beside --yearly, and no --yearly is given',
      'give both, or leave both out: then the plan finds what to pay at once and every year',
    );
  }
  return { kind: 'find', course, cover: options.cover === 'expected' ? 'expected' : 'nine in ten' };
}

function planned(result: OwnerMoneyResult, ref: string): OwnerMoney {
  if (result.kind === 'planned') return result;
  if (result.kind === 'no fences') {
    throw new CliError(
      EXIT.notFound,
      `${result.owner.name} (${result.owner.ref}) is the first or second owner of no fence in the register`,
      'there is nothing to plan; "stormpale export fences" shows the owners of each fence',
    );
  }
  throw new CliError(
    EXIT.notFound,
    `no owner ${JSON.stringify(ref)} in the register${result.nearest === null ? '' : `; did you mean ${result.nearest}?`}`,
    'refs are compared letter by letter; "stormpale export owners" lists them, --data names another register',
  );
}

/** Shows what one owner has to spend on fences, year by year. */
export async function runMoney(context: CliContext, ref: string, options: MoneyOptions): Promise<void> {
  const { terminal } = context;
  if (options.csv === '-' && options.json) {
    throw new CliError(EXIT.usage, '--csv - and --json both write to standard output', 'give --csv a folder, or one');
  }
  const contribution = contributionOf(options);
  const progress = counter(terminal, 'Money:');
  const rule: ReplacementRule = options.replace === 'cheapest' ? 'cheapest' : 'before short';
  const { money, currency } = await withExistingRegister(configOf(context, options), async (register) => {
    try {
      const result = await ownerMoney(register, {
        ownerRef: ref,
        years: options.years,
        openingBalance: options.opening,
        contribution,
        inflation: options.inflation / PER_CENT,
        interest: options.interest / PER_CENT,
        floor: options.floor,
        dependence: options.together ? 'together' : 'independent',
        rule,
        longestServiceYears: options.life,
        inspectEveryYears: options.inspectEvery,
        sharedPart: options.sharedPart / PER_CENT,
        now: context.clock,
        onProgress: (done, total) => progress.show(`${done} of ${total} fences`),
      });
      return { money: planned(result, ref), currency: await currencyAsked(register.db, options.currency) };
    } finally {
      progress.end();
    }
  });
  const written = writeRows(money, options.csv, currency);
  if (options.csv === '-') terminal.out(writeCsv(rowsAsCells(inCurrency(ownerYearRows(money), currency))));
  else if (options.json) {
    terminal.out(jsonText({ ...ownerMoneyJson(money, currency), cautions: CAUTION_LIST }));
  } else terminal.out(moneyText(money, { ...options, currency }, terminal.columns));
  for (const path of written) terminal.err(`Written: ${path}\n`);
  for (const { ref: unseen, message } of money.unseen) terminal.err(`Fence ${unseen}: ${message}\n`);
  if (money.unseen.length > 0) {
    terminal.err('The plan is without these. Correct what is named and run this again.\n');
    context.end(EXIT.partly);
  }
}

/** Writes the years and the fences into a folder, and returns the paths; nothing for standard output. */
function writeRows(money: OwnerMoney, folder: string | undefined, currency: string): readonly string[] {
  if (folder === undefined || folder === '-') return [];
  mkdirSync(folder, { recursive: true });
  return (
    [
      ['years', ownerYearRows(money)],
      ['fences', ownerFenceRows(money)],
    ] as const
  ).map(([name, rows]) => {
    const path = join(folder, `money-${money.owner.ref}-${name}.csv`);
    writeFileSync(path, writeCsv(rowsAsCells(inCurrency(rows, currency))));
    return path;
  });
}

const table = ({ headings, rows, right }: FenceTable): string => plainTable(headings, rows, right);

function rulesText({ fences }: OwnerMoney, options: MoneyOptions): readonly string[] {
  const cheapest = fences.some(({ rule }) => rule === 'cheapest');
  const short = fences.filter(({ rule }) => rule === 'before short').length;
  const { life, inspectEvery, sharedPart } = options;
  return [
    'Advice: when replacing costs least in the long run, given that the fence stands today: a rebuild in good time against one in a bad week with the consequence stated for the fence (age replacement, Barlow & Hunter 1960). It weighs money alone: a fence that is short no longer holds its design gust, and may still be cheapest to keep (--replace before-short plans the other way).',
    `Rails and boards are not forecast: no fence is kept beyond ${life} years (--life). "Keep": until it snaps; by its posts alone, waiting pays to the end.`,
    'A year later: what waiting one year more than advised costs. Now instead: what replacing now costs more than as advised. Both in the long run.',
    ...(cheapest ? ['The plan follows the advice.'] : []),
    ...(short > 0
      ? [
          `${short === fences.length ? 'Fences are' : `${short} of the fences are`} replaced before the season in which they go short of their design gust (${options.replace === 'cheapest' ? 'their sites have no hazard curve, so a cheapest age cannot be reckoned' : '--replace before-short'}).`,
        ]
      : []),
    `Repairs: what was found broken, leaning or cracked, and ${inspectEvery === 0 ? 'no inspections' : `an inspection every ${inspectEvery} years`} (--inspect-every). End posts that break alone, and leaning to come, are not in the plan.`,
    ...(fences.some(({ sharedWith }) => sharedWith !== null)
      ? [
          `A fence with two owners: the plan pays ${sharedPart} % of it (--shared-part); the register does not say how they share.`,
        ]
      : []),
  ];
}

function moneyText(money: OwnerMoney, options: MoneyOptions & { readonly currency: string }, columns: number): string {
  const { owner, plan, fences } = money;
  const { currency, inflation, interest } = options;
  const width = chartColumns(columns);
  const firstYear = plan.years[0]!.year;
  const lines = (texts: readonly string[]): readonly string[] => texts.flatMap((text) => wordsFolded(text, width));
  return [
    ...lines([
      `${owner.name} (${owner.ref}): ${fences.length} fence${fences.length === 1 ? '' : 's'}, ${firstYear} to ${plan.years.at(-1)!.year}`,
      `This is ${plan.label}.`,
      `Responsible: ${fences[0]?.responsible === 'association' ? 'the association' : 'the owner of the lot'}${fences.some(({ sharedWith }) => sharedWith !== null) ? ', of some fences together with another owner' : ''}.`,
      `Amounts in ${currency}, before tax, from a works catalogue of orders of magnitude where the office has not entered its own prices.`,
    ]),
    '',
    "Each fence, in today's money:",
    table(reserveFenceTable(fences)),
    ...lines(rulesText(money, options)),
    '',
    table(setAsideTable(plan)),
    ...lines([
      `At once: what falls due in the first two years beyond the fund and what is paid in by then, as it is too late to set it aside; then every year, so that the fund never falls below the floor. Prices rise ${inflation} % and money earns ${interest} % a year.`,
    ]),
    '',
    `Year by year, in ${currency} of the year:`,
    table(reserveYearTable(plan)),
    ...lines([
      'repairs, replacing: expected. p10, p50, p90: of both together; in one year in ten it is less, in one more. Opening + paid in - repairs - replacing + interest = closing.',
    ]),
    '',
    ...reserveTerminal(plan, { currency, payerName: owner.name, columns: width }),
    '',
    CAUTIONS,
  ].join('\n');
}
