import type { FC } from 'hono/jsx';
import { DEMO_ROLES } from '../../service/demo-sign-in.ts';
import { FormAlert, FormField, TokenField } from '../frame/form-field.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { LANGUAGE_NAMES, type PageLanguage } from '../frame/page-language.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { SIGN_IN_WORDS, type SignInWords } from './sign-in-words.ts';

/** Properties of the page on which people sign in. */
export interface SignInPageProps {
  readonly language: PageLanguage;
  readonly frame: PageFrame;
  readonly formToken: string;
  /** Where to go once signed in. */
  readonly next: string;
  /** What was typed before, where that did not do. */
  readonly name: string;
  readonly problem: { readonly kind: 'wrong' } | { readonly kind: 'wait'; readonly seconds: number } | null;
  readonly signedOut: boolean;
  /** True where the demo can be entered by one click. */
  readonly demo: boolean;
}

/** The page on which people sign in; in the demo, the one on which they choose whom to be. */
export const SignInPage: FC<SignInPageProps> = (props) => {
  const { language, frame, demo, signedOut, next } = props;
  const words = SIGN_IN_WORDS[language];
  const other: PageLanguage = language === 'en' ? 'es' : 'en';
  const title = demo ? words.demoTitle : words.title;
  return (
    <PageShell title={title} section={null} frame={frame} cautions={false} language={language}>
      <h1>{title}</h1>
      {signedOut && <p class="done">{words.signedOut}</p>}
      {demo ? <DemoWays {...props} words={words} /> : <SignInForm {...props} words={words} />}
      <p class="languages">
        <a href={`/sign-in?${new URLSearchParams({ lang: other, next }).toString()}`} lang={other} hreflang={other}>
          {LANGUAGE_NAMES[other]}
        </a>
      </p>
    </PageShell>
  );
};

const SignInForm: FC<SignInPageProps & { readonly words: SignInWords }> = ({
  language,
  formToken,
  next,
  name,
  problem,
  words,
}) => (
  <>
    {problem && <FormAlert>{problem.kind === 'wait' ? words.wait(problem.seconds) : words.wrong}</FormAlert>}
    <form class="tall" method="post" action={`/sign-in?lang=${language}`}>
      <TokenField token={formToken} />
      <input type="hidden" name="next" value={next} />
      <FormField name="name" label={words.name} value={name} autocomplete="username" />
      <FormField name="password" label={words.password} type="password" autocomplete="current-password" />
      <button type="submit">{words.submit}</button>
    </form>
    <p class="muted">{words.forgotten}</p>
  </>
);

const DemoWays: FC<SignInPageProps & { readonly words: SignInWords }> = ({ formToken, next, words }) => (
  <>
    <p class="lead">{words.demoText}</p>
    <form method="post" action="/demo">
      <TokenField token={formToken} />
      <input type="hidden" name="next" value={next} />
      <ul class="ways">
        {DEMO_ROLES.map((role) => (
          <li>
            <button type="submit" name="as" value={role}>
              {words.demoWays[role][0]}
            </button>
            <span>{words.demoWays[role][1]}</span>
          </li>
        ))}
      </ul>
    </form>
    <p>
      {words.demoSetup} <a href="/setup">{words.demoSetupLink}</a>.
    </p>
  </>
);
