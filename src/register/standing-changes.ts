import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { Register } from './database.ts';

/** A standing that a sweep found changed. Speeds [m/s]; times are ISO text in UTC. */
export interface StandingChange {
  readonly at: string;
  /** The posts it is judged by, or the ends judged apart. */
  readonly posts: 'judged' | 'ends';
  /** Null for the first standing. */
  readonly before: FenceStanding | null;
  readonly after: FenceStanding | null;
  readonly snapMps: number;
  readonly designGustMps: number;
}

/** What became of the standing of a fence, oldest first, as far as the register noted it. */
export async function listStandingChanges({ db }: Register, fenceRef: string): Promise<readonly StandingChange[]> {
  return db
    .selectFrom('standing_changes')
    .select(['at', 'posts', 'before', 'after', 'snap_mps as snapMps', 'design_gust_mps as designGustMps'])
    .where('fence_ref', '=', fenceRef)
    .orderBy('id')
    .execute();
}
