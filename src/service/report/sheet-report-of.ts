import { sheetReport } from '../../drawing/report/sheet-report.ts';
import { readSettings } from '../../register/settings-store.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import { type CrewSheets, crewSheets } from '../crew-sheets.ts';
import { makingOf, type ReportParts, type ReportResult } from './report-result.ts';

/**
 * The day sheet of a crew as a report.
 * @param language null: the one that the crew reads
 */
export async function sheetReportOf(
  parts: ReportParts,
  crewRef: string,
  { day, language }: { readonly day: CalendarDay; readonly language: 'en' | 'es' | null },
): Promise<ReportResult> {
  const { register } = parts;
  const found = await crewSheets(register, crewRef, [day]);
  if (found.kind === 'no crew')
    return { kind: 'not found', what: `crew ${JSON.stringify(crewRef)}`, nearest: found.nearest };
  const [sheet] = found.sheets;
  if (!sheet) {
    const reason = noVisitsReason(found, day, language ?? found.language);
    return { kind: 'refused', reason };
  }
  const { timeZone } = await readSettings(register.db);
  const making = await makingOf(parts, { language: language ?? found.language, timeZone });
  return { kind: 'report', report: sheetReport(sheet, making) };
}

/** That a crew has no visits on a day, and when it has. */
function noVisitsReason(
  { crewName, nextDay }: Extract<CrewSheets, { kind: 'sheets' }>,
  day: CalendarDay,
  language: 'en' | 'es',
): string {
  if (language === 'es') {
    const next = nextDay === null ? 'después no hay ninguna planeada' : `la próxima empieza el ${nextDay}`;
    return `${crewName} no tiene visitas el ${day}; ${next}`;
  }
  const next = nextDay === null ? 'none is planned after that' : `the next begins on ${nextDay}`;
  return `${crewName} has no visits on ${day}; ${next}`;
}
