import { sql } from 'kysely';
import type { TreatmentClass } from '../decay/treatment-class.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import { linesAsked } from './fence-search.ts';
import type { RegisterDb } from './record-store.ts';

/** Where one fence stands by its last sweep, for a program that reads them all. Speeds [m/s], once in [a]. */
export interface FenceState {
  readonly ref: string;
  readonly siteRef: string;
  readonly ownerRef: string;
  readonly secondOwnerRef: string | null;
  /** Null until it has been swept, as all that follow. */
  readonly standing: FenceStanding | null;
  readonly endsStanding: FenceStanding | null;
  readonly shortSeason: string | null;
  readonly snapMps: number | null;
  readonly leanMps: number | null;
  readonly designGustMps: number | null;
  readonly onceInYears: number | null;
  readonly computedAt: string | null;
}

/** What states are narrowed to; null for all. */
export interface FenceStateFilter {
  readonly siteRef: string | null;
  /** The first or the second owner. */
  readonly ownerRef: string | null;
  readonly standing: FenceStanding | null;
  readonly endsStanding: FenceStanding | null;
  readonly treatmentClass: TreatmentClass | null;
  /** Calendar years in which it may have been installed, the first and the last. */
  readonly builtFrom: number | null;
  readonly builtTo: number | null;
  /** Years in which the season opens from which on it is short, the first and the last. */
  readonly shortFrom: number | null;
  readonly shortTo: number | null;
  /** Found in the ref, the site's or an owner's name, or the treatment; empty for all. */
  readonly text: string;
  /** Ref behind which to begin, byte by byte; null for the first. */
  readonly after: string | null;
  /** Rows at most. */
  readonly limit: number;
}

/** Where fences stand, in the order of their refs byte by byte. */
export async function listFenceStates(db: RegisterDb, filter: FenceStateFilter): Promise<readonly FenceState[]> {
  const { siteRef, ownerRef, standing, after, limit } = filter;
  const further = linesAsked({ ...filter, ownerRef: null });
  let query = db
    .selectFrom('fences')
    .leftJoin('forecasts', 'forecasts.fence_ref', 'fences.ref')
    .select([
      'fences.ref as ref',
      'fences.site_ref as siteRef',
      'fences.owner_ref as ownerRef',
      'fences.second_owner_ref as secondOwnerRef',
      'forecasts.standing as standing',
      'forecasts.ends_standing as endsStanding',
      'forecasts.short_season as shortSeason',
      'forecasts.snap_mps as snapMps',
      'forecasts.lean_mps as leanMps',
      'forecasts.design_gust_mps as designGustMps',
      'forecasts.once_in_years as onceInYears',
      'forecasts.computed_at as computedAt',
    ])
    .orderBy('fences.ref')
    .limit(limit);
  if (siteRef !== null) query = query.where('fences.site_ref', '=', siteRef);
  if (ownerRef !== null) {
    query = query.where((eb) =>
      eb.or([eb('fences.owner_ref', '=', ownerRef), eb('fences.second_owner_ref', '=', ownerRef)]),
    );
  }
  // the plus keeps the walk in the order of the refs: by the index of standings all that have it would be sorted for each page
  if (standing !== null) query = query.where(sql<string>`+forecasts.standing`, '=', standing);
  if (after !== null) query = query.where('fences.ref', '>', after);
  if (further) {
    // a text is looked for once, by its own index; the rest is asked of each fence met on the walk, until the page is full
    const found =
      filter.text.trim() === ''
        ? sql`exists (select 1 from ${further} and ref = fences.ref)`
        : sql`fences.ref in (select ref from ${further})`;
    query = query.where(sql<boolean>`${found}`);
  }
  return query.execute();
}
