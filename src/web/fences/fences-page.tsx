import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { heldText, isNextToNothing } from '../../drawing/held-text.ts';
import { onceInYearsCell } from '../../drawing/quantity-text.ts';
import { drawSnapBar } from '../../drawing/snap-bar.ts';
import { speedText } from '../../drawing/speed-text.ts';
import type { FencePage, FenceRow } from '../../register/fence-list.ts';
import type { FenceQuery, SortKey } from '../../register/fence-query.ts';
import type { SweepStatus } from '../../service/service-view.ts';
import { yearOf } from '../../units/calendar-day.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { fenceQueryPath, sortPath } from './fence-query.ts';
import { FilterForm } from './filter-form.tsx';
import { countText, shownSentence, summarySentence } from './list-sentences.ts';
import { LIST_WORDS, type ListWords } from './list-words.ts';
import { StandingWord } from './standing-word.tsx';
import { SweepLine } from './sweep-line.tsx';

const COLUMNS: readonly { readonly key: SortKey; readonly figure?: boolean }[] = [
  { key: 'ref' },
  { key: 'standing' },
  { key: 'ends' },
  { key: 'short' },
  { key: 'snap', figure: true },
  { key: 'lean', figure: true },
  { key: 'gust', figure: true },
  { key: 'once', figure: true },
  { key: 'installed' },
  { key: 'treatment' },
  { key: 'site' },
];

/** Properties of the page that lists the fences. */
export interface FencesPageProps {
  readonly page: FencePage;
  readonly query: FenceQuery;
  readonly sweep: SweepStatus;
  readonly lookAheadSeasons: number;
  /** Time of day of the nightly sweep with its zone, `04:30 UTC`. */
  readonly nightly: string;
  readonly language: ChartLanguage;
  readonly frame: PageFrame;
}

interface Shown {
  readonly page: FencePage;
  readonly query: FenceQuery;
  readonly language: ChartLanguage;
}

/** The page that lists the fences. */
export const FencesPage: FC<FencesPageProps> = ({ page, query, sweep, lookAheadSeasons, nightly, language, frame }) => {
  const sweeping = sweep.progress !== null;
  return (
    <PageShell title={LIST_WORDS[language].title} section="fences" frame={frame} cautions={true} language={language}>
      <h1>{LIST_WORDS[language].title}</h1>
      <p class="lead">{summarySentence(page, { lookAheadSeasons, nightly, sweeping, language })}</p>
      {page.unswept > 0 && !sweeping && frame.account?.role === 'office' && (
        <p>
          {language === 'es' ? 'Para no esperar: «Sweep now», bajo ' : 'Not to wait: “Sweep now”, under '}
          <a href="/records">{language === 'es' ? 'los registros' : 'the records'}</a>.
        </p>
      )}
      {page.total > 0 && <SweepLine sweep={sweep} total={page.total} nightly={nightly} language={language} />}
      {page.total > 0 && <FilterForm page={page} query={query} language={language} />}
      {page.rows.length > 0 ? (
        <FenceTable page={page} query={query} language={language} />
      ) : (
        <Nothing page={page} query={query} language={language} isOffice={frame.account?.role === 'office'} />
      )}
      {page.pages > 1 && <PageLinks page={page} query={query} language={language} />}
    </PageShell>
  );
};

