import { type ExpressionBuilder, sql } from 'kysely';
import { TREATMENT_CLASS_KEYS, TREATMENT_CLASSES, type TreatmentClass } from '../decay/treatment-class.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { Register } from './database.ts';
import { countStandings } from './forecast-store.ts';
import type { RegisterTables } from './tables.ts';
import { foldedText } from './text-order.ts';

/** Columns by which the list of fences can be ordered. */
export const SORT_KEYS = [
  'standing',
  'ref',
  'site',
  'owner',
  'ends',
  'short',
  'snap',
  'lean',
  'gust',
  'once',
  'installed',
  'treatment',
] as const;
export type SortKey = (typeof SORT_KEYS)[number];

/** What a list of fences is narrowed to, how it is ordered, and which page of it is wanted. */
export interface FenceQuery {
  /** Found in the ref, the site's or an owner's name, or the treatment; empty for all. */
  readonly text: string;
  readonly siteRef: string | null;
  readonly standing: FenceStanding | null;
  readonly sort: SortKey;
  readonly descending: boolean;
  /** 1 for the first page; a page past the end is taken as the last. */
  readonly page: number;
}

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
  readonly ownerName: string;
  readonly secondOwnerName: string | null;
  readonly treatmentClass: TreatmentClass;
  readonly installedEarliest: string;
  readonly installedLatest: string;
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
  readonly sites: readonly { readonly ref: string; readonly name: string }[];
  readonly counts: Readonly<Record<FenceStanding, number>>;
  readonly unswept: number;
}

/** The sites whose fences somebody sees; null for all of them. */
export type VisibleSites = readonly string[] | null;

const PAGE_ROWS = 50;

const rankOf = (column: 'forecasts.standing' | 'forecasts.ends_standing') =>
  sql<
    number | null
  >`case ${sql.ref(column)} when 'short from new' then 0 when 'short' then 1 when 'closing' then 2 when 'clear' then 3 end`;

/** What each column is ordered by. */
const ORDER = {
  standing: rankOf('forecasts.standing'),
  ref: sql`natural_key(fences.ref)`,
  site: sql`natural_key(sites.name)`,
  owner: sql`natural_key(owners.name)`,
  ends: rankOf('forecasts.ends_standing'),
  short: sql`forecasts.short_season`,
  snap: sql`forecasts.snap_mps`,
  lean: sql`forecasts.lean_mps`,
  gust: sql`forecasts.design_gust_mps`,
  once: sql`forecasts.once_in_years`,
  installed: sql`fences.installed_earliest`,
  treatment: sql`fences.treatment_class`,
} as const satisfies Record<SortKey, unknown>;

/** The fences of the register with what else a list shows of them. */
const joined = (register: Register) =>
  register.db
    .selectFrom('fences')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .innerJoin('owners', 'owners.ref', 'fences.owner_ref')
    .leftJoin('owners as second', 'second.ref', 'fences.second_owner_ref')
    .leftJoin('forecasts', 'forecasts.fence_ref', 'fences.ref');

type Joined = ReturnType<typeof joined>;

/** A text as a pattern that LIKE finds anywhere, its own % and _ taken literally. */
const pattern = (text: string): string => `%${foldedText(text).replaceAll(/[\\%_]/g, '\\$&')}%`;

function narrowed(from: Joined, query: FenceQuery, visible: VisibleSites): Joined {
  let result = from;
  if (visible !== null) result = result.where('fences.site_ref', 'in', visible);
  if (query.siteRef !== null) result = result.where('fences.site_ref', '=', query.siteRef);
  if (query.standing !== null) result = result.where('forecasts.standing', '=', query.standing);
  const text = query.text.trim();
  if (text === '') return result;
  const classes = TREATMENT_CLASS_KEYS.filter((key) =>
    foldedText(TREATMENT_CLASSES[key].name).includes(foldedText(text)),
  );
  return result.where((eb) => {
    const like = (column: 'fences.ref' | 'sites.name' | 'owners.name' | 'second.name') =>
      sql<boolean>`folded_text(${sql.ref(column)}) like ${pattern(text)} escape '\\'`;
    const found = [like('fences.ref'), like('sites.name'), like('owners.name'), like('second.name')];
    return classes.length > 0 ? eb.or([...found, inClasses(eb, classes)]) : eb.or(found);
  });
}

