import { writeFileSync } from 'node:fs';
import { daySheetHtml } from '../drawing/day-sheet-html.ts';
import { daysOfWeek } from '../season/visit/day-sheet.ts';
import { type CrewSheets, crewSheets, officeToday } from '../service/crew-sheets.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { CAUTION_LIST } from './cautions.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { sheetText } from './sheet-text.ts';
import { jsonText } from './terminal.ts';

/** Options of `sheet`. */
export interface SheetOptions extends GlobalOptions {
  readonly day?: CalendarDay;
  readonly week?: CalendarDay;
  readonly html?: string;
  readonly json?: boolean;
}

const noCrew = (ref: string, nearest: string | null): CliError =>
  new CliError(
    EXIT.notFound,
    `no crew ${JSON.stringify(ref)} in the register${nearest === null ? '' : `; did you mean ${nearest}?`}`,
    'refs are compared letter by letter; "stormpale export crews" lists them, --data names another register',
  );

const nothingText = (
  { crewName, nextDay }: Extract<CrewSheets, { kind: 'sheets' }>,
  days: readonly CalendarDay[],
): string =>
  [
    `${crewName} has no visits ${days.length === 1 ? `on ${days[0]}` : `from ${days[0]} to ${days.at(-1)}`}.`,
    nextDay === null
      ? 'None is planned after that: make a season plan and accept it (stormpale plan).'
      : `The next begins on ${nextDay}.`,
    '',
  ].join('\n');

/** Prints the day sheet of a crew, or those of a week; where no day is asked for, today's, or else that of its next day out. */
export async function runSheet(context: CliContext, crewRef: string, options: SheetOptions): Promise<void> {
  const { terminal, clock } = context;
  if (options.day !== undefined && options.week !== undefined) {
    throw new CliError(EXIT.usage, '--day and --week both say which days are meant', 'give one of the two');
  }
  const { sheets, days } = await withExistingRegister(configOf(context, options), async (register) => {
    const wanted =
      options.week === undefined ? [options.day ?? (await officeToday(register, clock))] : daysOfWeek(options.week);
    const found = await crewSheets(register, crewRef, wanted);
    const isAsked = options.day !== undefined || options.week !== undefined;
    if (isAsked || found.kind === 'no crew' || found.sheets.length > 0 || found.nextDay === null) {
      return { sheets: found, days: wanted };
    }
    terminal.err(`${found.crewName} has no visits on ${wanted[0]}; this is its next day out, ${found.nextDay}.\n`);
    return { sheets: await crewSheets(register, crewRef, [found.nextDay]), days: [found.nextDay] };
  });
  if (sheets.kind === 'no crew') throw noCrew(crewRef, sheets.nearest);
  if (options.html !== undefined && sheets.sheets.length > 0) {
    writeFileSync(options.html, daySheetHtml(sheets.sheets, sheets.language));
    terminal.err(`Written: ${options.html}\n`);
  }
  if (options.json) {
    const { crewName, nextDay } = sheets;
    terminal.out(jsonText({ crewName, days, sheets: sheets.sheets, nextDay, cautions: CAUTION_LIST }));
  } else if (sheets.sheets.length === 0) terminal.out(nothingText(sheets, days));
  else if (options.html === undefined) terminal.out(sheets.sheets.map(sheetText).join('\n'));
}
