/** Most fences of one owner that get a mail each; more are told in one digest. */
const MOST_SINGLE_MAILS = 3;

/** How an owner's fences are told: a message each, only the dangerous ones a message each and the others in a digest, or all in one. */
export type MessageParts = 'each' | 'dangerous each' | 'digest';

/**
 * How the fences of an owner are told: up to three get a message each, and up to three that are dangerous now whatever else there is
 * to tell.
 * @param fences how many are told of
 * @param dangerous how many of them are dangerous now
 */
export function messageParts(fences: number, dangerous: number): MessageParts {
  if (fences <= MOST_SINGLE_MAILS) return 'each';
  if (dangerous > MOST_SINGLE_MAILS) return 'digest';
  if (fences - dangerous <= MOST_SINGLE_MAILS) return 'each';
  return dangerous === 0 ? 'digest' : 'dangerous each';
}

/** How many messages that comes to. */
export function messageCount(fences: number, dangerous: number): number {
  const parts = messageParts(fences, dangerous);
  if (parts === 'each') return fences;
  return parts === 'digest' ? 1 : dangerous + 1;
}