const FenceTable: FC<Shown> = ({ page, query, language }) => {
  const words = LIST_WORDS[language];
  return (
    <table class="fences">
      <caption>
        <span class="shown">{shownSentence(page, query, language)}</span>{' '}
        {page.pages > 1 && `${words.pageOf(page.page, page.pages)}. `}
        {words.caption}
      </caption>
      <thead>
        <tr>
          {COLUMNS.map(({ key, figure }) => (
            <th scope="col" class={figure ? 'figure' : undefined} aria-sort={sortedHow(query, key)}>
              <a href={sortPath(query, key)}>{words.columns[key]}</a>
              {key === 'site' && (
                <span class="small">
                  {words.andOwner[0]} <a href={sortPath(query, 'owner')}>{words.andOwner[1]}</a>
                </span>
              )}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {page.rows.map((row) => (
          <Row row={row} words={words} language={language} />
        ))}
      </tbody>
    </table>
  );
};

/** The site's column is sorted by its owner too, the standing's by what is left of the gust. */
function sortedHow(query: FenceQuery, key: SortKey): 'ascending' | 'descending' | undefined {
  const { sort, descending } = query;
  const sorted = sort === key || (key === 'site' && sort === 'owner') || (key === 'standing' && sort === 'worst');
  return sorted ? (descending ? 'descending' : 'ascending') : undefined;
}

const Row: FC<{ readonly row: FenceRow; readonly words: ListWords; readonly language: ChartLanguage }> = ({
  row,
  words,
  language,
}) => {
  const { swept } = row;
  const { columns } = words;
  return (
    <tr>
      <th scope="row" class="ref">
        <a href={`/fences/${encodeURIComponent(row.ref)}`}>{row.ref}</a>
      </th>
      <td data-label={columns.standing} class="standing">
        {row.isDangerous && <b class="dangerous">{words.dangerous}</b>}
        {swept ? (
          <StandingWord standing={swept.standing} language={language} />
        ) : (
          <span class="muted">{words.notSwept}</span>
        )}
        {swept && raw(drawSnapBar(swept))}
        {swept && (
          <span class="small">
            {isNextToNothing(swept.snapMps, row.units) ? words.holdsNothing : words.holds(sharePercent(swept))}
          </span>
        )}
      </td>
      <td data-label={columns.ends} class="ends nowrap rest">
        {swept?.endsStanding ? (
          <StandingWord standing={swept.endsStanding} language={language} />
        ) : (
          <span class="muted">–</span>
        )}
      </td>
      <td data-label={columns.short} class="nowrap rest">
        {shortSeasonText(row, words)}
        {isHeldBack(row) && <span class="small">{words.lessThanMargin}</span>}
      </td>
      <Figure label={columns.snap} text={swept ? heldText(swept.snapMps, row.units, language) : '–'} />
      <Figure rest label={columns.lean} text={swept ? speedText(swept.leanMps, row.units) : '–'} />
      <Figure label={columns.gust} text={swept ? speedText(swept.designGustMps, row.units) : '–'} />
      <Figure rest label={columns.once} text={swept ? onceInYearsCell(swept.onceInYears, language) : '–'} />
      <td data-label={columns.installed} class="nowrap rest">
        {installedText(row)}
      </td>
      <td data-label={columns.treatment} class="rest">
        {words.treatment(row.treatmentClass)}
      </td>
      <td data-label={words.siteAndOwner} class="place">
        {row.siteName}
        <span class="small">{ownersText(row, words)}</span>
      </td>
    </tr>
  );
};

/** A cell with a figure; `rest` leaves it out on a phone. */
const Figure: FC<{ readonly label: string; readonly text: string; readonly rest?: boolean }> = ({
  label,
  text,
  rest,
}) => (
  <td data-label={label} class={rest ? 'figure rest' : 'figure'}>
    {text}
  </td>
);

/** What is left of the design gust [%], rounded so that a short fence never seems to hold it. */
const sharePercent = ({ snapMps, designGustMps }: NonNullable<FenceRow['swept']>): number =>
  Math.floor((100 * snapMps) / designGustMps);

/** True where a fence holds its design gust but too barely for its standing to improve. */
function isHeldBack({ swept }: FenceRow): boolean {
  if (!swept || swept.snapMps < swept.designGustMps) return false;
  return swept.standing === 'closing' ? swept.shortSeason === null : swept.standing !== 'clear';
}

function shortSeasonText(row: FenceRow, words: ListWords): string {
  const { swept } = row;
  if (!swept) return '–';
  if (isHeldBack(row)) return swept.shortSeason ?? words.notWithin;
  if (swept.standing === 'short from new') return words.sinceNew;
  if (swept.standing === 'short') return words.now;
  return swept.shortSeason ?? words.notWithin;
}

const ownersText = ({ ownerName, secondOwnerName }: FenceRow, words: ListWords): string =>
  secondOwnerName === null ? ownerName : `${ownerName} ${words.and} ${secondOwnerName}`;

const installedText = (row: Pick<FenceRow, 'installedEarliest' | 'installedLatest'>): string => {
  const [from, to] = [yearOf(row.installedEarliest), yearOf(row.installedLatest)];
  return from === to ? String(from) : `${from}–${to}`;
};

const Nothing: FC<Shown & { readonly isOffice: boolean }> = ({ page, query, language, isOffice }) => {
  const words = LIST_WORDS[language];
  if (page.total === 0 && !isOffice) return <p>{words.noneYours}</p>;
  return page.total === 0 ? (
    <p>
      Bring your fences in on the page <a href="/import">Import</a>, which has empty files with their columns too. On
      the command line: <code>stormpale import owners.csv climate-zones.csv sites.csv fences.csv</code>; there{' '}
      <code>stormpale export all --out columns</code> writes the empty files.
    </p>
  ) : (
    <p>
      {words.nothing} {shownSentence(page, query, language)}{' '}
      <a href="/fences">{words.showAll(countText(page.total))}</a>.
    </p>
  );
};

const PageLinks: FC<Shown> = ({ page, query, language }) => {
  const words = LIST_WORDS[language];
  const link = (to: number, rel?: string) => (
    <a rel={rel} href={fenceQueryPath(query, { page: to })}>
      {words.page(to)}
    </a>
  );
  return (
    <nav class="pages" aria-label={words.pagesLabel}>
      {page.page > 2 && link(1)}
      {page.page > 1 && link(page.page - 1, 'prev')}
      <span>{words.pageOf(page.page, page.pages)}</span>
      {page.page < page.pages && link(page.page + 1, 'next')}
      {page.page < page.pages - 1 && link(page.pages)}
    </nav>
  );
};
