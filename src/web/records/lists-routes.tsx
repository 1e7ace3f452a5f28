import { Hono } from 'hono';
import { usualUnits } from '../../register/record-pages.ts';
import { listRecords } from '../../register/record-store.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import { accountName, type PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { CataloguePage, ClimateZonesPage, CrewsPage, SeasonsPage } from './lists-pages.tsx';
import { RecordsIndexPage } from './records-index-page.tsx';

/** The page that leads to the records, and those kinds that fit on one page. */
export function listsRoutes({ register, view, log }: Pick<AppParts, 'register' | 'view' | 'log'>): Hono<PageEnv> {
  const { db } = register;
  const app = new Hono<PageEnv>();

  app.get('/records', (context) => {
    const swept = context.req.query('sweep');
    const done =
      swept === 'begun'
        ? 'The sweep has begun; the list of fences says how far it is.'
        : swept === 'none'
          ? 'No sweep can begin here just now: it runs with the service, or by “stormpale sweep”.'
          : null;
    return context.html(<RecordsIndexPage frame={frameFor(context)} formToken={formToken(context)} done={done} />);
  });

  app.post('/records/sweep', (context) => {
    const begun = view.begin('sweep');
    log.info({ by: accountName(context.var), begun }, 'a sweep was asked for');
    return context.redirect(`/records?sweep=${begun ? 'begun' : 'none'}`, 303);
  });

  app.get('/catalogue', async (context) => {
    const [lines, materials] = await Promise.all([listRecords(db, 'catalogue'), listRecords(db, 'materials')]);
    return context.html(
      <CataloguePage frame={frameFor(context)} units={await usualUnits(db)} lines={lines} materials={materials} />,
    );
  });

  app.get('/seasons', async (context) =>
    context.html(
      <SeasonsPage
        frame={frameFor(context)}
        units={await usualUnits(db)}
        seasons={await listRecords(db, 'storm-seasons')}
      />,
    ),
  );

  app.get('/climate-zones', async (context) =>
    context.html(
      <ClimateZonesPage
        frame={frameFor(context)}
        units={await usualUnits(db)}
        zones={await listRecords(db, 'climate-zones')}
      />,
    ),
  );

  app.get('/crews', async (context) => {
    const [crews, members, daysOff] = await Promise.all([
      listRecords(db, 'crews'),
      listRecords(db, 'crew-members'),
      listRecords(db, 'days-off'),
    ]);
    return context.html(
      <CrewsPage
        frame={frameFor(context)}
        units={await usualUnits(db)}
        crews={crews}
        members={members}
        daysOff={daysOff}
      />,
    );
  });
  return app;
}
