import { Hono } from 'hono';
import type { CrewRecord } from '../../register/crew-record.ts';
import { plainCells, recordCells } from '../../register/csv/record-cells.ts';
import { fenceSummaries, standingCounts } from '../../register/fence-summaries.ts';
import { listEdits } from '../../register/record-edit-store.ts';
import { recordPage } from '../../register/record-pages.ts';
import { listRecords, readRecord } from '../../register/record-store.ts';
import type { SiteRecord } from '../../register/site-record.ts';
import { seasonWindow } from '../../register/storm-season-record.ts';
import { type Place, roundTripHours } from '../../season/travel.ts';
import type { AppParts } from '../../service/service.ts';
import type { PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { askedPage } from './asked-page.ts';
import { type CrewWay, SitePage, SitesPage } from './sites-pages.tsx';

const EDITS_SHOWN = 20;

const NO_SITE: Problem = {
  status: 404,
  title: 'No such site',
  what: 'The register has no site of that ref.',
  wayOut: 'Refs are compared letter by letter, capitals too. The list of sites has a field to look for one.',
};

const placeOf = (latitude: number | null, longitude: number | null): Place | null =>
  latitude === null || longitude === null ? null : { latitude, longitude };

function wayOf(crew: CrewRecord, site: SiteRecord): CrewWay {
  const [base, there] = [placeOf(crew.baseLatitude, crew.baseLongitude), placeOf(site.latitude, site.longitude)];
  const hours = base && there ? roundTripHours(base, there, crew.speedMps) / 2 : null;
  return { crewRef: crew.ref, name: crew.name, hours };
}

/** Sites: the list and one of them. */
export function sitesRoutes({ register }: Pick<AppParts, 'register'>): Hono<PageEnv> {
  const { db } = register;
  const app = new Hono<PageEnv>();

  app.get('/sites', async (context) => {
    const asked = askedPage(context);
    const list = await recordPage(db, 'sites', asked);
    const standings = await standingCounts(db, { siteRefs: list.records.map(({ ref }) => ref) });
    return context.html(<SitesPage frame={frameFor(context)} list={list} text={asked.text} standings={standings} />);
  });

  app.get('/sites/:ref', async (context) => {
    const site = await readRecord(db, 'sites', context.req.param('ref'));
    if (!site) return sayProblem(context, NO_SITE);
    const [fences, crews, seasons, edits] = await Promise.all([
      fenceSummaries(db, { siteRefs: [site.ref] }),
      listRecords(db, 'crews'),
      listRecords(db, 'storm-seasons'),
      listEdits(db, 'sites', site.ref, EDITS_SHOWN),
    ]);
    const named = new Map(seasons.map((season) => [season.ref, season]));
    const name = site.stormSeasonRef === null ? null : (named.get(site.stormSeasonRef)?.name ?? null);
    return context.html(
      <SitePage
        frame={frameFor(context)}
        site={site}
        cells={plainCells('sites', recordCells('sites', site, site.units))}
        season={{ name, ...seasonWindow(site, named) }}
        ways={crews.map((crew) => wayOf(crew, site))}
        fences={fences}
        edits={edits}
        done={context.req.query('saved') === undefined ? null : 'Saved. The next sweep judges its fences by this.'}
      />,
    );
  });
  return app;
}
