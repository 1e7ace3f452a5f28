import { setImmediate } from 'node:timers/promises';
import { Hono } from 'hono';
import { cautionsIn } from '../../drawing/cautions.ts';
import { forecastFence } from '../../forecast/forecast-fence.ts';
import { explainForecast } from '../../forecast/reasons.ts';
import { seasonOneYear } from '../../forecast/season-calendar.ts';
import type { Register } from '../../register/database.ts';
import { everyFence, listFences } from '../../register/fence-list.ts';
import { recordsWhereIn } from '../../register/record-store.ts';
import { readSettings } from '../../register/settings-store.ts';
import { dayInZone } from '../../service/clock.ts';
import { compareAll, compareChosen, moneyOfFence } from '../../service/fence-ahead.ts';
import { planBesideMoney } from '../../service/plan-beside-money.ts';
import { forecastSettingsOf } from '../../service/run-sweep.ts';
import type { AppParts } from '../../service/service.ts';
import type { ServiceView, SweepStatus } from '../../service/service-view.ts';
import { isDueNow } from '../../service/works-meanwhile.ts';
import { accountLanguage, type PageContext, type PageEnv, visibleSites } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { sayProblem } from '../frame/say-problem.tsx';
import { fenceCsv } from './fence-csv.ts';
import { type FenceDetail, loadFenceDetail } from './fence-detail.ts';
import { FencePageView } from './fence-page.tsx';
import { readFenceQuery } from './fence-query.ts';
import { FencesPage } from './fences-page.tsx';
import { ReasonsPage } from './reasons-page.tsx';
import { readWorksChoice } from './what-if-choice.ts';
import { WhatIfPage } from './what-if-page.tsx';

/** Where the sweep stands; for whoever sees some sites only, without what it says of the others' fences. */
async function visibleSweep(
  register: Register,
  view: Pick<ServiceView, 'sweepStatus'>,
  visible: readonly string[] | null,
): Promise<SweepStatus> {
  const sweep = await view.sweepStatus();
  if (visible === null) return sweep;
  const refs = sweep.failures.map(({ ref }) => ref);
  const fences = await recordsWhereIn(register.db, 'fences', 'ref', refs);
  const seen = new Set(fences.filter(({ siteRef }) => visible.includes(siteRef)).map(({ ref }) => ref));
  return { ...sweep, progress: null, failures: sweep.failures.filter(({ ref }) => seen.has(ref)) };
}

