import type { MessageLinks } from '../notify/message-facts.ts';
import { dayInWords } from '../notify/plain-words.ts';
import type { LinkPurpose } from '../register/answer-tables.ts';
import type { Register } from '../register/database.ts';
import { linkOfMessage } from '../register/message-link-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import type { Clock } from './clock.ts';
import { isoUtc } from './clock.ts';
import { linkKey, OWNER_SCOPES, type OwnerScope, ownerToken, ownerUrl } from './owner-links.ts';

/** How long the links of a message open [d]. */
const MESSAGE_LINK_DAYS = 180;

/** What each link of a message lets its holder do. The one in the header is read by every mail server on the way: it can only turn mails off. */
const SCOPES: Readonly<Record<LinkPurpose, readonly OwnerScope[]>> = {
  pages: OWNER_SCOPES,
  unsubscribe: ['preferences'],
};

/** The links that a message carries. */
export interface LinksOfMessage {
  readonly pages: MessageLinks;
  /** The page that stops the list. */
  readonly unsubscribeUrl: string;
}

/**
 * The links of one message, made before it is worded. A message that is written again because its writing was killed gets the same
 * links: with the register's key, the same notices have the same bytes.
 */
export async function linksForMessage(
  register: Register,
  message: { readonly owner: Pick<OwnerRecord, 'ref' | 'language'>; readonly messageId: string },
  options: { readonly publicUrl: string; readonly now: Clock },
): Promise<LinksOfMessage> {
  const { owner, messageId } = message;
  const { publicUrl, now } = options;
  return register.db.transaction().execute(async (tx) => {
    const key = await linkKey(tx, now);
    const of = (purpose: LinkPurpose) =>
      linkOfMessage(
        tx,
        { messageId, purpose },
        {
          ownerRef: owner.ref,
          scopes: SCOPES[purpose],
          createdAt: isoUtc(now()),
          expiresAt: isoUtc(now().plus({ days: MESSAGE_LINK_DAYS })),
        },
      );
    const pages = await of('pages');
    const unsubscribe = await of('unsubscribe');
    return {
      pages: {
        pages: ownerUrl(publicUrl, ownerToken(key, pages)),
        until: dayInWords(pages.expiresAt.slice(0, 10), owner.language),
      },
      unsubscribeUrl: `${ownerUrl(publicUrl, ownerToken(key, unsubscribe))}/unsubscribe`,
    };
  });
}
