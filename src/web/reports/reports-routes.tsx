import { Hono } from 'hono';
import { fencesOfOwner } from '../../register/owner-fences.ts';
import { readRecord } from '../../register/record-store.ts';
import { evidenceReportOf } from '../../service/report/evidence-report-of.ts';
import { fenceReportOf } from '../../service/report/fence-report-of.ts';
import { keptPlan } from '../../service/report/kept-plans.ts';
import { letterReportOf } from '../../service/report/letter-report-of.ts';
import { type PlanRequest, reportOfPlan } from '../../service/report/plan-report-of.ts';
import { quoteReportOf } from '../../service/report/quote-report-of.ts';
import type { ReportParts, ReportResult } from '../../service/report/report-result.ts';
import { sheetReportOf } from '../../service/report/sheet-report-of.ts';
import type { AppParts } from '../../service/service.ts';
import { USUAL_TERMS } from '../../service/usual-terms.ts';
import { isCalendarDay } from '../../units/calendar-day.ts';
import { type PageContext, type PageEnv, visibleSites } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { sayProblem } from '../frame/say-problem.tsx';
import { answerReport, NOT_HERE, wantedLanguage } from './answer-report.tsx';
import { DocumentsPage } from './documents-page.tsx';
import { type DocumentsAsked, listDocuments } from './list-documents.ts';
import { QuoteForm, readQuoteQuery } from './quote-form.tsx';

const [FEWEST_YEARS, MOST_YEARS] = [10, 30];

/** A report that is not the visitor's: answered as one that is not there. */
const NONE: ReportResult = { kind: 'not found', what: 'document', nearest: null };

/** Years of a plan from `?years=`; the usual number where it is none from 10 to 30. */
function yearsAsked(context: PageContext): number {
  const years = Number(context.req.query('years') ?? USUAL_TERMS.years);
  return Number.isInteger(years) && years >= FEWEST_YEARS && years <= MOST_YEARS ? years : USUAL_TERMS.years;
}

/** Longest text that is looked for [characters]. */
const LONGEST_SEARCH = 100;

function documentsAsked(context: PageContext): DocumentsAsked {
  const pageOf = (name: string): number => {
    const page = Number(context.req.query(name) ?? '1');
    return Number.isInteger(page) && page > 0 ? page : 1;
  };
  return {
    text: (context.req.query('q') ?? '').trim().slice(0, LONGEST_SEARCH),
    fence: (context.req.query('fence') ?? '').trim().slice(0, LONGEST_SEARCH),
    pages: { fences: pageOf('fences'), sites: pageOf('sites'), owners: pageOf('owners') },
  };
}

