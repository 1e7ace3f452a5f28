import { TREATMENT_CLASSES } from '../decay/treatment-class.ts';
import type { DisplayUnits } from '../drawing/speed-text.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { Register } from '../register/database.ts';
import { listForecasts } from '../register/forecast-store.ts';
import { listRecords } from '../register/record-store.ts';

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

/** What a visitor asked the list for. */
export interface FenceQuery {
  readonly text: string;
  readonly siteRef: string | null;
  readonly standing: FenceStanding | null;
  readonly sort: SortKey;
  readonly descending: boolean;
  /** 1 for the first page. */
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
  readonly units: DisplayUnits;
  readonly ownerName: string;
  readonly treatment: string;
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

const PAGE_ROWS = 50;
const WORST_FIRST: readonly FenceStanding[] = ['short from new', 'short', 'closing', 'clear'];

/** Loads, narrows, orders and pages the list of fences. */
export async function fencePage(register: Register, query: FenceQuery): Promise<FencePage> {
  const all = await fenceRows(register);
  const needle = query.text.trim().toLocaleLowerCase('en');
  const matches = all.filter(
    (row) =>
      (query.siteRef === null || row.siteRef === query.siteRef) &&
      (query.standing === null || row.swept?.standing === query.standing) &&
      (needle === '' ||
        [row.ref, row.siteName, row.ownerName, row.treatment].some((text) =>
          text.toLocaleLowerCase('en').includes(needle),
        )),
  );
  const sorted = matches.toSorted(comparison(query));
  const pages = Math.max(1, Math.ceil(sorted.length / PAGE_ROWS));
  const page = Math.min(Math.max(1, query.page), pages);
  const counts: Record<FenceStanding, number> = { clear: 0, closing: 0, short: 0, 'short from new': 0 };
  const sites = new Map<string, string>();
  for (const row of all) {
    if (row.swept) counts[row.swept.standing] += 1;
    sites.set(row.siteRef, row.siteName);
  }
  return {
    rows: sorted.slice((page - 1) * PAGE_ROWS, page * PAGE_ROWS),
    found: sorted.length,
    total: all.length,
    page,
    pages,
    sites: [...sites].map(([ref, name]) => ({ ref, name })).toSorted((a, b) => a.name.localeCompare(b.name, 'en')),
    counts,
    unswept: all.filter((row) => row.swept === null).length,
  };
}

async function fenceRows(register: Register): Promise<readonly FenceRow[]> {
  const [fences, sites, owners, forecasts] = await Promise.all([
    listRecords(register.db, 'fences'),
    listRecords(register.db, 'sites'),
    listRecords(register.db, 'owners'),
    listForecasts(register, { limit: Number.MAX_SAFE_INTEGER }),
  ]);
  const siteOf = new Map(sites.map((site) => [site.ref, site]));
  const ownerOf = new Map(owners.map((owner) => [owner.ref, owner.name]));
  const sweptOf = new Map(forecasts.map((forecast) => [forecast.fenceRef, forecast]));
  return fences.map((fence) => {
    const site = siteOf.get(fence.siteRef);
    const second = fence.secondOwnerRef === null ? [] : [ownerOf.get(fence.secondOwnerRef) ?? fence.secondOwnerRef];
    return {
      ref: fence.ref,
      siteRef: fence.siteRef,
      siteName: site?.name ?? fence.siteRef,
      units: site?.units ?? 'us',
      ownerName: [ownerOf.get(fence.ownerRef) ?? fence.ownerRef, ...second].join(' and '),
      treatment: TREATMENT_CLASSES[fence.treatmentClass].name,
      installedEarliest: fence.installedEarliest,
      installedLatest: fence.installedLatest,
      swept: sweptOf.get(fence.ref) ?? null,
    };
  });
}

const rank = (standing: FenceStanding | null | undefined): number | null =>
  standing ? WORST_FIRST.indexOf(standing) : null;

const ORDER: Readonly<Record<SortKey, (row: FenceRow) => string | number | null>> = {
  standing: (row) => rank(row.swept?.standing),
  ref: (row) => row.ref,
  site: (row) => row.siteName,
  owner: (row) => row.ownerName,
  ends: (row) => rank(row.swept?.endsStanding),
  short: (row) => row.swept?.shortSeason ?? null,
  snap: (row) => row.swept?.snapMps ?? null,
  lean: (row) => row.swept?.leanMps ?? null,
  gust: (row) => row.swept?.designGustMps ?? null,
  once: (row) => row.swept?.onceInYears ?? null,
  installed: (row) => row.installedEarliest,
  treatment: (row) => row.treatment,
};

/** Orders by the chosen column, what has no value last either way, then the weakest against its gust, then by ref. */
function comparison(query: FenceQuery): (a: FenceRow, b: FenceRow) => number {
  const of = ORDER[query.sort];
  const weakness = (row: FenceRow): number =>
    row.swept ? row.swept.snapMps / row.swept.designGustMps : Number.POSITIVE_INFINITY;
  return (a, b) => {
    const [left, right] = [of(a), of(b)];
    if (left === null || right === null) {
      if (left !== right) return left === null ? 1 : -1;
    } else {
      const order =
        typeof left === 'string' && typeof right === 'string'
          ? left.localeCompare(right, 'en', { numeric: true })
          : Number(left) - Number(right);
      if (order !== 0) return query.descending ? -order : order;
    }
    const [leftWeak, rightWeak] = [weakness(a), weakness(b)];
    if (leftWeak !== rightWeak) return leftWeak < rightWeak ? -1 : 1;
    return a.ref.localeCompare(b.ref, 'en', { numeric: true });
  };
}
