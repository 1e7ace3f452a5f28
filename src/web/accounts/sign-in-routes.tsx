import { Hono } from 'hono';
import { hasAccounts } from '../../register/account-store.ts';
import { DEMO_ROLES, demoIsOpen, enterDemo } from '../../service/demo-sign-in.ts';
import { ownerPath } from '../../service/owner-links.ts';
import type { AppParts } from '../../service/service.ts';
import { signOut } from '../../service/sessions.ts';
import { trySignIn } from '../../service/sign-in.ts';
import { clientAddress } from '../access/client-address.ts';
import { readCookie, writeCookie } from '../access/cookies.ts';
import { formToken } from '../access/form-token.ts';
import type { PageContext, PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { languageAsked } from '../frame/page-language.ts';
import { sayProblem } from '../frame/say-problem.tsx';
import { textField } from '../frame/text-field.ts';
import { signInBrowser } from './sign-in-browser.ts';
import { SignInPage, type SignInPageProps } from './sign-in-page.tsx';

/** A path of our own to go on to; the list of fences for anything else, so that a link to sign in leads nowhere else. */
export function ownPath(next: unknown): string {
  const base = 'http://pages.invalid';
  if (typeof next !== 'string' || !next.startsWith('/') || !URL.canParse(next, base)) return '/';
  const { origin, pathname, search } = new URL(next, base);
  return origin === base && !pathname.startsWith('//') ? `${pathname}${search}` : '/';
}

/** Signing in and out, and the demo's one click. */
export function signInRoutes(parts: Pick<AppParts, 'register' | 'clock' | 'config' | 'log'>): Hono<PageEnv> {
  const { register, clock, config, log } = parts;
  const app = new Hono<PageEnv>();

  const page = async (
    context: PageContext,
    status: 200 | 403 | 429,
    props: Pick<SignInPageProps, 'next' | 'name' | 'problem'>,
  ) =>
    context.html(
      <SignInPage
        {...props}
        language={languageAsked(context)}
        frame={frameFor(context)}
        formToken={formToken(context)}
        signedOut={context.req.query('out') !== undefined}
        demo={await demoIsOpen(register, context.get('isLocal'))}
      />,
      status,
    );

  app.get('/sign-in', async (context) => {
    const next = ownPath(context.req.query('next'));
    if (context.get('visitor').kind === 'account') return context.redirect(next, 303);
    if (!(await hasAccounts(register.db)) && !(await demoIsOpen(register, context.get('isLocal')))) {
      return context.redirect('/setup', 303);
    }
    return page(context, 200, { next, name: '', problem: null });
  });

  app.post('/sign-in', async (context) => {
    const form = await context.req.parseBody();
    const [name, password, next] = [textField(form, 'name'), textField(form, 'password'), ownPath(form.next)];
    const address = clientAddress(context);
    const outcome = await trySignIn(register, { name, password, address }, clock);
    if (outcome.kind === 'in') {
      log.info({ account: outcome.account.name, address }, 'signed in');
      await signInBrowser(context, parts, outcome.account);
      return context.redirect(next, 303);
    }
    log.warn({ address, outcome: outcome.kind }, 'a try to sign in failed');
    if (outcome.kind === 'wrong') return page(context, 403, { next, name, problem: outcome });
    context.header('Retry-After', String(outcome.seconds));
    return page(context, 429, { next, name, problem: outcome });
  });

  app.post('/demo', async (context) => {
    const form = await context.req.parseBody();
    const role = DEMO_ROLES.find((known) => known === form.as);
    if (!role || !(await demoIsOpen(register, context.get('isLocal')))) {
      return sayProblem(context, {
        status: 403,
        title: 'The demo is closed',
        what: 'It opens by one click on this machine only, and only until somebody has an account.',
        wayOut: 'Sign in with an account.',
      });
    }
    const entered = await enterDemo(register, role, { publicUrl: config.publicUrl, now: clock });
    if ('ownerToken' in entered) return context.redirect(ownerPath(entered.ownerToken), 303);
    await signInBrowser(context, parts, entered.account);
    return context.redirect(ownPath(form.next), 303);
  });

  app.post('/sign-out', async (context) => {
    const token = readCookie(context, 'session');
    if (token !== null) await signOut(register, token);
    writeCookie(context, 'session', '', 0);
    return context.redirect('/sign-in?out', 303);
  });
  return app;
}
