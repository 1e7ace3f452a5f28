import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { fenceReport } from '../../drawing/report/fence-report.ts';
import { loadReportedFence } from './load-reported-fence.ts';
import { makingOf, type ReportParts, type ReportResult } from './report-result.ts';

/** The report of one fence as it is believed today; in its first owner's language unless another is given. */
export async function fenceReportOf(
  parts: ReportParts,
  ref: string,
  language: ChartLanguage | null,
): Promise<ReportResult> {
  const loaded = await loadReportedFence(parts, ref, null);
  if (loaded.kind !== 'fence') return loaded;
  const { site, owners } = loaded.parties;
  const making = await makingOf(parts, { language: language ?? owners[0]?.language ?? 'en', timeZone: site.timeZone });
  return { kind: 'report', report: fenceReport(loaded.fence, making) };
}
