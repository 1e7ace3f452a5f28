import { FORM_TOKEN } from '../../../src/web/access/form-token.ts';
import { tokenIn } from '../access/access-visitors.ts';
import type { SampleApp } from '../sample-app.ts';

/** What a form sends: a text, several of them, or files. */
type Sent = Readonly<Record<string, string | readonly string[] | readonly File[]>>;

/** The office at its forms: opens a page, fills in what is named and sends it with the token of the page. */
export function officeForms(sample: Pick<SampleApp, 'pages' | 'cookie'>) {
  const headers = { cookie: sample.cookie ?? '' };
  const get = async (path: string): Promise<Response> => sample.pages.request(path, { headers });
  const text = async (path: string): Promise<string> => (await get(path)).text();
  const send = async (page: string, path: string, fields: Sent): Promise<Response> => {
    const body = new FormData();
    body.append(FORM_TOKEN, tokenIn(await text(page)));
    for (const [name, value] of Object.entries(fields)) {
      for (const each of Array.isArray(value) ? (value as readonly (string | File)[]) : [value as string]) {
        body.append(name, each);
      }
    }
    return sample.pages.request(path, { method: 'POST', body, headers });
  };
  /** Sends a form and follows where it leads. */
  const sendAndFollow = async (page: string, path: string, fields: Sent): Promise<string> => {
    const response = await send(page, path, fields);
    const location = response.headers.get('location');
    if (response.status !== 303 || location === null) throw new Error(`${response.status}: ${await response.text()}`);
    return text(location);
  };
  return { get, text, send, sendAndFollow };
}

/** The value of a hidden field of a page. */
export function hiddenIn(html: string, name: string): string {
  const value = new RegExp(`name="${name}" value="([^"]*)"`).exec(html)?.[1];
  if (value === undefined) throw new Error(`no field ${name} on the page`);
  return value;
}

/** The page's words, without its marks. */
export const wordsOf = (html: string): string =>
  html
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/&#39;/g, "'")
    .replaceAll(/&quot;/g, '"')
    .replaceAll(/&gt;/g, '>')
    .replaceAll(/&lt;/g, '<')
    .replaceAll(/&amp;/g, '&')
    .replaceAll(/\s+/g, ' ');
