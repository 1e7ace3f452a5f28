import { sql } from 'kysely';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import { RANKED_STANDINGS } from './fence-search.ts';
import type { RegisterDb } from './record-store.ts';

/** One fence in a list of an owner's or a site's fences. Speeds [m/s]. */
export interface FenceSummary {
  readonly ref: string;
  readonly siteRef: string;
  readonly siteName: string;
  readonly units: 'us' | 'metric';
  readonly ownerRef: string;
  readonly ownerName: string;
  readonly secondOwnerRef: string | null;
  /** Null until the fence has been swept; so are the next three. */
  readonly standing: FenceStanding | null;
  readonly shortSeason: string | null;
  readonly snapMps: number | null;
  readonly designGustMps: number | null;
}

/** The fences of owners or of sites (at most some 10,000 of them), the worst standing first, then by ref. */
export async function fenceSummaries(
  db: RegisterDb,
  of: { readonly ownerRefs: readonly string[] } | { readonly siteRefs: readonly string[] },
): Promise<readonly FenceSummary[]> {
  const refs = 'ownerRefs' in of ? of.ownerRefs : of.siteRefs;
  if (refs.length === 0) return [];
  const from = db
    .selectFrom('fences')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .innerJoin('owners', 'owners.ref', 'fences.owner_ref')
    .leftJoin('forecasts', 'forecasts.fence_ref', 'fences.ref')
    .select([
      'fences.ref as ref',
      'sites.ref as siteRef',
      'sites.name as siteName',
      'sites.units as units',
      'owners.ref as ownerRef',
      'owners.name as ownerName',
      'second_owner_ref as secondOwnerRef',
      'standing',
      'short_season as shortSeason',
      'snap_mps as snapMps',
      'forecasts.design_gust_mps as designGustMps',
    ]);
  const narrowed =
    'ownerRefs' in of
      ? from.where((eb) => eb.or([eb('owner_ref', 'in', refs), eb('second_owner_ref', 'in', refs)]))
      : from.where('site_ref', 'in', refs);
  return narrowed
    .orderBy(
      sql`case standing when 'short from new' then 0 when 'short' then 1 when 'closing' then 2 when 'clear' then 3 else 4 end`,
    )
    .orderBy(sql`natural_key(fences.ref)`)
    .orderBy('fences.ref')
    .execute();
}

/** How many fences have each standing, the worst first; null for those not swept yet. */
export type StandingCounts = ReadonlyMap<FenceStanding | null, number>;

/** How the fences of owners or of sites stand, by their ref, from what the lists keep: no fence is read. */
export async function standingCounts(
  db: RegisterDb,
  of: { readonly ownerRefs: readonly string[] } | { readonly siteRefs: readonly string[] },
): Promise<ReadonlyMap<string, StandingCounts>> {
  const refs = sql`(select value from json_each(${JSON.stringify('ownerRefs' in of ? of.ownerRefs : of.siteRefs)}))`;
  const counted =
    'siteRefs' in of
      ? sql`select site_ref as ref, standing_rank as rank, sum(fences) as fences from site_standings
          where site_ref in ${refs} and fences > 0 group by 1, 2`
      : sql`select ref, coalesce(standing_rank, 4) as rank, count(*) as fences from (
          select owner_ref as ref, standing_rank from fence_lines where owner_ref in ${refs}
          union all
          select second_owner_ref, standing_rank from fence_lines where second_owner_ref in ${refs} and second_owner_ref <> owner_ref
        ) group by 1, 2`;
  const { rows } = await sql<{ readonly ref: string; readonly rank: number; readonly fences: number }>`
    select ref, rank, fences from (${counted}) order by ref, rank`.execute(db);
  const counts = new Map<string, Map<FenceStanding | null, number>>();
  for (const { ref, rank, fences } of rows) {
    const ofRef = counts.get(ref) ?? new Map<FenceStanding | null, number>();
    counts.set(ref, ofRef.set(RANKED_STANDINGS[rank] ?? null, fences));
  }
  return counts;
}
