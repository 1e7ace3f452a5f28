import { Hono } from 'hono';
import { HTTPException } from 'hono/http-exception';
import type { App, AppParts } from '../service/service.ts';
import { authorize, noteCircumstances } from './access/authorization.ts';
import { formsFromHereOnly } from './access/csrf.ts';
import { formLimits } from './access/form-limits.ts';
import { hostCheck, securityHeaders } from './access/security.ts';
import type { PageEnv } from './access/visitor.ts';
import { accountsRoutes } from './accounts/accounts-routes.tsx';
import { ownAccountRoutes } from './accounts/own-account-routes.tsx';
import { setupRoutes } from './accounts/setup-routes.tsx';
import { signInRoutes } from './accounts/sign-in-routes.tsx';
import { apiApp } from './api/api-app.ts';
import { boardRoutes } from './board/board-routes.tsx';
import { briefRoutes } from './brief/brief-routes.tsx';
import { feedLinkRoutes } from './calendar/feed-links-routes.tsx';
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

const NO_PAGE = 'The address may be mistyped, or the fence may have been renamed in the register.';
const NOT_READABLE: Problem = {
  status: 400,
  title: 'That could not be read',
  what: '',
  wayOut: 'Send JSON as application/json, and forms as the pages do.',
};
/** The pages, figures and health answers of the service, as a fetch handler. */
export function makeApp(parts: AppParts): App & Pick<Hono<PageEnv>, 'request' | 'routes'> {
  const { view, config, log } = parts;
  const app = new Hono<PageEnv>();
  const publicUrl = new URL(config.publicUrl);
  app.use(securityHeaders);
  app.use(hostCheck([publicUrl.hostname]));
  app.use(noteCircumstances(parts));
  app.use(formLimits());
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
  app.route('/', crewRoutes(parts));
  if (view.catcher) app.route('/', mailRoutes(view.catcher));

  app.notFound((context) =>
    sayProblem(context, {
      status: 404,
      title: 'Nothing here',
      what: `There is no page at ${context.req.path}.`,
      wayOut: NO_PAGE,
      es: {
        title: 'Aquí no hay nada',
        what: `No hay ninguna página en ${context.req.path}.`,
        wayOut: 'La dirección puede estar mal escrita, o la cerca puede tener otra clave en el registro.',
      },
    }),
  );
  app.onError((error, context) => {
    if (error instanceof HTTPException && error.status === 400) {
      return sayProblem(context, {
        ...NOT_READABLE,
        what: `${error.message || 'It is not what it says it is'}. Nothing was changed.`,
        es: {
          title: 'Eso no se pudo leer',
          what: 'No es lo que dice ser. No se cambió nada.',
          wayOut: 'Cargue la página otra vez y envíe su formulario de nuevo.',
        },
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
      es: {
        title: 'Eso no funcionó',
        what: 'La página no se pudo hacer. En el registro no se cambió nada.',
        wayOut: 'Pruebe otra vez en un momento. Si sigue igual, avise a la oficina de cercas.',
      },
    });
  });
  return app;
}
