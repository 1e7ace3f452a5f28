import { raw } from 'hono/html';
import type { Child, FC } from 'hono/jsx';
import { cautionsIn } from '../drawing/cautions.ts';
import { STYLESHEET_PATH } from './stylesheet.ts';

/** Which entry of the masthead a page belongs to. */
type Section = 'fences' | 'outbox' | 'mail' | null;

/** What the frame of a page needs to know. */
export interface ShellProps {
  readonly title: string;
  readonly section: Section;
  /** True where the service catches its own mail and the page of caught mail exists. */
  readonly catchesMail: boolean;
  /** False on pages that show no capacity. */
  readonly cautions: boolean;
  readonly children?: Child;
}

/** Three pickets, the last one leaning. */
const MARK = raw(
  '<svg width="26" height="22" viewBox="0 0 26 22" fill="none" stroke-width="2.4" stroke-linecap="round" aria-hidden="true" focusable="false"><path d="M4 21V5M11.5 21V5M18 21l5-15M1 10.5h17M1 16.5h17"/></svg>',
);

/** The frame of every page: skip link, masthead, main, cautions. */
export const PageShell: FC<ShellProps> = ({ title, section, catchesMail, cautions, children }) => {
  const current = (name: Section): 'page' | undefined => (section === name ? 'page' : undefined);
  return (
    <html lang="en">
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
          Skip to the content
        </a>
        <header class="masthead">
          <div class="masthead-inner">
            <a class="name" href="/">
              {MARK}
              Stormpale
            </a>
            <nav aria-label="Pages">
              <ul>
                <li>
                  <a href="/" aria-current={current('fences')}>
                    Fences
                  </a>
                </li>
                <li>
                  <a href="/outbox" aria-current={current('outbox')}>
                    Outbox
                  </a>
                </li>
                {catchesMail && (
                  <li>
                    <a href="/mail" aria-current={current('mail')}>
                      Caught mail
                    </a>
                  </li>
                )}
              </ul>
            </nav>
          </div>
        </header>
        <main id="content" tabindex={-1}>
          {children}
        </main>
        {cautions && <Cautions />}
      </body>
    </html>
  );
};

const Cautions: FC = () => (
  <footer class="cautions">
    <div class="cautions-inner">
      <h2>Please note</h2>
      {cautionsIn('en').all.map((caution) => (
        <p>{caution}</p>
      ))}
    </div>
  </footer>
);

/** The page's small picture in the browser's tab. */
export const ICON_SVG =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" rx="5" fill="#26476a"/><path d="M8 27V8M15.5 27V8M22 27l5-17M4 14h19M4 21h19" fill="none" stroke="#ffffff" stroke-width="2.6" stroke-linecap="round"/></svg>';
