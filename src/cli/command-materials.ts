import { amountText } from '../drawing/day-sheet-words.ts';
import { wholeMoney } from '../drawing/plan-table.ts';
import { worksName } from '../drawing/what-if-words.ts';
import { writeCsv } from '../register/csv/csv-text.ts';
import { guardText } from '../register/csv/text-cell.ts';
import { officeToday } from '../service/crew-sheets.ts';
import { type MaterialsAhead, materialsAhead } from '../service/materials-ahead.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';

/** Options of `materials`. */
export interface MaterialsOptions extends GlobalOptions {
  readonly from?: CalendarDay;
  readonly to?: CalendarDay;
  readonly csv?: boolean;
  readonly json?: boolean;
}

const rangeText = ({ from, to, days }: MaterialsAhead): string =>
  to === null ? (days === null ? `from ${from} on` : `from ${days.first} to ${days.last}`) : `from ${from} to ${to}`;

function materialsText(ahead: MaterialsAhead): string {
  const { visits, confirmedVisits, materials, cost } = ahead;
  if (visits === 0) {
    return `No visits are proposed or confirmed ${rangeText(ahead)}.\nMake a season plan and accept it (stormpale plan), or name other days.\n`;
  }
  const head = `Materials for ${visits} ${visits === 1 ? 'visit' : 'visits'} ${rangeText(ahead)}, ${confirmedVisits} of them confirmed`;
  if (materials.length === 0) return `${head}\nNone: nothing is planned that takes any.\n`;
  const table = plainTable(
    ['Material', 'Order', 'Confirmed', 'Cost', 'Visits', 'Needed by', 'For'],
    materials.map(({ name, unit, toTake, confirmedQuantity, cost: price, visits: takers, neededBy, kinds }) => [
      name,
      amountText(toTake, unit),
      String(Number(confirmedQuantity.toFixed(1))),
      wholeMoney(price),
      String(takers),
      neededBy,
      kinds.map(worksName).join(', '),
    ]),
    [1, 2, 3, 4],
  );
  return [
    head,
    '',
    table,
    `Cost of all of it: ${wholeMoney(cost)}. Quantities and unit costs are the catalogue's; what comes whole is rounded up once, over all visits.`,
    'Confirmed: how much of it is for visits that are promised.',
    '',
  ].join('\n');
}

const HEADINGS = [
  'material',
  'unit',
  'order',
  'needed',
  'confirmed',
  'unit_cost',
  'cost',
  'visits',
  'needed_by',
  'works',
] as const;

/** The same for spreadsheets: a row a material. */
const materialsCsv = ({ materials }: MaterialsAhead): string =>
  writeCsv([
    HEADINGS,
    ...materials.map((each) => [
      guardText(each.name),
      guardText(each.unit),
      String(each.toTake),
      String(Number(each.quantity.toFixed(4))),
      String(Number(each.confirmedQuantity.toFixed(4))),
      String(Number(each.unitCost.toFixed(4))),
      each.cost.toFixed(2),
      String(each.visits),
      each.neededBy,
      each.kinds.join(' '),
    ]),
  ]);

/** Prints what to order for the visits that are proposed or confirmed. */
export async function runMaterials(context: CliContext, options: MaterialsOptions): Promise<void> {
  const { terminal, clock } = context;
  if (options.csv && options.json) {
    throw new CliError(EXIT.usage, '--csv and --json both write to standard output', 'give one of the two');
  }
  const ahead = await withExistingRegister(configOf(context, options), async (register) => {
    const from = options.from ?? (await officeToday(register, clock));
    if (options.to !== undefined && options.to < from) {
      throw new CliError(
        EXIT.usage,
        `--to ${options.to} lies before ${from}`,
        'name a later last day, or an earlier --from',
      );
    }
    return materialsAhead(register, from, options.to ?? null);
  });
  terminal.out(options.csv ? materialsCsv(ahead) : options.json ? jsonText(ahead) : materialsText(ahead));
}
