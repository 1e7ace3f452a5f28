import type { FC } from 'hono/jsx';
import type { PageFrame } from './page-frame.ts';
import type { PageLanguage } from './page-language.ts';
import { PageShell } from './page-shell.tsx';
import { SHELL_WORDS } from './shell-words.ts';

/** A page that says what went wrong and the way out. */
export const ProblemPage: FC<{
  readonly words: { readonly title: string; readonly what: string; readonly wayOut: string };
  readonly language: PageLanguage;
  readonly frame: PageFrame;
}> = ({ words: { title, what, wayOut }, language, frame }) => (
  <PageShell title={title} section={null} frame={frame} cautions={false} language={language}>
    <h1>{title}</h1>
    <p class="lead">{what}</p>
    <p>{wayOut}</p>
    {frame.account && (
      <p>
        <a href="/fences">{SHELL_WORDS[language].toFences}</a>
      </p>
    )}
  </PageShell>
);
