import { cautionsIn } from '../../drawing/cautions.ts';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { quoteReport } from '../../drawing/report/quote-report.ts';
import { paperFor } from '../../drawing/report/report.ts';
import { loadFenceParties } from '../../register/fence-parties-store.ts';
import { type FenceQuoteRequest, fenceQuote } from '../fence-quote.ts';
import { makingOf, type ReportParts, type ReportResult } from './report-result.ts';

/** A quote that is asked for as a report; in the first owner's language where null. */
export type QuoteReportRequest = Pick<
  FenceQuoteRequest,
  'fenceRef' | 'works' | 'taxPercent' | 'validDays' | 'currency'
> & {
  readonly language: ChartLanguage | null;
};

/** A quote for works at one fence, issued today, as a report. */
export async function quoteReportOf(parts: ReportParts, request: QuoteReportRequest): Promise<ReportResult> {
  const { register, now } = parts;
  const { fenceRef } = request;
  const parties = (await loadFenceParties(register, [fenceRef])).get(fenceRef);
  const language = request.language ?? parties?.owners[0]?.language ?? 'en';
  const result = await fenceQuote(register, { ...request, language, cautions: cautionsIn(language).all, now });
  if (result.kind === 'no such fence' || !parties) {
    const nearest = result.kind === 'no such fence' ? result.nearest : null;
    return { kind: 'not found', what: `fence ${JSON.stringify(fenceRef)}`, nearest };
  }
  if (result.kind === 'refused') return result;
  const making = await makingOf(parts, { language, timeZone: parties.site.timeZone });
  const { quote, shippedPrices } = result;
  return {
    kind: 'report',
    report: quoteReport(quote, {
      ...making,
      paper: paperFor(parties.site.units),
      hasShippedPrices: shippedPrices.length > 0,
    }),
  };
}
