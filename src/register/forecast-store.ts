import type { Selectable } from 'kysely';
import type { FenceForecast, FenceStanding, Mark } from '../forecast/fence-forecast.ts';
import { decodeForecast } from '../forecast/forecast-codec.ts';
import type { Register } from './database.ts';
import type { ForecastsTable } from './sweep-tables.ts';

/** The last forecast of a fence as the register keeps it. Speeds in metres per second [m/s]. */
export interface StoredForecast {
  readonly fenceRef: string;
  readonly inputHash: string;
  readonly modelVersion: string;
  readonly computedAt: string;
  /** Label of the season it takes as season 1. */
  readonly seasonOne: string;
  /** Which build of the fence it is about: `as built`, or the last works that renewed its posts. */
  readonly generation: string;
  /** Standing after the margin that an improvement has to pass. */
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  readonly shortSeason: string | null;
  readonly endsShortSeason: string | null;
  readonly snapMps: number;
  readonly leanMps: number;
  readonly endsSnapMps: number | null;
  readonly designGustMps: number;
  readonly onceInYears: number | null;
  readonly pShort: number | null;
  readonly toldMarks: readonly Mark[];
  /** What was found at which posts and has been told: `broken 4`. */
  readonly toldFindings: readonly string[];
  /** Refs of the works that were done by then; null where that was not noted yet. */
  readonly toldWorks: readonly string[] | null;
  /** The whole `FenceForecast` as compact JSON. */
  readonly detail: string;
}

const STATE_COLUMNS = [
  'forecasts.fence_ref',
  'forecasts.sweep_id',
  'forecasts.input_hash',
  'forecasts.model_version',
  'forecasts.computed_at',
  'forecasts.season_one',
  'forecasts.generation',
  'forecasts.standing',
  'forecasts.ends_standing',
  'forecasts.short_season',
  'forecasts.ends_short_season',
  'forecasts.snap_mps',
  'forecasts.lean_mps',
  'forecasts.ends_snap_mps',
  'forecasts.design_gust_mps',
  'forecasts.once_in_years',
  'forecasts.p_short',
  'forecasts.told_marks',
  'forecasts.told_findings',
  'forecasts.told_works',
] as const;

type ForecastColumns = Omit<StoredForecast, 'detail' | 'inputHash' | 'toldMarks' | 'toldFindings' | 'toldWorks'>;

const columnsFromRow = (row: Omit<Selectable<ForecastsTable>, 'detail'>): ForecastColumns => ({
  fenceRef: row.fence_ref,
  modelVersion: row.model_version,
  computedAt: row.computed_at,
  seasonOne: row.season_one,
  generation: row.generation,
  standing: row.standing,
  endsStanding: row.ends_standing,
  shortSeason: row.short_season,
  endsShortSeason: row.ends_short_season,
  snapMps: row.snap_mps,
  leanMps: row.lean_mps,
  endsSnapMps: row.ends_snap_mps,
  designGustMps: row.design_gust_mps,
  onceInYears: row.once_in_years,
  pShort: row.p_short,
});

const stateFromRow = (row: Omit<Selectable<ForecastsTable>, 'detail'>): Omit<StoredForecast, 'detail'> => ({
  ...columnsFromRow(row),
  inputHash: row.input_hash,
  toldMarks: JSON.parse(row.told_marks) as readonly Mark[],
  toldFindings: JSON.parse(row.told_findings) as readonly string[],
  toldWorks: row.told_works === null ? null : (JSON.parse(row.told_works) as readonly string[]),
});

const storedFromRow = (row: Selectable<ForecastsTable>): StoredForecast => ({
  ...stateFromRow(row),
  detail: row.detail,
});

/** The stored forecasts of the fences named, by ref; a fence that was never forecast is missing. */
export async function loadStoredForecasts(
  register: Register,
  refs: readonly string[],
): Promise<ReadonlyMap<string, StoredForecast>> {
  if (refs.length === 0) return new Map();
  const rows = await register.db.selectFrom('forecasts').selectAll().where('fence_ref', 'in', refs).execute();
  return new Map(rows.map((row) => [row.fence_ref, storedFromRow(row)]));
}

