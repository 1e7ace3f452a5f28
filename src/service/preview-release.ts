import type { Register } from '../register/database.ts';
import { readRecord } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import type { Clock } from './clock.ts';
import { previewMessages } from './compose-notices.ts';
import { messageHtml } from './message-html.ts';
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
