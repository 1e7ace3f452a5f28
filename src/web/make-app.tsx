import { Hono } from 'hono';
import type { App, AppParts } from '../service/service.ts';
import { feedRoutes } from './feed-routes.ts';
import { fenceRoutes } from './fence-routes.tsx';
import { isFontName, readFont } from './font-files.ts';
import { mailRoutes } from './mail-routes.tsx';
import { outboxRoutes } from './outbox-routes.tsx';
import { ICON_SVG } from './page-shell.tsx';
import { ProblemPage } from './problem-page.tsx';
import { hostCheck, securityHeaders } from './security.ts';
import { STYLESHEET, STYLESHEET_PATH } from './stylesheet.ts';

const FOR_A_YEAR = 'public, max-age=31536000, immutable';

/** The pages, figures and health answers of the service, as a fetch handler. */
export function makeApp(parts: AppParts): App & Pick<Hono, 'request'> {
  const { view, config, log } = parts;
  const app = new Hono();
  const catchesMail = view.catcher !== null;
  app.use(securityHeaders);
  app.use(hostCheck([new URL(config.publicUrl).hostname]));

  app.use(async (context, next) => {
    if (context.req.method === 'GET' || context.req.method === 'HEAD') return next();
    return context.text('These pages can only be read: ask with GET.\n', 405, { Allow: 'GET, HEAD' });
  });

  app.get('/healthz', (context) => {
    const health = view.health();
    return context.json(health, health.ok ? 200 : 503);
  });
  app.get('/readyz', async (context) => {
    const readiness = await view.readiness();
    return context.json(readiness, readiness.ok ? 200 : 503);
  });
  app.get('/metrics', async (context) =>
    context.body(await view.metrics.text(), 200, { 'Content-Type': view.metrics.contentType }),
  );
  app.get(STYLESHEET_PATH, (context) =>
    context.body(STYLESHEET, 200, { 'Content-Type': 'text/css; charset=utf-8', 'Cache-Control': FOR_A_YEAR }),
  );
  app.get('/icon.svg', (context) =>
    context.body(ICON_SVG, 200, { 'Content-Type': 'image/svg+xml', 'Cache-Control': 'public, max-age=86400' }),
  );
  app.get('/fonts/:name', async (context) => {
    const name = context.req.param('name');
    if (!isFontName(name)) return context.notFound();
    const bytes = await readFont(name);
    return context.body(new Uint8Array(bytes), 200, { 'Content-Type': 'font/ttf', 'Cache-Control': FOR_A_YEAR });
  });
  app.route('/', fenceRoutes(parts));
  app.route('/', outboxRoutes(parts));
  app.route('/', feedRoutes(parts));
  if (view.catcher) app.route('/', mailRoutes(view.catcher));

  app.notFound((context) =>
    context.html(
      <ProblemPage
        title="Nothing here"
        what={`There is no page at ${context.req.path}.`}
        wayOut="The address may be mistyped, or the fence may have been renamed in the register."
        catchesMail={catchesMail}
      />,
      404,
    ),
  );
  app.onError((error, context) => {
    log.error({ err: error, path: context.req.path }, 'a page could not be made');
    return context.html(
      <ProblemPage
        title="That did not work"
        what="The page could not be made. Nothing in the register was changed."
        wayOut="Try again in a moment. If it stays, the service's log says why; look for this address there."
        catchesMail={catchesMail}
      />,
      500,
    );
  });
  return app;
}
