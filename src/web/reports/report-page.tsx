import { raw } from 'hono/html';
import type { Child, FC } from 'hono/jsx';
import type { Report } from '../../drawing/report/report.ts';
import { reportBody } from '../../drawing/report/report-html.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { REPORT_PAGE_WORDS } from './report-words.ts';

/** A report as a page, with the way to its PDF. What it says is in the report's own language. */
export const ReportPage: FC<{
  readonly report: Report;
  readonly frame: PageFrame;
  /** Address of the same as PDF. */
  readonly pdfPath: string;
  /** Address of the same in the other language; null where it has one language only. */
  readonly otherPath: string | null;
  readonly children?: Child;
}> = ({ report, frame, pdfPath, otherPath, children }) => {
  const words = REPORT_PAGE_WORDS[report.language];
  return (
    <PageShell title={report.title} section="documents" frame={frame} cautions={false} language={report.language}>
      <ul class="report-ways">
        <li>
          <a href="/documents">{words.back}</a>
        </li>
        <li>
          <a href={pdfPath}>{words.pdf}</a>
        </li>
        {otherPath !== null && (
          <li>
            <a href={otherPath} lang={report.language === 'es' ? 'en' : 'es'}>
              {words.otherLanguage}
            </a>
          </li>
        )}
      </ul>
      {children}
      {raw(reportBody(report))}
    </PageShell>
  );
};
