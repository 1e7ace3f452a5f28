import type { SampleApp } from '../sample-app.ts';
import { tokenIn } from './access-visitors.ts';

let address = 0;

/** A browser that keeps its cookies, each at an address of its own. */
export function browser(sample: Pick<SampleApp, 'pages'>) {
  const jar = new Map<string, string>();
  address += 1;
  const env = { incoming: { socket: { remoteAddress: `198.51.100.${address}` } } };
  const keep = (response: Response): Response => {
    for (const cookie of response.headers.getSetCookie()) {
      const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(cookie) ?? [];
      if (/Max-Age=0/.test(cookie)) jar.delete(name);
      else jar.set(name, value);
    }
    return response;
  };
  const cookie = (): string => [...jar].map(([name, value]) => `${name}=${value}`).join('; ');
  const get = async (path: string, headers: Readonly<Record<string, string>> = {}) =>
    keep(await sample.pages.request(path, { headers: { cookie: cookie(), ...headers } }, env));
  const post = async (
    path: string,
    fields: Readonly<Record<string, string>>,
    headers: Readonly<Record<string, string>> = {},
  ) =>
    keep(
      await sample.pages.request(
        path,
        { method: 'POST', body: new URLSearchParams(fields), headers: { cookie: cookie(), ...headers } },
        env,
      ),
    );
  /** Opens a page with a form and sends one with its token. */
  const send = async (
    page: string,
    path: string,
    fields: Readonly<Record<string, string>>,
    headers: Readonly<Record<string, string>> = {},
  ) => {
    const form_token = tokenIn(await (await get(page)).text());
    return post(path, { form_token, ...fields }, headers);
  };
  return { jar, get, post, send };
}
