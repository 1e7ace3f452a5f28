import { Hono } from 'hono';
import { readVisitPhoto } from '../../register/visit-photo-store.ts';
import { visitOfAccount } from '../../service/crew-visit.ts';
import { loadCrews } from '../../service/season-register.ts';
import type { AppParts } from '../../service/service.ts';
import { crewDays } from '../../service/visit-sheet.ts';
import { formToken } from '../access/form-token.ts';
import type { PageEnv } from '../access/visitor.ts';
import { CREW_WORKER_PATH, pageScript, workerScript } from './crew-script.ts';
import { crewAccount, crewVisitor } from './crew-visitor.ts';
import { fenceEntryRoutes } from './fence-entry-routes.tsx';
import { TodayPage } from './today-page.tsx';
import { visitRoutes } from './visit-routes.tsx';

const SCRIPT_TYPE = 'text/javascript; charset=utf-8';

/** What a crew needs in the field: its day, its visits, and the scripts that keep both on the phone. */
export function crewRoutes(parts: Pick<AppParts, 'register' | 'clock'>): Hono<PageEnv> {
  const { register, clock } = parts;
  const app = new Hono<PageEnv>();

  app.get('/today', async (context) => {
    const visitor = crewVisitor(context);
    const own = visitor.account.crewRef;
    const crews = own === null ? await loadCrews(register.db) : [];
    const asked = context.req.query('crew');
    const chosen = own ?? crews.find(({ ref }) => ref === asked)?.ref ?? null;
    const { today, days } = await crewDays(register, chosen === null ? null : [chosen], clock);
    return context.html(<TodayPage visitor={visitor} today={today} days={days} crews={crews} chosen={chosen} />);
  });

  // who is signed in, and what the forms of the session carry: asked before entries that waited are sent
  app.get('/today/session.json', (context) =>
    context.json({ account: crewAccount(context).id, formToken: formToken(context) }),
  );

  app.get('/today/photos/:id{[0-9]+}', async (context) => {
    const found = await readVisitPhoto(register.db, Number(context.req.param('id')));
    if (!found || 'refused' in (await visitOfAccount(register.db, found.photo.uid, crewAccount(context)))) {
      return context.notFound();
    }
    return context.body(new Uint8Array(found.bytes), 200, {
      'Content-Type': found.photo.mediaType,
      'Cache-Control': 'private, max-age=31536000, immutable',
      ETag: `"${found.photo.sha256}"`,
    });
  });

  app.get(CREW_WORKER_PATH, (context) =>
    context.body(workerScript(), 200, { 'Content-Type': SCRIPT_TYPE, 'Cache-Control': 'no-cache' }),
  );
  app.get('/crew-script/:version/:name', (context) => {
    const text = pageScript(context.req.param('version'), context.req.param('name'));
    if (text === null) return context.notFound();
    return context.body(text, 200, {
      'Content-Type': SCRIPT_TYPE,
      'Cache-Control': 'public, max-age=31536000, immutable',
    });
  });

  app.route('/', visitRoutes(parts));
  app.route('/', fenceEntryRoutes(parts));
  return app;
}
