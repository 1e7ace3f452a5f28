import type { Generated } from 'kysely';
import type { FenceStanding } from '../forecast/fence-forecast.ts';

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

interface StandingChangesTable {
  readonly id: Generated<number>;
  readonly fence_ref: string;
  readonly at: string;
  readonly posts: 'judged' | 'ends';
  readonly before: FenceStanding | null;
  readonly after: FenceStanding | null;
  readonly snap_mps: number;
  readonly design_gust_mps: number;
}

/** The tables that lists of fences are read from, and what became of standings; written by the database itself. */
export interface FenceLineTables {
  readonly fence_lines: FenceLinesTable;
  readonly site_standings: SiteStandingsTable;
  readonly standing_changes: StandingChangesTable;
}
