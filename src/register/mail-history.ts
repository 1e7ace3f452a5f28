import type { Register } from './database.ts';
import type { ReportAction, ReportFoundBy, TryEnd } from './delivery-tables.ts';

/** One try of a mail. Times are ISO text in UTC. */
export interface MailTry {
  readonly at: string;
  readonly outcome: TryEnd;
  /** True where the server may have taken the mail and its answer never came. */
  readonly mayHaveArrived: boolean;
  readonly envelopeFrom: string;
  readonly envelopeTo: string;
  /** The server's words. */
  readonly reply: string;
}

/** A delivery report that came back. */
export interface MailReport {
  readonly receivedAt: string;
  readonly foundBy: ReportFoundBy;
  readonly action: ReportAction;
  readonly status: string;
  readonly recipient: string;
  readonly diagnostic: string;
  readonly sha256: string;
  readonly raw: Uint8Array;
}

/** A notice that a message tells. */
interface ToldNotice {
  readonly number: number;
  readonly fenceRef: string;
  readonly matter: string;
  readonly occasion: string;
  readonly decidedAt: string;
}

/** What became of one message: what it tells, every try, and every report, each oldest first. */
export interface MailHistory {
  readonly notices: readonly ToldNotice[];
  readonly tries: readonly MailTry[];
  readonly reports: readonly MailReport[];
}

/** The history of one message by its number; all lists are empty where there is no such message. */
export async function loadMailHistory({ db }: Register, id: number): Promise<MailHistory> {
  const notices = await db
    .selectFrom('notices')
    .select(['id as number', 'fence_ref as fenceRef', 'matter', 'occasion', 'created_at as decidedAt'])
    .where('outbox_id', '=', id)
    .orderBy('id')
    .execute();
  const tries = await db
    .selectFrom('mail_tries')
    .select([
      'at',
      'outcome',
      'may_have_arrived as mayHaveArrived',
      'envelope_from as envelopeFrom',
      'envelope_to as envelopeTo',
      'reply',
    ])
    .where('outbox_id', '=', id)
    .orderBy('id')
    .execute();
  const reports = await db
    .selectFrom('delivery_reports')
    .select([
      'received_at as receivedAt',
      'found_by as foundBy',
      'action',
      'status',
      'recipient',
      'diagnostic',
      'sha256',
      'raw',
    ])
    .where('outbox_id', '=', id)
    .orderBy('id')
    .execute();
  return {
    notices,
    tries: tries.map((each) => ({ ...each, mayHaveArrived: each.mayHaveArrived === 1 })),
    reports,
  };
}
