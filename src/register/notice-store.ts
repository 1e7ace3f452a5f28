import type { ExpressionBuilder } from 'kysely';
import type { Register } from './database.ts';
import type { RegisterDb } from './record-store.ts';
import type { RegisterTables } from './tables.ts';

/** A notice as stored. */
export interface StoredNotice {
  readonly id: number;
  readonly fenceRef: string;
  readonly ownerRef: string;
  readonly matter: string;
  readonly occasion: string;
  /** True where no message told the owner of the fence before this notice. */
  readonly first: boolean;
  /** What was known when it was decided, as JSON. */
  readonly facts: string;
  readonly outboxId: number | null;
  /** Why it is not told; null where it was or will be. */
  readonly voidReason: string | null;
  readonly createdAt: string;
  /** The office's own sentence for the message that tells it; null for the usual one. */
  readonly covering: string | null;
  /** The visit that caused it; null where a sweep did. */
  readonly visitUid: string | null;
}

const COLUMNS = [
  'id',
  'fence_ref as fenceRef',
  'owner_ref as ownerRef',
  'matter',
  'occasion',
  'facts',
  'outbox_id as outboxId',
  'void_reason as voidReason',
  'created_at as createdAt',
  'covering',
  'visit_uid as visitUid',
] as const;

/** 1 where an earlier message, not cancelled, told the owner how the fence stands, else 0; that a crew comes does not tell that. */
const toldBefore = (eb: ExpressionBuilder<RegisterTables, 'notices'>) =>
  eb
    .exists(
      eb
        .selectFrom('notices as told')
        .innerJoin('outbox', 'outbox.id', 'told.outbox_id')
        .select('told.id')
        .whereRef('told.fence_ref', '=', 'notices.fence_ref')
        .whereRef('told.owner_ref', '=', 'notices.owner_ref')
        .where('outbox.state', '<>', 'cancelled')
        .where('told.sweep_id', 'is not', null)
        .where((or) =>
          or.or([or('notices.outbox_id', 'is', null), or('told.outbox_id', '<', or.ref('notices.outbox_id'))]),
        ),
    )
    .as('toldBefore');

const noticeFromRow = <R extends { readonly toldBefore: unknown }>({
  toldBefore: told,
  ...row
}: R): Omit<R, 'toldBefore'> & { readonly first: boolean } => ({ ...row, first: Number(told) === 0 });

/** Whether a notice waits for the office. */
const waits = (eb: ExpressionBuilder<RegisterTables, 'notices'>) =>
  eb.and([eb('held', 'is not', null), eb('released_at', 'is', null)]);

/** The owners who have notices that are still to be told: that are due, or that wait for the office; by ref. */
export async function listOwnersToWriteTo(
  register: Register,
  which: 'due' | 'held' = 'due',
): Promise<readonly string[]> {
  const rows = await register.db
    .selectFrom('notices')
    .select('owner_ref')
    .distinct()
    .where('outbox_id', 'is', null)
    .where('void_reason', 'is', null)
    .where((eb) => (which === 'held' ? waits(eb) : eb.not(waits(eb))))
    .orderBy('owner_ref')
    .execute();
  return rows.map((row) => row.owner_ref);
}

/** One owner's notices that are still to be told and are due, or wait for the office, by fence and in the order in which they were decided. */
export async function loadUnwrittenNotices(
  register: Register,
  ownerRef: string,
  which: 'due' | 'held' = 'due',
): Promise<readonly StoredNotice[]> {
  const rows = await register.db
    .selectFrom('notices')
    .select(COLUMNS)
    .select(toldBefore)
    .where('outbox_id', 'is', null)
    .where('void_reason', 'is', null)
    .where('owner_ref', '=', ownerRef)
    .where((eb) => (which === 'held' ? waits(eb) : eb.not(waits(eb))))
    .orderBy('fence_ref')
    .orderBy('id')
    .execute();
  return rows.map(noticeFromRow);
}

/** Every notice about one fence, newest first, void ones too. */
export async function listNoticesOfFence(register: Register, fenceRef: string): Promise<readonly StoredNotice[]> {
  const rows = await register.db
    .selectFrom('notices')
    .select(COLUMNS)
    .select(toldBefore)
    .where('fence_ref', '=', fenceRef)
    .orderBy('id', 'desc')
    .execute();
  return rows.map(noticeFromRow);
}

/** A finished message, ready for the outbox, and the notices it carries. */
export interface FinishedMessage {
  readonly messageId: string;
  /** Null for a mail to the office itself. */
  readonly ownerRef: string | null;
  readonly channel: 'mail' | 'letter';
  readonly envelopeFrom: string | null;
  readonly envelopeTo: string | null;
  readonly subject: string;
  readonly raw: Uint8Array;
  readonly sha256: string;
  readonly noticeIds: readonly number[];
  /** Goes out at any hour, ahead of the others. */
  readonly urgent?: boolean;
}

/** Thrown where a notice already has a message; nothing was written. */
export class NoticeAlreadyWritten extends Error {
  constructor(messageId: string) {
    super(`the notices of ${messageId} already have a message`);
    this.name = 'NoticeAlreadyWritten';
  }
}

/**
 * Puts a message into the outbox, within a transaction, and gives its number. Throws `NoticeAlreadyWritten` where one of its id is there.
 * @param at moment of writing, and the first at which it may leave (ISO 8601, UTC)
 */
export async function insertMessage(tx: RegisterDb, message: FinishedMessage, at: string): Promise<number> {
  const inserted = await tx
    .insertInto('outbox')
    .values({
      message_id: message.messageId,
      owner_ref: message.ownerRef,
      channel: message.channel,
      envelope_from: message.envelopeFrom,
      envelope_to: message.envelopeTo,
      subject: message.subject,
      raw: message.raw,
      sha256: message.sha256,
      state: message.channel === 'mail' ? 'queued' : 'to print',
      due_at: message.channel === 'mail' ? at : null,
      lease_token: null,
      lease_until: null,
      first_failed_at: null,
      last_reply: null,
      sent_at: null,
      created_at: at,
      urgent: message.urgent ? 1 : 0,
    })
    .onConflict((conflict) => conflict.column('message_id').doNothing())
    .returning('id')
    .executeTakeFirst();
  if (!inserted) throw new NoticeAlreadyWritten(message.messageId);
  return inserted.id;
}

/**
 * Puts one owner's messages into the outbox and marks their notices as written, all in one transaction.
 * Throws `NoticeAlreadyWritten`, having written nothing, where another process was faster.
 */
export async function postMessages(
  register: Register,
  messages: readonly FinishedMessage[],
  at: string,
): Promise<void> {
  await register.db.transaction().execute(async (tx) => {
    for (const message of messages) {
      const id = await insertMessage(tx, message, at);
      const marked = await tx
        .updateTable('notices')
        .set({ outbox_id: id })
        .where('id', 'in', message.noticeIds)
        .where('outbox_id', 'is', null)
        .where('void_reason', 'is', null)
        .executeTakeFirst();
      if (Number(marked.numUpdatedRows) !== message.noticeIds.length) throw new NoticeAlreadyWritten(message.messageId);
    }
  });
}
