import type { Generated } from 'kysely';

/** How a try of a mail ended; `lost`: the service ended meanwhile, and nobody knows. */
export type TryEnd = 'sent' | 'again' | 'parked' | 'lost';

/** How the mail of a delivery report was found: only the signed address proves that the report is about that mail. */
export type ReportFoundBy = 'signed address' | 'message id';

/** What a delivery report says was done (RFC 3464, 2.3.3). */
export type ReportAction = 'failed' | 'delayed' | 'delivered' | 'relayed' | 'expanded';

interface MailTriesTable {
  readonly id: Generated<number>;
  readonly outbox_id: number;
  readonly at: string;
  readonly outcome: TryEnd;
  readonly may_have_arrived: number;
  readonly envelope_from: string;
  readonly envelope_to: string;
  readonly domain: string;
  readonly reply: string;
}

interface DeliveryReportsTable {
  readonly id: Generated<number>;
  readonly sha256: string;
  readonly raw: Uint8Array;
  readonly outbox_id: number;
  readonly received_at: string;
  readonly found_by: ReportFoundBy;
  readonly action: ReportAction;
  readonly status: string;
  readonly recipient: string;
  readonly diagnostic: string;
}

interface StoppedAddressesTable {
  readonly id: Generated<number>;
  readonly address: string;
  readonly since: string;
  readonly report_id: number;
  readonly resumed_at: string | null;
}

interface MailSecretTable {
  readonly id: number;
  readonly secret: string;
}

/** Tables of what became of each mail. Times are ISO text in UTC. */
export interface DeliveryTables {
  readonly mail_tries: MailTriesTable;
  readonly delivery_reports: DeliveryReportsTable;
  readonly stopped_addresses: StoppedAddressesTable;
  readonly mail_secret: MailSecretTable;
}
