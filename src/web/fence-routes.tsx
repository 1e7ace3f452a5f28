import { Hono } from 'hono';
import { cautionsIn } from '../drawing/cautions.ts';
import { forecastFence } from '../forecast/forecast-fence.ts';
import { explainForecast } from '../forecast/reasons.ts';
import { seasonOneYear } from '../forecast/season-calendar.ts';
import { listFences } from '../register/fence-list.ts';
import { readSettings } from '../register/settings-store.ts';
import { dayInZone } from '../service/clock.ts';
import { forecastSettingsOf } from '../service/run-sweep.ts';
import type { AppParts } from '../service/service.ts';
import { loadFenceDetail } from './fence-detail.ts';
import { FencePageView } from './fence-page.tsx';
import { readFenceQuery } from './fence-query.ts';
import { FencesPage } from './fences-page.tsx';
import { ProblemPage } from './problem-page.tsx';
import { ReasonsPage } from './reasons-page.tsx';

/** The list of fences, one fence, its JSON and its reasons. */
export function fenceRoutes(parts: AppParts): Hono {
  const { register, clock, config, view } = parts;
  const catchesMail = view.catcher !== null;
  const app = new Hono();

  app.get('/', async (context) => {
    const query = readFenceQuery(new URL(context.req.url).searchParams);
    const settings = await readSettings(register.db);
    const [page, sweep] = await Promise.all([listFences(register, query), view.sweepStatus()]);
    return context.html(
      <FencesPage
        page={page}
        query={query}
        sweep={sweep}
        lookAheadSeasons={settings.lookAheadSeasons}
        nightly={`${config.sweepAt} ${config.timeZone ?? settings.timeZone}`}
        catchesMail={catchesMail}
      />,
    );
  });

  const noFence = (ref: string) => (
    <ProblemPage
      title="No such fence"
      what={`The register has no fence with the ref ${JSON.stringify(ref)}.`}
      wayOut="Refs are compared letter by letter, capitals too. The list has a field to look for it."
      catchesMail={catchesMail}
    />
  );

  app.get('/fences/:name', async (context) => {
    const name = context.req.param('name');
    const detail = await loadFenceDetail(register, name);
    if (detail) return context.html(<FencePageView detail={detail} catchesMail={catchesMail} />);
    if (!name.endsWith('.json')) return context.html(noFence(name), 404);
    const ref = name.slice(0, -'.json'.length);
    const found = await loadFenceDetail(register, ref);
    if (!found) {
      return context.json({ error: `no fence with the ref ${JSON.stringify(ref)}`, wayOut: 'see the list at /' }, 404);
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

  app.get('/fences/:ref/reasons', async (context) => {
    const ref = context.req.param('ref');
    const detail = await loadFenceDetail(register, ref);
    if (!detail) return context.html(noFence(ref), 404);
    const { facts, site } = detail;
    const settings = forecastSettingsOf(await readSettings(register.db));
    const year = seasonOneYear(facts.site.seasonWindow, dayInZone(clock(), site.timeZone));
    const { seasons } = forecastFence(facts, year, settings);
    const asked = context.req.query('season');
    if (asked !== undefined && !seasons.some(({ label }) => label === asked)) {
      return context.html(
        <ProblemPage
          title="No such season"
          what={`The forecast of fence ${ref} has no season ${JSON.stringify(asked)}.`}
          wayOut={`There are ${seasons.map(({ label }) => label).join(', ')}.`}
          catchesMail={catchesMail}
        />,
        404,
      );
    }
    const reasons = explainForecast(facts, year, settings, {
      which: context.req.query('of') === 'ends' ? 'ends' : 'line posts',
      ...(asked === undefined ? {} : { seasonLabel: asked }),
    });
    return context.html(
      <ReasonsPage reasons={reasons} seasons={seasons} units={site.units} catchesMail={catchesMail} />,
    );
  });
  return app;
}
