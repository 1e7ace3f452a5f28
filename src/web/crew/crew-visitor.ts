import { randomUUID } from 'node:crypto';
import type { Account } from '../../register/account-store.ts';
import { formToken } from '../access/form-token.ts';
import type { PageContext } from '../access/visitor.ts';
import { frameFor } from '../frame/page-frame.ts';
import type { CrewVisitor } from './crew-frame.tsx';

/** The account that asks; the authorization lets nobody else to the crew's routes. */
export function crewAccount(context: PageContext): Account {
  const visitor = context.get('visitor');
  if (visitor.kind !== 'account') throw new Error('a page of the crew was asked for without an account');
  return visitor.account;
}

/** Who looks at a page of the crew, and what its forms carry. */
export const crewVisitor = (context: PageContext): CrewVisitor => ({
  frame: frameFor(context),
  account: crewAccount(context),
  formToken: formToken(context),
  newEntryId: randomUUID,
});
