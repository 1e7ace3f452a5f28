import type { PageContext } from '../access/visitor.ts';

/** Whom the register names for what a program did: its token. */
export function tokenName(context: PageContext): string {
  const visitor = context.get('visitor');
  return visitor.kind === 'token' ? `program ${visitor.token.name}` : '';
}
