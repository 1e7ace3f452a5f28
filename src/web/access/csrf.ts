import type { MiddlewareHandler } from 'hono';
import { sayProblem } from '../frame/say-problem.tsx';
import { FORM_TOKEN, isFormToken } from './form-token.ts';
import type { PageContext, PageEnv } from './visitor.ts';

/**
 * True where the browser says that another site's page sent this. `Origin` is `null` for a page that tells nobody where it is,
 * as ours do, so that it decides nothing then; the token in the form does.
 */
function isFromElsewhere(context: PageContext, publicHost: string): boolean {
  const site = context.req.header('sec-fetch-site');
  if (site !== undefined) return site !== 'same-origin';
  const origin = context.req.header('origin');
  if (origin === undefined || origin === 'null') return false;
  const asked = context.req.header('host') ?? new URL(context.req.url).host;
  return !URL.canParse(origin) || ![asked, publicHost].includes(new URL(origin).host);
}

/** What a mail program sends to stop a list by one click (RFC 8058): this field alone, with no cookie and from anywhere. */
const ONE_CLICK = { path: /^\/owner\/[^/]+\/unsubscribe$/, field: 'List-Unsubscribe', value: 'One-Click' } as const;

/** True for a form that stops a list by one click, and holds nothing else. */
export const isOneClick = (path: string, form: Readonly<Record<string, unknown>>): boolean =>
  ONE_CLICK.path.test(path) && Object.keys(form).length === 1 && form[ONE_CLICK.field] === ONE_CLICK.value;

/**
 * Refuses whatever changes something unless one of our own pages sent it: the browser must not say otherwise, and the form must
 * carry the token that was made for this browser's session. A program's token is never sent unasked, so it needs neither.
 * @param publicHost host and port under which people reach the pages
 */
export const formsFromHereOnly =
  (publicHost: string): MiddlewareHandler<PageEnv> =>
  async (context, next) => {
    if (context.req.method === 'GET' || context.req.method === 'HEAD' || context.get('visitor').kind === 'token') {
      return next();
    }
    const form = await context.req.parseBody();
    if (isOneClick(context.req.path, form)) return next();
    if (isFormToken(context, form[FORM_TOKEN]) && !isFromElsewhere(context, publicHost)) return next();
    return sayProblem(context, {
      status: 403,
      title: 'That form is no longer good',
      what: 'It was opened before you signed in or out, or another site sent it. Nothing was changed.',
      wayOut: 'Go back, load the page again, and send it once more. The browser must allow cookies for this address.',
      es: {
        title: 'Ese formulario ya no sirve',
        what: 'Se abrió antes de iniciar o cerrar la sesión, o lo envió otro sitio. No se cambió nada.',
        wayOut:
          'Regrese, cargue la página otra vez y envíelo de nuevo. El navegador debe permitir cookies para esta dirección.',
      },
    });
  };
