import { tokenIn } from '../access/access-visitors.ts';
import type { SampleApp } from '../sample-app.ts';

/** A browser without scripts that keeps the one cookie of the forms, at the pages behind an owner's link. */
export function ownerBrowser({ pages }: Pick<SampleApp, 'pages'>, home: string) {
  let cookie = '';
  const get = async (path: string): Promise<{ readonly status: number; readonly text: string }> => {
    const response = await pages.request(`${home}${path}`, { headers: cookie ? { cookie } : {} });
    const set = response.headers.get('set-cookie')?.split(';')[0];
    if (set) cookie = set;
    return { status: response.status, text: await response.text() };
  };
  /** Sends a form that a page holds, and follows where it leads. */
  const send = async (
    from: string,
    to: string,
    fields: Readonly<Record<string, string | readonly string[]>>,
  ): Promise<{ readonly status: number; readonly location: string | null; readonly text: string }> => {
    const page = await get(from);
    const body = new URLSearchParams({ form_token: tokenIn(page.text) });
    for (const [name, value] of Object.entries(fields)) {
      for (const each of typeof value === 'string' ? [value] : value) body.append(name, each);
    }
    const response = await pages.request(`${home}${to}`, { method: 'POST', body, headers: { cookie } });
    const location = response.headers.get('location');
    if (response.status !== 303 || location === null) {
      return { status: response.status, location, text: await response.text() };
    }
    const next = await pages.request(location.split('#')[0] ?? '', { headers: { cookie } });
    return { status: next.status, location, text: await next.text() };
  };
  return { get, send };
}
