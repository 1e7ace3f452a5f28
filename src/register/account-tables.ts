import type { Generated } from 'kysely';

/** What somebody with an account may do: everything, the crew's work, or look at some sites. */
export const ACCOUNT_ROLES = ['office', 'crew', 'board'] as const;
export type AccountRole = (typeof ACCOUNT_ROLES)[number];

interface AccountsTable {
  readonly id: Generated<number>;
  readonly name: string;
  readonly display_name: string;
  readonly role: AccountRole;
  readonly crew_ref: string | null;
  readonly language: 'en' | 'es';
  readonly password_hash: string | null;
  readonly demo: 0 | 1;
  readonly created_at: string;
  readonly disabled_at: string | null;
}

interface AccountSitesTable {
  readonly account_id: number;
  readonly site_ref: string;
}

interface SessionsTable {
  readonly token_sha256: string;
  readonly account_id: number;
  readonly created_at: string;
  readonly last_seen_at: string;
  readonly expires_at: string;
}

interface ApiTokensTable {
  readonly id: Generated<number>;
  readonly name: string;
  readonly token_sha256: string;
  readonly scopes: string;
  readonly created_at: string;
  readonly expires_at: string;
  readonly revoked_at: string | null;
}

interface OwnerLinksTable {
  readonly id: Generated<number>;
  readonly owner_ref: string;
  readonly scopes: string;
  readonly created_at: string;
  readonly expires_at: string;
  readonly revoked_at: string | null;
}

interface LinkKeyTable {
  readonly id: 1;
  readonly key: Uint8Array;
  readonly created_at: string;
}

interface SignInFailuresTable {
  readonly kind: 'account' | 'address';
  readonly key: string;
  readonly count: number;
  readonly last_at: string;
  readonly wait_until: string;
}

/** Tables of who may use the pages. */
export interface AccountTables {
  readonly accounts: AccountsTable;
  readonly account_sites: AccountSitesTable;
  readonly sessions: SessionsTable;
  readonly api_tokens: ApiTokensTable;
  readonly owner_links: OwnerLinksTable;
  readonly link_key: LinkKeyTable;
  readonly sign_in_failures: SignInFailuresTable;
}
