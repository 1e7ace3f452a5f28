import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { Register } from './database.ts';

/** A standing that a sweep found changed. Speeds [m/s]; times are ISO text in UTC. */
export interface StandingTurn {
  readonly at: string;
  /** The posts it is judged by, or the ends judged apart. */
  readonly posts: 'judged' | 'ends';
  /** Null where no end was judged apart. */
  readonly before: FenceStanding | null;
  readonly after: FenceStanding | null;
  readonly snapMps: number;
  readonly designGustMps: number;
}

/** What became of the standing of a fence, oldest first, as far as the register noted it. */
export async function listStandingTurns({ db }: Register, fenceRef: string): Promise<readonly StandingTurn[]> {
  const rows = await db
    .selectFrom('standing_changes')
    .select(['at', 'standing_before', 'standing_after', 'ends_before', 'ends_after', 'snap_mps', 'design_gust_mps'])
    .where('fence_ref', '=', fenceRef)
    .orderBy('id')
    .execute();
  return rows.flatMap((row): readonly StandingTurn[] => {
    const speeds = { at: row.at, snapMps: row.snap_mps, designGustMps: row.design_gust_mps };
    const judged = { ...speeds, posts: 'judged', before: row.standing_before, after: row.standing_after } as const;
    const ends = { ...speeds, posts: 'ends', before: row.ends_before, after: row.ends_after } as const;
    return [judged, ends].filter(({ before, after }) => before !== after);
  });
}
