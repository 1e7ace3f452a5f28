import type { AccountRole } from '../../register/account-tables.ts';
import type { ApiScope } from '../../service/api-tokens.ts';
import type { OwnerScope } from '../../service/owner-links.ts';
import { STYLESHEET_PATH } from '../frame/stylesheet.ts';

/** Whom a route answers: accounts by role, whoever holds an owner's link, or anybody at all. */
type Who = AccountRole | 'owner link' | 'anybody';

/** One route and whom it answers. */
export interface RouteAccess {
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH';
  /** The pattern, letter by letter as the route is declared. */
  readonly path: string;
  readonly who: readonly Who[];
  /** What a program's token must be allowed to be answered; null: no token is. */
  readonly scope: ApiScope | null;
  /** What an owner's link must be good for to be answered; of no meaning on other routes. */
  readonly ownerScope: OwnerScope;
  /** True where the machine itself may ask without signing in, as long as the pages are for it only. */
  readonly fromThisMachine: boolean;
}

const ANYBODY: readonly Who[] = ['anybody'];
const OFFICE: readonly Who[] = ['office'];
const OFFICE_AND_BOARD: readonly Who[] = ['office', 'board'];
const OFFICE_AND_CREW: readonly Who[] = ['office', 'crew'];
const BOARD: readonly Who[] = ['board'];
const CREWS: readonly Who[] = ['office', 'crew'];
const SIGNED_IN: readonly Who[] = ['office', 'crew', 'board'];
/** Tokens alone, by their scope. */
const PROGRAMS: readonly Who[] = [];
const OWNER: readonly Who[] = ['owner link'];

