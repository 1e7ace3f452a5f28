import type { FC } from 'hono/jsx';
import { methodText, outcomeText, readingText } from '../../drawing/evidence-text.ts';
import { speedText } from '../../drawing/speed-text.ts';
import type { ExportUnits } from '../../register/csv/csv-field.ts';
import type { FenceEvidence } from '../../register/evidence-store.ts';
import type { Withdrawal } from '../../register/evidence-withdrawal.ts';
import { postsText } from '../../register/post-numbers.ts';
import { readingFacts } from '../../register/reading-record.ts';
import type { WorksRecord } from '../../register/works-record.ts';
import { FormAlert, TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { editPath } from './edited-kinds.ts';

/** Properties of the page of what was seen and done at a fence. */
export interface EvidencePageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly fenceRef: string;
  readonly place: string;
  readonly units: ExportUnits;
  readonly evidence: FenceEvidence;
  readonly works: readonly WorksRecord[];
  readonly withdrawals: readonly Withdrawal[];
  readonly problem: {
    readonly ref: string;
    readonly text: string;
    readonly asked: boolean;
    readonly because: string;
  } | null;
  readonly done: string | null;
}

/** The page of what was seen and done at a fence, for the office to correct and take back. */
export const EvidencePage: FC<EvidencePageProps> = (props) => {
  const { frame, fenceRef, place, problem, done, evidence, works, withdrawals, units } = props;
  const path = `/fences/${encodeURIComponent(fenceRef)}`;
  return (
    <PageShell title={`Seen and done at fence ${fenceRef}`} section="fences" frame={frame} cautions={false}>
      <p class="back">
        <a href={path}>{`Fence ${fenceRef}`}</a>
      </p>
      <h1>{`Seen and done at fence ${fenceRef}`}</h1>
      <p class="where">{place}</p>
      {done && <p class="done">{done}</p>}
      {problem && <FormAlert>{problem.text}</FormAlert>}
      <p>
        <a href={`${path}/inspect`}>Enter an inspection</a>
        {' · '}
        <a href={`${path}/works`}>Enter works done</a>
      </p>
      <h2>Inspections</h2>
      {evidence.inspections.length === 0 && <p>None recorded.</p>}
      {evidence.inspections.toReversed().map(({ record, readings }) => (
        <section class="entry-kept">
          <h3>{`${record.day}, ${record.inspector}, ${methodText(record.method)}`}</h3>
          <p class="muted hash">{record.ref}</p>
          <ul class="plain">
            {readings.map((reading) => (
              <li>{`Post ${reading.post}: ${readingText(readingFacts(reading), units)}`}</li>
            ))}
          </ul>
          <Acts {...props} kind="inspections" recordRef={record.ref} what={`the inspection of ${record.day}`} />
        </section>
      ))}
      <h2>Storms</h2>
      {evidence.outcomes.length === 0 && <p>None reported.</p>}
      {evidence.outcomes.toReversed().map((outcome) => (
        <section class="entry-kept">
          <h3>{`${outcome.day}, ${outcome.storm}: ${outcomeText(outcome, false)}`}</h3>
          <p class="muted hash">
            {`${outcome.ref} · gust ${speedText(outcome.gustMps, units)}, reported by ${outcome.reportedBy}`}
          </p>
          <Acts {...props} kind="outcomes" recordRef={outcome.ref} what={`the outcome of ${outcome.storm}`} />
        </section>
      ))}
      <h2>Works done</h2>
      {works.length === 0 && <p>None recorded.</p>}
      {works.toReversed().map((done_) => (
        <section class="entry-kept">
          <h3>{`${done_.day}, ${done_.kind}: ${done_.posts === 'all' ? 'all posts' : `posts ${postsText(done_.posts)}`}`}</h3>
          <p class="muted hash">{done_.ref}</p>
          <p>
            <a href={editPath('works', done_.ref)}>{`Change the works of ${done_.day}`}</a>
          </p>
        </section>
      ))}
      {withdrawals.length > 0 && (
        <>
          <h2>Taken back</h2>
          <ul class="plain">
            {withdrawals.map(({ kind, ref, because, by, at }) => (
              <li>
                {`${kind} ${ref}, `}
                <Moment at={at} />
                {`${by === '' ? '' : `, by ${by}`}: ${because}`}
              </li>
            ))}
          </ul>
        </>
      )}
    </PageShell>
  );
};

const Acts: FC<
  EvidencePageProps & { readonly kind: 'inspections' | 'outcomes'; readonly recordRef: string; readonly what: string }
> = ({ fenceRef, formToken, problem, kind, recordRef, what }) => {
  const failed = problem?.ref === recordRef ? problem : null;
  const id = `because-${kind}-${recordRef.replaceAll(/[^A-Za-z0-9]/g, '-')}`;
  return (
    <>
      <p>
        <a href={editPath(kind, recordRef)}>{`Change ${what}`}</a>
      </p>
      <details open={failed !== null}>
        <summary>{`Take back ${what}`}</summary>
        <form class="tall" method="post" action={`/fences/${encodeURIComponent(fenceRef)}/withdraw`}>
          <TokenField token={formToken} />
          <input type="hidden" name="kind" value={kind} />
          <input type="hidden" name="ref" value={recordRef} />
          <div class="field">
            <label for={id}>Why</label>
            <input id={id} name="because" type="text" value={failed?.because ?? ''} autocomplete="off" required />
            <p class="hint">It is kept with what was said; forecasts no longer rest on it.</p>
          </div>
          {failed?.asked && (
            <div class="tick">
              <input id={`${id}-sure`} type="checkbox" name="confirmed" value="yes" />
              <label for={`${id}-sure`}>It holds for these posts as well</label>
            </div>
          )}
          <button class="quiet" type="submit">
            Take it back
          </button>
        </form>
      </details>
    </>
  );
};
