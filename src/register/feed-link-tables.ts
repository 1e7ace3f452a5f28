import type { Generated } from 'kysely';

interface FeedLinksTable {
  readonly id: Generated<number>;
  readonly kind: 'crew' | 'site';
  readonly ref: string;
  readonly token_sha256: string;
  readonly created_at: string;
  readonly revoked_at: string | null;
}

/** The table of the secret links to calendar feeds, which holds no secret. */
export interface FeedLinkTables {
  readonly feed_links: FeedLinksTable;
}
