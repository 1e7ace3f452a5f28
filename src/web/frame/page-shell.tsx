import { raw } from 'hono/html';
import type { Child, FC } from 'hono/jsx';
import { cautionsIn } from '../../drawing/cautions.ts';
import { FORM_TOKEN } from '../access/form-token.ts';
import { OfficeZone } from './moment.tsx';
import { entriesFor, type Section } from './navigation.ts';
import type { PageFrame } from './page-frame.ts';
import { SHELL_WORDS, type ShellWords } from './shell-words.ts';
import { STYLESHEET_PATH } from './stylesheet.ts';

/** What the frame of a page needs to know. */
export interface ShellProps {
  readonly title: string;
  readonly section: Section;
  readonly frame: PageFrame;
  /** False on pages that show no capacity. */
  readonly cautions: boolean;
  /** Language of the page; English unless given. */
  readonly language?: 'en' | 'es';
  /** Where the name in the masthead leads; the beginning of whoever looks unless given. */
  readonly home?: string;
  readonly children?: Child;
}

/** Without it a browser lays the page out as those of the last century. */
const DOCTYPE = raw('<!DOCTYPE html>');

/** Three pickets, the last one leaning. */
const MARK = raw(
  '<svg width="26" height="22" viewBox="0 0 26 22" fill="none" stroke-width="2.4" stroke-linecap="round" aria-hidden="true" focusable="false"><path d="M4 21V5M11.5 21V5M18 21l5-15M1 10.5h17M1 16.5h17"/></svg>',
);

/** The frame of every page: skip link, masthead, main, cautions. */
export const PageShell: FC<ShellProps> = ({ title, section, frame, cautions, language = 'en', home, children }) => {
  const words = SHELL_WORDS[language];
  return (
    <>
      {DOCTYPE}
      <html lang={language}>
        <head>
          <meta charset="utf-8" />
          <meta name="viewport" content="width=device-width, initial-scale=1" />
          <meta name="color-scheme" content="light dark" />
          <title>{`${title} · Stormpale`}</title>
          <link rel="icon" href="/icon.svg" type="image/svg+xml" />
          <link rel="stylesheet" href={STYLESHEET_PATH} />
        </head>
        <body>
          <a class="skip" href="#content">
            {words.skip}
          </a>
          <header class="masthead">
            <div class="masthead-inner">
              <a class="name" href={home ?? '/'}>
                {MARK}
                Stormpale
              </a>
              {frame.account && (
                <Navigation
                  account={frame.account}
                  catchesMail={frame.catchesMail}
                  section={section}
                  language={language}
                  words={words}
                />
              )}
            </div>
          </header>
          <main id="content" tabindex={-1}>
            <OfficeZone.Provider value={frame.office.timeZone}>{children}</OfficeZone.Provider>
          </main>
          {cautions && <Cautions language={language} heading={words.pleaseNote} />}
        </body>
      </html>
    </>
  );
};

const Navigation: FC<{
  readonly account: NonNullable<PageFrame['account']>;
  readonly catchesMail: boolean;
  readonly section: Section;
  readonly language: 'en' | 'es';
  readonly words: ShellWords;
}> = ({ account, catchesMail, section, language, words }) => {
  const { first, open, second } = entriesFor(account.role, { section, catchesMail });
  return (
    <>
      <nav aria-label={words.pages}>
        <ul>
          {first.map((entry) => (
            <li>
              <a href={entry.path} aria-current={currentOf(entry.section, section, open)}>
                {entry.words[language]}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <form class="who" method="post" action="/sign-out">
        <a href="/account" aria-current={section === 'account' ? 'page' : undefined}>
          {account.displayName}
        </a>
        <input type="hidden" name={FORM_TOKEN} value={account.formToken} />
        <button class="quiet" type="submit">
          {words.signOut}
        </button>
      </form>
      {second.length > 0 && (
        <nav class="second" aria-label={words.pagesHere}>
          <ul>
            {second.map((entry) => (
              <li>
                <a href={entry.path} aria-current={section === entry.section ? 'page' : undefined}>
                  {entry.words[language]}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      )}
    </>
  );
};

/** How an entry of the first line is marked: as the page itself, or as that under which the page stands. */
const currentOf = (entry: string, section: Section, open: string | null): 'page' | 'true' | undefined =>
  entry === section ? 'page' : entry === open ? 'true' : undefined;

const Cautions: FC<{ readonly language: 'en' | 'es'; readonly heading: string }> = ({ language, heading }) => (
  <footer class="cautions">
    <div class="cautions-inner">
      <h2>{heading}</h2>
      {cautionsIn(language).all.map((caution) => (
        <p>{caution}</p>
      ))}
    </div>
  </footer>
);

/** The page's small picture in the browser's tab. */
export const ICON_SVG =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" rx="5" fill="#26476a"/><path d="M8 27V8M15.5 27V8M22 27l5-17M4 14h19M4 21h19" fill="none" stroke="#ffffff" stroke-width="2.6" stroke-linecap="round"/></svg>';
