import type { Generated } from 'kysely';

interface WithdrawalsTable {
  readonly id: Generated<number>;
  readonly kind: 'inspection' | 'outcome';
  readonly ref: string;
  readonly fence_ref: string;
  readonly record: string;
  readonly because: string;
  readonly by: string;
  readonly at: string;
}

/** The table of evidence that was taken back; rows are written once. */
export interface WithdrawalTables {
  readonly withdrawals: WithdrawalsTable;
}
