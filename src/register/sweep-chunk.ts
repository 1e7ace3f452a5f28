import type { Kysely } from 'kysely';
import { sql } from 'kysely';
import type { Register } from './database.ts';
import { type Holding, heldBy, holdingNow } from './holding.ts';
import { writeOfficeNotices } from './office-notices.ts';
import { noteStandingChange } from './standing-changes.ts';
import type { SweepClaim } from './sweep-claim.ts';
import { renewSweepClaim } from './sweep-claim.ts';
import type { SweepFailure } from './sweep-store.ts';
import type { SweptFence } from './swept-fence.ts';
import type { RegisterTables } from './tables.ts';

/** One chunk of a sweep: it is written whole or not at all. */
export interface SweepChunk {
  readonly sweepId: number;
  readonly at: string;
  readonly checkpointRef: string;
  readonly fences: readonly SweptFence[];
  readonly failures: readonly SweepFailure[];
  readonly unchanged: number;
}

type Tx = Kysely<RegisterTables>;

async function writeForecast(tx: Tx, chunk: SweepChunk, fence: SweptFence): Promise<void> {
  if (!fence.forecast) return;
  const values = { ...fence.forecast, sweep_id: chunk.sweepId, computed_at: chunk.at };
  await tx
    .insertInto('forecasts')
    .values({ ...values, fence_ref: fence.fenceRef })
    .onConflict((conflict) => conflict.column('fence_ref').doUpdateSet(values))
    .execute();
}

/** Returns how many notices were new: the register keeps one per fence, owner, matter and occasion, void ones aside. */
async function writeNotices(tx: Tx, chunk: SweepChunk, fence: SweptFence, holding: Holding): Promise<number> {
  let written = 0;
  await writeOfficeNotices(tx, chunk, fence);
  for (const { ownerRef, notices } of fence.owners) {
    await tx
      .insertInto('introductions')
      .values({ fence_ref: fence.fenceRef, owner_ref: ownerRef, sweep_id: chunk.sweepId })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
    for (const notice of notices) {
      const result = await tx
        .insertInto('notices')
        .values({
          fence_ref: fence.fenceRef,
          owner_ref: ownerRef,
          matter: notice.matter,
          occasion: notice.occasion,
          facts: notice.facts,
          sweep_id: chunk.sweepId,
          outbox_id: null,
          void_reason: null,
          created_at: chunk.at,
          held: heldBy(holding, ownerRef, { ...notice, fenceRef: fence.fenceRef }),
          released_at: null,
          covering: null,
        })
        .onConflict((conflict) =>
          conflict
            .columns(['fence_ref', 'owner_ref', 'matter', 'occasion'])
            .where('void_reason', 'is', null)
            .doNothing(),
        )
        .executeTakeFirst();
      written += Number(result.numInsertedOrUpdatedRows ?? 0n);
    }
  }
  return written;
}

/** What of a chunk is about fences and owners that nobody deleted while it was computed. */
async function stillInRegister(tx: Tx, chunk: SweepChunk): Promise<Pick<SweepChunk, 'fences' | 'failures'>> {
  const fenceRefs = [...chunk.fences.map((fence) => fence.fenceRef), ...chunk.failures.map((failure) => failure.ref)];
  const ownerRefs = [...new Set(chunk.fences.flatMap((fence) => fence.owners.map((owner) => owner.ownerRef)))];
  const present = async (table: 'fences' | 'owners', refs: readonly string[]): Promise<ReadonlySet<string>> =>
    new Set((await tx.selectFrom(table).select('ref').where('ref', 'in', refs).execute()).map((row) => row.ref));
  const fences = await present('fences', fenceRefs);
  const owners = await present('owners', ownerRefs);
  return {
    fences: chunk.fences
      .filter((fence) => fences.has(fence.fenceRef))
      .map((fence) => ({ ...fence, owners: fence.owners.filter((owner) => owners.has(owner.ownerRef)) })),
    failures: chunk.failures.filter((failure) => fences.has(failure.ref)),
  };
}

/**
 * Writes a chunk in one transaction: forecasts, the notices they cause, failures, counts and the checkpoint. Fences that were deleted
 * meanwhile are left out.
 * Returns the number of notices that were new. Throws `SweepClaimLost` where another sweep has taken over.
 */
export async function writeSweepChunk(register: Register, claim: SweepClaim, chunk: SweepChunk): Promise<number> {
  return register.db.transaction().execute(async (tx) => {
    await renewSweepClaim(tx, claim);
    const { fences, failures } = await stillInRegister(tx, chunk);
    const holding = await holdingNow(tx, fences, chunk.sweepId);
    let notices = 0;
    for (const fence of fences) {
      await noteStandingChange(tx, chunk, fence);
      await writeForecast(tx, chunk, fence);
      notices += await writeNotices(tx, chunk, fence, holding);
    }
    // a fence that needs no telling now is like any other from here on
    const looked = fences.map(({ fenceRef }) => fenceRef);
    await tx.deleteFrom('large_import_fences').where('fence_ref', 'in', looked).execute();
    for (const failure of failures) {
      await tx
        .insertInto('sweep_failures')
        .values({ sweep_id: chunk.sweepId, fence_ref: failure.ref, message: failure.message })
        .execute();
    }
    const computed = fences.filter((fence) => fence.forecast !== null).length;
    await tx
      .updateTable('sweeps')
      .set({
        checkpoint_ref: chunk.checkpointRef,
        computed: sql<number>`computed + ${computed}`,
        unchanged: sql<number>`unchanged + ${chunk.unchanged}`,
        failed: sql<number>`failed + ${failures.length}`,
        notices: sql<number>`notices + ${notices}`,
      })
      .where('id', '=', chunk.sweepId)
      .execute();
    return notices;
  });
}
