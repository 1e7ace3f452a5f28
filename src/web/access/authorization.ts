import type { MiddlewareHandler } from 'hono';
import { matchedRoutes } from 'hono/route';
import { DEFAULT_SETTINGS, readSettings } from '../../register/settings-store.ts';
import { apiTokenShown } from '../../service/api-tokens.ts';
import { ownerLinkShown } from '../../service/owner-links.ts';
import type { AppParts } from '../../service/service.ts';
import { isForThisMachine, LOOPBACK_NAMES } from '../../service/service-address.ts';
import { resumeSession } from '../../service/sessions.ts';
import type { OfficeWays } from '../frame/office-ways.ts';
import { isForProgram, type Problem, sayProblem } from '../frame/say-problem.tsx';
import { readCookie } from './cookies.ts';
import { accessTo, type RouteAccess } from './route-access.ts';
import type { PageContext, PageEnv, Visitor } from './visitor.ts';

const OWNER_TOKEN = /^\/owner\/([^/]+)/;
/** Headers that a proxy adds: what comes with one was not asked on this machine. */
const PROXY_HEADERS = ['forwarded', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip', 'via'] as const;

/** Notes what every page asks of a request; until the authorization has looked, nobody asks. */
export const noteCircumstances =
  ({ config, view }: Pick<AppParts, 'config' | 'view'>): MiddlewareHandler<PageEnv> =>
  async (context, next) => {
    const host = (context.req.header('host') ?? new URL(context.req.url).host).replace(/:\d+$/, '').toLowerCase();
    const isProxied = PROXY_HEADERS.some((name) => context.req.header(name) !== undefined);
    context.set('isLocal', isForThisMachine(config) && LOOPBACK_NAMES.includes(host) && !isProxied);
    context.set('catchesMail', view.catcher !== null);
    context.set('visitor', { kind: 'nobody' });
    const { timeZone, currency } = DEFAULT_SETTINGS;
    context.set('office', { timeZone, currency });
    return next();
  };

/** Zone and currency of the register's settings; a zone that the service was started with goes before. */
async function officeWays({ register, config }: Pick<AppParts, 'register' | 'config'>): Promise<OfficeWays> {
  const { timeZone, currency } = await readSettings(register.db);
  return { timeZone: config.timeZone ?? timeZone, currency };
}

/** The route that will answer; null where there is none. Middleware, which takes every method, is passed over. */
function accessAsked(context: PageContext): { readonly access: RouteAccess | null } | null {
  const declared = matchedRoutes(context).find(({ method }) => method !== 'ALL');
  return declared ? { access: accessTo(declared.method, declared.path) } : null;
}

async function visitorOf(context: PageContext, parts: AppParts, access: RouteAccess | null): Promise<Visitor> {
  const { register, clock } = parts;
  const header = context.req.header('authorization');
  if (header !== undefined) {
    const shown = /^Bearer +(\S+)$/i.exec(header)?.[1];
    const token = shown === undefined ? null : await apiTokenShown(register.db, shown, clock);
    return token ? { kind: 'token', token } : { kind: 'nobody' };
  }
  if (access?.who.includes('owner link')) {
    const link = await ownerLinkShown(register.db, OWNER_TOKEN.exec(context.req.path)?.[1] ?? '', clock);
    return link ? { kind: 'owner', link } : { kind: 'nobody' };
  }
  const cookie = readCookie(context, 'session');
  const session =
    cookie === null ? null : await resumeSession(register, cookie, { clock, isLocal: context.get('isLocal') });
  return session ? { kind: 'account', ...session } : { kind: 'nobody' };
}

/** Whether a route answers a visitor; `sign in`: it might, once it is known who they are. */
function verdict(
  access: RouteAccess | null,
  visitor: Visitor,
  isLocal: boolean,
): 'answer' | 'sign in' | 'refuse' | 'not found' {
  if (!access) return 'refuse';
  if (access.who.includes('anybody')) return 'answer';
  switch (visitor.kind) {
    case 'token':
      return access.scope !== null && visitor.token.scopes.includes(access.scope) ? 'answer' : 'refuse';
    case 'owner':
      return access.who.includes('owner link') && visitor.link.scopes.includes(access.ownerScope) ? 'answer' : 'refuse';
    case 'account':
      return access.who.includes(visitor.account.role) ? 'answer' : 'refuse';
    case 'nobody':
      if (access.fromThisMachine && isLocal) return 'answer';
      return access.who.includes('owner link') ? 'not found' : 'sign in';
  }
}

const REFUSED: Problem = {
  status: 403,
  title: 'Not for this sign-in',
  what: 'Your account may not open this page.',
  wayOut: 'Ask the fence office if you need it, or sign in with another account.',
  es: {
    title: 'No es para esta cuenta',
    what: 'Su cuenta no puede abrir esta página.',
    wayOut: 'Si la necesita, pídala a la oficina de cercas, o entre con otra cuenta.',
  },
};
const NOT_BY_THIS_LINK: Problem = {
  status: 403,
  title: 'This link is not for that · Este enlace no sirve para eso',
  what: 'It is good, but it does not open this page. · Es válido, pero no abre esta página.',
  wayOut: 'Ask the fence office for a link that does. · Pida a la oficina de cercas uno que la abra.',
};
const NO_LINK: Problem = {
  status: 404,
  title: 'This link does not open anything · Este enlace no abre nada',
  what: 'It may be too old, or the office may have ended it. · Puede haber vencido, o la oficina puede haberlo anulado.',
  wayOut: 'Ask the fence office for a new one. · Pida uno nuevo a la oficina de cercas.',
};
const NO_TOKEN: Problem = {
  status: 401,
  title: 'Who asks?',
  what: 'sign in, or show a token that answers',
  wayOut: 'stormpale token new',
};
const NO_METHOD: Problem = {
  status: 405,
  title: 'That cannot be done here',
  what: 'This address can only be read: ask with GET.',
  wayOut: 'Use the forms of the pages, or the command line.',
};

/**
 * Finds out who asks and lets nobody to a route that the table does not open to them. Whoever is not signed in is led to where
 * they can, and back; a program is told.
 */
export const authorize =
  (parts: AppParts): MiddlewareHandler<PageEnv> =>
  async (context, next) => {
    const asked = accessAsked(context);
    const isReading = context.req.method === 'GET' || context.req.method === 'HEAD';
    if (!asked && !isReading) {
      context.header('Allow', 'GET, HEAD');
      return sayProblem(context, NO_METHOD);
    }
    const isOpen = asked?.access?.who.includes('anybody') ?? false;
    // a page about who is signed in needs to know it; health answers must not depend on the register
    if (!isOpen || /^\/(sign-in|setup|demo)/.test(context.req.path)) {
      context.set('visitor', await visitorOf(context, parts, asked?.access ?? null));
      context.set('office', await officeWays(parts));
    }
    if (!asked) return next();
    switch (verdict(asked.access, context.get('visitor'), context.get('isLocal'))) {
      case 'answer':
        return next();
      case 'not found':
        return sayProblem(context, NO_LINK);
      case 'refuse':
        return sayProblem(context, context.get('visitor').kind === 'owner' ? NOT_BY_THIS_LINK : REFUSED);
      case 'sign in':
        if (isForProgram(context)) {
          context.header('WWW-Authenticate', 'Bearer');
          return sayProblem(context, NO_TOKEN);
        }
        return context.redirect(signInPath(isReading ? context.req.url : null), 303);
    }
  };

/** Where to sign in, and where to go after that. */
function signInPath(url: string | null): string {
  const { pathname, search } = new URL(url ?? 'http://localhost/');
  const next = `${pathname}${search}`;
  return next === '/' ? '/sign-in' : `/sign-in?${new URLSearchParams({ next }).toString()}`;
}
