import type { FC } from 'hono/jsx';
import type { FileCounts } from '../../register/csv/import-report.ts';
import type { DraftFile, ImportDraft } from '../../register/import-draft-store.ts';
import type { ImportLook } from '../../service/import-look.ts';
import { FormAlert, TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { changedRecord } from './changed-fields.ts';
import { ChangedTable } from './changed-table.tsx';
import { doneText } from './import-page.tsx';
import { countOf, KIND_WORDS } from './kind-words.ts';
import { RemarkTable } from './refused-rows.tsx';

/** Properties of the preview of an import. */
export interface PreviewPageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly draft: ImportDraft;
  readonly look: ImportLook;
  readonly problem: string | null;
}

const sum = (files: readonly FileCounts[], what: 'created' | 'changed' | 'unchanged' | 'refused'): number =>
  files.reduce((total, file) => total + file[what], 0);

function leadSentence({ files, faults }: ImportLook): string {
  const rows = (['created', 'changed', 'unchanged', 'refused'] as const).reduce(
    (total, what) => total + sum(files, what),
    0,
  );
  if (rows === 0) return faults.total > 0 ? 'The files cannot be taken as they are.' : 'The files hold no rows.';
  const some = (what: 'created' | 'changed' | 'unchanged' | 'refused', one: string, several: string): string => {
    const number = sum(files, what);
    return number === 0 ? `none ${one}` : `${number} ${number === 1 ? one : several}`;
  };
  return `Of ${rows === 1 ? '1 row' : `${rows} rows`}, ${some('created', 'is new', 'are new')}, ${some('changed', 'changes something', 'change something')}, ${some('unchanged', 'is as the register has it', 'are as the register has them')}, and ${some('refused', 'cannot be taken', 'cannot be taken')}.`;
}

/** The page that shows what an import would change, before anything is. */
export const ImportPreviewPage: FC<PreviewPageProps> = (props) => {
  const { frame, draft, look, problem } = props;
  const { files, faults, warnings, rejected, changed, created } = look;
  return (
    <PageShell title="What this import would change" section="records" frame={frame} cautions={false}>
      <p class="back">
        <a href="/import">Import</a>
      </p>
      <h1>What this import would change</h1>
      {problem && <FormAlert>{problem}</FormAlert>}
      <p class="lead">{leadSentence(look)}</p>
      <p>
        Nothing has been changed yet. The files are kept for this preview until <Moment at={draft.expiresAt} />.
      </p>
      {files.length > 0 && <CountsTable files={files} />}
      <ConfirmForms {...props} />
      {faults.total > 0 && (
        <>
          <h2 id="refused">Rows that cannot be taken</h2>
          <p>
            {'Correct them in your file and bring it again, or take them as files of their own: '}
            <RefusedFiles draftId={draft.id} names={rejected} />
            {rejected.length > 0 && '. Each row has its reasons in a last column, which an import passes over.'}
          </p>
          <RemarkTable remarks={faults} caption="Refused" />
        </>
      )}
      {warnings.total > 0 && (
        <>
          <h2 id="doubtful">Doubtful</h2>
          <p>These are taken, but look at them: something about them is unusual.</p>
          <RemarkTable remarks={warnings} caption="Doubtful" />
        </>
      )}
      {changed.total > 0 && (
        <>
          <h2 id="changed">What becomes another value</h2>
          <ChangedTable changed={changed.first.map(changedRecord)} total={changed.total} />
        </>
      )}
      {created.size > 0 && <Created created={created} />}
    </PageShell>
  );
};

/** Links to the refused rows, a file each. */
const RefusedFiles: FC<{ readonly draftId: string; readonly names: readonly string[] }> = ({ draftId, names }) => (
  <>
    {names.map((name, index) => (
      <>
        {index > 0 && ', '}
        <a href={`/import/${draftId}/refused/${index}`} download={`refused-${name}`}>{`refused rows of ${name}`}</a>
      </>
    ))}
  </>
);

