import type { Account } from '../../register/account-store.ts';
import type { AppParts } from '../../service/service.ts';
import { startSession } from '../../service/sessions.ts';
import { readCookie, writeCookie } from '../access/cookies.ts';
import type { PageContext } from '../access/visitor.ts';

/** Signs the browser in with a new session; the one that it had, and what its forms were tied to before, are over. */
export async function signInBrowser(
  context: PageContext,
  { register, clock }: Pick<AppParts, 'register' | 'clock'>,
  account: Account,
): Promise<void> {
  const before = readCookie(context, 'session');
  const { token, longestSeconds } = await startSession(register, account, before, clock);
  writeCookie(context, 'session', token, longestSeconds);
  writeCookie(context, 'form', '', 0);
}
