import type { FC } from 'hono/jsx';
import { speedText } from '../../drawing/speed-text.ts';
import type { RowCells } from '../../register/csv/record-cells.ts';
import type { FenceSummary, StandingCounts } from '../../register/fence-summaries.ts';
import type { RecordEdit } from '../../register/record-edit-store.ts';
import type { RecordPage } from '../../register/record-pages.ts';
import type { SiteRecord } from '../../register/site-record.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { editPath } from './edited-kinds.ts';
import { type ListColumn, NamedList } from './list-frame.tsx';
import { FenceSummaries, fencesSentence, standingsText } from './list-pieces.tsx';
import { RecordEdits } from './record-edits.tsx';
import { RecordFactsList } from './record-page.tsx';

/** A storm season as a site's page tells it. */
export interface SiteSeason {
  readonly name: string | null;
  readonly opens: string;
  readonly closes: string;
  readonly share: number;
}

/** How far a crew drives to a site. */
export interface CrewWay {
  readonly crewRef: string;
  readonly name: string;
  /** One way [h]; null where a place is unknown. */
  readonly hours: number | null;
}

const seasonText = ({ name, opens, closes, share }: SiteSeason): string =>
  `${name === null ? '' : `${name}: `}${opens} to ${closes}, ${Math.round(share * 100)} % of the yearly wind`;

/** The page of all sites. */
export const SitesPage: FC<{
  readonly frame: PageFrame;
  readonly list: RecordPage<'sites'>;
  readonly text: string;
  readonly standings: ReadonlyMap<string, StandingCounts>;
}> = ({ frame, list, text, standings }) => {
  const columns: readonly ListColumn<SiteRecord>[] = [
    { heading: 'Place', cell: ({ place }) => place },
    { heading: 'Region', cell: ({ region }) => region || '–' },
    { heading: 'Wind as entered', cell: ({ designGustMps, units }) => speedText(designGustMps, units) },
    { heading: 'Fences', cell: ({ ref }) => standingsText(standings.get(ref)) },
  ];
  return <NamedList kind="sites" frame={frame} list={list} text={text} columns={columns} />;
};

const TOLD_APART: ReadonlySet<string> = new Set([
  'ref',
  'name',
  'place',
  'season_opens',
  'season_closes',
  'season_share',
]);

/** The page of one site. */
export const SitePage: FC<{
  readonly frame: PageFrame;
  readonly site: SiteRecord;
  readonly cells: RowCells;
  readonly season: SiteSeason;
  readonly ways: readonly CrewWay[];
  readonly fences: readonly FenceSummary[];
  readonly edits: readonly RecordEdit[];
  readonly done: string | null;
}> = ({ frame, site, cells, season, ways, fences, edits, done }) => (
  <PageShell title={site.name} section="sites" frame={frame} cautions={fences.length > 0}>
    <p class="back">
      <a href="/sites">All sites</a>
    </p>
    <h1>{site.name}</h1>
    <p class="where">{`${site.place} · ${site.ref}`}</p>
    {done && <p class="done">{done}</p>}
    <p class="lead">{fences.length === 0 ? 'No fence stands here yet.' : fencesSentence(fences)}</p>
    <p>{`Storm season: ${seasonText(season)}.`}</p>
    <h2>What the register knows</h2>
    <RecordFactsList kind="sites" cells={cells} units={site.units} leftOut={TOLD_APART} />
    <p>
      <a href={editPath('sites', site.ref)}>Change this site</a>
      {' · '}
      <a href={`/records/fences/new?site=${encodeURIComponent(site.ref)}`}>Add a fence here</a>
      {' · '}
      <a href={`/storms?site=${encodeURIComponent(site.ref)}`}>Report a storm here</a>
    </p>
    {ways.length > 0 && (
      <>
        <h2 id="ways">The way of the crews</h2>
        <ul class="plain">
          {ways.map(({ name, hours }) => (
            <li>
              {`${name}: ${hours === null ? 'unknown, as its base or the site has no latitude and longitude' : `about ${hours.toFixed(1)} h one way`}`}
            </li>
          ))}
        </ul>
      </>
    )}
    {fences.length > 0 && (
      <>
        <h2 id="fences">Fences</h2>
        <FenceSummaries fences={fences} beside="owner" />
      </>
    )}
    <RecordEdits edits={edits} units={site.units} />
  </PageShell>
);
