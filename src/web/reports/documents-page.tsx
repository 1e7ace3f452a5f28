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

/** One page of a list. */
export interface PageOf<T> {
  readonly rows: readonly T[];
  readonly found: number;
  readonly page: number;
  readonly pages: number;
}

/** What the page of documents lists. */
export interface DocumentsListed {
  readonly role: AccountRole;
  /** The fence that was looked for; null where none was, or where it is not there for the visitor. */
  readonly fence: { readonly ref: string; readonly siteName: string; readonly units: 'us' | 'metric' } | null;
  /** The ref that was looked for. */
  readonly asked: string;
  /** The text that everything is looked for by; empty where all is shown. */
  readonly text: string;
  readonly fences: PageOf<{ readonly ref: string; readonly siteName: string }>;
  /** Null for those who have no plans. */
  readonly sites: PageOf<{ readonly ref: string; readonly name: string }> | null;
  /** Owners, for the office. */
  readonly owners: PageOf<{ readonly ref: string; readonly name: string }> | null;
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

const Search: FC<{ readonly listed: DocumentsListed; readonly words: ReportPageWords }> = ({ listed, words }) => (
  <search aria-label={words.documents}>
    <form class="narrow search" method="get" action="/documents">
      <div class="field">
        <label for="q">{words.search}</label>
        <input id="q" name="q" type="search" value={listed.text} autocomplete="off" aria-describedby="q-hint" />
      </div>
      <button type="submit">{words.find}</button>
      <p class="hint" id="q-hint">
        {words.fencesNote}
      </p>
    </form>
  </search>
);

const Pages: FC<{
  readonly of: PageOf<unknown>;
  readonly name: 'fences' | 'sites' | 'owners';
  readonly heading: string;
  readonly text: string;
  readonly words: ReportPageWords;
}> = ({ of: { page, pages }, name, heading, text, words }) => {
  const to = (number: number): string =>
    `/documents?${new URLSearchParams({ ...(text === '' ? {} : { q: text }), [name]: String(number) }).toString()}#${name}`;
  return pages === 1 ? null : (
    <nav class="pages" aria-label={words.pagesOf(heading)}>
      {page > 1 && (
        <a rel="prev" href={to(page - 1)}>
          {words.toPage(page - 1)}
        </a>
      )}
      <span>{words.pageOf(page, pages)}</span>
      {page < pages && (
        <a rel="next" href={to(page + 1)}>
          {words.toPage(page + 1)}
        </a>
      )}
    </nav>
  );
};

const FencesFound: FC<{ readonly listed: DocumentsListed; readonly words: ReportPageWords }> = ({ listed, words }) => {
  const { fences, text } = listed;
  if (fences.found === 0) return null;
  return (
    <>
      <h2 id="fences">{words.fences}</h2>
      <ul class="documents">
        {fences.rows.map(({ ref, siteName }) => {
          const report = `/fences/${encodeURIComponent(ref)}/report`;
          const what = `${ref}, ${siteName}`;
          return (
            <li>
              <span class="what">
                {ref}
                <span class="small">{siteName}</span>
              </span>
              <span class="links">
                <a
                  href={`/documents?${new URLSearchParams({ fence: ref }).toString()}`}
                  aria-label={`${what}: ${words.allOfFence}`}
                >
                  {words.allOfFence}
                </a>
                <a href={`${report}.pdf`} aria-label={`${words.fenceReport} ${what}, ${words.pdf}`}>
                  {words.pdf}
                </a>
              </span>
            </li>
          );
        })}
      </ul>
      <Pages of={fences} name="fences" heading={words.fences} text={text} words={words} />
    </>
  );
};

const OfOneFence: FC<{ readonly listed: DocumentsListed; readonly words: ReportPageWords }> = ({ listed, words }) => {
  const { fence, asked, role } = listed;
  if (!fence) return asked === '' ? null : <p>{words.noFence(asked)}</p>;
  const path = `/fences/${encodeURIComponent(fence.ref)}`;
  return (
    <>
      <h2>{`${fence.ref}, ${fence.siteName}`}</h2>
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
  );
};

/** Plans of sites or of owners, a page of them. */
const Plans: FC<{
  readonly of: PageOf<{ readonly ref: string; readonly name: string }>;
  readonly name: 'sites' | 'owners';
  readonly heading: string;
  readonly text: string;
  readonly words: ReportPageWords;
}> = ({ of, name, heading, text, words }) =>
  of.found === 0 ? null : (
    <>
      <h2 id={name}>{heading}</h2>
      {name === 'sites' && <p>{words.planNote}</p>}
      <DocumentList
        documents={of.rows.map((row) => ({ what: row.name, path: `/${name}/${encodeURIComponent(row.ref)}/plan` }))}
        words={words}
      />
      <Pages of={of} name={name} heading={heading} text={text} words={words} />
    </>
  );

/** The page that lists what can be read, printed and handed on. */
export const DocumentsPage: FC<{
  readonly listed: DocumentsListed;
  readonly language: PageLanguage;
  readonly frame: PageFrame;
}> = ({ listed, language, frame }) => {
  const words = REPORT_PAGE_WORDS[language];
  const { role, text, fences, sites, owners, letters, sheets } = listed;
  const isNothing = text !== '' && fences.found + (sites?.found ?? 0) + (owners?.found ?? 0) === 0;
  const isAll = text === '' && listed.asked === '';
  return (
    <PageShell title={words.documents} section="documents" frame={frame} cautions={false} language={language}>
      <h1>{words.documents}</h1>
      <p class="lead">{words.lead[role]}</p>
      <Search listed={listed} words={words} />
      {isNothing && <p>{words.nothingFound(text)}</p>}
      <OfOneFence listed={listed} words={words} />
      <FencesFound listed={listed} words={words} />
      {sites && listed.asked === '' && (
        <Plans of={sites} name="sites" heading={words.plans} text={text} words={words} />
      )}
      {owners && listed.asked === '' && (
        <Plans of={owners} name="owners" heading={words.owners} text={text} words={words} />
      )}
      {role !== 'board' && isAll && (
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
      {role === 'office' && isAll && (
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
