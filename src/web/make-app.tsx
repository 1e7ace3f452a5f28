import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { LARGEST_PHOTO } from '../service/enter-visit-photo.ts';
import type { App, AppParts } from '../service/service.ts';
import { authorize, noteCircumstances } from './access/authorization.ts';
import { formsFromHereOnly } from './access/csrf.ts';
import { hostCheck, securityHeaders } from './access/security.ts';
import type { PageContext, PageEnv } from './access/visitor.ts';
import { accountsRoutes } from './accounts/accounts-routes.tsx';
import { ownAccountRoutes } from './accounts/own-account-routes.tsx';
import { setupRoutes } from './accounts/setup-routes.tsx';
import { signInRoutes } from './accounts/sign-in-routes.tsx';
import { feedRoutes } from './calendar/feed-routes.ts';
import { crewRoutes } from './crew/crew-routes.tsx';
import { fenceRoutes } from './fences/fence-routes.tsx';
import { isFontName, readFont } from './frame/font-files.ts';
import { beginningOf } from './frame/navigation.ts';
import { ICON_SVG } from './frame/page-shell.tsx';
import { type Problem, sayProblem } from './frame/say-problem.tsx';
import { STYLESHEET, STYLESHEET_PATH } from './frame/stylesheet.ts';
import { mailRoutes } from './mail/mail-routes.tsx';
import { outboxRoutes } from './mail/outbox-routes.tsx';
import { ownerRoutes } from './owner/owner-routes.tsx';

const FOR_A_YEAR = 'public, max-age=31536000, immutable';

/** Largest form that is read [bytes]. */
const LARGEST_FORM = 64 * 1024;
/** Where a picture is sent, and how large a form with one may be [bytes]: the fields beside it are small. */
const PHOTO_PATH = /^\/today\/visits\/[^/]+\/fences\/[^/]+\/photos$/;
const LARGEST_PHOTO_FORM = LARGEST_PHOTO + LARGEST_FORM;

const NO_PAGE = 'The address may be mistyped, or the fence may have been renamed in the register.';
const TOO_LARGE: Problem = {
  status: 413,
  title: 'Too much at once',
  what: `A form may hold ${LARGEST_FORM / 1024} KiB, and a picture ${LARGEST_PHOTO / 1024 / 1024} MiB. Nothing was changed.`,
  wayOut: 'Shorten it, or use the command line.',
};

/** The pages, figures and health answers of the service, as a fetch handler. */
export function makeApp(parts: AppParts): App & Pick<Hono<PageEnv>, 'request' | 'routes'> {
  const { view, config, log } = parts;
  const app = new Hono<PageEnv>();
  const publicUrl = new URL(config.publicUrl);
  app.use(securityHeaders);
  app.use(hostCheck([publicUrl.hostname]));
  app.use(noteCircumstances(parts));
  const tooLarge = (context: PageContext) => sayProblem(context, TOO_LARGE);
  const forms = bodyLimit({ maxSize: LARGEST_FORM, onError: tooLarge });
  const photos = bodyLimit({ maxSize: LARGEST_PHOTO_FORM, onError: tooLarge });
  app.use((context, next) => (PHOTO_PATH.test(context.req.path) ? photos : forms)(context, next));
  app.use(authorize(parts));
  app.use(formsFromHereOnly(publicUrl.host));

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
  app.get('/', (context) => {
    const { visitor } = context.var;
    return context.redirect(visitor.kind === 'account' ? beginningOf(visitor.account.role) : '/fences', 302);
  });
  app.route('/', signInRoutes(parts));
  app.route('/', setupRoutes(parts));
  app.route('/', ownAccountRoutes(parts));
  app.route('/', accountsRoutes(parts));
  app.route('/', fenceRoutes(parts));
  app.route('/', outboxRoutes(parts));
  app.route('/', ownerRoutes(parts));
  app.route('/', feedRoutes(parts));
  app.route('/', crewRoutes(parts));
  if (view.catcher) app.route('/', mailRoutes(view.catcher));

  app.notFound((context) =>
    sayProblem(context, {
      status: 404,
      title: 'Nothing here',
      what: `There is no page at ${context.req.path}.`,
      wayOut: NO_PAGE,
    }),
  );
  app.onError((error, context) => {
    // the address of an owner's page holds their link: it stays out of the log
    const path = context.req.path.replace(/^\/owner\/[^/]+/, '/owner/[hidden]');
    log.error({ err: error, path }, 'a page could not be made');
    return sayProblem(context, {
      status: 500,
      title: 'That did not work',
      what: 'The page could not be made. Nothing in the register was changed.',
      wayOut: "Try again in a moment. If it stays, the service's log says why; look for this address there.",
    });
  });
  return app;
}
