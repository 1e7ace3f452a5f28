import { sheetReport } from '../../drawing/report/sheet-report.ts';
import { readSettings } from '../../register/settings-store.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { crewSheets } from '../crew-sheets.ts';
import { makingOf, type ReportParts, type ReportResult } from './report-result.ts';

/** The day sheet of a crew as a report. */
export async function sheetReportOf(parts: ReportParts, crewRef: string, day: CalendarDay): Promise<ReportResult> {
  const { register } = parts;
  const found = await crewSheets(register, crewRef, [day]);
  if (found.kind === 'no crew')
    return { kind: 'not found', what: `crew ${JSON.stringify(crewRef)}`, nearest: found.nearest };
  const [sheet] = found.sheets;
  if (!sheet) {
    const next = found.nextDay === null ? 'none is planned after that' : `the next begins on ${found.nextDay}`;
    return { kind: 'refused', reason: `${found.crewName} has no visits on ${day}; ${next}` };
  }
  const { timeZone } = await readSettings(register.db);
  return { kind: 'report', report: sheetReport(sheet, await makingOf(parts, { language: 'en', timeZone })) };
}