const inClasses = (eb: ExpressionBuilder<RegisterTables, 'fences'>, classes: readonly TreatmentClass[]) =>
  eb('fences.treatment_class', 'in', classes);

/** How many fences the register holds, or the visible sites of it. */
export async function countFences(register: Register, visible: VisibleSites = null): Promise<number> {
  let from = register.db.selectFrom('fences');
  if (visible !== null) from = from.where('site_ref', 'in', visible);
  return (await from.select(sql<number>`count(*)`.as('count')).executeTakeFirstOrThrow()).count;
}

/** The sites by name, as the list's form offers them. */
async function listSites(register: Register, visible: VisibleSites): Promise<FencePage['sites']> {
  let from = register.db.selectFrom('sites').select(['ref', 'name']);
  if (visible !== null) from = from.where('ref', 'in', visible);
  return from.orderBy(ORDER.site).orderBy('ref').execute();
}

/** How many fences a query finds; other tables are joined only where a text is looked for in them. */
async function countFound(register: Register, query: FenceQuery, visible: VisibleSites): Promise<number> {
  const count = sql<number>`count(*)`.as('count');
  if (query.text.trim() !== '') {
    return (await narrowed(joined(register), query, visible).select(count).executeTakeFirstOrThrow()).count;
  }
  let from = register.db.selectFrom('fences');
  const { siteRef, standing } = query;
  if (visible !== null) from = from.where('site_ref', 'in', visible);
  if (siteRef !== null) from = from.where('site_ref', '=', siteRef);
  if (standing !== null) {
    from = from.where('ref', 'in', (eb) =>
      eb.selectFrom('forecasts').select('fence_ref').where('forecasts.standing', '=', standing),
    );
  }
  return (await from.select(count).executeTakeFirstOrThrow()).count;
}

/**
 * One page of fences, narrowed and ordered by the database: by the chosen column, what has no value last either way, then
 * the weakest against its gust, then by ref. Nothing in it, counts neither, tells of fences that are not visible.
 */
export async function listFences(
  register: Register,
  query: FenceQuery,
  visible: VisibleSites = null,
): Promise<FencePage> {
  const [found, total, counts, sites] = await Promise.all([
    countFound(register, query, visible),
    countFences(register, visible),
    countStandings(register, visible),
    listSites(register, visible),
  ]);
  const pages = Math.max(1, Math.ceil(found / PAGE_ROWS));
  const page = Math.min(Math.max(1, query.page), pages);
  const by = ORDER[query.sort];
  const rows = await narrowed(joined(register), query, visible)
    .select([
      'fences.ref as ref',
      'fences.site_ref as site_ref',
      'sites.name as site_name',
      'sites.units as units',
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
    ])
    .orderBy(sql`${by} is null`)
    .orderBy(by, query.descending ? 'desc' : 'asc')
    .orderBy(sql`coalesce(forecasts.snap_mps / forecasts.design_gust_mps, 1e9)`)
    .orderBy(ORDER.ref)
    .orderBy('fences.ref')
    .limit(PAGE_ROWS)
    .offset((page - 1) * PAGE_ROWS)
    .execute();
  const swept = Object.values(counts).reduce((sum, each) => sum + each, 0);
  return {
    rows: rows.map((row) => ({
      ref: row.ref,
      siteRef: row.site_ref,
      siteName: row.site_name,
      units: row.units,
      ownerName: row.owner_name,
      secondOwnerName: row.second_name,
      treatmentClass: row.treatment_class,
      installedEarliest: row.installed_earliest,
      installedLatest: row.installed_latest,
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
    })),
    found,
    total,
    page,
    pages,
    sites,
    counts,
    unswept: total - swept,
  };
}
