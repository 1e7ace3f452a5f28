import type { AccountRole } from '../../register/account-tables.ts';
import type { ApiScope } from '../../service/api-tokens.ts';
import { STYLESHEET_PATH } from '../frame/stylesheet.ts';

/** Whom a route answers: accounts by role, whoever holds an owner's link, or anybody at all. */
type Who = AccountRole | 'owner link' | 'anybody';

/** One route and whom it answers. */
export interface RouteAccess {
  readonly method: 'GET' | 'POST';
  /** The pattern, letter by letter as the route is declared. */
  readonly path: string;
  readonly who: readonly Who[];
  /** What a program's token must be allowed to be answered; null: no token is. */
  readonly scope: ApiScope | null;
  /** True where the machine itself may ask without signing in, as long as the pages are for it only. */
  readonly fromThisMachine: boolean;
}

const ANYBODY: readonly Who[] = ['anybody'];
const OFFICE: readonly Who[] = ['office'];
const SIGNED_IN: readonly Who[] = ['office', 'crew', 'board'];
const OWNER: readonly Who[] = ['owner link'];

const route = (
  method: RouteAccess['method'],
  path: string,
  who: readonly Who[],
  more: Partial<Pick<RouteAccess, 'scope' | 'fromThisMachine'>> = {},
): RouteAccess => ({ method, path, who, scope: null, fromThisMachine: false, ...more });

/**
 * Every route of the pages and whom it answers: what is not here answers nobody. Which fences a board, or the holder of an
 * owner's link, sees behind a route is decided where fences are read.
 */
export const ROUTE_ACCESS: readonly RouteAccess[] = [
  route('GET', '/healthz', ANYBODY),
  route('GET', '/readyz', ANYBODY),
  route('GET', '/metrics', OFFICE, { scope: 'read-metrics', fromThisMachine: true }),
  route('GET', STYLESHEET_PATH, ANYBODY),
  route('GET', '/icon.svg', ANYBODY),
  route('GET', '/fonts/:name', ANYBODY),
  // the address of a feed is its secret
  route('GET', '/feed/:file{[^/]+\\.ics}', ANYBODY),

  route('GET', '/sign-in', ANYBODY),
  route('POST', '/sign-in', ANYBODY),
  route('POST', '/demo', ANYBODY),
  route('GET', '/setup', ANYBODY),
  route('POST', '/setup', ANYBODY),
  route('POST', '/sign-out', SIGNED_IN),
  route('GET', '/account', SIGNED_IN),
  route('POST', '/account/password', SIGNED_IN),
  route('POST', '/account/language', SIGNED_IN),

  route('GET', '/accounts', OFFICE),
  route('POST', '/accounts', OFFICE),
  route('GET', '/accounts/:id{[0-9]+}', OFFICE),
  route('POST', '/accounts/:id{[0-9]+}/password', OFFICE),
  route('POST', '/accounts/:id{[0-9]+}/sites', OFFICE),
  route('POST', '/accounts/:id{[0-9]+}/disabled', OFFICE),

  route('GET', '/', SIGNED_IN),
  route('GET', '/fences', SIGNED_IN),
  route('GET', '/fences.csv', SIGNED_IN),
  route('GET', '/fences/:name', SIGNED_IN, { scope: 'read-fences' }),
  route('GET', '/fences/:ref/what-if', SIGNED_IN),
  route('GET', '/fences/:ref/reasons', SIGNED_IN, { scope: 'read-fences' }),

  route('GET', '/outbox', OFFICE),
  route('GET', '/outbox/:id{[0-9]+}/letter', OFFICE),
  route('GET', '/mail', OFFICE),
  route('GET', '/mail/:id', OFFICE),
  route('GET', '/mail/:id/html', OFFICE),
  route('GET', '/mail/:id/raw', OFFICE),
  route('GET', '/mail/:id/files/:index{[0-9]+}', OFFICE),

  route('GET', '/owner/:token', OWNER),
  route('GET', '/owner/:token/fences/:ref', OWNER),
];

const BY_ROUTE: ReadonlyMap<string, RouteAccess> = new Map(
  ROUTE_ACCESS.map((access) => [`${access.method} ${access.path}`, access]),
);

/** Whom a declared route answers; null for one that is not in the table. */
export const accessTo = (method: string, path: string): RouteAccess | null => BY_ROUTE.get(`${method} ${path}`) ?? null;
