import type { FenceStanding } from '../../forecast/fence-forecast.ts';
import type { FenceQuery, SortKey } from '../../register/fence-list.ts';
import { SORT_KEYS } from '../../register/fence-list.ts';

/** The standings in the order in which lists offer them, worst first. */
export const STANDINGS: readonly FenceStanding[] = ['short from new', 'short', 'closing', 'clear'];

/** Reads the list's query from its address; what makes no sense falls back to the plain list, worst standing first. */
export function readFenceQuery(search: URLSearchParams): FenceQuery {
  const sort = search.get('sort') ?? '';
  const standing = search.get('standing') ?? '';
  const page = Number(search.get('page') ?? '1');
  return {
    text: (search.get('q') ?? '').slice(0, 100),
    siteRef: search.get('site') || null,
    standing: STANDINGS.find((known) => known === standing) ?? null,
    sort: SORT_KEYS.find((known) => known === sort) ?? 'standing',
    descending: search.get('dir') === 'desc',
    page: Number.isInteger(page) && page > 0 ? page : 1,
  };
}

/** The address of the list for a query with some changes; defaults are left out. */
export function fenceQueryPath(query: FenceQuery, changes: Partial<FenceQuery> = {}): string {
  const next = { ...query, page: 1, ...changes };
  const search = new URLSearchParams();
  if (next.text) search.set('q', next.text);
  if (next.siteRef) search.set('site', next.siteRef);
  if (next.standing) search.set('standing', next.standing);
  if (next.sort !== 'standing') search.set('sort', next.sort);
  if (next.descending) search.set('dir', 'desc');
  if (next.page > 1) search.set('page', String(next.page));
  const text = search.toString();
  return text === '' ? '/fences' : `/fences?${text}`;
}

/** The address that sorts by a column: ascending first, the other way where it is sorted so already. */
export const sortPath = (query: FenceQuery, sort: SortKey): string =>
  fenceQueryPath(query, { sort, descending: query.sort === sort && !query.descending });
