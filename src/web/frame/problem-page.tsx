import type { FC } from 'hono/jsx';
import type { PageFrame } from './page-frame.ts';
import { PageShell } from './page-shell.tsx';

/** A page that says what went wrong and the way out. */
export const ProblemPage: FC<{
  readonly title: string;
  readonly what: string;
  readonly wayOut: string;
  readonly frame: PageFrame;
}> = ({ title, what, wayOut, frame }) => (
  <PageShell title={title} section={null} frame={frame} cautions={false}>
    <h1>{title}</h1>
    <p class="lead">{what}</p>
    <p>{wayOut}</p>
    {frame.account && (
      <p>
        <a href="/fences">Go to the list of fences</a>
      </p>
    )}
  </PageShell>
);
