import type { AccountTables } from './account-tables.ts';
import type { WithdrawalTables } from './evidence-tables.ts';
import type { FeedLinkTables } from './feed-link-tables.ts';
import type { FenceLineTables } from './fence-line-tables.ts';
import type { LearnedTables } from './learned-tables.ts';
import type { RecordTables } from './record-tables.ts';
import type { SweepTables } from './sweep-tables.ts';
import type { VisitTables } from './visit-tables.ts';

/** Every table of the register. */
export type RegisterTables = RecordTables &
  SweepTables &
  LearnedTables &
  WithdrawalTables &
  AccountTables &
  FeedLinkTables &
  FenceLineTables &
  VisitTables;
