import { sql } from 'kysely';
import type { TreatmentClass } from '../decay/treatment-class.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { Register } from './database.ts';
import type { FenceQuery, VisibleSites } from './fence-query.ts';
import {
  countAnywhere,
  countByRank,
  countDangerous,
  RANKED_STANDINGS,
  type StandsAnywhere,
  searchFences,
} from './fence-search.ts';

/** The numbers of one fence's last sweep. Speeds [m/s]. */
interface SweptNumbers {
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  readonly shortSeason: string | null;
  readonly snapMps: number;
  readonly leanMps: number;
  readonly designGustMps: number;
  readonly onceInYears: number | null;
}

/** One fence of the list. */
export interface FenceRow {
  readonly ref: string;
  readonly siteRef: string;
  readonly siteName: string;
  readonly units: 'us' | 'metric';
  readonly ownerRef: string;
  readonly ownerName: string;
  readonly secondOwnerName: string | null;
  readonly treatmentClass: TreatmentClass;
  readonly installedEarliest: string;
  readonly installedLatest: string;
  /** True where a sweep found it recorded dangerous, and that is not dealt with. */
  readonly isDangerous: boolean;
  /** Null until the fence has been swept. */
  readonly swept: SweptNumbers | null;
}

/** One page of the list, with what its heading and form need. */
export interface FencePage {
  readonly rows: readonly FenceRow[];
  /** How many fences the query finds, and the register holds. */
  readonly found: number;
  readonly total: number;
  readonly page: number;
  readonly pages: number;
  /** The sites by name where they are few enough to choose from; null where they are more. */
  readonly sites: readonly { readonly ref: string; readonly name: string }[] | null;
  /** Names of the site and the owner that the query names; null where it names none or there is none. */
  readonly siteName: string | null;
  readonly ownerName: string | null;
  readonly counts: Readonly<Record<FenceStanding, number>>;
  /** Short or going short at the line or at the ends. */
  readonly anywhere: StandsAnywhere;
  /** Recorded dangerous and not dealt with. */
  readonly dangerous: number;
  readonly unswept: number;
}

const PAGE_ROWS = 50;
/** More sites than these are typed, not chosen. */
const MOST_SITES = 60;

/** How many fences the register holds, or the visible sites of it. */
export async function countFences(register: Register, visible: VisibleSites = null): Promise<number> {
  const counts = await countByRank(register, { siteRef: null }, visible);
  return counts.reduce((sum, each) => sum + each, 0);
}

/** The sites by name, as the list's form offers them; null where there are too many. */
async function listSites({ db }: Register, visible: VisibleSites): Promise<FencePage['sites']> {
  let from = db.selectFrom('sites').select(['ref', 'name']);
  if (visible !== null) from = from.where('ref', 'in', visible);
  const some = await from.limit(MOST_SITES + 1).execute();
  if (some.length > MOST_SITES) return null;
  return from.orderBy(sql`natural_key(name)`).orderBy('ref').execute();
}

/** The name of a site or an owner; null where none is asked for or there is none. */
async function nameOf({ db }: Register, table: 'sites' | 'owners', ref: string | null): Promise<string | null> {
  if (ref === null) return null;
  return (await db.selectFrom(table).select('name').where('ref', '=', ref).executeTakeFirst())?.name ?? null;
}