/** The list of fences, one fence, its JSON and its reasons. */
export function fenceRoutes(parts: AppParts): Hono<PageEnv> {
  const { register, clock, config, view } = parts;
  const app = new Hono<PageEnv>();

  app.get('/fences', async (context) => {
    const query = readFenceQuery(new URL(context.req.url).searchParams);
    const settings = await readSettings(register.db);
    const visible = visibleSites(context.var);
    const [page, sweep] = await Promise.all([
      listFences(register, query, visible),
      visibleSweep(register, view, visible),
    ]);
    return context.html(
      <FencesPage
        page={page}
        query={query}
        sweep={sweep}
        lookAheadSeasons={settings.lookAheadSeasons}
        nightly={`${config.sweepAt} ${config.timeZone ?? settings.timeZone}`}
        language={accountLanguage(context.var)}
        frame={frameFor(context)}
      />,
    );
  });

  app.get('/fences.csv', async (context) => {
    const query = readFenceQuery(new URL(context.req.url).searchParams);
    const lines = fenceCsv(everyFence(register, query, visibleSites(context.var)));
    const encoder = new TextEncoder();
    // taken as fast as the reader reads; pages of others are answered between two chunks
    const body = new ReadableStream<Uint8Array>({
      pull: async (controller) => {
        await setImmediate();
        const next = await lines.next();
        if (next.done) controller.close();
        else controller.enqueue(encoder.encode(next.value));
      },
      cancel: async () => {
        await lines.return(undefined);
      },
    });
    return context.body(body, 200, {
      'Content-Type': 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': 'attachment; filename="fences.csv"',
    });
  });

  /** A fence that the visitor may see; null for one that is not there, and for one that is but not for them. */
  const seenFence = async (context: PageContext, ref: string): Promise<FenceDetail | null> => {
    const detail = await loadFenceDetail(register, ref);
    const visible = visibleSites(context.var);
    return detail && (visible === null || visible.includes(detail.site.ref)) ? detail : null;
  };

  const noFence = (context: PageContext, ref: string) =>
    sayProblem(context, {
      status: 404,
      title: 'No such fence',
      what: `There is no fence with the ref ${JSON.stringify(ref)} here.`,
      wayOut: 'Refs are compared letter by letter, capitals too. The list has a field to look for it.',
      es: {
        title: 'No existe esa cerca',
        what: `Aquí no hay ninguna cerca con la clave ${JSON.stringify(ref)}.`,
        wayOut: 'Las claves se comparan letra por letra, con mayúsculas. La lista tiene un campo para buscarla.',
      },
    });

  app.get('/fences/:name', async (context) => {
    const name = context.req.param('name');
    const detail = await seenFence(context, name);
    if (detail) {
      const { visitor } = context.var;
      const role = visitor.kind === 'account' ? visitor.account.role : null;
      const money = role === 'crew' || !detail.swept ? null : await moneyOfFence(register, detail, clock);
      const language = accountLanguage(context.var);
      const today = dayInZone(clock(), detail.site.timeZone);
      const beside =
        money && isDueNow(money)
          ? await planBesideMoney(register, detail.fence.ref, { today, plans: role !== 'board' })
          : null;
      const page = { detail, money, beside, role, language, frame: frameFor(context) };
      return context.html(<FencePageView {...page} />);
    }
    if (!name.endsWith('.json')) return noFence(context, name);
    const ref = name.slice(0, -'.json'.length);
    const found = await seenFence(context, ref);
    if (!found) {
      return context.json(
        { error: `no fence with the ref ${JSON.stringify(ref)}`, wayOut: 'see the list at /fences' },
        404,
      );
    }
    const { fence, site, owners, evidence, swept } = found;
    return context.json({
      fence,
      site,
      owners,
      inspections: evidence.inspections.map(({ record, readings }) => ({ ...record, readings })),
      outcomes: evidence.outcomes,
      computedAt: swept?.stored.computedAt ?? null,
      inputHash: swept?.stored.inputHash ?? null,
      standing: swept?.stored.standing ?? null,
      endsStanding: swept?.stored.endsStanding ?? null,
      forecast: swept?.forecast ?? null,
      cautions: cautionsIn('en').all,
    });
  });

  app.get('/fences/:ref/what-if', async (context) => {
    const ref = context.req.param('ref');
    const detail = await seenFence(context, ref);
    if (!detail) return noFence(context, ref);
    const search = new URL(context.req.url).searchParams;
    const choice = readWorksChoice(search);
    const compared = await compareChosen(register, detail, choice, clock);
    return context.html(
      <WhatIfPage
        fenceRef={ref}
        siteName={detail.site.name}
        units={detail.site.units}
        choice={choice}
        compared={compared}
        everything={search.get('all') === 'yes' ? await compareAll(register, detail, clock) : null}
        language={accountLanguage(context.var)}
        frame={frameFor(context)}
      />,
    );
  });

  app.get('/fences/:ref/reasons', async (context) => {
    const ref = context.req.param('ref');
    const detail = await seenFence(context, ref);
    if (!detail) return noFence(context, ref);
    const { facts, site } = detail;
    const settings = forecastSettingsOf(await readSettings(register.db));
    const year = seasonOneYear(facts.site.seasonWindow, dayInZone(clock(), site.timeZone));
    const { seasons } = forecastFence(facts, year, settings);
    const asked = context.req.query('season');
    if (asked !== undefined && !seasons.some(({ label }) => label === asked)) {
      return sayProblem(context, {
        status: 404,
        title: 'No such season',
        what: `The forecast of fence ${ref} has no season ${JSON.stringify(asked)}.`,
        wayOut: `There are ${seasons.map(({ label }) => label).join(', ')}.`,
        es: {
          title: 'No existe esa temporada',
          what: `El pronóstico de la cerca ${ref} no tiene ninguna temporada ${JSON.stringify(asked)}.`,
          wayOut: `Hay estas: ${seasons.map(({ label, season }) => (season === null ? 'nueva' : label)).join(', ')}.`,
        },
      });
    }
    const reasons = explainForecast(facts, year, settings, {
      which: context.req.query('of') === 'ends' ? 'ends' : 'line posts',
      ...(asked === undefined ? {} : { seasonLabel: asked }),
    });
    return context.html(
      <ReasonsPage
        reasons={reasons}
        seasons={seasons}
        units={site.units}
        language={accountLanguage(context.var)}
        frame={frameFor(context)}
      />,
    );
  });
  return app;
}
