import type { FC } from 'hono/jsx';
import type { AccountRole } from '../../register/account-tables.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import type { PageLanguage } from '../frame/page-language.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { REPORT_PAGE_WORDS, type ReportPageWords } from './report-words.ts';

/** One document of the list: what it is, and where its page is; its PDF is beside it. */
interface Listed {
  readonly what: string;
  readonly note?: string;
  readonly path: string;
}

/** What the page of documents lists. */
export interface DocumentsListed {
  readonly role: AccountRole;
  /** The fence that was looked for; null where none was, or where it is not there for the visitor. */
  readonly fence: { readonly ref: string; readonly siteName: string; readonly units: 'us' | 'metric' } | null;
  /** What was typed. */
  readonly asked: string;
  readonly sites: readonly { readonly ref: string; readonly name: string }[];
  /** Owners, for the office. */
  readonly owners: readonly { readonly ref: string; readonly name: string }[];
  readonly letters: readonly { readonly id: number; readonly ownerName: string; readonly subject: string }[];
  readonly sheets: readonly { readonly crewRef: string; readonly crewName: string; readonly day: string }[];
}

const DocumentList: FC<{ readonly documents: readonly Listed[]; readonly words: ReportPageWords }> = ({
  documents,
  words,
}) => (
  <ul class="documents">
    {documents.map(({ what, note, path }) => (
      <li>
        <span class="what">
          {what}
          {note !== undefined && <span class="small">{note}</span>}
        </span>
        <span class="links">
          <a href={path} aria-label={`${what}, ${words.page}`}>
            {words.page}
          </a>
          <a href={`${path}.pdf`} aria-label={`${what}, ${words.pdf}`}>
            {words.pdf}
          </a>
        </span>
      </li>
    ))}
  </ul>
);

function fenceDocuments(ref: string, role: AccountRole, words: ReportPageWords): readonly Listed[] {
  const path = `/fences/${encodeURIComponent(ref)}`;
  return [
    { what: words.fenceReport, note: words.fenceReportNote, path: `${path}/report` },
    ...(role === 'crew' ? [] : [{ what: words.evidence, note: words.evidenceNote, path: `${path}/evidence` }]),
  ];
}

const OfOneFence: FC<{ readonly listed: DocumentsListed; readonly words: ReportPageWords }> = ({ listed, words }) => {
  const { fence, asked, role } = listed;
  const path = fence && `/fences/${encodeURIComponent(fence.ref)}`;
  return (
    <>
      <h2>{words.aFence}</h2>
      <form class="narrow" method="get" action="/documents">
        <div class="field">
          <label for="fence">{words.fenceRef}</label>
          <input id="fence" name="fence" value={asked} autocomplete="off" autocapitalize="none" spellcheck={false} />
        </div>
        <button type="submit">{words.show}</button>
      </form>
      {asked !== '' && !fence && <p>{words.noFence(asked)}</p>}
      {fence && (
        <>
          <h3>{`${fence.ref}, ${fence.siteName}`}</h3>
          <DocumentList documents={fenceDocuments(fence.ref, role, words)} words={words} />
          {role === 'office' && (
            <p>
              <a href={`${path}/quote`}>{words.quote}</a>. {words.quoteNote}
            </p>
          )}
          {role !== 'crew' && (
            <form class="narrow" method="get" action={`${path}/evidence`}>
              <div class="field">
                <label for="on">{words.evidenceOn}</label>
                <input id="on" name="on" placeholder="2025-06-30" autocomplete="off" />
              </div>
              <button type="submit">{words.show}</button>
            </form>
          )}
        </>
      )}
    </>
  );
};

/** The page that lists what can be read, printed and handed on. */
export const DocumentsPage: FC<{
  readonly listed: DocumentsListed;
  readonly language: PageLanguage;
  readonly frame: PageFrame;
}> = ({ listed, language, frame }) => {
  const words = REPORT_PAGE_WORDS[language];
  const { role, sites, owners, letters, sheets } = listed;
  return (
    <PageShell title={words.documents} section="documents" frame={frame} cautions={false} language={language}>
      <h1>{words.documents}</h1>
      <p class="lead">{words.lead[role]}</p>
      <OfOneFence listed={listed} words={words} />
      {role !== 'crew' && (
        <>
          <h2>{words.plans}</h2>
          <p>{words.planNote}</p>
          <DocumentList
            documents={sites.map(({ ref, name }) => ({ what: name, path: `/sites/${encodeURIComponent(ref)}/plan` }))}
            words={words}
          />
        </>
      )}
      {owners.length > 0 && (
        <>
          <h2>{words.owners}</h2>
          <DocumentList
            documents={owners.map(({ ref, name }) => ({ what: name, path: `/owners/${encodeURIComponent(ref)}/plan` }))}
            words={words}
          />
        </>
      )}
      {role !== 'board' && (
        <>
          <h2>{words.sheets}</h2>
          <p>{sheets.length === 0 ? words.noSheets : words.sheetsNote}</p>
          <DocumentList
            documents={sheets.map(({ crewRef, crewName, day }) => ({
              what: `${crewName}, ${day}`,
              path: `/sheets/${encodeURIComponent(crewRef)}/${day}`,
            }))}
            words={words}
          />
        </>
      )}
      {role === 'office' && (
        <>
          <h2>{words.letters}</h2>
          <p>{letters.length === 0 ? words.noLetters : words.lettersNote}</p>
          <DocumentList
            documents={letters.map(({ id, ownerName, subject }) => ({
              what: ownerName,
              note: subject,
              path: `/outbox/${id}/letter`,
            }))}
            words={words}
          />
        </>
      )}
    </PageShell>
  );
};
