import type { FC } from 'hono/jsx';
import type { LongProgress } from '../../service/long-work-thread.ts';
import type { PageContext } from '../access/visitor.ts';
import { frameFor, type PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';

/** The page asks again after so long [s]. */
const AGAIN_AFTER_S = 2;

/** Work that takes longer than a page is waited for. */
export interface WorkSaid {
  readonly title: string;
  /** What becomes of it. */
  readonly note: string;
  readonly counted: 'rows' | 'fences';
  readonly back: { readonly path: string; readonly name: string };
  readonly progress: LongProgress;
}

const AtWorkPage: FC<WorkSaid & { readonly frame: PageFrame; readonly again: string }> = (props) => {
  const { title, note, counted, back, progress, frame, again } = props;
  const { done, total } = progress;
  return (
    <PageShell title={title} section="records" frame={frame} cautions={false}>
      <p class="back">
        <a href={back.path}>{back.name}</a>
      </p>
      <h1>{title}</h1>
      <p class="lead">{total === 0 ? 'It has begun.' : `${done} of ${total} ${counted} are looked at.`}</p>
      {total > 0 && <progress value={done} max={total} aria-label={`${counted} looked at`} />}
      <p>{note}</p>
      <p>
        {`This page asks again by itself every ${AGAIN_AFTER_S} seconds. `}
        <a href={again}>Ask now</a>
      </p>
    </PageShell>
  );
};

/** Says how far work is; the browser asks again by itself, also without scripts. */
export async function sayAtWork(context: PageContext, work: WorkSaid): Promise<Response> {
  const { pathname, search } = new URL(context.req.url);
  context.header('Refresh', String(AGAIN_AFTER_S));
  return context.html(<AtWorkPage {...work} frame={frameFor(context)} again={`${pathname}${search}`} />, 202);
}
