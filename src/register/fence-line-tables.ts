import type { Generated } from 'kysely';

/** One fence as lists filter and order it; the database keeps it beside the records. */
interface FenceLinesTable {
  readonly id: Generated<number>;
  readonly ref: string;
  readonly ref_key: string;
  readonly site_ref: string;
  readonly owner_ref: string;
  readonly second_owner_ref: string | null;
}

/** How many fences of a site have each standing; rank 4: not swept yet. */
interface SiteStandingsTable {
  readonly site_ref: string;
  readonly standing_rank: 0 | 1 | 2 | 3 | 4;
  readonly fences: number;
}

/** The tables that lists of fences are read from, written by the database itself. */
export interface FenceLineTables {
  readonly fence_lines: FenceLinesTable;
  readonly site_standings: SiteStandingsTable;
}