/** Reports as pages and as PDF, and the page that lists them. */
export function reportsRoutes({
  register,
  clock,
  config,
  work,
}: Pick<AppParts, 'register' | 'clock' | 'config' | 'work'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();
  const parts: ReportParts = { register, now: clock, officeName: config.officeName };

  const seesSite = (context: PageContext, siteRef: string): boolean => {
    const visible = visibleSites(context.var);
    return visible === null || visible.includes(siteRef);
  };
  const seesFence = async (context: PageContext, ref: string): Promise<boolean> => {
    const fence = await readRecord(register.db, 'fences', ref);
    return fence !== null && seesSite(context, fence.siteRef);
  };
  /** The office sees every owner's plan; a board that of an association all of whose fences it sees. */
  const seesOwner = async (context: PageContext, ref: string): Promise<boolean> => {
    if (visibleSites(context.var) === null) return true;
    const owner = await readRecord(register.db, 'owners', ref);
    const fences = await fencesOfOwner(register.db, ref);
    return owner?.kind === 'association' && fences.every(({ siteRef }) => seesSite(context, siteRef));
  };

  app.get('/documents', async (context) => {
    const { visitor } = context.var;
    if (visitor.kind !== 'account') return sayProblem(context, NOT_HERE);
    const { account } = visitor;
    const asked = documentsAsked(context);
    const listed = await listDocuments(register, { account, visible: visibleSites(context.var), asked, now: clock });
    const language = account.role === 'office' ? 'en' : account.language;
    return context.html(<DocumentsPage listed={listed} language={language} frame={frameFor(context)} />);
  });

  const fence = async (context: PageContext, ref: string) => {
    const result = (await seesFence(context, ref)) ? await fenceReportOf(parts, ref, wantedLanguage(context)) : NONE;
    return answerReport(context, result, { languages: 'both', fileName: `fence-${ref}` });
  };
  app.get('/fences/:ref/report', (context) => fence(context, context.req.param('ref')));
  app.get('/fences/:ref/report.pdf', (context) => fence(context, context.req.param('ref')));

  const evidence = async (context: PageContext, ref: string) => {
    const on = context.req.query('on')?.trim() ?? '';
    if (on !== '' && !isCalendarDay(on)) {
      return sayProblem(context, {
        status: 400,
        title: 'No such day',
        what: `${JSON.stringify(on)} is no day of the calendar.`,
        wayOut: 'Write it as 2025-06-30.',
        es: {
          title: 'No existe ese día',
          what: `${JSON.stringify(on)} no es un día del calendario.`,
          wayOut: 'Escríbalo como 2025-06-30.',
        },
      });
    }
    const request = { ref, on: on === '' ? null : on, language: wantedLanguage(context), currency: null };
    const result = (await seesFence(context, ref)) ? await evidenceReportOf(parts, request) : NONE;
    return answerReport(context, result, {
      languages: 'both',
      fileName: `evidence-${ref}${on === '' ? '' : `-${on}`}`,
    });
  };
  app.get('/fences/:ref/evidence', (context) => evidence(context, context.req.param('ref')));
  app.get('/fences/:ref/evidence.pdf', (context) => evidence(context, context.req.param('ref')));

  const quote = async (context: PageContext, ref: string) => {
    const record = (await seesFence(context, ref)) ? await readRecord(register.db, 'fences', ref) : null;
    const site = record && (await readRecord(register.db, 'sites', record.siteRef));
    if (!site) return sayProblem(context, NOT_HERE);
    const query = readQuoteQuery(new URL(context.req.url).searchParams);
    const { works, taxPercent, validDays } = query;
    const form = (fault: string | null, status: 200 | 400) =>
      context.html(
        <QuoteForm fenceRef={ref} siteName={site.name} query={query} fault={fault} frame={frameFor(context)} />,
        status,
      );
    if (query.fault !== null) return form(query.fault, 400);
    if (works.length === 0) return form(null, 200);
    const request = {
      fenceRef: ref,
      works,
      taxPercent,
      validDays,
      currency: null,
      language: wantedLanguage(context),
    };
    const result = await quoteReportOf(parts, request);
    if (result.kind === 'refused') return form(`No quote: ${result.reason}.`, 400);
    return answerReport(context, result, { languages: 'both', fileName: `quote-${ref}` });
  };
  app.get('/fences/:ref/quote', (context) => quote(context, context.req.param('ref')));
  app.get('/fences/:ref/quote.pdf', (context) => quote(context, context.req.param('ref')));

  const plan = async (context: PageContext, of: PlanRequest['of'], isSeen: boolean) => {
    const request = { of, years: yearsAsked(context), currency: null, language: wantedLanguage(context) };
    const loaded = isSeen ? await keptPlan({ ...parts, work }, request) : NONE;
    const result = loaded.kind === 'plan' ? await reportOfPlan(parts, loaded) : loaded;
    return answerReport(context, result, { languages: 'both', fileName: `plan-${of.ref}` });
  };
  const sitePlan = (context: PageContext, ref: string) => plan(context, { kind: 'site', ref }, seesSite(context, ref));
  const ownerPlan = async (context: PageContext, ref: string) =>
    plan(context, { kind: 'owner', ref }, await seesOwner(context, ref));
  app.get('/sites/:ref/plan', (context) => sitePlan(context, context.req.param('ref')));
  app.get('/sites/:ref/plan.pdf', (context) => sitePlan(context, context.req.param('ref')));
  app.get('/owners/:ref/plan', (context) => ownerPlan(context, context.req.param('ref')));
  app.get('/owners/:ref/plan.pdf', (context) => ownerPlan(context, context.req.param('ref')));

  app.get('/outbox/:id{[0-9]+}/letter.pdf', async (context) =>
    answerReport(context, await letterReportOf(parts, Number(context.req.param('id'))), {
      languages: 'one',
      fileName: `letter-${context.req.param('id')}`,
    }),
  );

  const sheet = async (context: PageContext, crew: string, day: string) => {
    const { visitor } = context.var;
    const own = visitor.kind === 'account' ? visitor.account.crewRef : null;
    const isTheirs = own === null || own === crew;
    const result =
      isTheirs && isCalendarDay(day)
        ? await sheetReportOf(parts, crew, { day, language: wantedLanguage(context) })
        : NONE;
    return answerReport(context, result, { languages: 'both', fileName: `sheet-${crew}-${day}` });
  };
  app.get('/sheets/:crew/:day{[0-9-]+}', (context) =>
    sheet(context, context.req.param('crew'), context.req.param('day')),
  );
  app.get('/sheets/:crew/:file{[0-9-]+\\.pdf}', (context) =>
    sheet(context, context.req.param('crew'), context.req.param('file').replace(/\.pdf$/, '')),
  );
  return app;
}
