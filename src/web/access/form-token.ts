import { createHash } from 'node:crypto';
import { isSameSecret, newSecret } from '../../service/secret-token.ts';
import { readCookie, writeCookie } from './cookies.ts';
import type { PageContext } from './visitor.ts';

/** Name of the field in which every form sends its token. */
export const FORM_TOKEN = 'form_token';

/** What the forms of a session are tied to: it follows from the session's secret, which does not follow from it. */
const tokenFrom = (secret: string): string => createHash('sha256').update(`form ${secret}`).digest('base64url');

const formSecret = (context: PageContext): string | null => {
  const visitor = context.get('visitor');
  return visitor.kind === 'account' ? visitor.token : readCookie(context, 'form');
};

/** The token for the forms of a page; before somebody is signed in, a cookie is set to tie them to the browser. */
export function formToken(context: PageContext): string {
  const known = formSecret(context);
  if (known !== null) return tokenFrom(known);
  const secret = newSecret();
  writeCookie(context, 'form', secret, null);
  return tokenFrom(secret);
}

/** True where a form came with the token that was made for this browser's session. */
export function isFormToken(context: PageContext, sent: unknown): boolean {
  const secret = formSecret(context);
  return secret !== null && typeof sent === 'string' && isSameSecret(sent, tokenFrom(secret));
}
