import { Hono } from 'hono';
import { writeCsv } from '../../register/csv/csv-text.ts';
import { inCurrency, type PlainRow } from '../../season/money/plain-row.ts';
import { reserveFenceRows, reserveYearRows } from '../../season/money/reserve-rows.ts';
import { keptPlan } from '../../service/report/kept-plans.ts';
import type { LoadedPlan } from '../../service/report/plan-report-of.ts';
import type { AppParts } from '../../service/service.ts';
import { USUAL_TERMS } from '../../service/usual-terms.ts';
import { type PageContext, type PageEnv, visibleSites } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { sayProblem } from '../frame/say-problem.tsx';
import { BoardPage } from './board-page.tsx';
import { boardSites } from './board-sites.ts';

/** After how long the browser asks again for plans that are being worked out [s]. */
const ASK_AGAIN_S = 4;

function yearsAsked(context: PageContext): number {
  const years = Number(context.req.query('years') ?? USUAL_TERMS.years);
  return Number.isInteger(years) && years >= 10 && years <= 30 ? years : USUAL_TERMS.years;
}

/** The page on which a board begins, and its plan for a spreadsheet. */
export function boardRoutes({ register, clock, work }: Pick<AppParts, 'register' | 'clock' | 'work'>): Hono<PageEnv> {
  const app = new Hono<PageEnv>();
  const parts = { register, now: clock, work };

  app.get('/board', async (context) => {
    const { visitor } = context.var;
    const language = visitor.kind === 'account' ? visitor.account.language : 'en';
    const years = yearsAsked(context);
    const sites = await boardSites(parts, {
      visible: visibleSites(context.var) ?? [],
      years,
      language,
    });
    if (sites.some(({ plan }) => plan === null)) context.header('Refresh', String(ASK_AGAIN_S));
    return context.html(<BoardPage sites={sites} years={years} language={language} frame={frameFor(context)} />);
  });

  const csv = async (
    context: PageContext,
    siteRef: string,
    name: string,
    rowsOf: (plan: LoadedPlan) => readonly PlainRow[],
  ) => {
    const isSeen = visibleSites(context.var)?.includes(siteRef) ?? false;
    const of = { kind: 'site', ref: siteRef } as const;
    const plan = isSeen
      ? await keptPlan(parts, { of, years: yearsAsked(context), currency: null, language: null })
      : null;
    if (plan?.kind !== 'plan') {
      return sayProblem(context, {
        status: 404,
        title: 'No such plan',
        what: 'There is no plan at this address for your sign-in.',
        wayOut: 'The page of your fences lists what there is.',
        es: {
          title: 'No existe ese plan',
          what: 'En esta dirección no hay ningún plan para su cuenta.',
          wayOut: 'La página de sus cercas dice cuáles hay.',
        },
      });
    }
    const rows = inCurrency(rowsOf(plan), plan.reported.currency);
    const cells = [Object.keys(rows[0] ?? {}), ...rows.map((row) => Object.values(row))];
    return context.body(writeCsv(cells), 200, {
      'Content-Type': 'text/csv; charset=utf-8',
      'Content-Disposition': `attachment; filename="plan-${siteRef.replace(/[^\w.-]+/g, '-')}-${name}.csv"`,
    });
  };
  app.get('/board/:site/years.csv', (context) =>
    csv(context, context.req.param('site'), 'years', ({ money }) => reserveYearRows(money.plan)),
  );
  app.get('/board/:site/fences.csv', (context) =>
    csv(context, context.req.param('site'), 'fences', ({ money }) => reserveFenceRows(money.plan)),
  );
  return app;
}
