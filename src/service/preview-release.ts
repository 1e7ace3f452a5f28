import { isOfVisit, OWNER_MATTERS } from '../notify/matter-rules.ts';
import type { Register } from '../register/database.ts';
import { type HeldFilter, type HeldForOwner, heldByOwner, listHeldNotices } from '../register/held-notices.ts';
import { readRecord } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import type { Clock } from './clock.ts';
import { previewMessages } from './compose-notices.ts';
import { messageHtml } from './message-html.ts';
import { messageCount } from './message-parts.ts';
import { type SenderConfig, senderOf } from './sweep-register.ts';

/** The longest sentence that the office may put after the greeting [characters]. */
export const LONGEST_SENTENCE = 600;

/** The office's own sentence on one line; null where there is none, and a reason where it is too long. */
export function coveringSentence(text: string): { readonly value: string | null } | { readonly reason: string } {
  const sentence = text.replace(/\s+/g, ' ').trim();
  if (sentence === '') return { value: null };
  if (sentence.length <= LONGEST_SENTENCE) return { value: sentence };
  return {
    reason: `the sentence has ${sentence.length} characters; write at most ${LONGEST_SENTENCE}, it stands between the greeting and the facts`,
  };
}

/** A message as its owner would see it. */
export interface PreviewedMessage {
  readonly subject: string;
  readonly channel: 'mail' | 'letter';
  readonly to: string | null;
  readonly notices: number;
  readonly html: string;
}

/**
 * The messages that an owner would get if notices were released now; empty where there is no such owner, or nothing of it is so any
 * more. Nothing is stored.
 */
export async function previewRelease(
  register: Register,
  asked: { readonly ownerRef: string; readonly ids: readonly number[] | null; readonly covering: string | null },
  options: { readonly now: Clock; readonly sender: SenderConfig },
): Promise<readonly PreviewedMessage[]> {
  const owner = await readRecord(register.db, 'owners', asked.ownerRef);
  if (!owner) return [];
  const sender = senderOf(options.sender, await readSettings(register.db));
  const messages = await previewMessages(register, owner, asked, { now: options.now, sender });
  return Promise.all(
    messages.map(async ({ subject, channel, envelopeTo, noticeIds, raw }) => ({
      subject,
      channel,
      to: envelopeTo,
      notices: noticeIds.length,
      html: await messageHtml({ channel, raw }),
    })),
  );
}

/** What a release comes to: whom it reaches, by what, and one of its messages. */
export interface ReleaseLook {
  readonly notices: number;
  readonly owners: number;
  /** True where every message was composed to count them; false where there are too many owners, and the numbers are the most. */
  readonly exact: boolean;
  /** Messages that come of it, or at most, and the owners who get them. */
  readonly mails: { readonly messages: number; readonly owners: number };
  readonly letters: { readonly messages: number; readonly owners: number };
  /** Owners who are not written to. */
  readonly notEnrolled: number;
  /** Names of the owners written to who read Spanish. */
  readonly spanishReaders: readonly string[];
  /** The first owner to whom something would be written, and what; null where there is none. */
  readonly sample: { readonly ownerRef: string; readonly ownerName: string; readonly message: PreviewedMessage } | null;
}

/** Owners whose messages are tried for a sample at most. */
const MOST_TRIED = 5;

/** Owners whose messages are composed at most to count them; beyond, the most that can come is said. */
const MOST_COUNTED = 40;

/** How many messages each owner would get, composed as the release composes them. */
async function countMessages(
  register: Register,
  filter: Omit<HeldFilter, 'ids'>,
  owners: readonly HeldForOwner[],
  options: { readonly covering: string | null; readonly now: Clock; readonly sender: SenderConfig },
): Promise<ReadonlyMap<string, number>> {
  const sender = senderOf(options.sender, await readSettings(register.db));
  const counts = new Map<string, number>();
  for (const { ownerRef } of owners) {
    const owner = await readRecord(register.db, 'owners', ownerRef);
    if (!owner) continue;
    const ids = (await listHeldNotices(register, { ...filter, ownerRef })).map(({ id }) => id);
    const release = { ids, covering: options.covering };
    counts.set(ownerRef, (await previewMessages(register, owner, release, { now: options.now, sender })).length);
  }
  return counts;
}

/** What releasing held notices would come to. Nothing is stored. */
export async function lookAtRelease(
  register: Register,
  filter: Omit<HeldFilter, 'ids'>,
  options: { readonly covering: string | null; readonly now: Clock; readonly sender: SenderConfig },
): Promise<ReleaseLook> {
  const held = await heldByOwner(register, filter, OWNER_MATTERS.filter(isOfVisit));
  const told = held.filter(({ enrolled }) => enrolled);
  const exact = told.length <= MOST_COUNTED;
  const counted = exact ? await countMessages(register, filter, told, options) : null;
  const by = (channel: 'mail' | 'letter'): ReleaseLook['mails'] => {
    const theirs = told.filter((owner) => owner.channel === channel);
    const most = ({ fences, dangerous, visits }: HeldForOwner): number => messageCount(fences, dangerous) + visits;
    const messages = theirs.map((owner) => counted?.get(owner.ownerRef) ?? most(owner));
    return {
      messages: messages.reduce((sum, each) => sum + each, 0),
      owners: messages.filter((each) => each > 0).length,
    };
  };
  let sample: ReleaseLook['sample'] = null;
  for (const { ownerRef, ownerName } of told.slice(0, MOST_TRIED)) {
    const ids = (await listHeldNotices(register, { ...filter, ownerRef })).map(({ id }) => id);
    const [message] = await previewRelease(register, { ownerRef, ids, covering: options.covering }, options);
    if (!message) continue;
    sample = { ownerRef, ownerName, message };
    break;
  }
  return {
    exact,
    notices: held.reduce((sum, { notices }) => sum + notices, 0),
    owners: held.length,
    mails: by('mail'),
    letters: by('letter'),
    notEnrolled: held.length - told.length,
    spanishReaders: told.filter(({ language }) => language === 'es').map(({ ownerName }) => ownerName),
    sample,
  };
}
