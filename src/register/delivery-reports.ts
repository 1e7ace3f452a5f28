import { sql } from 'kysely';
import type { Register } from './database.ts';
import type { ReportAction, ReportFoundBy } from './delivery-tables.ts';

/** A delivery report about a mail of the outbox. Times are ISO text in UTC. */
export interface FoundReport {
  /** SHA-256 of its bytes, hex. */
  readonly sha256: string;
  readonly raw: Uint8Array;
  readonly outboxId: number;
  readonly at: string;
  readonly foundBy: ReportFoundBy;
  readonly action: ReportAction;
  /** Status code (RFC 3463), `5.1.1`. */
  readonly status: string;
  readonly recipient: string;
  /** The server's words. */
  readonly diagnostic: string;
}

/** What noting a report changed: `resumed since`: the office had mail to the address resumed after the mail was sent. */
export type NotedReport =
  | { readonly kind: 'noted' }
  | { readonly kind: 'known' }
  | { readonly kind: 'resumed since' }
  | { readonly kind: 'stopped'; readonly address: string; readonly waiting: number };

/** The number of the mail that went out under a return address (in lower case), or with a Message-ID; null where none did. */
export async function findMail(
  register: Register,
  by: { readonly returnAddress: string } | { readonly messageId: string },
): Promise<number | null> {
  const query = register.db.selectFrom('outbox').select('id').where('channel', '=', 'mail');
  const row = await ('returnAddress' in by
    ? query.where('envelope_from', '=', by.returnAddress)
    : query.where('message_id', '=', by.messageId)
  ).executeTakeFirst();
  return row?.id ?? null;
}

/**
 * Notes a delivery report once, and (`stops`) stops mail to the address that its mail went to, unless the office had it
 * resumed after that mail was sent. One transaction.
 */
export async function noteReport(register: Register, report: FoundReport, stops: boolean): Promise<NotedReport> {
  const { sha256, raw, outboxId, at, foundBy, action, status, recipient, diagnostic } = report;
  return register.db.transaction().execute(async (tx) => {
    const inserted = await tx
      .insertInto('delivery_reports')
      .values({
        sha256,
        raw,
        outbox_id: outboxId,
        received_at: at,
        found_by: foundBy,
        action,
        status,
        recipient,
        diagnostic,
      })
      .onConflict((conflict) => conflict.column('sha256').doNothing())
      .returning('id')
      .executeTakeFirst();
    if (!inserted) return { kind: 'known' };
    if (!stops) return { kind: 'noted' };
    const mail = await tx
      .selectFrom('outbox')
      .select(['created_at', 'sent_at', sql<string>`lower(envelope_to)`.as('address')])
      .where('id', '=', outboxId)
      .executeTakeFirstOrThrow();
    const { address } = mail;
    const resumed = await tx
      .selectFrom('stopped_addresses')
      .select('id')
      .where('address', '=', address)
      .where('resumed_at', '>=', mail.sent_at ?? mail.created_at)
      .executeTakeFirst();
    if (resumed) return { kind: 'resumed since' };
    await tx
      .insertInto('stopped_addresses')
      .values({ address, since: at, report_id: inserted.id, resumed_at: null })
      .onConflict((conflict) => conflict.column('address').where('resumed_at', 'is', null).doNothing())
      .execute();
    const { waiting } = await tx
      .selectFrom('outbox')
      .select((eb) => eb.fn.countAll<number>().as('waiting'))
      .where('state', '=', 'queued')
      .where(sql<string>`lower(envelope_to)`, '=', address)
      .executeTakeFirstOrThrow();
    return { kind: 'stopped', address, waiting };
  });
}

/** An address that gets no mail until the office has it resumed. */
export interface StoppedAddress {
  readonly address: string;
  readonly ownerRef: string;
  readonly ownerName: string;
  readonly since: string;
  readonly status: string;
  readonly diagnostic: string;
  /** The mail that came back. */
  readonly outboxId: number;
  readonly subject: string;
  /** Mails that wait for it to be resumed. */
  readonly waiting: number;
}

/** Addresses that are stopped, the newest first. */
export async function listStoppedAddresses(register: Register): Promise<readonly StoppedAddress[]> {
  return register.db
    .selectFrom('stopped_addresses as stopped')
    .innerJoin('delivery_reports as report', 'report.id', 'stopped.report_id')
    .innerJoin('outbox', 'outbox.id', 'report.outbox_id')
    .innerJoin('owners', 'owners.ref', 'outbox.owner_ref')
    .select([
      'stopped.address',
      'owners.ref as ownerRef',
      'owners.name as ownerName',
      'stopped.since',
      'report.status',
      'report.diagnostic',
      'outbox.id as outboxId',
      'outbox.subject',
    ])
    .select((eb) =>
      eb
        .selectFrom('outbox as queued')
        .select((count) => count.fn.countAll<number>().as('waiting'))
        .where('queued.state', '=', 'queued')
        .where(sql<string>`lower(queued.envelope_to)`, '=', eb.ref('stopped.address'))
        .$asScalar()
        .$notNull()
        .as('waiting'),
    )
    .where('stopped.resumed_at', 'is', null)
    .orderBy('stopped.id', 'desc')
    .execute();
}

/** Lets mail go to an address again; what waits for it is due. Returns how many mails wait, or null where it is not stopped. */
export async function resumeAddress(register: Register, address: string, at: string): Promise<number | null> {
  const lower = address.toLowerCase();
  return register.db.transaction().execute(async (tx) => {
    const ended = await tx
      .updateTable('stopped_addresses')
      .set({ resumed_at: at })
      .where('address', '=', lower)
      .where('resumed_at', 'is', null)
      .executeTakeFirst();
    if (ended.numUpdatedRows === 0n) return null;
    const { waiting } = await tx
      .selectFrom('outbox')
      .select((eb) => eb.fn.countAll<number>().as('waiting'))
      .where('state', '=', 'queued')
      .where(sql<string>`lower(envelope_to)`, '=', lower)
      .executeTakeFirstOrThrow();
    return waiting;
  });
}

/** A report of a failed delivery that stopped no address. */
export interface UnstoppedReport {
  readonly outboxId: number;
  readonly envelopeTo: string;
  readonly receivedAt: string;
  readonly foundBy: ReportFoundBy;
  readonly action: ReportAction;
  readonly status: string;
  readonly diagnostic: string;
}

/** Reports of failed and delayed deliveries since a moment that stopped no address, the newest first. */
export async function listUnstoppedReports(register: Register, since: string): Promise<readonly UnstoppedReport[]> {
  return register.db
    .selectFrom('delivery_reports as report')
    .innerJoin('outbox', 'outbox.id', 'report.outbox_id')
    .select([
      'outbox.id as outboxId',
      sql<string>`coalesce(outbox.envelope_to, '')`.as('envelopeTo'),
      'report.received_at as receivedAt',
      'report.found_by as foundBy',
      'report.action',
      'report.status',
      'report.diagnostic',
    ])
    .where('report.action', 'in', ['failed', 'delayed'])
    .where('report.received_at', '>=', since)
    .where('report.id', 'not in', (eb) => eb.selectFrom('stopped_addresses').select('report_id'))
    .orderBy('report.id', 'desc')
    .execute();
}
