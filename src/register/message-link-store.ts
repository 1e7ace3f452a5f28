import type { LinkPurpose, VisitWay } from './answer-tables.ts';
import { visitsOfLinks } from './link-visit-store.ts';
import { addOwnerLink, type OwnerLink, readOwnerLink } from './owner-link-store.ts';
import type { RegisterDb } from './record-store.ts';

/**
 * The link that a message carries for a purpose: the one it was given before, or the one wanted. A message that is written again
 * after its writing was killed has the same link, and so the same bytes. Works within a transaction of the caller.
 */
export async function linkOfMessage(
  tx: RegisterDb,
  message: { readonly messageId: string; readonly purpose: LinkPurpose },
  wanted: Omit<OwnerLink, 'id' | 'revokedAt'>,
): Promise<OwnerLink> {
  const { messageId, purpose } = message;
  const known = await tx
    .selectFrom('message_links')
    .select('link_id')
    .where('message_id', '=', messageId)
    .where('purpose', '=', purpose)
    .executeTakeFirst();
  const link = known ? await readOwnerLink(tx, known.link_id) : null;
  if (link) return link;
  const made = await addOwnerLink(tx, wanted);
  await tx.insertInto('message_links').values({ message_id: messageId, purpose, link_id: made.id }).execute();
  return made;
}

/** A message with a link that it carried, and how often and when pages were asked for by it. */
export interface MessageLink {
  readonly linkId: number;
  readonly purpose: LinkPurpose;
  readonly messageId: string;
  readonly ownerRef: string;
  readonly ownerName: string;
  readonly subject: string;
  readonly sentAt: string | null;
  /** Numbers of the notices that it told. */
  readonly noticeIds: readonly number[];
  /** Pages asked for by GET, as a person does and a mail scanner may; by HEAD, as only a scanner does; forms sent. */
  readonly opened: number;
  readonly looked: number;
  readonly sent: number;
  /** First time by GET; null where never. */
  readonly firstOpenedAt: string | null;
}

/** What the links of one owner are for, by the number of the link, with the subject of the message that carried it. */
export async function purposesOfLinks(
  db: RegisterDb,
  ownerRef: string,
): Promise<ReadonlyMap<number, Pick<MessageLink, 'purpose' | 'subject'>>> {
  const rows = await db
    .selectFrom('owner_links')
    .innerJoin('message_links', 'message_links.link_id', 'owner_links.id')
    .innerJoin('outbox', 'outbox.message_id', 'message_links.message_id')
    .select(['owner_links.id as id', 'purpose', 'subject'])
    .where('owner_links.owner_ref', '=', ownerRef)
    .execute();
  return new Map(rows.map(({ id, purpose, subject }) => [id, { purpose, subject }]));
}

/** The links of messages, of the newest message first; of one notice, or of so many messages. */
export async function listMessageLinks(
  db: RegisterDb,
  filter: { readonly noticeId?: number; readonly limit?: number },
): Promise<readonly MessageLink[]> {
  let query = db
    .selectFrom('message_links')
    .innerJoin('outbox', 'outbox.message_id', 'message_links.message_id')
    .innerJoin('owners', 'owners.ref', 'outbox.owner_ref')
    .select([
      'message_links.link_id as linkId',
      'purpose',
      'outbox.id as outboxId',
      'outbox.message_id as messageId',
      'owners.ref as ownerRef',
      'owners.name as ownerName',
      'subject',
      'sent_at as sentAt',
    ])
    .orderBy('outbox.id', 'desc')
    .orderBy('purpose');
  if (filter.noticeId !== undefined) {
    const id = filter.noticeId;
    query = query.where('outbox.id', '=', (eb) => eb.selectFrom('notices').select('outbox_id').where('id', '=', id));
  }
  if (filter.limit !== undefined) {
    const { limit } = filter;
    // links are made in the order of their messages
    const newest = db.selectFrom('message_links').select('link_id').orderBy('link_id', 'desc').limit(limit);
    query = query.limit(limit);
    if (filter.noticeId === undefined) query = query.where('message_links.link_id', 'in', newest);
  }
  const links = await query.execute();
  const told = await noticesOf(
    db,
    links.map(({ outboxId }) => outboxId),
  );
  const visits = await visitsOfLinks(
    db,
    links.map(({ linkId }) => linkId),
  );
  return links.map(({ outboxId, ...link }) => {
    const ofLink = visits.filter(({ linkId }) => linkId === link.linkId);
    const count = (way: VisitWay): number =>
      ofLink.filter((visit) => visit.way === way).reduce((sum, { visits: times }) => sum + times, 0);
    const first = ofLink
      .filter(({ way }) => way === 'get')
      .map(({ firstAt }) => firstAt)
      .sort()[0];
    return {
      ...link,
      noticeIds: told.get(outboxId) ?? [],
      opened: count('get'),
      looked: count('head'),
      sent: count('post'),
      firstOpenedAt: first ?? null,
    };
  });
}

async function noticesOf(
  db: RegisterDb,
  outboxIds: readonly number[],
): Promise<ReadonlyMap<number, readonly number[]>> {
  const told = new Map<number, number[]>();
  if (outboxIds.length === 0) return told;
  const rows = await db
    .selectFrom('notices')
    .select(['id', 'outbox_id as outboxId'])
    .where('outbox_id', 'in', [...new Set(outboxIds)])
    .orderBy('id')
    .execute();
  for (const { id, outboxId } of rows) {
    if (outboxId !== null) told.set(outboxId, [...(told.get(outboxId) ?? []), id]);
  }
  return told;
}
