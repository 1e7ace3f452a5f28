import { PHONE_SCRIPT_PATH } from '../../../src/web/crew/crew-script.ts';
import { STYLESHEET_PATH } from '../../../src/web/frame/stylesheet.ts';
import type { VisitorName } from './access-visitors.ts';

/**
 * What a visitor gets: a status where the route answers; `sign in` where they are led there; `refused` where their role or
 * token is not enough; `unknown` where the address opens nothing; `401` where a program is told to show a token.
 */
export type Expected = number | 'sign in' | 'refused' | 'unknown' | '401';

type Row = readonly [
  method: 'GET' | 'POST' | 'PUT' | 'PATCH',
  path: string,
  asked: string,
  expected: Readonly<Record<VisitorName, Expected>>,
];

/** Everybody who shows no account and no token of the right kind is turned away, in the way that fits them. */
const TURNED_AWAY = {
  nobody: 'sign in',
  owner: 'sign in',
  'read-fences': 'refused',
  'read-metrics': 'refused',
  'read-register': 'refused',
  'write-register': 'refused',
  'change-visits': 'refused',
  'release-notices': 'refused',
} as const;

const all = (status: Expected): Row[3] => ({
  nobody: status,
  office: status,
  crew: status,
  board: status,
  owner: status,
  'read-fences': status,
  'read-metrics': status,
  'read-register': status,
  'write-register': status,
  'change-visits': status,
  'release-notices': status,
});
const office = (status: number): Row[3] => ({ ...TURNED_AWAY, office: status, crew: 'refused', board: 'refused' });
const accounts = (status: number): Row[3] => ({ ...TURNED_AWAY, office: status, crew: status, board: status });
const officeAndBoard = (status: number): Row[3] => ({ ...accounts(status), crew: 'refused' });
const officeAndCrew = (status: number): Row[3] => ({ ...accounts(status), board: 'refused' });
const board = (status: number): Row[3] => ({ ...TURNED_AWAY, office: 'refused', crew: 'refused', board: status });
const crews = (status: number): Row[3] => ({ ...accounts(status), board: 'refused' });
const fences = { ...accounts(200), 'read-fences': 200 } as const;
/** The address is the secret: whoever has it is let in, whoever else they are; a program's token is for other routes. */
const byAddress = (status: Expected): Row[3] => ({
  ...all(status),
  'read-fences': 'refused',
  'read-metrics': 'refused',
  'read-register': 'refused',
  'write-register': 'refused',
  'change-visits': 'refused',
  'release-notices': 'refused',
});
/** For programs alone, with the one scope that it takes; people and links are refused, whoever shows nothing is told to. */
const programs = (scope: VisitorName, status: Expected): Row[3] => ({
  ...all('refused'),
  nobody: '401',
  owner: '401',
  [scope]: status,
});
/** A form that is tied to the browser: an account's own token is none of an owner's page. */
const byForm = (status: Expected): Row[3] => ({ ...byAddress(status), office: 403, crew: 403, board: 403 });
const FORGED = `1.${'A'.repeat(43)}`;

/**
 * Every route, as it is declared and as it is asked, and what everybody gets, written down by hand. `{mail}`, `{letter}`,
 * `{account}` and `{link}` stand for what the sample holds.
 */
