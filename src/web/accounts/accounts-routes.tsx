import { Hono } from 'hono';
import {
  accountNumbered,
  listAccounts,
  setAccountDisabled,
  setAccountSites,
  sitesOfAccount,
} from '../../register/account-store.ts';
import { ACCOUNT_ROLES } from '../../register/account-tables.ts';
import { recordNames } from '../../register/record-pages.ts';
import { type AccountForm, changePassword, createAccount, REFUSALS, siteFaults } from '../../service/accounts.ts';
import { isoUtc } from '../../service/clock.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import type { PageContext, PageEnv } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import { type Problem, sayProblem } from '../frame/say-problem.tsx';
import { type SentForm, textField, textFields } from '../frame/text-field.ts';
import { AccountsPage, type AccountsPageProps, type Choice } from './accounts-page.tsx';
import { OneAccountPage } from './one-account-page.tsx';

const NO_ACCOUNT: Problem = {
  status: 404,
  title: 'No such account',
  what: 'There is no account of that number.',
  wayOut: 'The list of accounts shows those there are.',
};
const NOT_IN_DEMO: Problem = {
  status: 403,
  title: 'Not in the demo',
  what: 'The demo makes no accounts of people.',
  wayOut: 'Make the first account of the office at /setup; with it you can make others.',
};

const askedAccount = (form: SentForm): AccountForm => {
  const role = ACCOUNT_ROLES.find((known) => known === form.role) ?? 'board';
  return {
    name: textField(form, 'name'),
    displayName: textField(form, 'display_name'),
    role,
    // what belongs to another role is left unsaid: without a script the form shows all of it
    crewRef: role === 'crew' ? textField(form, 'crew') || null : null,
    language: form.language === 'es' ? 'es' : 'en',
    siteRefs: role === 'board' ? textFields(form, 'site') : [],
    password: textField(form, 'password'),
  };
};

/** Accounts, as the office looks after them. */
export function accountsRoutes(parts: Pick<AppParts, 'register' | 'clock' | 'log'>): Hono<PageEnv> {
  const { register, clock, log } = parts;
  const { db } = register;
  const app = new Hono<PageEnv>();
  const choices = async (kind: 'crews' | 'sites'): Promise<readonly Choice[]> =>
    (await recordNames(db, kind)).map(({ ref, name }) => [ref, `${name} (${ref})`]);
  const isDemo = (context: PageContext): boolean => {
    const visitor = context.get('visitor');
    return visitor.kind === 'account' && visitor.account.demo;
  };
  const by = (context: PageContext): string => {
    const visitor = context.get('visitor');
    return visitor.kind === 'account' ? visitor.account.name : '';
  };

  const list = async (context: PageContext, status: 200 | 400, props: Pick<AccountsPageProps, 'asked' | 'faults'>) =>
    context.html(
      <AccountsPage
        {...props}
        frame={frameFor(context)}
        formToken={formToken(context)}
        accounts={await listAccounts(db)}
        crews={await choices('crews')}
        sites={await choices('sites')}
      />,
      status,
    );

  const one = async (context: PageContext, said: { readonly problem?: string; readonly done?: string } = {}) => {
    const account = await accountNumbered(db, Number(context.req.param('id')));
    if (!account || account.demo) return sayProblem(context, NO_ACCOUNT);
    return context.html(
      <OneAccountPage
        frame={frameFor(context)}
        formToken={formToken(context)}
        account={account}
        siteRefs={await sitesOfAccount(db, account.id)}
        sites={await choices('sites')}
        problem={said.problem ?? null}
        done={said.done ?? null}
      />,
      said.problem === undefined ? 200 : 400,
    );
  };

  app.get('/accounts', (context) => list(context, 200, { asked: null, faults: [] }));
  app.get('/accounts/:id{[0-9]+}', (context) => one(context));

  app.post('/accounts', async (context) => {
    if (isDemo(context)) return sayProblem(context, NOT_IN_DEMO);
    const asked = askedAccount(await context.req.parseBody({ all: true }));
    const made = await createAccount(register, asked, { clock });
    if ('faults' in made) return list(context, 400, { asked, faults: made.faults });
    log.info({ account: made.account.name, role: made.account.role, by: by(context) }, 'an account was made');
    return context.redirect(`/accounts/${made.account.id}`, 303);
  });

  app.post('/accounts/:id{[0-9]+}/password', async (context) => {
    const account = await accountNumbered(db, Number(context.req.param('id')));
    if (!account || account.demo) return sayProblem(context, NO_ACCOUNT);
    const password = textField(await context.req.parseBody(), 'password');
    const fault = await changePassword(register, account, password);
    if (fault) return one(context, { problem: `The new password is ${fault}. Nothing was changed.` });
    log.info({ account: account.name, by: by(context) }, 'a password was set');
    return one(context, { done: 'The password is set.' });
  });

  app.post('/accounts/:id{[0-9]+}/sites', async (context) => {
    const account = await accountNumbered(db, Number(context.req.param('id')));
    if (!account || account.demo || account.role !== 'board') return sayProblem(context, NO_ACCOUNT);
    const refs = textFields(await context.req.parseBody({ all: true }), 'site');
    const [fault] = await siteFaults(register, refs);
    if (fault) return one(context, { problem: fault.reason });
    await setAccountSites(register, account.id, refs);
    log.info({ account: account.name, sites: refs, by: by(context) }, 'the sites of a board were set');
    return one(context, { done: refs.length === 0 ? 'It sees no site now.' : 'The sites are set.' });
  });

  app.post('/accounts/:id{[0-9]+}/disabled', async (context) => {
    const account = await accountNumbered(db, Number(context.req.param('id')));
    if (!account || account.demo) return sayProblem(context, NO_ACCOUNT);
    const isDisabled = textField(await context.req.parseBody(), 'disabled') === 'yes';
    const refused = await setAccountDisabled(register, account.id, isDisabled ? isoUtc(clock()) : null);
    if (refused) return one(context, { problem: REFUSALS[refused].reason });
    log.info({ account: account.name, disabled: isDisabled, by: by(context) }, 'an account was disabled or let in');
    return context.redirect(`/accounts/${account.id}`, 303);
  });
  return app;
}
