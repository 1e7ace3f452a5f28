import type { FC } from 'hono/jsx';
import type { Account } from '../../register/account-store.ts';
import { FormAlert, FormField, TickFields, TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import type { Choice } from './accounts-page.tsx';

/** Properties of the page on which the office looks after one account. */
export interface OneAccountPageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly account: Account;
  readonly siteRefs: readonly string[];
  readonly sites: readonly Choice[];
  readonly problem: string | null;
  /** What was done, in a sentence. */
  readonly done: string | null;
}

/** The page on which the office looks after one account. */
export const OneAccountPage: FC<OneAccountPageProps> = (props) => {
  const { frame, formToken, account, siteRefs, sites, problem, done } = props;
  const path = `/accounts/${account.id}`;
  return (
    <PageShell title={`Account ${account.name}`} section="records" frame={frame} cautions={false}>
      <p class="back">
        <a href="/accounts">All accounts</a>
      </p>
      <h1>{account.displayName}</h1>
      <p class="lead">
        {`Signs in as ${account.name}; role ${account.role}${account.crewRef === null ? '' : ` of crew ${account.crewRef}`}.`}
      </p>
      {problem && <FormAlert>{problem}</FormAlert>}
      {done && <p class="done">{done}</p>}
      {account.disabledAt !== null && (
        <p>
          {'Disabled '}
          <Moment at={account.disabledAt} />: nobody signs in with it.
        </p>
      )}
      {account.role === 'board' && (
        <form class="tall" method="post" action={`${path}/sites`}>
          <TokenField token={formToken} />
          <TickFields name="site" legend="Sites whose fences it sees" ticked={siteRefs} choices={sites} />
          <button type="submit">Set the sites</button>
        </form>
      )}
      <h2>Another password</h2>
      <form class="tall" method="post" action={`${path}/password`}>
        <TokenField token={formToken} />
        <FormField
          name="password"
          label="New password"
          type="password"
          autocomplete="new-password"
          hint="At least 12 characters. Wherever the person is signed in, they no longer are."
        />
        <button type="submit">Set the password</button>
      </form>
      <h2>{account.disabledAt === null ? 'Disable' : 'Let sign in again'}</h2>
      <form class="tall" method="post" action={`${path}/disabled`}>
        <TokenField token={formToken} />
        <button type="submit" name="disabled" value={account.disabledAt === null ? 'yes' : 'no'}>
          {account.disabledAt === null ? 'Disable this account' : 'Let it sign in again'}
        </button>
      </form>
    </PageShell>
  );
};
