import { STYLESHEET_PATH } from '../../../src/web/frame/stylesheet.ts';
import type { VisitorName } from './access-visitors.ts';

/**
 * What a visitor gets: a status where the route answers; `sign in` where they are led there; `refused` where their role or
 * token is not enough; `unknown` where the address opens nothing; `401` where a program is told to show a token.
 */
export type Expected = number | 'sign in' | 'refused' | 'unknown' | '401';

type Row = readonly [
  method: 'GET' | 'POST',
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
} as const;

const all = (status: Expected): Row[3] => ({
  nobody: status,
  office: status,
  crew: status,
  board: status,
  owner: status,
  'read-fences': status,
  'read-metrics': status,
});
const office = (status: number): Row[3] => ({ ...TURNED_AWAY, office: status, crew: 'refused', board: 'refused' });
const accounts = (status: number): Row[3] => ({ ...TURNED_AWAY, office: status, crew: status, board: status });
const fences = { ...accounts(200), 'read-fences': 200 } as const;
/** The address is the secret: whoever has it is let in, whoever else they are; a program's token is for other routes. */
const byAddress = (status: Expected): Row[3] => ({
  ...all(status),
  'read-fences': 'refused',
  'read-metrics': 'refused',
});
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
  ['GET', '/fences', '/fences', accounts(200)],
  ['GET', '/fences.csv', '/fences.csv', accounts(200)],
  ['GET', '/fences/:name', '/fences/PR-01', fences],
  ['GET', '/fences/:name', '/fences/PR-01.json', { ...fences, nobody: '401', owner: '401' }],
  ['GET', '/fences/:ref/what-if', '/fences/PR-01/what-if', accounts(200)],
  ['GET', '/fences/:ref/reasons', '/fences/PR-01/reasons', fences],

  ['GET', '/outbox', '/outbox', office(200)],
  ['GET', '/outbox/:id{[0-9]+}/letter', '/outbox/{letter}/letter', office(200)],
  ['GET', '/mail', '/mail', office(200)],
  ['GET', '/mail/:id', '{mail}', office(200)],
  ['GET', '/mail/:id/html', '{mail}/html', office(200)],
  ['GET', '/mail/:id/raw', '{mail}/raw', office(200)],
  ['GET', '/mail/:id/files/:index{[0-9]+}', '{mail}/files/0', office(200)],

  ['GET', '/owner/:token', '/owner/{link}', byAddress(200)],
  ['GET', '/owner/:token', `/owner/${FORGED}`, byAddress('unknown')],
  ['GET', '/owner/:token/fences/:ref', '/owner/{link}/fences/PR-04', byAddress(200)],
  ['GET', '/owner/:token/fences/:ref', '/owner/{link}/fences/PR-01', byAddress(404)],
  ['GET', '/owner/:token/fences/:ref', `/owner/${FORGED}/fences/PR-04`, byAddress('unknown')],
];
