import type { ChartLanguage } from '../../drawing/chart-words.ts';
import type { ReportMaking } from '../../drawing/report/fence-report.ts';
import type { Report } from '../../drawing/report/report.ts';
import type { Register } from '../../register/database.ts';
import { readSettings } from '../../register/settings-store.ts';
import { type Clock, dayInZone, isoUtc, momentInZone } from '../clock.ts';

/** What every report is made with. */
export interface ReportParts {
  readonly register: Register;
  readonly now: Clock;
  /** Name of the office; the register's own setting where null. */
  readonly officeName: string | null;
}

/** A report, or why there is none. */
export type ReportResult =
  | { readonly kind: 'report'; readonly report: Report }
  /** What was asked for is not in the register; `nearest` is what may have been meant. */
  | { readonly kind: 'not found'; readonly what: string; readonly nearest: string | null }
  /** It is there, but there is no such report of it. */
  | { readonly kind: 'refused'; readonly reason: string };

/** Who makes a report, when, in which language. */
export async function makingOf(
  { register, now, officeName }: ReportParts,
  of: { readonly language: ChartLanguage; readonly timeZone: string },
): Promise<ReportMaking> {
  const author = officeName ?? (await readSettings(register.db)).companyName;
  const madeAt = isoUtc(now());
  return {
    language: of.language,
    author,
    madeAt,
    madeOn: dayInZone(now(), of.timeZone),
    madeThere: momentInZone(madeAt, of.timeZone),
    timeZone: of.timeZone,
  };
}
