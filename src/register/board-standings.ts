import { sql } from 'kysely';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { Register } from './database.ts';

/** Standings by their rank in `fence_lines`, the worse of line and ends. */
const BY_RANK: readonly FenceStanding[] = ['short from new', 'short', 'closing', 'clear'];
const CLOSING = 2;

/** How the fences of a site stand, each by the worse of its line posts and its ends. */
export interface SiteStanding {
  readonly total: number;
  readonly unswept: number;
  readonly counts: Readonly<Record<FenceStanding, number>>;
  /** First season in which a fence that holds its design gust now goes short at the line or at the ends, and which do; null where none does. */
  readonly next: { readonly season: string; readonly refs: readonly string[] } | null;
}

/** The standing of a site without fences. */
export const NO_FENCES: SiteStanding = {
  total: 0,
  unswept: 0,
  counts: { clear: 0, closing: 0, short: 0, 'short from new': 0 },
  next: null,
};

/** How the fences of some sites stand at the line or at the ends, as lists count them, by the site's ref; sites without fences are left out. */
export async function standingsOfSites(
  { db }: Register,
  siteRefs: readonly string[],
): Promise<ReadonlyMap<string, SiteStanding>> {
  const found = new Map<string, SiteStanding>();
  if (siteRefs.length === 0) return found;
  const rows = await db
    .selectFrom('fence_lines')
    .select((eb) => ['site_ref as siteRef', 'stands_rank as rank', eb.fn.countAll<number>().as('fences')])
    .where('site_ref', 'in', siteRefs)
    .groupBy(['site_ref', 'stands_rank'])
    .execute();
  for (const { siteRef, rank, fences } of rows) {
    const known = found.get(siteRef) ?? NO_FENCES;
    const standing = rank === null ? undefined : BY_RANK[rank];
    found.set(siteRef, {
      ...known,
      total: known.total + fences,
      unswept: known.unswept + (standing ? 0 : fences),
      counts: standing ? { ...known.counts, [standing]: fences } : known.counts,
    });
  }
  const { rows: next } = await sql<{ siteRef: string; season: string; ref: string }>`
    with ahead as (
      select line.site_ref, line.ref, line.ref_key,
        min(coalesce(line.short_season, ends_short_season), coalesce(ends_short_season, line.short_season)) as season
      from fence_lines as line join forecasts on forecasts.fence_ref = line.ref
      where line.site_ref in (${sql.join(siteRefs)}) and line.stands_rank >= ${CLOSING}
    ),
    holding as (select *, min(season) over (partition by site_ref) as first from ahead where season is not null)
    select site_ref as siteRef, season, ref from holding where season = first order by site_ref, ref_key`.execute(db);
  for (const { siteRef, season, ref } of next) {
    const known = found.get(siteRef) ?? NO_FENCES;
    found.set(siteRef, { ...known, next: { season, refs: [...(known.next?.refs ?? []), ref] } });
  }
  return found;
}
