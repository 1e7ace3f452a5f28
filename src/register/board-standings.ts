import { sql } from 'kysely';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { Register } from './database.ts';

/** Standings by their rank in `fence_lines`. */
const BY_RANK: readonly FenceStanding[] = ['short from new', 'short', 'closing', 'clear'];
const CLOSING = 2;

/** How the fences of a site stand. */
export interface SiteStanding {
  readonly total: number;
  readonly unswept: number;
  readonly counts: Readonly<Record<FenceStanding, number>>;
  /** First season in which a fence that holds its design gust now goes short, and which do; null where none does. */
  readonly next: { readonly season: string; readonly refs: readonly string[] } | null;
}

/** The standing of a site without fences. */
export const NO_FENCES: SiteStanding = {
  total: 0,
  unswept: 0,
  counts: { clear: 0, closing: 0, short: 0, 'short from new': 0 },
  next: null,
};

/** How the fences of some sites stand by their line posts, by the site's ref; sites without fences are left out. Reads no forecast. */
export async function standingsOfSites(
  { db }: Register,
  siteRefs: readonly string[],
): Promise<ReadonlyMap<string, SiteStanding>> {
  const found = new Map<string, SiteStanding>();
  if (siteRefs.length === 0) return found;
  const rows = await db
    .selectFrom('fence_lines')
    .select((eb) => ['site_ref as siteRef', 'standing_rank as rank', eb.fn.countAll<number>().as('fences')])
    .where('site_ref', 'in', siteRefs)
    .groupBy(['site_ref', 'standing_rank'])
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
    with holding as (
      select site_ref, short_season, ref, ref_key, min(short_season) over (partition by site_ref) as first
      from fence_lines where site_ref in (${sql.join(siteRefs)}) and standing_rank >= ${CLOSING} and short_season is not null
    )
    select site_ref as siteRef, short_season as season, ref from holding
    where short_season = first order by site_ref, ref_key`.execute(db);
  for (const { siteRef, season, ref } of next) {
    const known = found.get(siteRef) ?? NO_FENCES;
    found.set(siteRef, { ...known, next: { season, refs: [...(known.next?.refs ?? []), ref] } });
  }
  return found;
}