const route = (
  method: RouteAccess['method'],
  path: string,
  who: readonly Who[],
  more: Partial<Pick<RouteAccess, 'scope' | 'ownerScope' | 'fromThisMachine'>> = {},
): RouteAccess => ({ method, path, who, scope: null, ownerScope: 'see', fromThisMachine: false, ...more });

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
  route('GET', '/brief', OFFICE),
  route('GET', '/fences', SIGNED_IN),
  route('GET', '/fences.csv', SIGNED_IN),
  route('GET', '/fences/:name', SIGNED_IN, { scope: 'read-fences' }),
  route('GET', '/fences/:ref/what-if', SIGNED_IN),
  route('GET', '/fences/:ref/reasons', SIGNED_IN, { scope: 'read-fences' }),

  route('GET', '/documents', SIGNED_IN),
  route('GET', '/fences/:ref/report', SIGNED_IN),
  route('GET', '/fences/:ref/report.pdf', SIGNED_IN),
  route('GET', '/fences/:ref/evidence', OFFICE_AND_BOARD),
  route('GET', '/fences/:ref/evidence.pdf', OFFICE_AND_BOARD),
  route('GET', '/fences/:ref/quote', OFFICE),
  route('GET', '/fences/:ref/quote.pdf', OFFICE),
  route('GET', '/sites/:ref/plan', OFFICE_AND_BOARD),
  route('GET', '/sites/:ref/plan.pdf', OFFICE_AND_BOARD),
  route('GET', '/owners/:ref/plan', OFFICE_AND_BOARD),
  route('GET', '/owners/:ref/plan.pdf', OFFICE_AND_BOARD),
  route('GET', '/sheets/:crew/:day{[0-9-]+}', OFFICE_AND_CREW),
  route('GET', '/sheets/:crew/:file{[0-9-]+\\.pdf}', OFFICE_AND_CREW),

  route('GET', '/board', BOARD),
  route('GET', '/board/:site/years.csv', BOARD),
  route('GET', '/board/:site/fences.csv', BOARD),
  route('GET', '/plan', OFFICE),
  route('POST', '/plan', OFFICE),
  route('GET', '/plan/:number{[0-9]+}', OFFICE),
  route('GET', '/plan/:number{[0-9]+}/accept', OFFICE),
  route('POST', '/plan/:number{[0-9]+}/accept', OFFICE),
  route('GET', '/plan/hours', OFFICE),
  route('GET', '/plan/give', OFFICE),
  route('POST', '/plan/give', OFFICE),
  route('POST', '/plan/leave', OFFICE),
  route('GET', '/visits', OFFICE),
  route('GET', '/visits/:id', OFFICE),
  route('POST', '/visits/:id/confirm', OFFICE),
  route('POST', '/visits/:id/miss', OFFICE),
  route('POST', '/visits/:id/cancel', OFFICE),
  route('POST', '/visits/:id/done', OFFICE),
  route('GET', '/sheets/:crew', OFFICE),
  route('GET', '/materials', OFFICE),
  route('GET', '/feeds', OFFICE),
  route('POST', '/feeds', OFFICE),
  route('POST', '/feeds/:id{[0-9]+}/revoke', OFFICE),
  route('GET', '/today', CREWS),
  route('GET', '/today/session.json', CREWS),
  route('GET', '/today/photos/:id{[0-9]+}', CREWS),
  route('GET', '/crew-worker.js', ANYBODY),
  route('GET', '/crew-script/:version/:name', ANYBODY),
  route('GET', '/today/visits/:uid', CREWS),
  route('POST', '/today/visits/:uid/done', CREWS),
  route('GET', '/today/visits/:uid/fences/:ref', CREWS),
  route('POST', '/today/visits/:uid/fences/:ref/posts/:post/reading', CREWS),
  route('POST', '/today/visits/:uid/fences/:ref/posts/:post/closed-off', CREWS),
  route('POST', '/today/visits/:uid/fences/:ref/posts/:post/taken-back', CREWS),
  route('POST', '/today/visits/:uid/fences/:ref/photos', CREWS),

  route('GET', '/outbox', OFFICE),
  route('GET', '/outbox/:id{[0-9]+}/letter', OFFICE),
  route('GET', '/outbox/:id{[0-9]+}/letter.pdf', OFFICE),
  route('GET', '/mail', OFFICE),
  route('GET', '/mail/:id', OFFICE),
  route('GET', '/mail/:id/html', OFFICE),
  route('GET', '/mail/:id/raw', OFFICE),
  route('GET', '/mail/:id/files/:index{[0-9]+}', OFFICE),

  route('GET', '/api/v1/openapi.json', ANYBODY),
  route('GET', '/api/v1/fences', PROGRAMS, { scope: 'read-fences' }),
  route('GET', '/api/v1/fences/:ref', PROGRAMS, { scope: 'read-fences' }),
  route('GET', '/api/v1/fences/:ref/reasons', PROGRAMS, { scope: 'read-fences' }),
  route('GET', '/api/v1/records/:kind', PROGRAMS, { scope: 'read-register' }),
  route('PUT', '/api/v1/records/:kind', PROGRAMS, { scope: 'write-register' }),
  route('GET', '/api/v1/visits', PROGRAMS, { scope: 'read-register' }),
  route('GET', '/api/v1/visits/:uid', PROGRAMS, { scope: 'read-register' }),
  route('POST', '/api/v1/visits/:uid/confirm', PROGRAMS, { scope: 'change-visits' }),
  route('POST', '/api/v1/visits/:uid/miss', PROGRAMS, { scope: 'change-visits' }),
  route('POST', '/api/v1/visits/:uid/cancel', PROGRAMS, { scope: 'change-visits' }),
  route('POST', '/api/v1/visits/:uid/done', PROGRAMS, { scope: 'change-visits' }),
  route('GET', '/api/v1/plans', PROGRAMS, { scope: 'read-register' }),
  route('GET', '/api/v1/plans/:number', PROGRAMS, { scope: 'read-register' }),
  route('POST', '/api/v1/plans/:number/accept', PROGRAMS, { scope: 'change-visits' }),
  route('GET', '/api/v1/notices/held', PROGRAMS, { scope: 'read-register' }),
  route('POST', '/api/v1/notices/release', PROGRAMS, { scope: 'release-notices' }),
  route('GET', '/api/v1/notices/office', PROGRAMS, { scope: 'read-register' }),
  route('POST', '/api/v1/notices/office/:id/settle', PROGRAMS, { scope: 'release-notices' }),
  route('GET', '/api/v1/outbox', PROGRAMS, { scope: 'read-register' }),
  route('GET', '/api/v1/settings', PROGRAMS, { scope: 'read-register' }),
  route('PATCH', '/api/v1/settings', PROGRAMS, { scope: 'write-register' }),
  route('GET', '/api/v1/sweep', PROGRAMS, { scope: 'read-register' }),
  route('GET', '/api/v1/fences/:ref/what-if', PROGRAMS, { scope: 'read-fences' }),
  route('POST', '/api/v1/fences/:ref/quote', PROGRAMS, { scope: 'read-fences' }),
  route('GET', '/api/v1/owners/:ref/money', PROGRAMS, { scope: 'read-register' }),
  route('POST', '/api/v1/plans', PROGRAMS, { scope: 'change-visits' }),
  route('GET', '/api/v1/plan-making', PROGRAMS, { scope: 'read-register' }),
  route('POST', '/api/v1/sweep', PROGRAMS, { scope: 'write-register' }),
  route('GET', '/api/v1/answers', PROGRAMS, { scope: 'read-register' }),
  route('POST', '/api/v1/answers/:id/settle', PROGRAMS, { scope: 'release-notices' }),
  route('POST', '/api/v1/inspections/withdraw', PROGRAMS, { scope: 'write-register' }),
  route('GET', '/answers', OFFICE),
  route('POST', '/answers/:id{[0-9]+}/called', OFFICE),

  route('GET', '/records', OFFICE),
  route('POST', '/records/sweep', OFFICE),
  route('GET', '/import', OFFICE),
  route('POST', '/import', OFFICE),
  route('GET', '/import/:id', OFFICE),
  route('POST', '/import/:id', OFFICE),
  route('GET', '/import/:id/refused/:index{[0-9]+}', OFFICE),
  route('GET', '/export/:file{[a-z-]+\\.csv}', OFFICE),
  route('GET', '/export/columns/:file{[a-z-]+\\.csv}', OFFICE),
  route('GET', '/owners', OFFICE),
  route('GET', '/owners/:ref', OFFICE),
  route('POST', '/owners/:ref/links', OFFICE),
  route('POST', '/owners/:ref/links/:id{[0-9]+}/revoke', OFFICE),
  route('GET', '/sites', OFFICE),
  route('GET', '/sites/:ref', OFFICE),
  route('GET', '/catalogue', OFFICE),
  route('GET', '/seasons', OFFICE),
  route('GET', '/climate-zones', OFFICE),
  route('GET', '/crews', OFFICE),
  route('GET', '/records/:kind/new', OFFICE),
  route('POST', '/records/:kind/new', OFFICE),
  route('GET', '/records/:kind/:name', OFFICE),
  route('GET', '/records/:kind/:name/edit', OFFICE),
  route('POST', '/records/:kind/:name/edit', OFFICE),
  route('GET', '/notices', OFFICE),
  route('GET', '/notices/release', OFFICE),
  route('POST', '/notices/release', OFFICE),
  route('POST', '/notices/hold-again', OFFICE),
  route('POST', '/notices/settle', OFFICE),
  route('POST', '/notices/matters', OFFICE),
  route('GET', '/notices/preview', OFFICE),
  route('GET', '/notices/message', OFFICE),
  route('POST', '/outbox/retry', OFFICE),
  route('GET', '/outbox/:id{[0-9]+}', OFFICE),
  route('POST', '/outbox/:id{[0-9]+}', OFFICE),
  route('GET', '/outbox/:id{[0-9]+}/message', OFFICE),
  route('GET', '/fences/:ref/inspect', OFFICE),
  route('POST', '/fences/:ref/inspect', OFFICE),
  route('GET', '/fences/:ref/works', OFFICE),
  route('GET', '/fences/:ref/edit', OFFICE),
  route('GET', '/fences/:ref/entries', OFFICE),
  route('POST', '/fences/:ref/withdraw', OFFICE),
  route('GET', '/storms', OFFICE),
  route('POST', '/storms', OFFICE),
  route('GET', '/settings', OFFICE),
  route('POST', '/settings', OFFICE),
  route('GET', '/learned', OFFICE),
  route('GET', '/learned/preview', OFFICE),
  route('POST', '/learned', OFFICE),
  route('GET', '/owner/:token', OWNER),
  route('GET', '/owner/:token/fences/:ref', OWNER),
  route('GET', '/owner/:token/money', OWNER),
  route('GET', '/owner/:token/documents', OWNER),
  route('POST', '/owner/:token/read', OWNER, { ownerScope: 'acknowledge' }),
  route('GET', '/owner/:token/visits', OWNER, { ownerScope: 'book' }),
  route('POST', '/owner/:token/visits/:uid', OWNER, { ownerScope: 'book' }),
  route('GET', '/owner/:token/quotes', OWNER, { ownerScope: 'accept' }),
  route('GET', '/owner/:token/quotes/:number', OWNER, { ownerScope: 'accept' }),
  route('POST', '/owner/:token/quotes/:number', OWNER, { ownerScope: 'accept' }),
  route('GET', '/owner/:token/call', OWNER, { ownerScope: 'call' }),
  route('POST', '/owner/:token/call', OWNER, { ownerScope: 'call' }),
  route('GET', '/owner/:token/preferences', OWNER, { ownerScope: 'preferences' }),
  route('POST', '/owner/:token/preferences', OWNER, { ownerScope: 'preferences' }),
  route('GET', '/owner/:token/danger', OWNER, { ownerScope: 'preferences' }),
  route('POST', '/owner/:token/danger', OWNER, { ownerScope: 'preferences' }),
  // a mail program asks it without cookie or form
  route('GET', '/owner/:token/unsubscribe', OWNER, { ownerScope: 'preferences' }),
  route('POST', '/owner/:token/unsubscribe', OWNER, { ownerScope: 'preferences' }),
];

const BY_ROUTE: ReadonlyMap<string, RouteAccess> = new Map(
  ROUTE_ACCESS.map((access) => [`${access.method} ${access.path}`, access]),
);

/** Whom a declared route answers; null for one that is not in the table. */
export const accessTo = (method: string, path: string): RouteAccess | null => BY_ROUTE.get(`${method} ${path}`) ?? null;
