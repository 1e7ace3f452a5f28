import type { FC } from 'hono/jsx';
import { PageShell } from './page-shell.tsx';

/** A page that says what went wrong and the way out. */
export const ProblemPage: FC<{
  readonly title: string;
  readonly what: string;
  readonly wayOut: string;
  readonly catchesMail: boolean;
}> = ({ title, what, wayOut, catchesMail }) => (
  <PageShell title={title} section={null} catchesMail={catchesMail} cautions={false}>
    <h1>{title}</h1>
    <p class="lead">{what}</p>
    <p>{wayOut}</p>
    <p>
      <a href="/">Go to the list of fences</a>
    </p>
  </PageShell>
);
