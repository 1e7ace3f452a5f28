import { type ApiToken, addApiToken, answeringApiToken } from '../register/api-token-store.ts';
import type { RegisterDb } from '../register/record-store.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import { storedSecret } from './feed-links.ts';
import { newSecret } from './secret-token.ts';

/** What a program's token can be allowed. */
export const API_SCOPES = [
  'read-fences',
  'read-metrics',
  'read-register',
  'write-register',
  'change-visits',
  'release-notices',
] as const;
export type ApiScope = (typeof API_SCOPES)[number];

/** What a token begins with, so that one in the wrong place is recognised. */
const PREFIX = 'stormpale_';

/** Makes a token for a program. The register keeps a digest of it only; the text is shown this once. */
export async function newApiToken(
  db: RegisterDb,
  wanted: { readonly name: string; readonly scopes: readonly ApiScope[]; readonly days: number },
  clock: Clock,
): Promise<{ readonly token: ApiToken; readonly text: string }> {
  const now = clock();
  const secret = newSecret();
  const scopes = API_SCOPES.filter((scope) => wanted.scopes.includes(scope));
  const times = { createdAt: isoUtc(now), expiresAt: isoUtc(now.plus({ days: wanted.days })) };
  const token = await addApiToken(db, { name: wanted.name, scopes, ...times }, storedSecret(secret) ?? '');
  return { token, text: `${PREFIX}${secret}` };
}

/** The token that a program shows; null where it does not answer. */
export async function apiTokenShown(db: RegisterDb, text: string, clock: Clock): Promise<ApiToken | null> {
  const digest = text.startsWith(PREFIX) ? storedSecret(text.slice(PREFIX.length)) : null;
  return digest === null ? null : answeringApiToken(db, digest, isoUtc(clock()));
}
