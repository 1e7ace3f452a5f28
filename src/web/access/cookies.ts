import { getCookie, setCookie } from 'hono/cookie';
import type { PageContext } from './visitor.ts';

/** `session`: who is signed in. `form`: what forms are tied to before that. */
type CookieName = 'session' | 'form';

const NAMES: Readonly<Record<CookieName, string>> = { session: 'stormpale', form: 'stormpale-form' };

/**
 * The name of a cookie as it travels. The prefix keeps other hosts of the domain from setting one; browsers take it over
 * HTTPS only, so on this machine it is left out.
 */
export const cookieName = (name: CookieName, isLocal: boolean): string =>
  isLocal ? NAMES[name] : `__Host-${NAMES[name]}`;

/** What a cookie holds; null where the browser sent none. */
export const readCookie = (context: PageContext, name: CookieName): string | null =>
  getCookie(context, cookieName(name, context.get('isLocal'))) ?? null;

/**
 * Sets a cookie that no script reads and no other site sends along with a form.
 * @param maxAge how long it is kept [s]; 0 takes it away, null keeps it until the browser is closed
 */
export function writeCookie(context: PageContext, name: CookieName, value: string, maxAge: number | null): void {
  const isLocal = context.get('isLocal');
  setCookie(context, cookieName(name, isLocal), value, {
    path: '/',
    httpOnly: true,
    sameSite: 'Lax',
    secure: !isLocal,
    ...(maxAge === null ? {} : { maxAge }),
  });
}
