import type { Register } from '../../src/register/database.ts';

/** Everything the register knows of one notice and of the message that told it. Times are ISO text in UTC. */
export interface NoticeRecord {
  readonly fenceRef: string;
  readonly ownerRef: string;
  readonly matter: string;
  readonly occasion: string;
  /** Empty where a visit or plan caused it. */
  readonly season: string;
  /** Null where a visit or plan caused it. */
  readonly sweepId: number | null;
  readonly visitUid: string | null;
  readonly createdAt: string;
  readonly held: string | null;
  readonly releasedAt: string | null;
  readonly voidReason: string | null;
  readonly messageId: string | null;
  readonly channel: 'mail' | 'letter' | null;
  readonly writtenAt: string | null;
  readonly sentAt: string | null;
}

/** All notices that a register ever decided, in their order. */
export async function noticeRecords({ db }: Register): Promise<readonly NoticeRecord[]> {
  const rows = await db
    .selectFrom('notices')
    .leftJoin('outbox', 'outbox.id', 'notices.outbox_id')
    .select([
      'fence_ref as fenceRef',
      'notices.owner_ref as ownerRef',
      'matter',
      'occasion',
      'facts',
      'sweep_id as sweepId',
      'visit_uid as visitUid',
      'notices.created_at as createdAt',
      'held',
      'released_at as releasedAt',
      'void_reason as voidReason',
      'message_id as messageId',
      'channel',
      'outbox.created_at as writtenAt',
      'sent_at as sentAt',
    ])
    .orderBy('notices.id')
    .execute();
  return rows.map(({ facts, ...row }) => ({ ...row, season: (JSON.parse(facts) as { season?: string }).season ?? '' }));
}
