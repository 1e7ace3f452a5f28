import { sql } from 'kysely';
import type { SeasonWindow } from '../forecast/season-calendar.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { Register } from './database.ts';

/** Ranks of standing as `fence_lines` keeps them: 0 and 1 are short, 4 stands for none. */
const SHORT = 1;
const CLOSING = 2;
const NOT_SWEPT = 4;

/** The fences of the sites that share a region and a storm season, counted by where they stand. */
export interface RegionCounts {
  /** The sites' own label; empty where they have none. */
  readonly region: string;
  readonly window: SeasonWindow;
  /** Name of the storm season; null where each site has its own days. */
  readonly seasonName: string | null;
  /** Sites that have fences. */
  readonly sites: number;
  /** The first of them. */
  readonly siteRef: string;
  readonly fences: number;
  /** Short of their design gust, at the line posts or at the ends. */
  readonly short: number;
  /** Short and without a proposed or confirmed visit that is still to come. */
  readonly shortUnvisited: number;
  /** Going short within the look-ahead, at the line posts or at the ends, and not short yet. */
  readonly closing: number;
  /** Not computed yet. */
  readonly unswept: number;
}

interface CountRow extends Omit<RegionCounts, 'window' | 'shortUnvisited'>, SeasonWindow {
  readonly shortVisited: number;
}

/** Short fences of each site that have a proposed or confirmed visit to come. */
const visitedFrom = (today: CalendarDay) => sql`
  select planned.site_ref as site_ref, count(*) as fences from (
    select distinct visits.site_ref as site_ref, visit_items.fence_ref as fence_ref
    from visits join visit_items on visit_items.uid = visits.uid
    where visits.state in ('proposed', 'confirmed') and visits.last_day >= ${today}
  ) as planned join fence_lines on fence_lines.ref = planned.fence_ref
  where standing_rank is not null and min(standing_rank, coalesce(ends_rank, ${NOT_SWEPT})) <= ${SHORT}
  group by planned.site_ref`;

/**
 * Counts the fences of every region and storm season, by region. Reads what the database counts itself, and the visits to come.
 * @param today visits whose last day is before it are past; null: visits are not looked at, and no short fence counts as visited
 */
export async function countFencesByRegion(
  { db }: Register,
  today: CalendarDay | null,
): Promise<readonly RegionCounts[]> {
  const visited = today === null ? sql`select '' as site_ref, 0 as fences where false` : visitedFrom(today);
  const { rows } = await sql<CountRow>`
    with of_site as (
      select site_ref,
        sum(fences) as fences,
        sum(case when standing_rank = ${NOT_SWEPT} then fences else 0 end) as unswept,
        sum(case when standing_rank <> ${NOT_SWEPT} and min(standing_rank, ends_rank) <= ${SHORT} then fences else 0 end) as short,
        sum(case when standing_rank <> ${NOT_SWEPT} and min(standing_rank, ends_rank) = ${CLOSING} then fences else 0 end) as closing
      from site_standings where fences > 0 group by site_ref
    ), visited as (${visited})
    select sites.region as region,
      coalesce(storm_seasons.opens, sites.season_opens) as opens,
      coalesce(storm_seasons.closes, sites.season_closes) as closes,
      max(coalesce(storm_seasons.share, sites.season_share)) as share,
      max(storm_seasons.name) as seasonName,
      count(*) as sites,
      min(sites.ref) as siteRef,
      sum(of_site.fences) as fences,
      sum(of_site.short) as short,
      sum(of_site.closing) as closing,
      sum(of_site.unswept) as unswept,
      sum(coalesce(visited.fences, 0)) as shortVisited
    from of_site
    join sites on sites.ref = of_site.site_ref
    left join storm_seasons on storm_seasons.ref = sites.storm_season_ref
    left join visited on visited.site_ref = of_site.site_ref
    group by 1, 2, 3
    order by 1, 2, 3`.execute(db);
  return rows.map(({ opens, closes, share, shortVisited, ...counts }) => ({
    ...counts,
    window: { opens, closes, share },
    shortUnvisited: counts.short - shortVisited,
  }));
}