export const EXPECTED: readonly Row[] = [
  ['GET', '/healthz', '/healthz', all(200)],
  ['GET', '/readyz', '/readyz', all(200)],
  // this machine may ask without signing in, as long as the pages are for it only
  ['GET', '/metrics', '/metrics', { ...office(200), nobody: 200, owner: 200, 'read-metrics': 200 }],
  ['GET', STYLESHEET_PATH, STYLESHEET_PATH, all(200)],
  ['GET', '/icon.svg', '/icon.svg', all(200)],
  ['GET', '/fonts/:name', '/fonts/source-sans-3-400.ttf', all(200)],
  // the address is the secret, and this one is nobody's
  ['GET', '/feed/:file{[^/]+\\.ics}', '/feed/nothing.ics', all(404)],

  ['GET', '/sign-in', '/sign-in', { ...all(200), office: 303, crew: 303, board: 303 }],
  ['POST', '/sign-in', '/sign-in', all(403)],
  ['POST', '/demo', '/demo', all(403)],
  // somebody has an account: there is no first run any more
  ['GET', '/setup', '/setup', all('sign in')],
  ['POST', '/setup', '/setup', all('sign in')],
  ['POST', '/sign-out', '/sign-out', accounts(303)],
  ['GET', '/account', '/account', accounts(200)],
  ['POST', '/account/password', '/account/password', accounts(403)],
  ['POST', '/account/language', '/account/language', accounts(303)],

  ['GET', '/accounts', '/accounts', office(200)],
  ['POST', '/accounts', '/accounts', office(400)],
  ['GET', '/accounts/:id{[0-9]+}', '/accounts/{account}', office(200)],
  ['POST', '/accounts/:id{[0-9]+}/password', '/accounts/{account}/password', office(400)],
  ['POST', '/accounts/:id{[0-9]+}/sites', '/accounts/{account}/sites', office(200)],
  ['POST', '/accounts/:id{[0-9]+}/disabled', '/accounts/{account}/disabled', office(303)],

  ['GET', '/', '/', accounts(302)],
  ['GET', '/brief', '/brief', office(200)],
  ['GET', '/fences', '/fences', accounts(200)],
  ['GET', '/fences.csv', '/fences.csv', accounts(200)],
  ['GET', '/fences/:name', '/fences/PR-01', fences],
  ['GET', '/fences/:name', '/fences/PR-01.json', { ...fences, nobody: '401', owner: '401' }],
  ['GET', '/fences/:ref/what-if', '/fences/PR-01/what-if', accounts(200)],
  ['GET', '/fences/:ref/reasons', '/fences/PR-01/reasons', fences],

  ['GET', '/documents', '/documents', accounts(200)],
  ['GET', '/fences/:ref/report', '/fences/PR-01/report', accounts(200)],
  ['GET', '/fences/:ref/report', '/fences/SK-01/report', { ...accounts(200), board: 404 }],
  ['GET', '/fences/:ref/report.pdf', '/fences/PR-01/report.pdf', accounts(200)],
  ['GET', '/fences/:ref/report.pdf', '/fences/SK-01/report.pdf', { ...accounts(200), board: 404 }],
  ['GET', '/fences/:ref/evidence', '/fences/PR-01/evidence', officeAndBoard(200)],
  ['GET', '/fences/:ref/evidence', '/fences/SK-01/evidence', { ...officeAndBoard(200), board: 404 }],
  ['GET', '/fences/:ref/evidence.pdf', '/fences/PR-01/evidence.pdf', officeAndBoard(200)],
  ['GET', '/fences/:ref/evidence.pdf', '/fences/SK-01/evidence.pdf', { ...officeAndBoard(200), board: 404 }],
  ['GET', '/fences/:ref/quote', '/fences/PR-01/quote', office(200)],
  ['GET', '/fences/:ref/quote.pdf', '/fences/PR-01/quote.pdf?works=inspect', office(200)],
  ['GET', '/sites/:ref/plan', '/sites/PELICAN/plan', officeAndBoard(200)],
  ['GET', '/sites/:ref/plan', '/sites/SKERRY/plan', { ...officeAndBoard(200), board: 404 }],
  ['GET', '/sites/:ref/plan.pdf', '/sites/PELICAN/plan.pdf', officeAndBoard(200)],
  ['GET', '/sites/:ref/plan.pdf', '/sites/SKERRY/plan.pdf', { ...officeAndBoard(200), board: 404 }],
  // the association's own, all of whose fences the board sees; a person's, and a company's elsewhere, are not the board's
  ['GET', '/owners/:ref/plan', '/owners/HOA/plan', officeAndBoard(200)],
  ['GET', '/owners/:ref/plan', '/owners/QUINN/plan', { ...officeAndBoard(200), board: 404 }],
  ['GET', '/owners/:ref/plan.pdf', '/owners/HOA/plan.pdf', officeAndBoard(200)],
  ['GET', '/owners/:ref/plan.pdf', '/owners/MASON/plan.pdf', { ...officeAndBoard(200), board: 404 }],
  // the sample has no crew
  ['GET', '/sheets/:crew/:day{[0-9-]+}', '/sheets/gulf/2026-11-24', officeAndCrew(404)],
  ['GET', '/sheets/:crew/:file{[0-9-]+\\.pdf}', '/sheets/gulf/2026-11-24.pdf', officeAndCrew(404)],

  ['GET', '/board', '/board', board(200)],
  ['GET', '/board/:site/years.csv', '/board/PELICAN/years.csv', board(200)],
  ['GET', '/board/:site/years.csv', '/board/SKERRY/years.csv', board(404)],
  ['GET', '/board/:site/fences.csv', '/board/PELICAN/fences.csv', board(200)],
  ['GET', '/plan', '/plan', office(200)],
  ['POST', '/plan', '/plan', office(303)],
  ['GET', '/plan/:number{[0-9]+}', '/plan/99', office(404)],
  ['GET', '/plan/:number{[0-9]+}/accept', '/plan/99/accept', office(404)],
  ['POST', '/plan/:number{[0-9]+}/accept', '/plan/99/accept', office(404)],
  ['GET', '/plan/hours', '/plan/hours', office(200)],
  ['GET', '/plan/give', '/plan/give?visit=none&fence=PR-01', office(400)],
  ['POST', '/plan/give', '/plan/give', office(400)],
  ['POST', '/plan/leave', '/plan/leave', office(400)],
  ['GET', '/visits', '/visits', office(200)],
  ['GET', '/visits/:id', '/visits/none', office(404)],
  ['POST', '/visits/:id/confirm', '/visits/none/confirm', office(404)],
  ['POST', '/visits/:id/miss', '/visits/none/miss', office(404)],
  ['POST', '/visits/:id/cancel', '/visits/none/cancel', office(404)],
  ['POST', '/visits/:id/done', '/visits/none/done', office(404)],
  ['GET', '/sheets/:crew', '/sheets/none', office(404)],
  ['GET', '/materials', '/materials', office(200)],
  ['GET', '/feeds', '/feeds', office(200)],
  ['POST', '/feeds', '/feeds', office(400)],
  ['POST', '/feeds/:id{[0-9]+}/revoke', '/feeds/99/revoke', office(404)],
  ['GET', '/today', '/today', crews(200)],
  ['GET', '/today/session.json', '/today/session.json', { ...crews(200), nobody: '401', owner: '401' }],
  ['GET', '/today/photos/:id{[0-9]+}', '/today/photos/9', crews(404)],
  ['GET', '/crew-worker.js', '/crew-worker.js', all(200)],
  ['GET', '/crew-script/:version/:name', PHONE_SCRIPT_PATH, all(200)],
  // the sample has no visit of that name
  ['GET', '/today/visits/:uid', '/today/visits/none', crews(404)],
  ['POST', '/today/visits/:uid/done', '/today/visits/none/done', crews(404)],
  ['GET', '/today/visits/:uid/fences/:ref', '/today/visits/none/fences/PR-01', crews(404)],
  [
    'POST',
    '/today/visits/:uid/fences/:ref/posts/:post/reading',
    '/today/visits/none/fences/PR-01/posts/1/reading',
    crews(404),
  ],
  [
    'POST',
    '/today/visits/:uid/fences/:ref/posts/:post/closed-off',
    '/today/visits/none/fences/PR-01/posts/1/closed-off',
    crews(404),
  ],
  [
    'POST',
    '/today/visits/:uid/fences/:ref/posts/:post/taken-back',
    '/today/visits/none/fences/PR-01/posts/1/taken-back',
    crews(404),
  ],
  ['POST', '/today/visits/:uid/fences/:ref/photos', '/today/visits/none/fences/PR-01/photos', crews(400)],

  ['GET', '/outbox', '/outbox', office(200)],
  ['GET', '/outbox/:id{[0-9]+}/letter', '/outbox/{letter}/letter', office(200)],
  ['GET', '/outbox/:id{[0-9]+}/letter.pdf', '/outbox/{letter}/letter.pdf', office(200)],
  ['GET', '/mail', '/mail', office(200)],
  ['GET', '/mail/:id', '{mail}', office(200)],
  ['GET', '/mail/:id/html', '{mail}/html', office(200)],
  ['GET', '/mail/:id/raw', '{mail}/raw', office(200)],
  ['GET', '/mail/:id/files/:index{[0-9]+}', '{mail}/files/0', office(200)],

  ['GET', '/answers', '/answers', office(200)],
  ['POST', '/answers/:id{[0-9]+}/called', '/answers/1/called', office(303)],

  ['GET', '/records', '/records', office(200)],
  ['POST', '/records/sweep', '/records/sweep', office(303)],
  ['GET', '/import', '/import', office(200)],
  ['POST', '/import', '/import', office(400)],
  ['GET', '/import/:id', '/import/none', office(404)],
  ['POST', '/import/:id', '/import/none', office(404)],
  ['GET', '/import/:id/refused/:index{[0-9]+}', '/import/none/refused/0', office(404)],
  ['GET', '/export/:file{[a-z-]+\\.csv}', '/export/owners.csv', office(200)],
  ['GET', '/export/columns/:file{[a-z-]+\\.csv}', '/export/columns/owners.csv', office(200)],
  ['GET', '/owners', '/owners', office(200)],
  ['GET', '/owners/:ref', '/owners/HOA', office(200)],
  ['POST', '/owners/:ref/links', '/owners/HOA/links', office(400)],
  ['POST', '/owners/:ref/links/:id{[0-9]+}/revoke', '/owners/HOA/links/999/revoke', office(404)],
  ['GET', '/sites', '/sites', office(200)],
  ['GET', '/sites/:ref', '/sites/PELICAN', office(200)],
  ['GET', '/catalogue', '/catalogue', office(200)],
  ['GET', '/seasons', '/seasons', office(200)],
  ['GET', '/climate-zones', '/climate-zones', office(200)],
  ['GET', '/crews', '/crews', office(200)],
  ['GET', '/records/:kind/new', '/records/owners/new', office(200)],
  ['POST', '/records/:kind/new', '/records/owners/new', office(400)],
  ['GET', '/records/:kind/:name', '/records/fences/PR-01', office(200)],
  ['GET', '/records/:kind/:name/edit', '/records/fences/PR-01/edit', office(200)],
  ['POST', '/records/:kind/:name/edit', '/records/fences/PR-01/edit', office(400)],
  ['GET', '/notices', '/notices', office(200)],
  ['POST', '/notices/release', '/notices/release', office(400)],
  ['POST', '/notices/hold-again', '/notices/hold-again', office(303)],
  ['POST', '/notices/settle', '/notices/settle', office(400)],
  ['POST', '/notices/matters', '/notices/matters', office(303)],
  ['GET', '/notices/preview', '/notices/preview?owner=HOA', office(200)],
  ['GET', '/notices/message', '/notices/message?owner=HOA', office(404)],
  ['POST', '/outbox/retry', '/outbox/retry', office(303)],
  ['GET', '/outbox/:id{[0-9]+}', '/outbox/{letter}', office(200)],
  ['POST', '/outbox/:id{[0-9]+}', '/outbox/{letter}', office(409)],
  ['GET', '/outbox/:id{[0-9]+}/message', '/outbox/{letter}/message', office(404)],
  ['GET', '/fences/:ref/inspect', '/fences/PR-01/inspect', office(200)],
  ['POST', '/fences/:ref/inspect', '/fences/PR-01/inspect', office(400)],
  ['GET', '/fences/:ref/works', '/fences/PR-01/works', office(303)],
  ['GET', '/fences/:ref/edit', '/fences/PR-01/edit', office(303)],
  ['GET', '/fences/:ref/evidence', '/fences/PR-01/evidence', office(200)],
  ['POST', '/fences/:ref/withdraw', '/fences/PR-01/withdraw', office(400)],
  ['GET', '/storms', '/storms?site=PELICAN', office(200)],
  ['POST', '/storms', '/storms?site=PELICAN', office(400)],
  ['GET', '/settings', '/settings', office(200)],
  ['POST', '/settings', '/settings', office(400)],
  ['GET', '/learned', '/learned', office(200)],
  ['GET', '/learned/preview', '/learned/preview', office(409)],
  ['POST', '/learned', '/learned', office(409)],
  ['GET', '/owner/:token', '/owner/{link}', byAddress(200)],
  ['GET', '/owner/:token', `/owner/${FORGED}`, byAddress('unknown')],
  ['GET', '/owner/:token/fences/:ref', '/owner/{link}/fences/PR-04', byAddress(200)],
  ['GET', '/owner/:token/fences/:ref', '/owner/{link}/fences/PR-01', byAddress(404)],
  ['GET', '/owner/:token/fences/:ref', `/owner/${FORGED}/fences/PR-04`, byAddress('unknown')],

  ['GET', '/api/v1/openapi.json', '/api/v1/openapi.json', all(200)],
  ['GET', '/api/v1/fences', '/api/v1/fences', programs('read-fences', 200)],
  ['GET', '/api/v1/fences/:ref', '/api/v1/fences/PR-01', programs('read-fences', 200)],
  ['GET', '/api/v1/fences/:ref/reasons', '/api/v1/fences/PR-01/reasons', programs('read-fences', 200)],
  ['GET', '/api/v1/records/:kind', '/api/v1/records/owners', programs('read-register', 200)],
  ['PUT', '/api/v1/records/:kind', '/api/v1/records/owners', programs('write-register', 422)],
  ['GET', '/api/v1/visits', '/api/v1/visits', programs('read-register', 200)],
  ['GET', '/api/v1/visits/:uid', '/api/v1/visits/none', programs('read-register', 404)],
  ['POST', '/api/v1/visits/:uid/confirm', '/api/v1/visits/none/confirm', programs('change-visits', 422)],
  ['POST', '/api/v1/visits/:uid/miss', '/api/v1/visits/none/miss', programs('change-visits', 422)],
  ['POST', '/api/v1/visits/:uid/cancel', '/api/v1/visits/none/cancel', programs('change-visits', 422)],
  ['POST', '/api/v1/visits/:uid/done', '/api/v1/visits/none/done', programs('change-visits', 422)],
  ['GET', '/api/v1/plans', '/api/v1/plans', programs('read-register', 200)],
  ['GET', '/api/v1/plans/:number', '/api/v1/plans/1', programs('read-register', 404)],
  ['POST', '/api/v1/plans/:number/accept', '/api/v1/plans/1/accept', programs('change-visits', 404)],
  ['GET', '/api/v1/notices/held', '/api/v1/notices/held', programs('read-register', 200)],
  ['POST', '/api/v1/notices/release', '/api/v1/notices/release', programs('release-notices', 422)],
  ['GET', '/api/v1/notices/office', '/api/v1/notices/office', programs('read-register', 200)],
  ['POST', '/api/v1/notices/office/:id/settle', '/api/v1/notices/office/999/settle', programs('release-notices', 404)],
  ['GET', '/api/v1/outbox', '/api/v1/outbox', programs('read-register', 200)],
  ['GET', '/api/v1/settings', '/api/v1/settings', programs('read-register', 200)],
  ['PATCH', '/api/v1/settings', '/api/v1/settings', programs('write-register', 200)],
  ['GET', '/api/v1/sweep', '/api/v1/sweep', programs('read-register', 200)],
  ['POST', '/api/v1/inspections/withdraw', '/api/v1/inspections/withdraw', programs('write-register', 422)],
  ['GET', '/owner/:token/money', '/owner/{link}/money', byAddress(200)],
  ['GET', '/owner/:token/documents', '/owner/{link}/documents', byAddress(200)],
  ['POST', '/owner/:token/read', '/owner/{link}/read', byForm(303)],
  ['POST', '/owner/:token/read', `/owner/${FORGED}/read`, byAddress('unknown')],
  ['GET', '/owner/:token/visits', '/owner/{link}/visits', byAddress(200)],
  ['POST', '/owner/:token/visits/:uid', '/owner/{link}/visits/V-none', byForm(404)],
  ['GET', '/owner/:token/quotes', '/owner/{link}/quotes', byAddress(200)],
  ['GET', '/owner/:token/quotes/:number', '/owner/{link}/quotes/Q-none', byAddress(404)],
  ['POST', '/owner/:token/quotes/:number', '/owner/{link}/quotes/Q-none', byForm(404)],
  ['GET', '/owner/:token/call', '/owner/{link}/call', byAddress(200)],
  ['POST', '/owner/:token/call', '/owner/{link}/call', byForm(303)],
  ['GET', '/owner/:token/preferences', '/owner/{link}/preferences', byAddress(200)],
  ['POST', '/owner/:token/preferences', '/owner/{link}/preferences', byForm(303)],
  ['GET', '/owner/:token/danger', '/owner/{link}/danger', byAddress(200)],
  ['POST', '/owner/:token/danger', '/owner/{link}/danger', byForm(400)],
  ['GET', '/owner/:token/unsubscribe', '/owner/{link}/unsubscribe', byAddress(200)],
  // it says more than the one thing that stops the list
  ['POST', '/owner/:token/unsubscribe', '/owner/{link}/unsubscribe', byForm(400)],
  ['POST', '/owner/:token/unsubscribe', `/owner/${FORGED}/unsubscribe`, byAddress('unknown')],
];
