import type { FC } from 'hono/jsx';
import type { AccountFault } from '../../service/accounts.ts';
import { FormAlert, FormField, TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';

/** Properties of the page of the first run. */
export interface SetupPageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  /** True where the code of the service's log has to be entered. */
  readonly asksCode: boolean;
  readonly name: string;
  readonly displayName: string;
  readonly faults: readonly AccountFault[];
  readonly problem: string | null;
}

/** The page of the first run: it makes the first account of the office. */
export const SetupPage: FC<SetupPageProps> = ({ frame, formToken, asksCode, name, displayName, faults, problem }) => {
  const fault = (field: AccountFault['field']): string | undefined =>
    faults.find((each) => each.field === field)?.reason;
  return (
    <PageShell title="First account" section={null} frame={frame} cautions={false}>
      <h1>Make the first account</h1>
      <p class="lead">
        Nobody has an account in this register yet. The first one is the office’s: it sees everything, and lets crews
        and boards in.
      </p>
      {problem && <FormAlert>{problem}</FormAlert>}
      <form class="tall" method="post" action="/setup">
        <TokenField token={formToken} />
        {asksCode && (
          <FormField
            name="code"
            label="Setup code"
            hint="The service printed it when it started: look in its terminal or its log."
          />
        )}
        <FormField
          name="display_name"
          label="Your name"
          value={displayName}
          autocomplete="name"
          hint="As others see it."
          fault={fault('displayName')}
        />
        <FormField
          name="name"
          label="Name to sign in with"
          value={name}
          autocomplete="username"
          hint="Short, as ann, or a mail address."
          fault={fault('name') ?? fault('role')}
        />
        <FormField
          name="password"
          label="Password"
          type="password"
          autocomplete="new-password"
          hint="At least 12 characters. Length is all that counts: a few words in a row are good."
          fault={fault('password')}
        />
        <button type="submit">Make the account</button>
      </form>
      <p class="muted">
        From the command line: <code>stormpale account add NAME --role office</code>
      </p>
    </PageShell>
  );
};
