import type { Kysely } from 'kysely';
import type { Register } from './database.ts';
import type { RegisterTables } from './tables.ts';

/** Who holds the right to sweep, and until when. Times are ISO text in UTC. */
export interface SweepClaim {
  readonly token: string;
  readonly pid: number;
  /** When that process was started, as its system tells it; null where the system does not. */
  readonly processStart: string | null;
  readonly expiresAt: string;
}

/** Thrown where another sweep has taken over; nothing of the chunk at hand was written. */
export class SweepClaimLost extends Error {
  constructor() {
    super('another sweep has taken over this register; this one stopped without writing its last chunk');
    this.name = 'SweepClaimLost';
  }
}

/** The claim as it stands, or null where nobody sweeps. */
export async function currentSweepClaim(register: Register): Promise<SweepClaim | null> {
  const row = await register.db.selectFrom('sweep_claim').selectAll().executeTakeFirst();
  return row ? { token: row.token, pid: row.pid, processStart: row.process_start, expiresAt: row.expires_at } : null;
}

/**
 * Takes the right to sweep. Returns null where it was taken, else the claim that stands in the way.
 * @param wanted the claim to write
 * @param at now, ISO text in UTC: a claim that expired before is taken over
 * @param deadToken token of a claim whose process is known to be gone, taken over as well
 */
export async function takeSweepClaim(
  register: Register,
  wanted: SweepClaim,
  at: string,
  deadToken: string | null,
): Promise<SweepClaim | null> {
  const values = {
    token: wanted.token,
    pid: wanted.pid,
    process_start: wanted.processStart,
    expires_at: wanted.expiresAt,
  };
  const result = await register.db
    .insertInto('sweep_claim')
    .values({ id: 1, ...values })
    .onConflict((conflict) =>
      conflict
        .column('id')
        .doUpdateSet(values)
        .where((eb) =>
          eb.or([eb('sweep_claim.expires_at', '<=', at), eb('sweep_claim.token', '=', deadToken ?? wanted.token)]),
        ),
    )
    .executeTakeFirst();
  return result.numInsertedOrUpdatedRows === 0n ? await currentSweepClaim(register) : null;
}

/**
 * Renews the claim inside a transaction; as the transaction's first statement it also takes the write lock.
 * Throws `SweepClaimLost` where the claim is no longer held.
 */
export async function renewSweepClaim(db: Kysely<RegisterTables>, claim: SweepClaim): Promise<void> {
  const result = await db
    .updateTable('sweep_claim')
    .set({ expires_at: claim.expiresAt })
    .where('token', '=', claim.token)
    .executeTakeFirst();
  if (result.numUpdatedRows !== 1n) throw new SweepClaimLost();
}

/** Gives the claim back, where it is still held. */
export async function releaseSweepClaim(register: Register, token: string): Promise<void> {
  await register.db.deleteFrom('sweep_claim').where('token', '=', token).execute();
}
