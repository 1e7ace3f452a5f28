import type { AnswerKind } from './answer-tables.ts';
import type { Register } from './database.ts';
import type { OutboxState } from './sweep-tables.ts';

/** A notice about a fence with the message that told it. Moments are ISO text in UTC. */
export interface ToldNotice {
  readonly matter: string;
  readonly occasion: string;
  readonly ownerRef: string;
  readonly ownerName: string;
  readonly decidedAt: string;
  /** Null until a message was written. */
  readonly channel: 'mail' | 'letter' | null;
  readonly state: OutboxState | null;
  readonly sentAt: string | null;
}

/** The notices about a fence that were told or are to be, oldest first; void ones are left out. */
export async function listToldNotices({ db }: Register, fenceRef: string): Promise<readonly ToldNotice[]> {
  return db
    .selectFrom('notices')
    .innerJoin('owners', 'owners.ref', 'notices.owner_ref')
    .leftJoin('outbox', 'outbox.id', 'notices.outbox_id')
    .select([
      'matter',
      'occasion',
      'owners.ref as ownerRef',
      'owners.name as ownerName',
      'notices.created_at as decidedAt',
      'outbox.channel as channel',
      'outbox.state as state',
      'outbox.sent_at as sentAt',
    ])
    .where('fence_ref', '=', fenceRef)
    .where('void_reason', 'is', null)
    .orderBy('notices.id')
    .execute();
}

/** What an owner answered by a link about a fence: that they had read how it stands, a day of its visit, a quote for it. */
export interface FenceAnswer {
  readonly at: string;
  readonly kind: AnswerKind;
  readonly ownerName: string;
}

/** The answers of owners about a fence, oldest first. */
export async function listFenceAnswers({ db }: Register, fenceRef: string): Promise<readonly FenceAnswer[]> {
  return db
    .selectFrom('owner_answers')
    .innerJoin('owners', 'owners.ref', 'owner_answers.owner_ref')
    .select(['owner_answers.at as at', 'owner_answers.kind as kind', 'owners.name as ownerName'])
    .where((eb) =>
      eb.or([
        eb.and([eb('owner_answers.kind', '=', 'read'), eb('subject', '=', fenceRef)]),
        eb.and([
          eb('owner_answers.kind', '=', 'day chosen'),
          eb('subject', 'in', eb.selectFrom('visit_items').select('uid').where('fence_ref', '=', fenceRef)),
        ]),
        eb.and([
          eb('owner_answers.kind', '=', 'quote accepted'),
          eb('subject', 'in', eb.selectFrom('offered_quotes').select('number').where('fence_ref', '=', fenceRef)),
        ]),
      ]),
    )
    .orderBy('owner_answers.id')
    .execute();
}