/** The rows of lines by their ids, in the order of the ids. */
async function rowsOfLines({ db }: Register, ids: readonly number[]): Promise<readonly FenceRow[]> {
  if (ids.length === 0) return [];
  const found = await db
    .selectFrom('fence_lines as line')
    .innerJoin('fences', 'fences.ref', 'line.ref')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .innerJoin('owners', 'owners.ref', 'fences.owner_ref')
    .leftJoin('owners as second', 'second.ref', 'fences.second_owner_ref')
    .leftJoin('forecasts', 'forecasts.fence_ref', 'fences.ref')
    .select([
      'line.id as id',
      'fences.ref as ref',
      'fences.site_ref as site_ref',
      'sites.name as site_name',
      'sites.units as units',
      'owners.ref as owner_ref',
      'owners.name as owner_name',
      'second.name as second_name',
      'fences.treatment_class as treatment_class',
      'fences.installed_earliest as installed_earliest',
      'fences.installed_latest as installed_latest',
      'forecasts.standing as standing',
      'forecasts.ends_standing as ends_standing',
      'forecasts.short_season as short_season',
      'forecasts.snap_mps as snap_mps',
      'forecasts.lean_mps as lean_mps',
      'forecasts.design_gust_mps as design_gust_mps',
      'forecasts.once_in_years as once_in_years',
      sql<number>`exists (select 1 from office_notices
        where fence_ref = fences.ref and settled_at is null and matter = 'dangerous')`.as('dangerous'),
    ])
    .where(sql<boolean>`line.id in (select value from json_each(${JSON.stringify(ids)}))`)
    .execute();
  const byId = new Map(found.map((row) => [row.id, row]));
  return ids.flatMap((id): readonly FenceRow[] => {
    const row = byId.get(id);
    if (!row) return [];
    return [
      {
        ref: row.ref,
        siteRef: row.site_ref,
        siteName: row.site_name,
        units: row.units,
        ownerRef: row.owner_ref,
        ownerName: row.owner_name,
        secondOwnerName: row.second_name,
        treatmentClass: row.treatment_class,
        installedEarliest: row.installed_earliest,
        installedLatest: row.installed_latest,
        isDangerous: row.dangerous === 1,
        swept:
          row.standing === null || row.snap_mps === null || row.lean_mps === null || row.design_gust_mps === null
            ? null
            : {
                standing: row.standing,
                endsStanding: row.ends_standing,
                shortSeason: row.short_season,
                snapMps: row.snap_mps,
                leanMps: row.lean_mps,
                designGustMps: row.design_gust_mps,
                onceInYears: row.once_in_years,
              },
      },
    ];
  });
}

/**
 * One page of fences, narrowed and ordered by the database: by the chosen column, what has no value last either way, then
 * the worst, then by ref. Nothing in it, counts neither, tells of fences that are not visible.
 */
export async function listFences(
  register: Register,
  query: FenceQuery,
  visible: VisibleSites = null,
): Promise<FencePage> {
  const seen = (ref: string | null): string | null => (visible === null || visible.includes(ref ?? '') ? ref : null);
  const search = await searchFences(register, query, visible);
  const ranks = await countByRank(register, { siteRef: null }, visible);
  const pages = Math.max(1, Math.ceil(search.found / PAGE_ROWS));
  const page = Math.min(Math.max(1, query.page), pages);
  const counts = Object.fromEntries(RANKED_STANDINGS.map((standing, rank) => [standing, ranks[rank] ?? 0]));
  return {
    rows: await rowsOfLines(register, await search.ids((page - 1) * PAGE_ROWS, PAGE_ROWS)),
    found: search.found,
    total: ranks.reduce((sum, each) => sum + each, 0),
    page,
    pages,
    sites: await listSites(register, visible),
    siteName: await nameOf(register, 'sites', seen(query.siteRef)),
    ownerName: visible === null ? await nameOf(register, 'owners', query.ownerRef) : null,
    counts: counts as Record<FenceStanding, number>,
    anywhere: await countAnywhere(register, visible),
    dangerous: await countDangerous(register, visible),
    unswept: ranks.at(-1) ?? 0,
  };
}

/** Rows handed out at once where all are read. */
const CHUNK_ROWS = 500;

/** Every fence of a query in its order, chunk by chunk; which they are is settled as it begins. */
export async function* everyFence(
  register: Register,
  query: FenceQuery,
  visible: VisibleSites = null,
): AsyncGenerator<readonly FenceRow[]> {
  const search = await searchFences(register, query, visible);
  const ids = await search.ids(0, search.found);
  for (let from = 0; from < ids.length; from += CHUNK_ROWS) {
    yield await rowsOfLines(register, ids.slice(from, from + CHUNK_ROWS));
  }
}
