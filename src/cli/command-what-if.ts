import { speedText } from '../drawing/speed-text.ts';
import { whatIfChart } from '../drawing/what-if-chart.ts';
import { type WhatIfTable, whatIfSeasonsTable, whatIfTable } from '../drawing/what-if-table.ts';
import { lifeSentence, whatIfNotes, worksName } from '../drawing/what-if-words.ts';
import { seasonOneYear } from '../forecast/season-calendar.ts';
import { readRecord } from '../register/record-store.ts';
import { fenceOutlook } from '../season/fence-outlook.ts';
import { type WhatIf, whatIf } from '../season/what-if.ts';
import { dayInZone } from '../service/clock.ts';
import { loadCatalogue } from '../service/season-register.ts';
import { isCalendarDay } from '../units/calendar-day.ts';
import { CAUTION_LIST, CAUTIONS } from './cautions.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import type { FenceInRegister } from './fence-in-register.ts';
import { fenceInRegister } from './fence-in-register.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';
import { chartColumns } from './terminal-columns.ts';

/** Options of `what-if`. */
export interface WhatIfOptions extends GlobalOptions {
  /** Day on which the works are thought to be done; today where left out. */
  readonly day?: string;
  readonly json?: boolean;
}

/** The day works are thought to be done on, in the site's zone. Throws `CliError` where it is no day, or before something recorded or today. */
function worksDay(text: string | undefined, today: string, { facts }: FenceInRegister): string {
  const latest = [...facts.works, ...facts.inspections, ...facts.outcomes]
    .map(({ day }) => day)
    .reduce((last, day) => (day > last ? day : last), today);
  if (text === undefined) return latest;
  if (!isCalendarDay(text)) {
    throw new CliError(EXIT.usage, `--day ${JSON.stringify(text)} is not a calendar day`, 'write it as 2026-11-24');
  }
  if (text < latest) {
    throw new CliError(
      EXIT.usage,
      `--day ${text} lies before ${latest === today ? `today, ${today}` : `what is recorded on ${latest}`}`,
      `works are thought of ahead: give ${latest} or a later day, or leave --day out`,
    );
  }
  return text;
}

/** Shows everything that could be done to one fence, side by side with doing nothing. */
export async function runWhatIf(context: CliContext, ref: string, options: WhatIfOptions): Promise<void> {
  const { fence, today, catalogue } = await withExistingRegister(configOf(context, options), async (register) => {
    const found = await fenceInRegister(register, ref, context.clock);
    const record = await readRecord(register.db, 'fences', ref);
    const site = record && (await readRecord(register.db, 'sites', record.siteRef));
    if (!site) throw new Error(`fence ${ref} has no site in the register`);
    return {
      fence: found,
      today: dayInZone(context.clock(), site.timeZone),
      catalogue: await loadCatalogue(register.db),
    };
  });
  const day = worksDay(options.day, today, fence);
  const { facts, settings } = fence;
  const outlook = fenceOutlook(facts, settings, day, seasonOneYear(facts.site.seasonWindow, day));
  const result = whatIf(outlook, catalogue);
  const { terminal } = context;
  if (options.json) {
    const { modelVersion, inputHash } = fence;
    terminal.out(jsonText({ ...result, modelVersion, inputHash, cautions: CAUTION_LIST }));
    return;
  }
  terminal.out(whatIfText(fence, result, terminal.columns));
}

function tableText({ columns, rows }: WhatIfTable): string {
  const headings = columns.map(({ heading, unit }) => (unit === '' ? heading : `${heading}\n${unit}`));
  return plainTable(
    headings,
    rows.map(({ name, cells }, index) => [String(index), name.join('\n'), ...cells]),
    columns.map((_, index) => index).filter((index) => index !== 1),
  );
}

function whatIfText(fence: FenceInRegister, result: WhatIf, columns: number): string {
  const { units } = fence;
  const { day, designGustMps, lifeGust, leftOut, nothing } = result;
  const first = nothing.seasons[0]!;
  return [
    `Fence ${fence.ref}, ${fence.siteName}: what if something were done on ${day}`,
    '',
    `Middle values of season ${first.label}; design gust ${speedText(designGustMps, units)}. Snap, lean and risk are those of the posts it is judged by; ends: where its end posts snap.`,
    lifeSentence(lifeGust, units),
    'Prices before tax, from a works catalogue of orders of magnitude: the office has its own.',
    '',
    tableText(whatIfTable(result, units)),
    `Snap / lean speed season by season, ${units === 'us' ? 'mph' : 'km/h'}:`,
    tableText(whatIfSeasonsTable(result, units)),
    ...whatIfChart(result, { units, columns: chartColumns(columns), rows: 16 }),
    '',
    ...whatIfNotes(result),
    ...leftOut.map(({ kind, reason }) => `No ${worksName(kind)}: ${reason}.`),
    `Model ${fence.modelVersion}, inputs ${fence.inputHash}`,
    CAUTIONS,
  ].join('\n');
}
