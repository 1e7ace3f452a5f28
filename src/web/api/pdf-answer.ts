import { reportPdf } from '../../service/report/pdf-report.ts';
import { reportFonts } from '../../service/report/report-fonts.ts';
import type { ReportResult } from '../../service/report/report-result.ts';
import type { PageContext } from '../access/visitor.ts';
import { apiProblem, notThere, problemAnswer } from './api-problem.ts';

const TYPE = 'application/pdf';

/** How the answers of a document are declared. */
export const pdfAnswers = (without: string) => ({
  200: {
    description: 'the document',
    content: { [TYPE]: { schema: { type: 'string' as const, contentEncoding: 'binary' } } },
  },
  404: problemAnswer(without),
});

/** Answers with a report as PDF, or with the reason why there is none. */
export async function answerPdf(context: PageContext, result: ReportResult, fileName: string): Promise<never> {
  if (result.kind === 'not found') {
    const nearest = result.nearest === null ? '' : `; did you mean ${result.nearest}?`;
    const problem = notThere(
      `there is no ${result.what}${nearest}`,
      'refs are compared letter by letter, capitals too',
    );
    return apiProblem(context, problem) as never;
  }
  if (result.kind === 'refused') {
    const problem = notThere(`there is no such document: ${result.reason}`, 'change what is asked for');
    return apiProblem(context, problem) as never;
  }
  const bytes = await reportPdf(result.report, await reportFonts());
  return context.body(new Uint8Array(bytes), 200, {
    'Content-Type': TYPE,
    'Content-Disposition': `inline; filename="${fileName.replace(/[^\w.-]+/g, '-')}.pdf"`,
  }) as never;
}
