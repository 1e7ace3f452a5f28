import type { Register } from './database.ts';
import { loadFenceEvidence } from './evidence-store.ts';
import { type RegisterDb, readRecord } from './record-store.ts';
import type { StormOutcomeRecord } from './storm-outcome-record.ts';

/** Why evidence is taken back, by whom (empty where nobody is named) and when (ISO 8601, UTC). */
export interface WithdrawalAct {
  readonly because: string;
  readonly by: string;
  readonly at: string;
}

/** Evidence that was taken back, with what it said. */
export interface Withdrawal extends WithdrawalAct {
  readonly kind: 'inspection' | 'outcome';
  readonly ref: string;
  readonly fenceRef: string;
  /** The record as it was; of an inspection with its `readings`. */
  readonly record: Readonly<Record<string, unknown>>;
}

const keep = (db: RegisterDb, withdrawal: Withdrawal) => {
  const { fenceRef, record, ...rest } = withdrawal;
  return db
    .insertInto('withdrawals')
    .values({ ...rest, fence_ref: fenceRef, record: JSON.stringify(record) })
    .execute();
};

/**
 * Takes an inspection with its readings out of what forecasts rest on, in one transaction; what it said stays among the
 * withdrawals. Null where there is no inspection of that ref.
 */
export function withdrawInspection(register: Register, ref: string, act: WithdrawalAct): Promise<Withdrawal | null> {
  return register.db.transaction().execute(async (tx) => {
    const inspection = await readRecord(tx, 'inspections', ref);
    if (!inspection) return null;
    const { fenceRef } = inspection;
    const evidence = (await loadFenceEvidence(tx, [fenceRef])).get(fenceRef);
    const readings = evidence?.inspections.find(({ record }) => record.ref === ref)?.readings ?? [];
    const withdrawal: Withdrawal = { kind: 'inspection', ref, fenceRef, record: { ...inspection, readings }, ...act };
    await keep(tx, withdrawal);
    await tx.deleteFrom('readings').where('inspection_ref', '=', ref).execute();
    await tx.deleteFrom('inspections').where('ref', '=', ref).execute();
    return withdrawal;
  });
}

/** Takes storm outcomes out of what forecasts rest on, all in one transaction; what they said stays among the withdrawals. */
export function withdrawOutcomes(
  register: Register,
  outcomes: readonly StormOutcomeRecord[],
  act: WithdrawalAct,
): Promise<readonly Withdrawal[]> {
  return register.db.transaction().execute(async (tx) => {
    const withdrawals: Withdrawal[] = [];
    for (const { ref } of outcomes) {
      const record = await readRecord(tx, 'outcomes', ref);
      if (!record) throw new Error(`storm outcome ${ref} is no longer in the register; nothing was withdrawn`);
      const withdrawal: Withdrawal = { kind: 'outcome', ref, fenceRef: record.fenceRef, record, ...act };
      await keep(tx, withdrawal);
      await tx.deleteFrom('storm_outcomes').where('ref', '=', ref).execute();
      withdrawals.push(withdrawal);
    }
    return withdrawals;
  });
}

/** What was withdrawn of a fence, oldest first. */
export async function listWithdrawals(
  db: RegisterDb,
  fenceRef: string,
  kind: Withdrawal['kind'],
): Promise<readonly Withdrawal[]> {
  const rows = await db
    .selectFrom('withdrawals')
    .selectAll()
    .where('fence_ref', '=', fenceRef)
    .where('kind', '=', kind)
    .orderBy('id')
    .execute();
  return rows.map((row) => ({
    kind: row.kind,
    ref: row.ref,
    fenceRef: row.fence_ref,
    record: JSON.parse(row.record) as Withdrawal['record'],
    because: row.because,
    by: row.by,
    at: row.at,
  }));
}
