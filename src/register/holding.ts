import type { Kysely } from 'kysely';
import type { Register } from './database.ts';
import { readSettings } from './settings-store.ts';
import { finishedBefore } from './sweep-store.ts';
import type { HeldBy } from './sweep-tables.ts';
import type { DecidedNotice, SweptFence } from './swept-fence.ts';
import type { RegisterTables } from './tables.ts';

type FirstHeldBy = Extract<HeldBy, 'first sweep' | 'large import'>;

/** What holds the notices that are written now. */
export interface Holding {
  /** True in a register's first sweep, where the settings hold what it finds. */
  readonly firstSweep: boolean;
  /** Owners whose notices of the first sweep the office has not released: whatever else is for them waits too. */
  readonly waitingOwners: ReadonlySet<string>;
  /** Fences that came with a large import: what they are first told waits. */
  readonly importedFences: ReadonlySet<string>;
  /** Fences that were never forecast before, while first notices of other fences wait; what they are first told waits too. */
  readonly newFences: ReadonlySet<string>;
  /** Why those first notices of other fences wait; null where none do. */
  readonly newFencesHeldBy: FirstHeldBy | null;
  readonly matters: ReadonlySet<string>;
}

/** What holds notices for the owners of these fences, read within the sweep's transaction before it writes their forecasts. */
export async function holdingNow(
  tx: Kysely<RegisterTables>,
  fences: readonly SweptFence[],
  sweepId: number,
): Promise<Holding> {
  const { holdFirstSweep } = await readSettings(tx);
  const refs = [...new Set(fences.flatMap(({ owners }) => owners.map(({ ownerRef }) => ownerRef)))];
  const fenceRefs = fences.map(({ fenceRef }) => fenceRef);
  const newFences = await neverForecast(tx, fenceRefs);
  return {
    ...(await holdingForOwners(tx, refs)),
    firstSweep: holdFirstSweep === 'yes' && !(await finishedBefore({ db: tx }, sweepId)),
    importedFences: await waitingImports(tx, fenceRefs),
    newFences,
    newFencesHeldBy: newFences.size === 0 ? null : await firstNoticesHeldBy(tx, sweepId),
  };
}

/** Those of the fences that no sweep has forecast yet. */
async function neverForecast(tx: Kysely<RegisterTables>, refs: readonly string[]): Promise<ReadonlySet<string>> {
  const known = await tx.selectFrom('forecasts').select('fence_ref').where('fence_ref', 'in', refs).execute();
  const forecast = new Set(known.map((row) => row.fence_ref));
  return new Set(refs.filter((ref) => !forecast.has(ref)));
}

/**
 * Why first notices of earlier sweeps wait for the office; null where none do. Those of the sweep at hand do not count, or what it
 * holds would depend on its chunks.
 */
async function firstNoticesHeldBy(tx: Kysely<RegisterTables>, sweepId: number): Promise<FirstHeldBy | null> {
  const waits = async (why: FirstHeldBy): Promise<boolean> =>
    (await tx
      .selectFrom('notices')
      .select('id')
      .where('held', '=', why)
      .where('released_at', 'is', null)
      .where('outbox_id', 'is', null)
      .where('void_reason', 'is', null)
      .where('sweep_id', '<', sweepId)
      .limit(1)
      .executeTakeFirst()) !== undefined;
  if (await waits('first sweep')) return 'first sweep';
  return (await waits('large import')) ? 'large import' : null;
}

/** Fences that came with a large import and that no sweep has looked at yet, and those whose first notices of then still wait. */
async function waitingImports(tx: Kysely<RegisterTables>, refs: readonly string[]): Promise<ReadonlySet<string>> {
  const anew = await tx.selectFrom('large_import_fences').select('fence_ref').where('fence_ref', 'in', refs).execute();
  const waiting = await tx
    .selectFrom('notices')
    .select('fence_ref')
    .distinct()
    .where('held', '=', 'large import')
    .where('released_at', 'is', null)
    .where('void_reason', 'is', null)
    .where('fence_ref', 'in', refs)
    .execute();
  return new Set([...anew, ...waiting].map((row) => row.fence_ref));
}

/** What holds notices for these owners whatever caused them, read within the transaction that writes them. */
export async function holdingForOwners(tx: Kysely<RegisterTables>, refs: readonly string[]): Promise<Holding> {
  const waiting = await tx
    .selectFrom('notices')
    .select('owner_ref')
    .distinct()
    .where('held', '=', 'first sweep')
    .where('released_at', 'is', null)
    .where('owner_ref', 'in', refs)
    .execute();
  const matters = await tx.selectFrom('held_matters').select('matter').execute();
  return {
    firstSweep: false,
    importedFences: new Set(),
    newFences: new Set(),
    newFencesHeldBy: null,
    waitingOwners: new Set(waiting.map((row) => row.owner_ref)),
    matters: new Set(matters.map((row) => row.matter)),
  };
}

/** Why a notice waits for the office; null where it does not. */
export function heldBy(
  { firstSweep, waitingOwners, importedFences, newFences, newFencesHeldBy, matters }: Holding,
  ownerRef: string,
  notice: Pick<DecidedNotice, 'matter' | 'mayBeHeld'> & { readonly fenceRef?: string },
): HeldBy | null {
  if (firstSweep) return 'first sweep';
  if (!notice.mayBeHeld) return null;
  if (waitingOwners.has(ownerRef)) return 'first sweep';
  if (notice.fenceRef !== undefined && importedFences.has(notice.fenceRef)) return 'large import';
  if (newFencesHeldBy !== null && notice.fenceRef !== undefined && newFences.has(notice.fenceRef))
    return newFencesHeldBy;
  return matters.has(notice.matter) ? 'matter' : null;
}

/** Matters that the office holds, by name. */
export async function listHeldMatters({ db }: Register): Promise<readonly string[]> {
  const rows = await db.selectFrom('held_matters').select('matter').orderBy('matter').execute();
  return rows.map((row) => row.matter);
}

/** Has a matter held from now on, or no longer; what is held by then stays held until it is released. */
export async function holdMatter({ db }: Register, matter: string, hold: boolean, at: string): Promise<void> {
  if (!hold) {
    await db.deleteFrom('held_matters').where('matter', '=', matter).execute();
    return;
  }
  await db
    .insertInto('held_matters')
    .values({ matter, since: at })
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}
