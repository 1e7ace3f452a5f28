import { sql } from 'kysely';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
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
