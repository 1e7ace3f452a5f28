import type { PageContext } from './visitor.ts';

/** Name under which what somebody does on a page is kept; empty where no account does it. */
export function actingName(context: PageContext): string {
  const visitor = context.get('visitor');
  return visitor.kind === 'account' ? visitor.account.name : '';
}
