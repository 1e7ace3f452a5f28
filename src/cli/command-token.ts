import { type ApiToken, listApiTokens, revokeApiToken } from '../register/api-token-store.ts';
import { type ApiScope, newApiToken } from '../service/api-tokens.ts';
import { isoUtc } from '../service/clock.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';

/** Options of the `token` commands. */
export interface TokenOptions extends GlobalOptions {
  readonly json?: boolean;
}

/** Makes a token for a program, and shows it this once. */
export async function runTokenNew(
  context: CliContext,
  name: string,
  options: TokenOptions & { readonly scope: readonly ApiScope[]; readonly days: number },
): Promise<void> {
  const wanted = { name, scopes: options.scope, days: options.days };
  const { token, text } = await withExistingRegister(configOf(context, options), ({ db }) =>
    newApiToken(db, wanted, context.clock),
  );
  const { terminal } = context;
  if (options.json) {
    terminal.out(jsonText({ ...token, text }));
    return;
  }
  terminal.out(`${text}\n`);
  terminal.err(
    [
      `Token ${token.id}, ${token.scopes.join(' ')}, until ${token.expiresAt.slice(0, 10)}. Send it as: Authorization: Bearer TOKEN`,
      'It is shown this once: the register keeps only its digest.',
      `To end it: stormpale token revoke ${token.id}`,
      '',
    ].join('\n'),
  );
}

/** Where something that answers for a time stands. */
export function answeringState(
  { expiresAt, revokedAt }: Pick<ApiToken, 'expiresAt' | 'revokedAt'>,
  now: string,
): string {
  if (revokedAt !== null) return `revoked ${revokedAt.slice(0, 10)}`;
  return expiresAt > now ? `until ${expiresAt.slice(0, 10)}` : `over ${expiresAt.slice(0, 10)}`;
}

/** Lists the tokens that were made, without their secrets. */
export async function runTokenList(context: CliContext, options: TokenOptions): Promise<void> {
  const tokens = await withExistingRegister(configOf(context, options), ({ db }) => listApiTokens(db));
  const { terminal } = context;
  const now = isoUtc(context.clock());
  if (options.json) terminal.out(jsonText(tokens));
  else if (tokens.length === 0) terminal.out('No tokens were made. "stormpale token new NAME --scope …" makes one.\n');
  else {
    const rows = tokens.map((token) => [
      String(token.id),
      token.name,
      token.scopes.join(' '),
      token.createdAt.slice(0, 10),
      answeringState(token, now),
    ]);
    terminal.out(plainTable(['Token', 'Name', 'Allowed', 'Made', 'State'], rows, [0]));
  }
}

/** Ends a token for good. */
export async function runTokenRevoke(context: CliContext, id: number, options: TokenOptions): Promise<void> {
  const now = isoUtc(context.clock());
  const token = await withExistingRegister(configOf(context, options), ({ db }) => revokeApiToken(db, id, now));
  if (!token) throw new CliError(EXIT.notFound, `no token ${id}`, '"stormpale token list" shows those there are');
  if (options.json) context.terminal.out(jsonText(token));
  else context.terminal.out(`Token ${id} (${token.name}) is revoked and never answers again.\n`);
}
