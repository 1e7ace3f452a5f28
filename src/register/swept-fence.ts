import type { ForecastsTable } from './sweep-tables.ts';

/** A notice for one owner about one fence, as decided; it has no message yet. */
export interface DecidedNotice {
  readonly matter: string;
  readonly occasion: string;
  /** What was known when it was decided, as JSON. */
  readonly facts: string;
  /** False where it goes out whatever the office holds, the first sweep of a register aside. */
  readonly mayBeHeld: boolean;
}

/** What a sweep found out about one fence. */
export interface SweptFence {
  readonly fenceRef: string;
  /** The new forecast; null where the stored one still holds. */
  readonly forecast: Omit<ForecastsTable, 'fence_ref' | 'sweep_id' | 'computed_at'> | null;
  readonly owners: readonly { readonly ownerRef: string; readonly notices: readonly DecidedNotice[] }[];
  /** What the office is told itself. */
  readonly office: readonly DecidedNotice[];
}
