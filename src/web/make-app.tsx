import { Hono, type MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { HTTPException } from 'hono/http-exception';
import type { App, AppParts } from '../service/service.ts';
import { authorize, noteCircumstances } from './access/authorization.ts';
import { formsFromHereOnly } from './access/csrf.ts';
import { hostCheck, securityHeaders } from './access/security.ts';
import type { PageContext, PageEnv } from './access/visitor.ts';
import { accountsRoutes } from './accounts/accounts-routes.tsx';
import { ownAccountRoutes } from './accounts/own-account-routes.tsx';
import { setupRoutes } from './accounts/setup-routes.tsx';
import { signInRoutes } from './accounts/sign-in-routes.tsx';
import { apiApp } from './api/api-app.ts';
import { boardRoutes } from './board/board-routes.tsx';
import { briefRoutes } from './brief/brief-routes.tsx';
import { feedLinkRoutes } from './calendar/feed-links-routes.tsx';
import { feedRoutes } from './calendar/feed-routes.ts';
import { fenceRoutes } from './fences/fence-routes.tsx';
import { isFontName, readFont } from './frame/font-files.ts';
import { beginningOf } from './frame/navigation.ts';
import { ICON_SVG } from './frame/page-shell.tsx';
import { type Problem, sayProblem } from './frame/say-problem.tsx';
import { STYLESHEET, STYLESHEET_PATH } from './frame/stylesheet.ts';
import { mailRoutes } from './mail/mail-routes.tsx';
import { outboxRoutes } from './mail/outbox-routes.tsx';
import { noticesRoutes } from './notices/notices-routes.tsx';
import { ownerAnswerRoutes } from './owner/answer-routes.tsx';
import { answersRoutes } from './owner/answers-routes.tsx';
import { ownerRoutes } from './owner/owner-routes.tsx';
import { ownerPreferenceRoutes } from './owner/preference-routes.tsx';
import { giveRoutes } from './plan/give-routes.tsx';
import { planRoutes } from './plan/plan-routes.tsx';
import { recordsRoutes } from './records/records-routes.ts';
import { reportsRoutes } from './reports/reports-routes.tsx';
import { sheetRoutes } from './visits/sheet-routes.tsx';
import { visitRoutes } from './visits/visit-routes.tsx';

const FOR_A_YEAR = 'public, max-age=31536000, immutable';

/** Largest form that is read [bytes]. */
const LARGEST_FORM = 64 * 1024;
/** Largest form with files for an import [bytes]. */
const LARGEST_IMPORT = 16 * 1024 * 1024;

const NO_PAGE = 'The address may be mistyped, or the fence may have been renamed in the register.';
const NOT_READABLE: Problem = {
  status: 400,
  title: 'That could not be read',
  what: '',
  wayOut: 'Send JSON as application/json, and forms as the pages do.',
};
const TOO_LARGE: Problem = {
  status: 413,
  title: 'Too much at once',
  what: `A form may hold ${LARGEST_FORM / 1024} KiB. Nothing was changed.`,
  wayOut: 'Shorten it, or use the command line.',
};

const TOO_LARGE_IMPORT: Problem = {
  ...TOO_LARGE,
  what: `The files of one import may hold ${LARGEST_IMPORT / 1024 / 1024} MiB together. Nothing was changed.`,
  wayOut:
    'Bring fewer files at once, or cut one in two, each with the line of column names. “stormpale import” takes files of any size.',
};

/** Bounds what is read of a form; the one route that takes files reads more. */
const formLimit = (): MiddlewareHandler<PageEnv> => {
  const limit = (maxSize: number, problem: Problem) =>
    bodyLimit({ maxSize, onError: (context: PageContext) => sayProblem(context, problem) });
  const [usual, files] = [limit(LARGEST_FORM, TOO_LARGE), limit(LARGEST_IMPORT, TOO_LARGE_IMPORT)];
  return (context, next) => (context.req.path === '/import' ? files : usual)(context, next);
};

/** The pages, figures and health answers of the service, as a fetch handler. */
export function makeApp(parts: AppParts): App & Pick<Hono<PageEnv>, 'request' | 'routes'> {
  const { view, config, log } = parts;
  const app = new Hono<PageEnv>();
  const publicUrl = new URL(config.publicUrl);
  app.use(securityHeaders);
  app.use(hostCheck([publicUrl.hostname]));
  app.use(noteCircumstances(parts));
  app.use(formLimit());
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
  app.route('/', briefRoutes(parts));
  app.route('/', fenceRoutes(parts));
  app.route('/', reportsRoutes(parts));
  app.route('/', boardRoutes(parts));
  app.route('/', planRoutes(parts));
  app.route('/', giveRoutes(parts));
  app.route('/', visitRoutes(parts));
  app.route('/', sheetRoutes(parts));
  app.route('/', feedLinkRoutes(parts));
  app.route('/', outboxRoutes(parts));
  app.route('/', ownerRoutes(parts));
  app.route('/', ownerAnswerRoutes(parts));
  app.route('/', ownerPreferenceRoutes(parts));
  app.route('/', answersRoutes(parts));
  app.route('/', noticesRoutes(parts));
  app.route('/', recordsRoutes(parts));
  app.route('/', feedRoutes(parts));
  app.route('/', apiApp(parts));
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
    if (error instanceof HTTPException && error.status === 400) {
      return sayProblem(context, {
        ...NOT_READABLE,
        what: `${error.message || 'It is not what it says it is'}. Nothing was changed.`,
      });
    }
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
