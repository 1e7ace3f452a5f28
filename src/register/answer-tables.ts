import type { Generated } from 'kysely';

/** What an owner can answer through a link. */
export type AnswerKind = 'read' | 'day chosen' | 'quote accepted' | 'call wanted' | 'preferences' | 'unsubscribed';

/** What a message's link is for: the owner's pages, or the header by which a mail program stops the list. */
export type LinkPurpose = 'pages' | 'unsubscribe';

/** How a page was asked for. */
export type VisitWay = 'head' | 'get' | 'post';

interface MessageLinksTable {
  readonly message_id: string;
  readonly purpose: LinkPurpose;
  readonly link_id: number;
}

interface LinkVisitsTable {
  readonly link_id: number;
  readonly page: string;
  readonly way: VisitWay;
  readonly visits: number;
  readonly first_at: string;
  readonly last_at: string;
}

interface OfferedQuotesTable {
  readonly number: string;
  readonly fence_ref: string;
  readonly content: string;
  readonly sha256: string;
  readonly valid_until: string;
  readonly offered_at: string;
  readonly withdrawn_at: string | null;
}

interface OwnerAnswersTable {
  readonly id: Generated<number>;
  readonly owner_ref: string;
  readonly link_id: number;
  readonly kind: AnswerKind;
  readonly subject: string;
  readonly detail: string;
  readonly once: string;
  readonly at: string;
  readonly settled_at: string | null;
  readonly settled_by: Generated<string>;
}

interface OwnerPreferencesTable {
  readonly owner_ref: string;
  readonly muted: string;
  readonly paused_until: string | null;
  readonly changed_at: string;
}

interface DayWishesTable {
  readonly id: Generated<number>;
  readonly visit_uid: string;
  readonly owner_ref: string;
  readonly link_id: number;
  readonly week: string;
  readonly offered: string;
  readonly suits: string;
  readonly at: string;
}

/** Tables of what owners answer through their links. Times are ISO text in UTC. */
export interface AnswerTables {
  readonly message_links: MessageLinksTable;
  readonly link_visits: LinkVisitsTable;
  readonly offered_quotes: OfferedQuotesTable;
  readonly owner_answers: OwnerAnswersTable;
  readonly owner_preferences: OwnerPreferencesTable;
  readonly day_wishes: DayWishesTable;
}
