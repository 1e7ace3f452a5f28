import type { AnswerKind, LinkPurpose, VisitWay } from './answer-tables.ts';
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

/** How often a page was asked for by a link of the message: by HEAD only a scanner does, by GET a person or a scanner, by POST a person. */
interface MailLinkVisit {
  readonly purpose: LinkPurpose;
  readonly page: string;
  readonly way: VisitWay;
  readonly visits: number;
  readonly firstAt: string;
  readonly lastAt: string;
}

/** What the owner answered by a link of the message. */
interface MailAnswer {
  readonly at: string;
  readonly kind: AnswerKind;
  /** Ref of the fence, uid of the visit, number of the quote; empty where it is about none. */
  readonly subject: string;
  /** What was said, as JSON. */
  readonly detail: string;
}

/** What became of one message: what it tells, every try, every report, visits by its links and answers, each oldest first. */
export interface MailHistory {
  readonly notices: readonly ToldNotice[];
  readonly tries: readonly MailTry[];
  readonly reports: readonly MailReport[];
  readonly visits: readonly MailLinkVisit[];
  readonly answers: readonly MailAnswer[];
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
  const visits = await db
    .selectFrom('outbox')
    .innerJoin('message_links', 'message_links.message_id', 'outbox.message_id')
    .innerJoin('link_visits', 'link_visits.link_id', 'message_links.link_id')
    .select(['purpose', 'page', 'way', 'visits', 'first_at as firstAt', 'last_at as lastAt'])
    .where('outbox.id', '=', id)
    .orderBy('first_at')
    .orderBy('page')
    .orderBy('way')
    .execute();
  const answers = await db
    .selectFrom('outbox')
    .innerJoin('message_links', 'message_links.message_id', 'outbox.message_id')
    .innerJoin('owner_answers', 'owner_answers.link_id', 'message_links.link_id')
    .select(['owner_answers.at as at', 'owner_answers.kind as kind', 'owner_answers.subject as subject', 'detail'])
    .where('outbox.id', '=', id)
    .orderBy('owner_answers.id')
    .execute();
  return {
    notices,
    visits,
    answers,
    tries: tries.map((each) => ({ ...each, mayHaveArrived: each.mayHaveArrived === 1 })),
    reports,
  };
}
