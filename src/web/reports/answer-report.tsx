import type { Child } from 'hono/jsx';
import { refusalInSpanish } from '../../drawing/spanish/refusals.ts';
import { reportPdf } from '../../service/report/pdf-report.ts';
import { reportFonts } from '../../service/report/report-fonts.ts';
import type { ReportResult } from '../../service/report/report-result.ts';
import type { PageContext } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import type { PageLanguage } from '../frame/page-language.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { ReportPage } from './report-page.tsx';

/** That what was asked for is not here: the same whether it is not there or not for this visitor. */
export const NOT_HERE: Problem = {
  status: 404,
  title: 'No such document',
  what: 'There is no document at this address for your sign-in.',
  wayOut: 'The page of documents lists what there is.',
  es: {
    title: 'No existe ese documento',
    what: 'En esta dirección no hay ningún documento para su cuenta.',
    wayOut: 'La página de documentos dice cuáles hay.',
  },
};

/** The language asked for by `?lang=`, else the account's where it is not the office's; null: whatever goes with the document. */
export function wantedLanguage(context: PageContext): PageLanguage | null {
  const asked = context.req.query('lang');
  if (asked === 'en' || asked === 'es') return asked;
  const { visitor } = context.var;
  return visitor.kind === 'account' && visitor.account.role !== 'office' ? visitor.account.language : null;
}

/** The address asked for, changed: another ending, other words of its query. */
function changed(context: PageContext, change: { readonly path?: string; readonly lang?: PageLanguage }): string {
  const url = new URL(context.req.url);
  if (change.lang !== undefined) url.searchParams.set('lang', change.lang);
  const search = url.searchParams.toString();
  return `${change.path ?? url.pathname}${search === '' ? '' : `?${search}`}`;
}

/** Answers with a report as a page, or as PDF where the address ends so; with the reason where there is none. */
export async function answerReport(
  context: PageContext,
  result: ReportResult,
  options: { readonly languages: 'both' | 'one'; readonly fileName: string; readonly beside?: Child },
): Promise<Response> {
  if (result.kind === 'not found') return sayProblem(context, NOT_HERE);
  if (result.kind === 'refused') {
    return sayProblem(context, {
      status: 404,
      title: 'No such document',
      what: `There is none: ${result.reason}.`,
      wayOut: 'Change what is asked for, or see the page of documents.',
      es: {
        title: 'No existe ese documento',
        what: `No lo hay: ${refusalInSpanish(result.reason)}.`,
        wayOut: 'Cambie lo que pide, o vea la página de documentos.',
      },
    });
  }
  const { report } = result;
  const { pathname } = new URL(context.req.url);
  if (pathname.endsWith('.pdf')) {
    const bytes = await reportPdf(report, await reportFonts());
    return context.body(new Uint8Array(bytes), 200, {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="${options.fileName.replace(/[^\w.-]+/g, '-')}.pdf"`,
    });
  }
  return context.html(
    <ReportPage
      report={report}
      frame={frameFor(context)}
      pdfPath={changed(context, { path: `${pathname}.pdf`, lang: report.language })}
      otherPath={
        options.languages === 'one' ? null : changed(context, { lang: report.language === 'es' ? 'en' : 'es' })
      }
    >
      {options.beside}
    </ReportPage>,
  );
}
