import { raw } from 'hono/html';
import type { FC } from 'hono/jsx';
import { TREATMENT_CLASSES } from '../../decay/treatment-class.ts';
import { onceInYearsCell } from '../../drawing/quantity-text.ts';
import { drawSnapBar } from '../../drawing/snap-bar.ts';
import { speedText } from '../../drawing/speed-text.ts';
import type { FencePage, FenceQuery, FenceRow, SortKey } from '../../register/fence-list.ts';
import type { SweepStatus } from '../../service/service-view.ts';
import { yearOf } from '../../units/calendar-day.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { fenceQueryPath, STANDINGS, sortPath } from './fence-query.ts';
import { summarySentence, sweepSentence } from './list-sentences.ts';
import { StandingWord } from './standing-word.tsx';

const COLUMNS: readonly { readonly key: SortKey; readonly heading: string; readonly figure?: boolean }[] = [
  { key: 'ref', heading: 'Fence' },
  { key: 'standing', heading: 'Standing' },
  { key: 'ends', heading: 'Ends' },
  { key: 'short', heading: 'Short season' },
  { key: 'snap', heading: 'Snap speed', figure: true },
  { key: 'lean', heading: 'Lean speed', figure: true },
  { key: 'gust', heading: 'Design gust', figure: true },
  { key: 'once', heading: 'Once in … years', figure: true },
  { key: 'installed', heading: 'Installed' },
  { key: 'treatment', heading: 'Treatment' },
  { key: 'site', heading: 'Site' },
  { key: 'owner', heading: 'Owner' },
];

/** Properties of the page that lists the fences. */
export interface FencesPageProps {
  readonly page: FencePage;
  readonly query: FenceQuery;
  readonly sweep: SweepStatus;
  readonly lookAheadSeasons: number;
  /** Time of day of the nightly sweep with its zone, `04:30 UTC`. */
  readonly nightly: string;
  readonly frame: PageFrame;
}

/** The page that lists the fences. */
export const FencesPage: FC<FencesPageProps> = ({ page, query, sweep, lookAheadSeasons, nightly, frame }) => (
  <PageShell title="Fences" section="fences" frame={frame} cautions={true}>
    <h1>Fences</h1>
    <p class="lead">{summarySentence(page, { lookAheadSeasons, nightly, sweeping: sweep.progress !== null })}</p>
    {page.total > 0 && <p class="muted">{sweepSentence(page, sweep, nightly)}</p>}
    {page.total > 0 && <NarrowForm page={page} query={query} />}
    {page.rows.length > 0 ? <FenceTable page={page} query={query} /> : <Nothing page={page} />}
    {page.pages > 1 && <PageLinks page={page} query={query} />}
  </PageShell>
);

