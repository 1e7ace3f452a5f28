import { createRoute, z } from '@hono/zod-openapi';
import { evidenceReportOf } from '../../service/report/evidence-report-of.ts';
import { fenceReportOf } from '../../service/report/fence-report-of.ts';
import { keptPlan } from '../../service/report/kept-plans.ts';
import { letterReportOf } from '../../service/report/letter-report-of.ts';
import { reportOfPlan } from '../../service/report/plan-report-of.ts';
import { quoteReportOf } from '../../service/report/quote-report-of.ts';
import type { ReportParts } from '../../service/report/report-result.ts';
import { sheetReportOf } from '../../service/report/sheet-report-of.ts';
import type { AppParts } from '../../service/service.ts';
import { USUAL_TERMS } from '../../service/usual-terms.ts';
import type { Api } from './api.ts';
import { day, idParam, jsonBody, refParam } from './api-schemas.ts';
import { answerPdf, pdfAnswers } from './pdf-answer.ts';
import { quoteWish } from './quote-schemas.ts';

const lang = z
  .enum(['en', 'es'])
  .optional()
  .describe("its language; unless given that of the fence's first owner, or of whoever pays");
const tags = ['Documents'];

/** The documents of the pages as PDF: made from the same parts, page for page the same. */
export function addReports(
  api: Api,
  { register, clock, config, work }: Pick<AppParts, 'register' | 'clock' | 'config' | 'work'>,
): void {
  const parts: ReportParts = { register, now: clock, officeName: config.officeName };

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/fences/{ref}/report.pdf',
      tags,
      summary: 'The report of a fence as it is believed today',
      request: { params: refParam, query: z.object({ lang }) },
      responses: pdfAnswers('no such fence'),
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const result = await fenceReportOf(parts, ref, context.req.valid('query').lang ?? null);
      return answerPdf(context, result, `fence-${ref}`);
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/fences/{ref}/evidence.pdf',
      tags,
      summary:
        'The evidence file of a fence, as it was believed on a day: inspections, storms, works, notices, answers',
      request: {
        params: refParam,
        query: z.object({ lang, on: day('a day that is past; today unless given').optional() }),
      },
      responses: pdfAnswers('no such fence, or none yet on that day'),
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const { lang: language = null, on = null } = context.req.valid('query');
      const result = await evidenceReportOf(parts, { ref, on, language, currency: null });
      return answerPdf(context, result, `evidence-${ref}${on === null ? '' : `-${on}`}`);
    },
  );

  api.openapi(
    createRoute({
      method: 'post',
      path: '/api/v1/fences/{ref}/quote.pdf',
      tags,
      summary: 'A quote for works at a fence, issued today; it is not stored and offers nothing',
      request: { params: refParam, body: jsonBody(quoteWish.extend({ lang }).openapi('QuotePdfWish')) },
      responses: pdfAnswers('no such fence, or works that cannot be done there'),
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const { lang: language = null, ...wanted } = context.req.valid('json');
      return answerPdf(context, await quoteReportOf(parts, { fenceRef: ref, ...wanted, language }), `quote-${ref}`);
    },
  );

  for (const kind of ['site', 'owner'] as const) {
    api.openapi(
      createRoute({
        method: 'get',
        path: `/api/v1/${kind}s/{ref}/plan.pdf`,
        tags,
        summary: `The replacement plan of ${kind === 'site' ? 'the fences that a site keeps in common' : "an owner's fences"}, year by year; takes some tenths of a second a fence`,
        request: {
          params: refParam,
          query: z.object({ lang, years: z.coerce.number().int().min(10).max(30).default(USUAL_TERMS.years) }),
        },
        responses: pdfAnswers(`no such ${kind}, or one without fences`),
      }),
      async (context) => {
        const { ref } = context.req.valid('param');
        const { lang: language = null, years } = context.req.valid('query');
        const loaded = await keptPlan({ ...parts, work }, { of: { kind, ref }, years, currency: null, language });
        const result = loaded.kind === 'plan' ? await reportOfPlan(parts, loaded) : loaded;
        return answerPdf(context, result, `plan-${ref}`);
      },
    );
  }

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/outbox/{id}/letter.pdf',
      tags,
      summary: 'A letter of the outbox to print, word for word as it was written',
      request: { params: idParam },
      responses: pdfAnswers('no such message, or a mail'),
    }),
    async (context) => {
      const { id } = context.req.valid('param');
      return answerPdf(context, await letterReportOf(parts, id), `letter-${id}`);
    },
  );

  api.openapi(
    createRoute({
      method: 'get',
      path: '/api/v1/crews/{ref}/sheet.pdf',
      tags,
      summary: "A crew's day sheet to print",
      request: { params: refParam, query: z.object({ day: day('the day'), lang }) },
      responses: pdfAnswers('no such crew, or no visits on that day'),
    }),
    async (context) => {
      const { ref } = context.req.valid('param');
      const { day: asked, lang: language = null } = context.req.valid('query');
      return answerPdf(context, await sheetReportOf(parts, ref, { day: asked, language }), `sheet-${ref}-${asked}`);
    },
  );
}
