import type { FC } from 'hono/jsx';
import type { Account } from '../../register/account-store.ts';
import { ChoiceField, FormAlert, FormField, TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { LANGUAGE_NAMES } from '../frame/page-language.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { OWN_ACCOUNT_WORDS, type OwnAccountWords } from './own-account-words.ts';

/** Properties of the page of one's own account. */
export interface OwnAccountPageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly account: Account;
  /** Names of the sites that a board sees; null for whoever sees all. */
  readonly siteNames: readonly string[] | null;
  readonly problem: string | null;
  /** What is wrong with the new password. */
  readonly fault: string | null;
  readonly changed: boolean;
}

/** The page of one's own account, in its language. */
export const OwnAccountPage: FC<OwnAccountPageProps> = (props) => {
  const { frame, formToken, account, siteNames, problem, changed } = props;
  const words = OWN_ACCOUNT_WORDS[account.language];
  return (
    <PageShell title={words.title} section="account" frame={frame} cautions={false} language={account.language}>
      <h1>{words.title}</h1>
      <p class="lead">{words.signedInAs(account.name)}</p>
      <p>{words.roles[account.role]}</p>
      {siteNames && (
        <ul class="plain">
          {siteNames.map((name) => (
            <li>{name}</li>
          ))}
        </ul>
      )}
      {problem && <FormAlert>{problem}</FormAlert>}
      {changed && <p class="done">{words.changed}</p>}
      <form class="tall" method="post" action="/account/language">
        <TokenField token={formToken} />
        <ChoiceField
          name="language"
          label={words.language}
          chosen={account.language}
          choices={Object.entries(LANGUAGE_NAMES)}
        />
        <button type="submit">{words.setLanguage}</button>
      </form>
      <h2>{words.password}</h2>
      {account.demo ? <p>{words.demo}</p> : <PasswordForm {...props} words={words} />}
    </PageShell>
  );
};

const PasswordForm: FC<OwnAccountPageProps & { readonly words: OwnAccountWords }> = ({ formToken, fault, words }) => (
  <form class="tall" method="post" action="/account/password">
    <TokenField token={formToken} />
    <FormField name="now" label={words.now} type="password" autocomplete="current-password" />
    <FormField
      name="password"
      label={words.another}
      type="password"
      autocomplete="new-password"
      hint={words.hint}
      fault={fault ?? undefined}
    />
    <button type="submit">{words.setPassword}</button>
  </form>
);
