import type { Generated } from 'kysely';

/** One fence as lists filter and order it; the database keeps it beside the records. */
interface FenceLinesTable {
  readonly id: Generated<number>;
  readonly ref: string;
  readonly ref_key: string;
  readonly site_ref: string;
  readonly owner_ref: string;
  readonly second_owner_ref: string | null;
  /** 0 for the worst standing, 3 for the best; null until the fence is swept. */
  readonly standing_rank: number | null;
  readonly ends_rank: number | null;
  /** The worse of both. */
  readonly stands_rank: Generated<number | null>;
}

/** How many fences of a site have each standing of line posts and ends; rank 4: not swept yet, or none of their own. */
interface SiteStandingsTable {
  readonly site_ref: string;
  readonly standing_rank: 0 | 1 | 2 | 3 | 4;
  readonly ends_rank: 0 | 1 | 2 | 3 | 4;
  readonly fences: number;
}

/** The tables that lists of fences are read from, written by the database itself. */
export interface FenceLineTables {
  readonly fence_lines: FenceLinesTable;
  readonly site_standings: SiteStandingsTable;
}
