import type { FC } from 'hono/jsx';
import type { Account } from '../../register/account-store.ts';
import type { AccountFault, AccountForm } from '../../service/accounts.ts';
import { ChoiceField, FormAlert, FormField, TickFields, TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { LANGUAGE_NAMES } from '../frame/page-language.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';

/** Something to choose: its ref and what it is called. */
export type Choice = readonly [ref: string, name: string];

/** Properties of the page of all accounts. */
export interface AccountsPageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly accounts: readonly Account[];
  readonly crews: readonly Choice[];
  readonly sites: readonly Choice[];
  /** What was asked for, where that did not do. */
  readonly asked: AccountForm | null;
  readonly faults: readonly AccountFault[];
}

/** The page of all accounts, with the form for another. */
export const AccountsPage: FC<AccountsPageProps> = (props) => (
  <PageShell title="Accounts" section="records" frame={props.frame} cautions={false}>
    <h1>Accounts</h1>
    <p>
      Who signs in here. The office sees everything, a crew its days and visits, where it enters readings and done
      works, and the fences with their reasons, a board the fences of its own sites, to read only. Owners need no
      account: they get signed links.
    </p>
    {props.frame.account?.demo ? <DemoNote /> : <AccountTable accounts={props.accounts} />}
    {!props.frame.account?.demo && <NewAccountForm {...props} />}
  </PageShell>
);

const DemoNote: FC = () => (
  <p class="done">
    The demo has no accounts of people. <a href="/setup">Make the first account of the office</a>, and the demo’s one
    click is closed.
  </p>
);

const AccountTable: FC<{ readonly accounts: readonly Account[] }> = ({ accounts }) => (
  <ScrollFrame label="Accounts">
    <table class="stacked">
      <caption>{accounts.length === 1 ? '1 account' : `${accounts.length} accounts`}</caption>
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col">Called</th>
          <th scope="col">Role</th>
          <th scope="col">Made</th>
          <th scope="col">State</th>
        </tr>
      </thead>
      <tbody>
        {accounts.map((account) => (
          <tr>
            <th scope="row">
              <a href={`/accounts/${account.id}`}>{account.name}</a>
            </th>
            <td data-label="Called">{account.displayName}</td>
            <td data-label="Role">
              {account.role}
              {account.crewRef !== null && <span class="small">{account.crewRef}</span>}
            </td>
            <td data-label="Made">
              <Moment at={account.createdAt} />
            </td>
            <td data-label="State">
              {account.disabledAt === null ? (
                'signs in'
              ) : (
                <>
                  {'disabled '}
                  <Moment at={account.disabledAt} />
                </>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </ScrollFrame>
);

const NewAccountForm: FC<AccountsPageProps> = ({ formToken, crews, sites, asked, faults }) => {
  const fault = (field: AccountFault['field']): string | undefined =>
    faults.find((each) => each.field === field)?.reason;
  return (
    <>
      <h2>Another account</h2>
      {faults.length > 0 && <FormAlert>Not yet: see below what to change.</FormAlert>}
      <form class="tall" method="post" action="/accounts">
        <TokenField token={formToken} />
        <FormField
          name="display_name"
          label="What the person is called"
          value={asked?.displayName ?? ''}
          fault={fault('displayName')}
        />
        <FormField
          name="name"
          label="Name to sign in with"
          value={asked?.name ?? ''}
          hint="Short, as ann, or a mail address."
          fault={fault('name')}
        />
        <ChoiceField
          name="role"
          label="Role"
          chosen={asked?.role ?? 'crew'}
          choices={[
            ['office', 'office: everything'],
            ['crew', 'crew: its days and visits, enters readings and done works'],
            ['board', 'board: its own sites, to read'],
          ]}
          fault={fault('role')}
        />
        <ChoiceField
          name="crew"
          label="Crew"
          chosen={asked?.crewRef ?? ''}
          choices={[['', 'none'], ...crews]}
          hint="For the role crew."
          fault={fault('crewRef')}
        />
        <TickFields
          name="site"
          legend="Sites, for a board"
          ticked={asked?.siteRefs ?? []}
          choices={sites}
          fault={fault('siteRefs')}
        />
        <ChoiceField
          name="language"
          label="Language of its own pages"
          chosen={asked?.language ?? 'en'}
          choices={Object.entries(LANGUAGE_NAMES)}
        />
        <FormField
          name="password"
          label="First password"
          type="password"
          autocomplete="new-password"
          hint="At least 12 characters. Hand it over in person; they can change it."
          fault={fault('password')}
        />
        <button type="submit">Make the account</button>
      </form>
    </>
  );
};
