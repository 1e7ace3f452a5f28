import type { AccountRole } from '../../register/account-tables.ts';
import { formToken } from '../access/form-token.ts';
import type { PageContext } from '../access/visitor.ts';
import type { OfficeWays } from './office-ways.ts';

/** What the frame of a page shows of whoever looks at it. */
export interface PageFrame {
  readonly office: OfficeWays;
  /** True where the service catches its own mail and the page of caught mail exists. */
  readonly catchesMail: boolean;
  /** Null where nobody is signed in. */
  readonly account: {
    readonly displayName: string;
    readonly role: AccountRole;
    readonly demo: boolean;
    /** For the form that signs out. */
    readonly formToken: string;
  } | null;
}

/** The frame for whoever asks. */
export function frameFor(context: PageContext): PageFrame {
  const catchesMail = context.get('catchesMail');
  const office = context.get('office');
  const visitor = context.get('visitor');
  if (visitor.kind !== 'account') return { office, catchesMail, account: null };
  const { displayName, role, demo } = visitor.account;
  return { office, catchesMail, account: { displayName, role, demo, formToken: formToken(context) } };
}
