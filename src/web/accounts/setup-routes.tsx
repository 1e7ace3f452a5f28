import { Hono } from 'hono';
import { hasAccounts } from '../../register/account-store.ts';
import { createAccount } from '../../service/accounts.ts';
import { isSameSecret } from '../../service/secret-token.ts';
import type { AppParts } from '../../service/service.ts';
import { tryWasRight, waitBeforeTry } from '../../service/sign-in.ts';
import { clientAddress } from '../access/client-address.ts';
import { formToken } from '../access/form-token.ts';
import type { PageContext, PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type SentForm, textField } from '../frame/text-field.ts';
import { SetupPage, type SetupPageProps } from './setup-page.tsx';
import { signInBrowser } from './sign-in-browser.ts';

const TRIED_NAME = 'setup code';
const plainCode = (code: string): string => code.toLowerCase().replace(/[^a-z0-9]/g, '');

/** The first run: while nobody has an account, the first of the office is made here. */
export function setupRoutes(parts: Pick<AppParts, 'register' | 'clock' | 'log' | 'setupCode'>): Hono<PageEnv> {
  const { register, clock, log, setupCode } = parts;
  const app = new Hono<PageEnv>();

  const page = (
    context: PageContext,
    status: 200 | 400 | 403 | 429,
    props: Pick<SetupPageProps, 'name' | 'displayName' | 'faults' | 'problem'>,
  ) =>
    context.html(
      <SetupPage
        {...props}
        frame={{ ...frameFor(context), account: null }}
        formToken={formToken(context)}
        asksCode={!context.get('isLocal')}
      />,
      status,
    );

  /** Why the code does not open the page; null where it does, or none is asked for. */
  const codeProblem = async (context: PageContext, form: SentForm) => {
    if (context.get('isLocal')) return null;
    const address = clientAddress(context);
    const seconds = await waitBeforeTry(register, TRIED_NAME, address, clock());
    if (seconds !== null) return { status: 429, problem: `Too many tries. Wait ${seconds} seconds.` } as const;
    if (setupCode !== null && isSameSecret(plainCode(textField(form, 'code')), plainCode(setupCode))) {
      await tryWasRight(register, TRIED_NAME, address);
      return null;
    }
    log.warn({ address }, 'a wrong setup code was entered');
    return { status: 403, problem: 'That is not the code that the service printed when it last started.' } as const;
  };

  app.get('/setup', async (context) =>
    (await hasAccounts(register.db))
      ? context.redirect('/sign-in', 303)
      : page(context, 200, { name: '', displayName: '', faults: [], problem: null }),
  );

  app.post('/setup', async (context) => {
    if (await hasAccounts(register.db)) return context.redirect('/sign-in', 303);
    const form = await context.req.parseBody();
    const [name, displayName] = [textField(form, 'name'), textField(form, 'display_name')];
    const refused = await codeProblem(context, form);
    if (refused) return page(context, refused.status, { name, displayName, faults: [], problem: refused.problem });
    const made = await createAccount(
      register,
      {
        name,
        displayName,
        role: 'office',
        crewRef: null,
        language: 'en',
        siteRefs: [],
        password: textField(form, 'password'),
      },
      { clock, onlyAsFirst: true },
    );
    if ('faults' in made) {
      return page(context, 400, {
        name,
        displayName,
        faults: made.faults,
        problem: 'Not yet: see below what to change.',
      });
    }
    log.info({ account: made.account.name }, 'the first account was made');
    await signInBrowser(context, parts, made.account);
    return context.redirect('/', 303);
  });
  return app;
}
