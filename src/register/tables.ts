import type { AccountTables } from './account-tables.ts';
import type { AnswerTables } from './answer-tables.ts';
import type { ApiAnswerTables } from './api-answer-tables.ts';
import type { CrewEntryTables } from './crew-entry-tables.ts';
import type { DeliveryTables } from './delivery-tables.ts';
import type { WithdrawalTables } from './evidence-tables.ts';
import type { FeedLinkTables } from './feed-link-tables.ts';
import type { FenceLineTables } from './fence-line-tables.ts';
import type { ImportTables } from './import-tables.ts';
import type { LearnedTables } from './learned-tables.ts';
import type { RecordTables } from './record-tables.ts';
import type { SweepTables } from './sweep-tables.ts';
import type { VisitTables } from './visit-tables.ts';

/** Every table of the register. */
export type RegisterTables = RecordTables &
  AnswerTables &
  SweepTables &
  LearnedTables &
  WithdrawalTables &
  AccountTables &
  ApiAnswerTables &
  FeedLinkTables &
  DeliveryTables &
  ImportTables &
  CrewEntryTables &
  FenceLineTables &
  VisitTables;