const CountsTable: FC<{ readonly files: readonly FileCounts[] }> = ({ files }) => (
  <ScrollFrame label="File by file">
    <table class="stacked spaced">
      <caption>Rows of each file</caption>
      <thead>
        <tr>
          <th scope="col">File</th>
          <th scope="col">Holds</th>
          <th scope="col" class="figure">
            New
          </th>
          <th scope="col" class="figure">
            Changed
          </th>
          <th scope="col" class="figure">
            Unchanged
          </th>
          <th scope="col" class="figure">
            Refused
          </th>
        </tr>
      </thead>
      <tbody>
        {files.map((file) => (
          <tr>
            <th scope="row" class="hash">
              {file.name}
            </th>
            <td data-label="Holds">{KIND_WORDS[file.kind].several}</td>
            <td data-label="New" class="figure">
              {file.created}
            </td>
            <td data-label="Changed" class="figure">
              {file.changed}
            </td>
            <td data-label="Unchanged" class="figure">
              {file.unchanged}
            </td>
            <td data-label="Refused" class="figure">
              {file.refused}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </ScrollFrame>
);

const ConfirmForms: FC<PreviewPageProps> = ({ draft, look, formToken }) => {
  const { files, faults, print } = look;
  const good = sum(files, 'created') + sum(files, 'changed');
  const refused = sum(files, 'refused');
  const path = `/import/${draft.id}`;
  return (
    <div class="two-ways">
      {good === 0 ? (
        <p>{faults.total > 0 ? 'There is nothing to import as it stands.' : 'The register has all of this already.'}</p>
      ) : (
        <form class="tall" method="post" action={path}>
          <TokenField token={formToken} />
          <input type="hidden" name="shown" value={print} />
          {faults.total > 0 && (
            <div class="tick">
              <input id="leave-out" type="checkbox" name="leave_out" value="yes" required />
              <label for="leave-out">{`Import without the ${refused} refused ${refused === 1 ? 'row' : 'rows'}`}</label>
            </div>
          )}
          <button type="submit" name="act" value="import">
            {`Import ${good} ${good === 1 ? 'row' : 'rows'}`}
          </button>
        </form>
      )}
      <form class="tall" method="post" action={path}>
        <TokenField token={formToken} />
        <button class="quiet" type="submit" name="act" value="put away">
          Put away, change nothing
        </button>
      </form>
    </div>
  );
};

const Created: FC<Pick<ImportLook, 'created'>> = ({ created }) => (
  <>
    <h2 id="new">New</h2>
    <dl class="facts wide">
      {[...created].map(([kind, { first, total }]) => (
        <div>
          <dt>{countOf(total, kind)}</dt>
          <dd class="hash">
            {first.join(', ')}
            {total > first.length && ` and ${total - first.length} more`}
          </dd>
        </div>
      ))}
    </dl>
  </>
);

/** The page of an import that was made. */
export const ImportDonePage: FC<{
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly draft: ImportDraft & { readonly done: NonNullable<ImportDraft['done']> };
  /** The rows left out as far as they are still kept. */
  readonly leftOut: { readonly id: string; readonly expiresAt: string; readonly files: readonly DraftFile[] } | null;
}> = ({ frame, formToken, draft, leftOut }) => (
  <PageShell title="Imported" section="records" frame={frame} cautions={false}>
    <p class="back">
      <a href="/import">Import</a>
    </p>
    <h1>Imported</h1>
    <p class="lead">{`${draft.done.files.join(', ')}: ${doneText(draft.done)}.`}</p>
    <p class="muted">
      {`By ${draft.importedBy}, `}
      {draft.importedAt !== null && <Moment at={draft.importedAt} />}.
    </p>
    {draft.done.refusedRows > 0 && (
      <p>
        {leftOut ? (
          <>
            {'The rows left out, each with its reasons in a last column: '}
            <RefusedFiles draftId={draft.id} names={leftOut.files.map(({ name }) => name)} />
            {', kept until '}
            <Moment at={leftOut.expiresAt} />
            {'. Correct them and bring them as a file of their own, or '}
            <a href={`/import/${leftOut.id}`}>look at them again</a>
            {' once what they lacked is in the register.'}
          </>
        ) : (
          'The rows left out are no longer kept; bring your file again and they are shown again.'
        )}
      </p>
    )}
    <p>Forecasts follow with the next sweep, which also writes the notices that come of it. It runs every night.</p>
    <form class="tall" method="post" action="/records/sweep">
      <TokenField token={formToken} />
      <button type="submit">Sweep now</button>
    </form>
    <p>
      <a href="/fences">To the fences</a>
    </p>
  </PageShell>
);
