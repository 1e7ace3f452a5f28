import type { FC } from 'hono/jsx';
import type { ImportDraft } from '../../register/import-draft-store.ts';
import { RECORD_KINDS, type RecordKind } from '../../register/record-store.ts';
import { DRAFT_HOURS } from '../../service/import-files.ts';
import { FormAlert, TokenField } from '../frame/form-field.tsx';
import { Moment } from '../frame/moment.tsx';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { AllowedWords } from './allowed-words.tsx';
import { countOf, KIND_WORDS } from './kind-words.ts';

/** Properties of the page on which files are brought. */
export interface ImportPageProps {
  readonly frame: PageFrame;
  readonly formToken: string;
  readonly imports: readonly Omit<ImportDraft, 'files'>[];
  /** Why what was sent cannot be looked at. */
  readonly problem: string | null;
  readonly pasted: string;
}

/** The page on which the office brings CSV files in. */
export const ImportPage: FC<ImportPageProps> = ({ frame, formToken, imports, problem, pasted }) => (
  <PageShell title="Import" section="records" frame={frame} cautions={false}>
    <p class="back">
      <a href="/records">Records</a>
    </p>
    <h1>Import</h1>
    <p class="lead">Bring CSV files. First you see what they would change; nothing is changed until you say so.</p>
    {problem && <FormAlert>{problem}</FormAlert>}
    <form class="tall" method="post" action="/import" enctype="multipart/form-data">
      <TokenField token={formToken} />
      <div class="field">
        <label for="files">CSV files</label>
        <input id="files" name="files" type="file" multiple accept=".csv,text/csv" aria-describedby="files-hint" />
        <p class="hint" id="files-hint">
          One or several, of any kinds, in any order. What a file holds is told by its columns and its name. Up to 16
          MiB and 30,000 lines together.
        </p>
      </div>
      <div class="field">
        <label for="pasted">Or paste the text of one</label>
        <textarea id="pasted" name="pasted" rows={6} spellcheck={false} aria-describedby="pasted-hint">
          {pasted}
        </textarea>
        <p class="hint" id="pasted-hint">
          With the line of column names first, as ref,name,kind,channel,email.
        </p>
      </div>
      <button type="submit">Show what would change</button>
    </form>
    <p class="muted">{`The files are kept for the preview only, for up to ${DRAFT_HOURS} hours, in the register.`}</p>
    <h2 id="columns">Columns and exports</h2>
    <p>
      An export of a kind can be changed in a spreadsheet and brought back; rows that are the same change nothing. Where
      you have nothing yet, begin with the columns.
    </p>
    <ScrollFrame label="Columns and exports">
      <table>
        <caption>What each kind of file holds</caption>
        <thead>
          <tr>
            <th scope="col">Kind</th>
            <th scope="col">Columns to fill in</th>
            <th scope="col">All that the register holds</th>
          </tr>
        </thead>
        <tbody>
          {RECORD_KINDS.map((kind) => (
            <tr>
              <th scope="row">{KIND_WORDS[kind].several}</th>
              <td>
                <a href={`/export/columns/${kind}.csv?units=us`} download={`${kind}.csv`}>{`${kind}, US units`}</a>{' '}
                <a href={`/export/columns/${kind}.csv?units=metric`} download={`${kind}.csv`}>{`${kind}, metric`}</a>
              </td>
              <td>
                <a href={`/export/${kind}.csv`} download={`${kind}.csv`}>{`${kind}.csv`}</a>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollFrame>
    <AllowedWords />
    {imports.length > 0 && <Imports imports={imports} />}
  </PageShell>
);

/** What an import did, kind by kind. */
export function doneText(done: NonNullable<ImportDraft['done']>): string {
  const parts = RECORD_KINDS.flatMap((kind: RecordKind) => {
    const counts = done.counts[kind];
    if (!counts || counts.created + counts.changed === 0) return [];
    const made = counts.created > 0 ? [`${countOf(counts.created, kind)} made`] : [];
    return [...made, ...(counts.changed > 0 ? [`${countOf(counts.changed, kind)} changed`] : [])];
  });
  const left = done.refusedRows === 0 ? [] : [`${done.refusedRows} rows left out`];
  return [...(parts.length === 0 ? ['nothing was different'] : parts), ...left].join(', ');
}

const Imports: FC<{ readonly imports: readonly Omit<ImportDraft, 'files'>[] }> = ({ imports }) => (
  <>
    <h2>Imports made here</h2>
    <ScrollFrame label="Imports made here">
      <table class="stacked">
        <caption>The newest first</caption>
        <thead>
          <tr>
            <th scope="col">When</th>
            <th scope="col">By</th>
            <th scope="col">Files</th>
            <th scope="col">What it did</th>
          </tr>
        </thead>
        <tbody>
          {imports.map(({ id, importedAt, importedBy, done }) => (
            <tr>
              <th scope="row">
                <a href={`/import/${id}`}>{importedAt !== null && <Moment at={importedAt} />}</a>
              </th>
              <td data-label="By">{importedBy}</td>
              <td data-label="Files">{done?.files.join(', ')}</td>
              <td data-label="What it did">{done && doneText(done)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollFrame>
  </>
);