const NarrowForm: FC<{ readonly page: FencePage; readonly query: FenceQuery }> = ({ page, query }) => (
  <search aria-label="Fences">
    <form class="narrow" method="get" action="/">
      <div class="field">
        <label for="q">Fence, site or owner</label>
        <input id="q" name="q" type="search" value={query.text} />
      </div>
      <div class="field">
        <label for="site">Site</label>
        <select id="site" name="site">
          <option value="">all</option>
          {page.sites.map(({ ref, name }) => (
            <option value={ref} selected={ref === query.siteRef}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <div class="field">
        <label for="standing">Standing</label>
        <select id="standing" name="standing">
          <option value="">all</option>
          {STANDINGS.map((standing) => (
            <option value={standing} selected={standing === query.standing}>
              {`${standing} (${page.counts[standing]})`}
            </option>
          ))}
        </select>
      </div>
      <div class="field">
        <label for="sort">Order by</label>
        <select id="sort" name="sort">
          {COLUMNS.map(({ key, heading }) => (
            <option value={key} selected={key === query.sort}>
              {heading.toLowerCase()}
            </option>
          ))}
        </select>
      </div>
      {query.descending && <input type="hidden" name="dir" value="desc" />}
      <button type="submit">Show</button>
    </form>
  </search>
);

const FenceTable: FC<{ readonly page: FencePage; readonly query: FenceQuery }> = ({ page, query }) => (
  <table class="fences">
    <caption>
      {page.found === page.total ? `All ${page.total} fences` : `${page.found} of ${page.total} fences`}
      {page.pages > 1 && `, page ${page.page} of ${page.pages}`}. Speeds are 3-second gusts; the bar is the snap speed,
      its upright the design gust.
    </caption>
    <thead>
      <tr>
        {COLUMNS.filter(({ key }) => key !== 'owner').map(({ key, heading, figure }) => (
          <th scope="col" class={figure ? 'figure' : undefined} aria-sort={sortedHow(query, key)}>
            <a href={sortPath(query, key)}>{heading}</a>
            {key === 'site' && (
              <span class="small">
                and <a href={sortPath(query, 'owner')}>owner</a>
              </span>
            )}
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      {page.rows.map((row) => (
        <Row row={row} />
      ))}
    </tbody>
  </table>
);

/** The site's column is sorted by its owner too. */
function sortedHow(query: FenceQuery, key: SortKey): 'ascending' | 'descending' | undefined {
  const sorted = query.sort === key || (key === 'site' && query.sort === 'owner');
  return sorted ? (query.descending ? 'descending' : 'ascending') : undefined;
}

const Row: FC<{ readonly row: FenceRow }> = ({ row }) => {
  const { swept } = row;
  return (
    <tr>
      <th scope="row" class="ref">
        <a href={`/fences/${encodeURIComponent(row.ref)}`}>{row.ref}</a>
      </th>
      <td data-label="Standing" class="standing">
        {swept ? <StandingWord standing={swept.standing} /> : <span class="muted">not swept yet</span>}
        {swept && raw(drawSnapBar(swept))}
      </td>
      <td data-label="Ends" class="ends nowrap rest">
        {swept?.endsStanding ? <StandingWord standing={swept.endsStanding} /> : <span class="muted">–</span>}
      </td>
      <td data-label="Short season" class="nowrap rest">
        {shortSeasonText(row)}
        {isHeldBack(row) && <span class="small">less than 3 % above</span>}
      </td>
      <Figure label="Snap speed" text={swept ? speedText(swept.snapMps, row.units) : '–'} />
      <Figure rest label="Lean speed" text={swept ? speedText(swept.leanMps, row.units) : '–'} />
      <Figure label="Design gust" text={swept ? speedText(swept.designGustMps, row.units) : '–'} />
      <Figure rest label="Once in … years" text={swept ? onceInYearsCell(swept.onceInYears) : '–'} />
      <td data-label="Installed" class="nowrap rest">
        {installedText(row)}
      </td>
      <td data-label="Treatment" class="rest">
        {TREATMENT_CLASSES[row.treatmentClass].name}
      </td>
      <td data-label="Site and owner" class="place">
        {row.siteName}
        <span class="small">{ownersText(row)}</span>
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

/** True where a fence holds its design gust but too barely for its standing to improve. */
function isHeldBack({ swept }: FenceRow): boolean {
  if (!swept || swept.snapMps < swept.designGustMps) return false;
  return swept.standing === 'closing' ? swept.shortSeason === null : swept.standing !== 'clear';
}

function shortSeasonText(row: FenceRow): string {
  const { swept } = row;
  if (!swept) return '–';
  if (isHeldBack(row)) return swept.shortSeason ?? 'not within 30';
  if (swept.standing === 'short from new') return 'since new';
  if (swept.standing === 'short') return 'now';
  return swept.shortSeason ?? 'not within 30';
}

const ownersText = ({ ownerName, secondOwnerName }: FenceRow): string =>
  secondOwnerName === null ? ownerName : `${ownerName} and ${secondOwnerName}`;

const installedText = (row: Pick<FenceRow, 'installedEarliest' | 'installedLatest'>): string => {
  const [from, to] = [yearOf(row.installedEarliest), yearOf(row.installedLatest)];
  return from === to ? String(from) : `${from}–${to}`;
};

const Nothing: FC<{ readonly page: FencePage }> = ({ page }) =>
  page.total === 0 ? (
    <p>
      Bring your fences in with <code>stormpale import owners.csv climate-zones.csv sites.csv fences.csv</code>;{' '}
      <code>stormpale export all --out columns</code> writes empty files with their columns.
    </p>
  ) : (
    <p>
      No fence answers to that. <a href="/fences">Show all {page.total} fences</a>.
    </p>
  );

const PageLinks: FC<{ readonly page: FencePage; readonly query: FenceQuery }> = ({ page, query }) => (
  <nav class="pages" aria-label="Pages of the list">
    {page.page > 1 && (
      <a rel="prev" href={fenceQueryPath(query, { page: page.page - 1 })}>
        Page {page.page - 1}
      </a>
    )}
    <span>
      Page {page.page} of {page.pages}
    </span>
    {page.page < page.pages && (
      <a rel="next" href={fenceQueryPath(query, { page: page.page + 1 })}>
        Page {page.page + 1}
      </a>
    )}
  </nav>
);
