import { sql } from 'kysely';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import type { Register } from './database.ts';
import type { RegisterDb } from './record-store.ts';
import type { SweptFence } from './swept-fence.ts';

/** What can be behind a change of standing; `other`: nothing of the fence's own, so settings or learned values. */
export type ChangeCause = 'inspection' | 'storm' | 'works' | 'withdrawal' | 'record' | 'season' | 'model' | 'other';

/** A fence whose standing, or that of its ends, a sweep found to be another than before. */
export interface StandingChange {
  readonly fenceRef: string;
  readonly siteName: string;
  readonly before: FenceStanding;
  readonly after: FenceStanding;
  readonly endsBefore: FenceStanding | null;
  readonly endsAfter: FenceStanding | null;
  /** What changed since the forecast before; at least one. */
  readonly causes: readonly ChangeCause[];
}

interface ForecastBefore {
  readonly standing: FenceStanding;
  readonly endsStanding: FenceStanding | null;
  readonly seasonOne: string;
  readonly modelVersion: string;
  readonly computedAt: string;
}

/** What was entered, changed or taken back about a fence after a moment. */
async function enteredSince(tx: RegisterDb, fenceRef: string, moment: string): Promise<readonly ChangeCause[]> {
  const since = async (table: 'inspections' | 'storm_outcomes' | 'works' | 'posts'): Promise<boolean> =>
    (await tx
      .selectFrom(table)
      .select('updated_at')
      .where('fence_ref', '=', fenceRef)
      .where('updated_at', '>', moment)
      .limit(1)
      .executeTakeFirst()) !== undefined;
  const withdrawn = await tx
    .selectFrom('withdrawals')
    .select('id')
    .where('fence_ref', '=', fenceRef)
    .where('at', '>', moment)
    .limit(1)
    .executeTakeFirst();
  const record = await tx
    .selectFrom('fences')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .select('fences.ref')
    .where('fences.ref', '=', fenceRef)
    .where((eb) => eb.or([eb('fences.updated_at', '>', moment), eb('sites.updated_at', '>', moment)]))
    .executeTakeFirst();
  const found: ChangeCause[] = [];
  if (await since('inspections')) found.push('inspection');
  if (await since('storm_outcomes')) found.push('storm');
  if (await since('works')) found.push('works');
  if (withdrawn) found.push('withdrawal');
  if (record || (await since('posts'))) found.push('record');
  return found;
}

/**
 * Notes that a sweep found another standing than the forecast before, and what changed in between. Works within the
 * sweep's transaction, before the forecast is written; a first forecast is no change.
 */
export async function noteStandingChange(
  tx: RegisterDb,
  chunk: { readonly sweepId: number; readonly at: string },
  { fenceRef, forecast }: Pick<SweptFence, 'fenceRef' | 'forecast'>,
): Promise<void> {
  if (!forecast) return;
  const before: ForecastBefore | undefined = await tx
    .selectFrom('forecasts')
    .select([
      'standing',
      'ends_standing as endsStanding',
      'season_one as seasonOne',
      'model_version as modelVersion',
      'computed_at as computedAt',
    ])
    .where('fence_ref', '=', fenceRef)
    .executeTakeFirst();
  if (!before) return;
  if (before.standing === forecast.standing && before.endsStanding === forecast.ends_standing) return;
  const causes: ChangeCause[] = [...(await enteredSince(tx, fenceRef, before.computedAt))];
  if (before.seasonOne !== forecast.season_one) causes.push('season');
  if (before.modelVersion !== forecast.model_version) causes.push('model');
  await tx
    .insertInto('standing_changes')
    .values({
      fence_ref: fenceRef,
      sweep_id: chunk.sweepId,
      at: chunk.at,
      standing_before: before.standing,
      standing_after: forecast.standing,
      ends_before: before.endsStanding,
      ends_after: forecast.ends_standing,
      snap_mps: forecast.snap_mps,
      design_gust_mps: forecast.design_gust_mps,
      causes: JSON.stringify(causes.length === 0 ? ['other'] : causes),
    })
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}

/** How many fences a sweep found to have changed from one standing to another; the ends alone are `ends only`. */
export interface ChangeCount {
  readonly before: FenceStanding;
  readonly after: FenceStanding;
  readonly fences: number;
}

const rankOf = (column: 'standing_after' | 'standing_before') =>
  sql<number>`case ${sql.ref(column)} when 'short from new' then 0 when 'short' then 1 when 'closing' then 2 else 3 end`;

/** A better standing of a fence that is recorded dangerous and not dealt with: no good news, whatever its sound posts hold. */
const BETTER_BUT_DANGEROUS = sql<boolean>`(${rankOf('standing_after')} > ${rankOf('standing_before')}
  and standing_changes.fence_ref in (select fence_ref from office_notices where settled_at is null and matter = 'dangerous'))`;

/** How many fences recorded dangerous a sweep found to stand better. */
export async function countBetterButDangerous({ db }: Register, sweepId: number): Promise<number> {
  const { fences } = await db
    .selectFrom('standing_changes')
    .select((eb) => eb.fn.countAll<number>().as('fences'))
    .where('sweep_id', '=', sweepId)
    .where(BETTER_BUT_DANGEROUS)
    .executeTakeFirstOrThrow();
  return fences;
}

/** The changes that a sweep found, counted; without fences that stand better and are recorded dangerous. */
export const countStandingChanges = ({ db }: Register, sweepId: number): Promise<readonly ChangeCount[]> =>
  db
    .selectFrom('standing_changes')
    .select((eb) => ['standing_before as before', 'standing_after as after', eb.fn.countAll<number>().as('fences')])
    .where('sweep_id', '=', sweepId)
    .where(sql<boolean>`not ${BETTER_BUT_DANGEROUS}`)
    .groupBy(['standing_before', 'standing_after'])
    .execute();

/** The changes that a sweep found without fences that stand better and are recorded dangerous, those that ended worst first, then by ref; at most so many. */
export async function listStandingChanges(
  { db }: Register,
  sweepId: number,
  most: number,
): Promise<readonly StandingChange[]> {
  const rows = await db
    .selectFrom('standing_changes')
    .innerJoin('fences', 'fences.ref', 'standing_changes.fence_ref')
    .innerJoin('sites', 'sites.ref', 'fences.site_ref')
    .select([
      'standing_changes.fence_ref as fenceRef',
      'sites.name as siteName',
      'standing_before as before',
      'standing_after as after',
      'ends_before as endsBefore',
      'ends_after as endsAfter',
      'causes',
    ])
    .where('sweep_id', '=', sweepId)
    .where(sql<boolean>`not ${BETTER_BUT_DANGEROUS}`)
    .orderBy(rankOf('standing_after'))
    .orderBy(rankOf('standing_before'), 'desc')
    .orderBy('standing_changes.fence_ref')
    .limit(most)
    .execute();
  return rows.map(({ causes, ...row }) => ({ ...row, causes: JSON.parse(causes) as readonly ChangeCause[] }));
}
