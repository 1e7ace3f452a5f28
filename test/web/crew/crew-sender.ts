import { FORM_TOKEN } from '../../../src/web/access/form-token.ts';
import { tokenIn } from '../access/access-visitors.ts';
import type { SampleApp } from '../sample-app.ts';

/** Sends entries of somebody signed in, as the page's script or as a plain form does. */
export async function crewSender({ pages }: Pick<SampleApp, 'pages'>, cookie: string) {
  const token = tokenIn(await (await pages.request('/account', { headers: { cookie } })).text());
  const send = async (
    path: string,
    fields: Readonly<Record<string, string | Blob>>,
    options: { readonly byScript?: boolean; readonly token?: string } = {},
  ): Promise<Response> => {
    const body = new FormData();
    body.append(FORM_TOKEN, options.token ?? token);
    for (const [name, value] of Object.entries(fields)) body.append(name, value);
    const accept = options.byScript === false ? 'text/html' : 'application/json';
    return pages.request(path, { method: 'POST', body, headers: { cookie, accept } });
  };
  const get = async (path: string): Promise<string> => (await pages.request(path, { headers: { cookie } })).text();
  return { send, get, token };
}

/** A picture of one black dot, as PNG. */
export const DOT_PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==',
  'base64',
);
