import { type RawBuilder, sql } from 'kysely';
import { TREATMENT_CLASS_KEYS, TREATMENT_CLASSES, type TreatmentClass } from '../decay/treatment-class.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { Register } from './database.ts';
import type { FenceQuery, SortKey, VisibleSites } from './fence-query.ts';
import { foldedText } from './text-order.ts';

/** The standings by their ranks in the register's lines, the worst first. */
export const RANKED_STANDINGS: readonly FenceStanding[] = ['short from new', 'short', 'closing', 'clear'];

/** So many fences found are sorted as they are; more are met by walking along the order's own index. */
const FEW = 3_000;

/** The fences found by a query: how many, and the ids of a stretch of them in order. */
export interface FenceSearch {
  readonly found: number;
  /** Ids of the lines from a place on, 0 the first, in the query's order. */
  ids(from: number, count: number): Promise<readonly number[]>;
}

/** An order's own index, and its first column; by ref alone there is nothing to tell equals apart by. */
const ORDERS: Readonly<
  Record<SortKey, { readonly index: string; readonly column: string; readonly ties: readonly string[] }>
> = {
  worst: { index: 'fence_lines_by_worst', column: 'worst', ties: ['ref_key'] },
  standing: { index: 'fence_lines_by_standing', column: 'standing_rank', ties: ['tie', 'ref_key'] },
  ref: { index: 'fence_lines_by_ref', column: 'ref_key', ties: [] },
  site: { index: 'fence_lines_by_site', column: 'site_key', ties: ['tie', 'ref_key'] },
  owner: { index: 'fence_lines_by_owner', column: 'owner_key', ties: ['tie', 'ref_key'] },
  ends: { index: 'fence_lines_by_ends', column: 'ends_rank', ties: ['tie', 'ref_key'] },
  short: { index: 'fence_lines_by_short', column: 'short_season', ties: ['tie', 'ref_key'] },
  snap: { index: 'fence_lines_by_snap', column: 'snap_mps', ties: ['tie', 'ref_key'] },
  lean: { index: 'fence_lines_by_lean', column: 'lean_mps', ties: ['tie', 'ref_key'] },
  gust: { index: 'fence_lines_by_gust', column: 'design_gust_mps', ties: ['tie', 'ref_key'] },
  once: { index: 'fence_lines_by_once', column: 'once_in_years', ties: ['tie', 'ref_key'] },
  installed: { index: 'fence_lines_by_installed', column: 'installed_earliest', ties: ['tie', 'ref_key'] },
  treatment: { index: 'fence_lines_by_treatment', column: 'treatment_class', ties: ['tie', 'ref_key'] },
};

/**
 * The order of a query, or the same from its end: what has no value last either way, then the worst, then
 * by ref, all of it turned round where it descends.
 */
function orderOf({ sort, descending }: Pick<FenceQuery, 'sort' | 'descending'>, fromEnd: boolean): RawBuilder<unknown> {
  const { column, ties } = ORDERS[sort];
  const way = sql.raw(descending === fromEnd ? 'asc' : 'desc');
  const empty = sql.raw(fromEnd ? 'nulls first' : 'nulls last');
  return sql.join([
    sql`${sql.ref(column)} ${way} ${empty}`,
    ...ties.map((tie) => sql`${sql.ref(tie)} ${way}`),
    sql`id ${way}`,
  ]);
}

/** A text as a pattern that LIKE finds anywhere, its own % and _ taken literally. */
const pattern = (text: string): string => `%${foldedText(text).replaceAll(/[\\%_]/g, '\\$&')}%`;

/** Shortest text that the index of texts finds [letters]. */
const LEAST_INDEXED = 3;

/**
 * The text of a query as the index of texts is asked for it; null where it is too short, or where words of treatments are
 * meant as well, which that index does not hold.
 */
function indexedText(query: Pick<FenceQuery, 'text'>): string | null {
  const folded = foldedText(query.text.trim());
  const short = [...folded].length < LEAST_INDEXED;
  if (short || classesNamed(folded).length > 0 || folded.includes('\0')) return null;
  return `"${folded.replaceAll('"', '""')}"`;
}

/** The treatment classes whose name holds a folded text. */
const classesNamed = (folded: string): readonly TreatmentClass[] =>
  TREATMENT_CLASS_KEYS.filter((key) => foldedText(TREATMENT_CLASSES[key].name).includes(folded));

function textCondition(text: string): RawBuilder<unknown> {
  const classes = classesNamed(foldedText(text));
  const like = sql`folded like ${pattern(text)} escape '\\'`;
  return classes.length === 0 ? like : sql`(${like} or treatment_class in (${sql.join(classes)}))`;
}

/** Which lines stand so wherever they are the worst; in columns that the index of every order holds. */
const STANDS: Readonly<Record<'short' | 'closing', RawBuilder<unknown>>> = {
  short: sql`(standing_rank <= 1 or ends_rank <= 1)`,
  closing: sql`(standing_rank >= 2 and coalesce(ends_rank, 3) >= 2 and (standing_rank = 2 or ends_rank = 2))`,
};

