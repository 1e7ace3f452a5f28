import { sql } from 'kysely';
import type { SeasonWindow } from '../forecast/season-calendar.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { Register } from './database.ts';
import { listRecords } from './record-store.ts';
import { seasonWindow } from './storm-season-record.ts';

/** The fences of one site, counted by where they stand. */
export interface SiteCounts {
  readonly siteRef: string;
  readonly siteName: string;
  readonly region: string;
  readonly timeZone: string;
  readonly window: SeasonWindow;
  /** Name of its storm season; null for a site that has its own days. */
  readonly seasonName: string | null;
  readonly fences: number;
  /** Short of their design gust, at the line posts or at the ends. */
  readonly short: number;
  /** Going short within the look-ahead, at the line posts or at the ends, and not short yet. */
  readonly closing: number;
  /** Not computed yet. */
  readonly unswept: number;
}

const STANDS = sql<string>`case
  when forecasts.standing is null then 'unswept'
  when forecasts.standing in ('short', 'short from new') or forecasts.ends_standing in ('short', 'short from new') then 'short'
  when forecasts.standing = 'closing' or forecasts.ends_standing = 'closing' then 'closing'
  else 'clear' end`;

/** How many fences of each site are short and have a proposed or confirmed visit that is still to come. */
export async function countShortVisited({ db }: Register, today: CalendarDay): Promise<ReadonlyMap<string, number>> {
  const rows = await db
    .selectFrom('visits')
    .innerJoin('visit_items', 'visit_items.uid', 'visits.uid')
    .innerJoin('forecasts', 'forecasts.fence_ref', 'visit_items.fence_ref')
    .select((eb) => [
      'visits.site_ref as siteRef',
      eb.fn.count<number>('visit_items.fence_ref').distinct().as('fences'),
    ])
    .where('visits.state', 'in', ['proposed', 'confirmed'])
    .where('visits.last_day', '>=', today)
    .where(STANDS, '=', 'short')
    .groupBy('visits.site_ref')
    .execute();
  return new Map(rows.map(({ siteRef, fences }) => [siteRef, fences]));
}

/** Every site with its season and its fences counted, by ref. Reads indexes alone, no forecast. */
export async function countFencesBySite({ db }: Register): Promise<readonly SiteCounts[]> {
  // left to itself the database looks fences up by their primary key, and has to read the forecasts
  const { rows } = await sql<{ siteRef: string; stands: string; fences: number }>`
    select fences.site_ref as "siteRef", ${STANDS} as stands, count(*) as fences
    from fences left join forecasts indexed by forecasts_standing_of_fence on forecasts.fence_ref = fences.ref
    group by fences.site_ref, stands`.execute(db);
  const counts = new Map<string, Map<string, number>>();
  for (const { siteRef, stands, fences } of rows) {
    const ofSite = counts.get(siteRef) ?? new Map<string, number>();
    counts.set(siteRef, ofSite.set(stands, fences));
  }
  const seasons = new Map((await listRecords(db, 'storm-seasons')).map((season) => [season.ref, season]));
  return (await listRecords(db, 'sites')).map((site) => {
    const ofSite = counts.get(site.ref) ?? new Map<string, number>();
    const count = (stands: string): number => ofSite.get(stands) ?? 0;
    return {
      siteRef: site.ref,
      siteName: site.name,
      region: site.region,
      timeZone: site.timeZone,
      window: seasonWindow(site, seasons),
      seasonName: site.stormSeasonRef === null ? null : (seasons.get(site.stormSeasonRef)?.name ?? null),
      fences: [...ofSite.values()].reduce((sum, each) => sum + each, 0),
      short: count('short'),
      closing: count('closing'),
      unswept: count('unswept'),
    };
  });
}
