import { Hono } from 'hono';
import type { ImportRemark } from '../../register/csv/import-report.ts';
import { fenceSummaries } from '../../register/fence-summaries.ts';
import { recordNames } from '../../register/record-pages.ts';
import { readRecord } from '../../register/record-store.ts';
import { dayInZone } from '../../service/clock.ts';
import { enterRows } from '../../service/edit-record.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageContext, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { textField } from '../frame/text-field.ts';
import { type OutcomeRow, outcomeRows, sentFences, sentStorm } from './storm-form.ts';
import { type StormFault, StormsPage, type StormsPageProps } from './storms-page.tsx';

const FIRST_ROW_LINE = 2;
/** Columns that are the same in every row of a report. */
const SHARED = new Set(['storm', 'day', 'gust', 'gust_spread_percent', 'gust_source', 'reported_by']);

/** What was said of rows, of the storm where it is the same for all of them, once each. */
function faultsOf(remarks: readonly ImportRemark[], rows: readonly OutcomeRow[]): readonly StormFault[] {
  const faults = new Map<string, StormFault>();
  for (const { line, column, reason } of remarks) {
    const field = /^gust_(mph|kmh)$/.test(column) ? 'gust' : column;
    const fenceRef = SHARED.has(field) ? null : (rows[line - FIRST_ROW_LINE]?.fenceRef ?? null);
    faults.set(`${fenceRef} ${field} ${reason}`, { fenceRef, field, reason });
  }
  return [...faults.values()];
}

/** The report of a storm for all fences of a site at once. */
export function stormsRoutes({ register, clock, log }: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono<PageEnv> {
  const { db } = register;
  const app = new Hono<PageEnv>();

  const siteAsked = (context: PageContext) => readRecord(db, 'sites', context.req.query('site') ?? '');
  const fenceRefsAt = async (siteRef: string): Promise<readonly string[]> =>
    (await fenceSummaries(db, { siteRefs: [siteRef] }))
      .map(({ ref }) => ref)
      .toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true }));

  const show = async (
    context: PageContext,
    form: Pick<StormsPageProps, 'site' | 'storm' | 'fences' | 'faults' | 'warnings' | 'asked' | 'done'>,
  ) =>
    context.html(
      <StormsPage
        {...form}
        frame={frameFor(context)}
        formToken={formToken(context)}
        sites={await recordNames(db, 'sites')}
      />,
      form.faults.length > 0 ? 400 : 200,
    );

  app.get('/storms', async (context) => {
    const site = await siteAsked(context);
    const day = site ? dayInZone(clock(), site.timeZone) : '';
    const fences = site ? sentFences({}, await fenceRefsAt(site.ref)) : [];
    const stored = context.req.query('stored') ?? '';
    const done = /^\d{1,6}$/.test(stored)
      ? `Stored: ${stored} ${stored === '1' ? 'outcome' : 'outcomes'}. The next sweep takes them in.`
      : null;
    return show(context, {
      site,
      storm: { ...sentStorm({}), day },
      fences,
      faults: [],
      warnings: [],
      asked: false,
      done,
    });
  });

  app.post('/storms', async (context) => {
    const site = await siteAsked(context);
    const form = await context.req.parseBody();
    const storm = sentStorm(form);
    const fences = site ? sentFences(form, await fenceRefsAt(site.ref)) : [];
    const sent = { site, storm, fences, warnings: [], asked: false, done: null };
    const rows = site ? outcomeRows(storm, fences, site.units) : [];
    if (!site || rows.length === 0) {
      const reason = site
        ? 'no fence has a tick or numbers, and what nobody reported is no evidence'
        : 'there is no such site; choose one';
      return show(context, { ...sent, faults: [{ fenceRef: null, field: '', reason }] });
    }
    const by = accountName(context.var);
    const known: string[] = [];
    const report = await enterRows(
      register,
      [{ kind: 'outcomes', rows: rows.map(({ cells }) => cells) }],
      { clock, by, sure: textField(form, 'confirmed') === 'yes' },
      {
        onlyIf: ({ replaced }) => {
          known.push(...replaced.outcomes.map(({ fenceRef }) => fenceRef));
          return known.length === 0;
        },
      },
    );
    const faults = [
      ...faultsOf(report.faults, rows),
      ...[...new Set(known)].map((fenceRef) => ({
        fenceRef,
        field: 'storm',
        reason: 'reported already, and otherwise; correct or take back that report on the page of what was seen there',
      })),
    ];
    if (faults.length > 0) {
      const asked = report.faults.length > 0 && report.faults.every(({ question }) => question === true);
      return show(context, { ...sent, faults, warnings: faultsOf(report.warnings, rows), asked });
    }
    log.info({ by, site: site.ref, storm: storm.storm, outcomes: rows.length }, 'a storm was reported');
    return context.redirect(
      `/storms?site=${encodeURIComponent(site.ref)}&stored=${report.records.outcomes.length}`,
      303,
    );
  });
  return app;
}