/** Which lines are of fences that are recorded dangerous and not dealt with. */
const DANGEROUS = sql`ref in (select fence_ref from office_notices where settled_at is null and matter = 'dangerous')`;

type FurtherQuery = Pick<
  FenceQuery,
  'ownerRef' | 'endsStanding' | 'treatmentClass' | 'builtFrom' | 'builtTo' | 'shortFrom' | 'shortTo' | 'text'
> &
  Partial<Pick<FenceQuery, 'anywhere' | 'dangerous'>>;

/** What a query asks of a line, apart from site and standing; empty where it asks nothing more. */
function furtherConditions(query: FurtherQuery): readonly RawBuilder<unknown>[] {
  const { ownerRef, anywhere = null, endsStanding, treatmentClass, builtFrom, builtTo, shortFrom, shortTo } = query;
  const text = query.text.trim();
  return [
    ...(ownerRef === null ? [] : [sql`(owner_ref = ${ownerRef} or second_owner_ref = ${ownerRef})`]),
    ...(anywhere === null ? [] : [STANDS[anywhere]]),
    ...(query.dangerous ? [DANGEROUS] : []),
    ...(endsStanding === null ? [] : [sql`ends_rank = ${RANKED_STANDINGS.indexOf(endsStanding)}`]),
    ...(treatmentClass === null ? [] : [sql`treatment_class = ${treatmentClass}`]),
    ...(builtFrom === null ? [] : [sql`built_to >= ${builtFrom}`]),
    ...(builtTo === null ? [] : [sql`built_from <= ${builtTo}`]),
    ...(shortFrom === null ? [] : [sql`short_year >= ${shortFrom}`]),
    ...(shortTo === null ? [] : [sql`short_year <= ${shortTo}`]),
    ...(text === '' ? [] : [textCondition(text)]),
  ];
}

/** The lines with what a query asks of them apart from site and standing, for a statement's `from`; null where it asks nothing. */
export function linesAsked(query: FurtherQuery): RawBuilder<unknown> | null {
  const conditions = furtherConditions(query);
  return conditions.length === 0 ? null : sql`${linesWith(query, null)} where ${all(conditions)}`;
}

function siteConditions(
  { siteRef }: Pick<FenceQuery, 'siteRef'>,
  visible: VisibleSites,
): readonly RawBuilder<unknown>[] {
  return [
    ...(visible === null ? [] : [visible.length === 0 ? sql`false` : sql`site_ref in (${sql.join(visible)})`]),
    ...(siteRef === null ? [] : [sql`site_ref = ${siteRef}`]),
  ];
}

const all = (conditions: readonly RawBuilder<unknown>[]): RawBuilder<unknown> =>
  conditions.length === 0 ? sql`true` : sql.join(conditions, sql` and `);

/** The lines among which those of a query are looked for: by the index of texts where it finds them. */
function linesWith(
  query: Pick<FenceQuery, 'text'> & Partial<Pick<FenceQuery, 'siteRef'>>,
  visible: VisibleSites,
): RawBuilder<unknown> {
  const text = indexedText(query);
  // of some sites the fences are fewer than those a text may find in all
  if (text === null || siteConditions({ siteRef: query.siteRef ?? null }, visible).length > 0) return sql`fence_lines`;
  return sql`(select rowid as found from fence_text where fence_text match ${text}) cross join fence_lines on id = found`;
}

/** Rank of a fence that was not swept yet; of ends that have no standing of their own. */
const NOT_SWEPT = 4;

interface RanksRow {
  readonly line: number;
  readonly ends: number;
  readonly fences: number;
}

interface CountRow {
  readonly found: number;
}

interface IdRow {
  readonly id: number;
}

async function rowsOf<R>({ db }: Register, statement: RawBuilder<R>): Promise<readonly R[]> {
  return (await statement.execute(db)).rows;
}

/** How many fences have a rank at the line and a rank at the ends, of the sites that a query and its asker leave: the database counts them. */
const countedByRanks = (
  register: Register,
  query: Pick<FenceQuery, 'siteRef'>,
  visible: VisibleSites,
): Promise<readonly RanksRow[]> => {
  const conditions = siteConditions(query, visible);
  return rowsOf(
    register,
    conditions.length === 0
      ? sql<RanksRow>`select standing_rank as line, ends_rank as ends, fences from register_standings`
      : sql<RanksRow>`select standing_rank as line, ends_rank as ends, sum(fences) as fences from site_standings
          where ${all(conditions)} group by 1, 2`,
  );
};

/** Fences of each standing by its rank, 4 for those not swept, of the sites that a query and its asker leave. */
export async function countByRank(
  register: Register,
  query: Pick<FenceQuery, 'siteRef'>,
  visible: VisibleSites,
): Promise<readonly number[]> {
  const counts = [0, 0, 0, 0, 0];
  for (const { line, fences } of await countedByRanks(register, query, visible)) counts[line]! += fences;
  return counts;
}

