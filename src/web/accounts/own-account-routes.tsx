import { Hono } from 'hono';
import { setAccountLanguage } from '../../register/account-store.ts';
import { recordsWhereIn } from '../../register/record-store.ts';
import { changePassword } from '../../service/accounts.ts';
import type { AppParts } from '../../service/service.ts';
import type { SignedIn } from '../../service/sessions.ts';
import { trySignIn } from '../../service/sign-in.ts';
import { clientAddress } from '../access/client-address.ts';
import { formToken } from '../access/form-token.ts';
import type { PageContext, PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { textField } from '../frame/text-field.ts';
import { OwnAccountPage, type OwnAccountPageProps } from './own-account-page.tsx';
import { OWN_ACCOUNT_WORDS } from './own-account-words.ts';
import { signInBrowser } from './sign-in-browser.ts';

/** The session of whoever asks; the authorization lets nobody else to these routes. */
function signedIn(context: PageContext): SignedIn {
  const visitor = context.get('visitor');
  if (visitor.kind !== 'account') throw new Error('a page of an account was asked for without one');
  return visitor;
}

/** One's own account: language and password. */
export function ownAccountRoutes(parts: Pick<AppParts, 'register' | 'clock'>): Hono<PageEnv> {
  const { register, clock } = parts;
  const app = new Hono<PageEnv>();

  const page = async (
    context: PageContext,
    status: 200 | 400 | 403 | 429,
    props: Partial<Pick<OwnAccountPageProps, 'problem' | 'fault'>> = {},
  ) => {
    const { account, siteRefs } = signedIn(context);
    const sites = siteRefs === null ? null : await recordsWhereIn(register.db, 'sites', 'ref', siteRefs);
    return context.html(
      <OwnAccountPage
        frame={frameFor(context)}
        formToken={formToken(context)}
        account={account}
        siteNames={sites?.map(({ name }) => name) ?? null}
        problem={props.problem ?? null}
        fault={props.fault ?? null}
        changed={context.req.query('changed') !== undefined}
      />,
      status,
    );
  };

  app.get('/account', (context) => page(context, 200));

  app.post('/account/language', async (context) => {
    const { account } = signedIn(context);
    const language = textField(await context.req.parseBody(), 'language') === 'es' ? 'es' : 'en';
    await setAccountLanguage(register.db, account.id, language);
    return context.redirect('/account', 303);
  });

  app.post('/account/password', async (context) => {
    const { account } = signedIn(context);
    const words = OWN_ACCOUNT_WORDS[account.language];
    const form = await context.req.parseBody();
    const attempt = { name: account.name, password: textField(form, 'now'), address: clientAddress(context) };
    const outcome = await trySignIn(register, attempt, clock);
    if (outcome.kind === 'wait') return page(context, 429, { problem: words.wait(outcome.seconds) });
    if (outcome.kind === 'wrong') return page(context, 403, { problem: words.wrong });
    const fault = await changePassword(register, account, textField(form, 'password'));
    if (fault) return page(context, 400, { fault });
    // every session is over, this one too: it goes on under a new secret
    await signInBrowser(context, parts, account);
    return context.redirect('/account?changed', 303);
  });
  return app;
}