/** What the sweep compares with: a stored forecast without its detail, which is large and seldom needed. */
export type StoredState = Omit<StoredForecast, 'detail'>;

/** The stored forecasts of the fences named, by ref, without their detail. */
export async function loadStoredStates(
  register: Register,
  refs: readonly string[],
): Promise<ReadonlyMap<string, StoredState>> {
  if (refs.length === 0) return new Map();
  const rows = await register.db.selectFrom('forecasts').select(STATE_COLUMNS).where('fence_ref', 'in', refs).execute();
  return new Map(rows.map((row) => [row.fence_ref, stateFromRow(row)]));
}

/** The forecast that a stored one holds. */
export const forecastOf = (stored: StoredForecast): FenceForecast => decodeForecast(stored.detail);

/** Which owners have had a first notice (or would have, had there been anything to tell), by fence ref. */
export async function loadIntroductions(
  register: Register,
  refs: readonly string[],
): Promise<ReadonlyMap<string, ReadonlySet<string>>> {
  const found = new Map<string, Set<string>>();
  if (refs.length === 0) return found;
  const rows = await register.db
    .selectFrom('introductions')
    .select(['fence_ref', 'owner_ref'])
    .where('fence_ref', 'in', refs)
    .execute();
  for (const row of rows) {
    const owners = found.get(row.fence_ref) ?? new Set<string>();
    owners.add(row.owner_ref);
    found.set(row.fence_ref, owners);
  }
  return found;
}

/** A page of stored forecasts without their detail, with the names that lists show. */
export interface ForecastListing extends ForecastColumns {
  readonly siteRef: string;
  readonly siteName: string;
  readonly units: 'us' | 'metric';
}

/** What a list of forecasts is narrowed to and where it goes on. */
export interface ForecastFilter {
  readonly standing?: FenceStanding;
  readonly siteRef?: string;
  readonly afterRef?: string;
  readonly limit: number;
}

/** Stored forecasts by fence ref, a page at a time; their detail is not read. */
export async function listForecasts(register: Register, filter: ForecastFilter): Promise<readonly ForecastListing[]> {
  let query = register.db
    .selectFrom('forecasts')
    .innerJoin('fences', 'fences.ref', 'forecasts.fence_ref')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .select(STATE_COLUMNS)
    .select(['sites.ref as site_ref', 'sites.name as site_name', 'sites.units as site_units'])
    .orderBy('forecasts.fence_ref')
    .limit(filter.limit);
  if (filter.standing) query = query.where('forecasts.standing', '=', filter.standing);
  if (filter.siteRef) query = query.where('sites.ref', '=', filter.siteRef);
  if (filter.afterRef !== undefined) query = query.where('forecasts.fence_ref', '>', filter.afterRef);
  const rows = await query.execute();
  return rows.map((row) => ({
    ...columnsFromRow(row),
    siteRef: row.site_ref,
    siteName: row.site_name,
    units: row.site_units,
  }));
}

/** How many fences have each standing. */
export async function countStandings(
  register: Register,
  visibleSites: readonly string[] | null = null,
): Promise<Readonly<Record<FenceStanding, number>>> {
  const counts: Record<FenceStanding, number> = { clear: 0, closing: 0, short: 0, 'short from new': 0 };
  let from = register.db.selectFrom('forecasts');
  if (visibleSites !== null) {
    from = from.where('fence_ref', 'in', (eb) =>
      eb.selectFrom('fences').select('ref').where('site_ref', 'in', visibleSites),
    );
  }
  const rows = await from
    .select((eb) => ['standing', eb.fn.countAll<number>().as('count')])
    .groupBy('standing')
    .execute();
  for (const row of rows) counts[row.standing] = row.count;
  return counts;
}