/** Fences by the worse of their standings at the line and at the ends. */
export interface StandsAnywhere {
  /** Short of the design gust at the line or at the ends. */
  readonly short: number;
  /** Those of them that hold it at the line. */
  readonly shortAtEndsAlone: number;
  /** Going short within the look-ahead, and short nowhere yet. */
  readonly closing: number;
}

/** Counts the fences that are short, or go short, at the line or at the ends. */
export async function countAnywhere(register: Register, visible: VisibleSites): Promise<StandsAnywhere> {
  const rows = (await countedByRanks(register, { siteRef: null }, visible)).filter(({ line }) => line < NOT_SWEPT);
  const sum = (of: (row: RanksRow) => boolean): number =>
    rows.filter(of).reduce((counted, { fences }) => counted + fences, 0);
  return {
    short: sum(({ line, ends }) => Math.min(line, ends) <= 1),
    shortAtEndsAlone: sum(({ line, ends }) => line > 1 && ends <= 1),
    closing: sum(({ line, ends }) => Math.min(line, ends) === 2),
  };
}

/** Counts the fences that are recorded dangerous and not dealt with. */
export async function countDangerous(register: Register, visible: VisibleSites): Promise<number> {
  const where = all([DANGEROUS, ...siteConditions({ siteRef: null }, visible)]);
  const rows = await rowsOf(register, sql<CountRow>`select count(*) as found from fence_lines where ${where}`);
  return rows[0]?.found ?? 0;
}

/** The ids in a query's order between two places, met from whichever end of the order is nearer. */
async function walk(
  register: Register,
  query: FenceQuery,
  from: { readonly lines: RawBuilder<unknown>; readonly where: RawBuilder<unknown>; readonly found: number },
  at: { readonly place: number; readonly count: number },
): Promise<readonly number[]> {
  const count = Math.max(0, Math.min(at.count, from.found - at.place));
  if (count === 0) return [];
  const fromEnd = at.place > from.found - at.place - count;
  const offset = fromEnd ? from.found - at.place - count : at.place;
  const rows = await rowsOf(
    register,
    sql<IdRow>`select id from ${from.lines} where ${from.where} order by ${orderOf(query, fromEnd)}
      limit ${count} offset ${offset}`,
  );
  const ids = rows.map(({ id }) => id);
  return fromEnd ? ids.reverse() : ids;
}

/**
 * Looks for the fences of a query. A few are found first and then sorted; many are met by walking along the order they
 * are wanted in, in which a filter is judged by the index alone.
 */
export async function searchFences(register: Register, query: FenceQuery, visible: VisibleSites): Promise<FenceSearch> {
  const further = furtherConditions(query);
  const bySite = siteConditions(query, visible);
  const standing = query.standing === null ? [] : [sql`standing_rank = ${RANKED_STANDINGS.indexOf(query.standing)}`];
  const where = all([...bySite, ...standing, ...further]);
  const narrowed = bySite.length + standing.length + further.length > 0;
  const ownIndex = sql`fence_lines indexed by ${sql.ref(ORDERS[query.sort].index)}`;
  if (narrowed) {
    const some = await rowsOf(
      register,
      sql<IdRow>`select id from ${linesWith(query, visible)} where ${where} limit ${FEW + 1}`,
    );
    if (some.length <= FEW) {
      const few = sql`id in (select value from json_each(${JSON.stringify(some.map(({ id }) => id))}))`;
      const from = { lines: sql`fence_lines`, where: few, found: some.length };
      return {
        found: some.length,
        ids: (place, count) => walk(register, query, from, { place, count }),
      };
    }
  }
  const found = await countMany(register, query, visible, { where, further });
  const from = { lines: ownIndex, where, found };
  return { found, ids: (place, count) => walk(register, query, from, { place, count }) };
}

/** How many fences a query finds: of sites and standings kept counts, of anything else counted. */
async function countMany(
  register: Register,
  query: FenceQuery,
  visible: VisibleSites,
  { where, further }: { readonly where: RawBuilder<unknown>; readonly further: readonly RawBuilder<unknown>[] },
): Promise<number> {
  if (further.length === 0) {
    const counts = await countByRank(register, query, visible);
    if (query.standing !== null) return counts[RANKED_STANDINGS.indexOf(query.standing)] ?? 0;
    return counts.reduce((sum, each) => sum + each, 0);
  }
  const text = indexedText(query);
  const isTextAlone = text !== null && further.length === 1 && query.standing === null && query.siteRef === null;
  const counted =
    isTextAlone && visible === null
      ? sql<CountRow>`select count(*) as found from fence_text where fence_text match ${text}`
      : sql<CountRow>`select count(*) as found from ${linesWith(query, visible)} where ${where}`;
  const rows = await rowsOf(register, counted);
  return rows[0]?.found ?? 0;
}
