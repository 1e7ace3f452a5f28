import type { Account } from '../../../src/register/account-store.ts';
import { API_SCOPES, type ApiScope, newApiToken } from '../../../src/service/api-tokens.ts';
import { newOwnerLink, OWNER_SCOPES } from '../../../src/service/owner-links.ts';
import { FORM_TOKEN } from '../../../src/web/access/form-token.ts';
import { cookieOf, storeAccount } from '../accounts/signed-in.ts';
import type { SampleApp } from '../sample-app.ts';
import { SAMPLE_NOW } from '../sample-register.ts';

/** Everybody who may ask. A token is named after what it is allowed. */
export const VISITORS = ['nobody', 'office', 'crew', 'board', 'owner', ...API_SCOPES] as const;
export type VisitorName = (typeof VISITORS)[number];

type Headers = Readonly<Record<string, string>>;

const JSON_BODY = { 'content-type': 'application/json' };

/** Makes everybody who may ask of a sample, and how each of them does. */
export async function everybody(sample: SampleApp) {
  const { register } = sample;
  const account = (role: 'office' | 'crew' | 'board'): Promise<Account> =>
    storeAccount(register, SAMPLE_NOW, {
      name: `${role}-asks`,
      role,
      siteRefs: role === 'board' ? ['PELICAN'] : [],
    });
  const accounts = { office: await account('office'), crew: await account('crew'), board: await account('board') };
  const tokens = new Map<ApiScope, string>();
  for (const scope of API_SCOPES) {
    tokens.set(scope, (await newApiToken(register.db, { name: scope, scopes: [scope], days: 1 }, SAMPLE_NOW)).text);
  }
  const link = await newOwnerLink(
    register.db,
    { ownerRef: 'QUINN', scopes: OWNER_SCOPES, days: 1 },
    { publicUrl: 'http://127.0.0.1', now: SAMPLE_NOW },
  );
  let asked = 0;

  /** What each of them sends along; a session is a new one every time, for signing out ends it. */
  const headersOf = async (who: VisitorName): Promise<Headers> => {
    switch (who) {
      case 'nobody':
        return {};
      case 'office':
      case 'crew':
      case 'board':
        return { cookie: await cookieOf(register, accounts[who], { now: SAMPLE_NOW, isLocal: true }) };
      case 'owner':
        // all that an owner has is the token in the address: in a cookie it must be worth nothing
        return { cookie: `stormpale=${link.token}` };
      case 'read-fences':
      case 'read-metrics':
      case 'read-register':
      case 'write-register':
      case 'change-visits':
      case 'release-notices':
        return { authorization: `Bearer ${tokens.get(who)}` };
    }
  };

  /** Asks, with the token of the visitor's own forms where something is sent; each time from another address. */
  const ask = async (method: 'GET' | 'POST' | 'PUT' | 'PATCH', path: string, who: VisitorName): Promise<Response> => {
    const headers = await headersOf(who);
    asked += 1;
    const env = { incoming: { socket: { remoteAddress: `192.0.2.${asked % 250}` } } };
    if (path.startsWith('/api/') && method !== 'GET') {
      return sample.pages.request(path, { method, body: '{}', headers: { ...headers, ...JSON_BODY } }, env);
    }
    if (method === 'GET') return sample.pages.request(path, { headers }, env);
    const form = await sample.pages.request(headers.cookie ? '/account' : '/sign-in', { headers });
    const shown = form.status === 303 ? await sample.pages.request('/sign-in') : form;
    const cookies = [headers.cookie, shown.headers.get('set-cookie')?.split(';')[0]].filter(Boolean).join('; ');
    const body = new URLSearchParams({ [FORM_TOKEN]: tokenIn(await shown.text()) });
    return sample.pages.request(path, { method, body, headers: { ...headers, cookie: cookies } }, env);
  };
  return { link, headersOf, ask };
}

/** The token of the forms of a page. */
export function tokenIn(html: string): string {
  const token = new RegExp(`name="${FORM_TOKEN}" value="([^"]+)"`).exec(html)?.[1];
  if (!token) throw new Error(`no form on: ${html.slice(0, 300)}`);
  return token;
}
