import { TREATMENT_CLASS_KEYS } from '../../decay/treatment-class.ts';
import type { FenceStanding } from '../../forecast/fence-forecast.ts';
import { EVERY_FENCE, type FenceQuery, SORT_KEYS, type SortKey } from '../../register/fence-query.ts';

/** The standings in the order in which lists offer them, worst first. */
export const STANDINGS: readonly FenceStanding[] = ['short from new', 'short', 'closing', 'clear'];

/** What the list of standings offers beside them: short, or going short, at the line or at the ends. */
export const ANYWHERE = ['short', 'closing'] as const;

/** What it offers for those that are recorded dangerous. */
export const DANGEROUS = 'dangerous';

const MOST_TEXT = 100;
const YEARS = { first: 1900, last: 2200 };

/** Reads the list's query from its address; what makes no sense falls back to the plain list, the worst first. */
export function readFenceQuery(search: URLSearchParams): FenceQuery {
  const one = <T extends string>(name: string, known: readonly T[]): T | null =>
    known.find((value) => value === search.get(name)) ?? null;
  const year = (name: string): number | null => {
    const value = Number(search.get(name) || Number.NaN);
    return Number.isInteger(value) && value >= YEARS.first && value <= YEARS.last ? value : null;
  };
  const ref = (name: string): string | null => search.get(name)?.trim().slice(0, MOST_TEXT) || null;
  const page = Number(search.get('page') ?? '1');
  return {
    text: (search.get('q') ?? '').slice(0, MOST_TEXT),
    siteRef: ref('site'),
    ownerRef: ref('owner'),
    standing: one('standing', STANDINGS),
    anywhere: ANYWHERE.find((value) => `any-${value}` === search.get('standing')) ?? null,
    dangerous: search.get('standing') === DANGEROUS,
    endsStanding: one('ends', STANDINGS),
    treatmentClass: one('treatment', TREATMENT_CLASS_KEYS),
    builtFrom: year('from'),
    builtTo: year('to'),
    shortFrom: year('short-from'),
    shortTo: year('short-to'),
    sort: one('sort', SORT_KEYS) ?? EVERY_FENCE.sort,
    descending: search.get('dir') === 'desc',
    page: Number.isSafeInteger(page) && page > 0 ? page : 1,
  };
}

/** What of a query an address carries, by the names of the form's fields. */
const FIELDS: readonly (readonly [name: string, of: (query: FenceQuery) => string | number | null])[] = [
  ['q', ({ text }) => text],
  ['site', ({ siteRef }) => siteRef],
  ['owner', ({ ownerRef }) => ownerRef],
  [
    'standing',
    ({ standing, anywhere, dangerous }) => (dangerous ? DANGEROUS : anywhere === null ? standing : `any-${anywhere}`),
  ],
  ['ends', ({ endsStanding }) => endsStanding],
  ['treatment', ({ treatmentClass }) => treatmentClass],
  ['from', ({ builtFrom }) => builtFrom],
  ['to', ({ builtTo }) => builtTo],
  ['short-from', ({ shortFrom }) => shortFrom],
  ['short-to', ({ shortTo }) => shortTo],
  ['sort', ({ sort }) => (sort === EVERY_FENCE.sort ? null : sort)],
  ['dir', ({ descending }) => (descending ? 'desc' : null)],
  ['page', ({ page }) => (page > 1 ? page : null)],
];

function pathOf(start: string, query: FenceQuery): string {
  const search = new URLSearchParams();
  for (const [name, of] of FIELDS) {
    const value = of(query);
    if (value !== null && value !== '') search.set(name, String(value));
  }
  const text = search.toString();
  return text === '' ? start : `${start}?${text}`;
}

/** The address of the list for a query with some changes; defaults are left out. */
export const fenceQueryPath = (query: FenceQuery, changes: Partial<FenceQuery> = {}): string =>
  pathOf('/fences', { ...query, page: 1, ...changes });

/** The address of every row of a query as CSV. */
export const fenceCsvPath = (query: FenceQuery): string => pathOf('/fences.csv', { ...query, page: 1 });

/** The address that sorts by a column: ascending first, the other way where it is sorted so already. */
export const sortPath = (query: FenceQuery, sort: SortKey): string =>
  fenceQueryPath(query, { sort, descending: query.sort === sort && !query.descending });

/** True where a query asks for something that the form folds away. */
export const usesFoldedFilters = (query: FenceQuery): boolean =>
  query.ownerRef !== null ||
  query.endsStanding !== null ||
  query.treatmentClass !== null ||
  query.builtFrom !== null ||
  query.builtTo !== null ||
  query.shortFrom !== null ||
  query.shortTo !== null;

/** True where a query leaves out any fence. */
export const narrows = (query: FenceQuery): boolean =>
  query.text.trim() !== '' ||
  query.siteRef !== null ||
  query.standing !== null ||
  query.anywhere !== null ||
  query.dangerous ||
  usesFoldedFilters(query);
