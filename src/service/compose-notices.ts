import { BOARD_MATTER, isOfVisit } from '../notify/matter-rules.ts';
import type { Register } from '../register/database.ts';
import { mailSecret } from '../register/mail-secret.ts';
import type { FinishedMessage } from '../register/notice-store.ts';
import {
  listOwnersToWriteTo,
  loadUnwrittenNotices,
  NoticeAlreadyWritten,
  postMessages,
} from '../register/notice-store.ts';
import { readOwnerPreferences } from '../register/owner-preference-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import { readRecord } from '../register/record-store.ts';
import { cancelOlderMessages } from '../register/visit-notices.ts';
import { voidNotices } from '../register/void-notices.ts';
import type { Clock } from './clock.ts';
import { dayInZone, isoUtc } from './clock.ts';
import { currentFences } from './current-fences.ts';
import { isDemoOwner } from './demo-owners.ts';
import { type Composing, messagesOf, type Sender, type ToTell } from './owner-messages.ts';
import { sortByWishes } from './owner-preferences.ts';
import { newSecret } from './secret-token.ts';
import { sift } from './sift-notices.ts';
import { siftVisits } from './sift-visits.ts';

/** How often one owner's messages are begun anew because another process wrote some of them. */
const MOST_ROUNDS = 3;

/** How many messages were put into the outbox, and whom none could be written to. */
export interface ComposeReport {
  readonly mails: number;
  readonly letters: number;
  /** Their notices stay without a message and are tried again by the next call. */
  readonly failures: readonly { readonly ownerRef: string; readonly message: string }[];
}

/** Throws where a message to this owner would go out from an office that has not said who it is. Caught mail harms nobody. */
function requireOffice(owner: OwnerRecord, sender: Sender): void {
  const reaches = owner.channel === 'mail' ? sender.mailReachesOwners : !isDemoOwner(owner);
  if (sender.gap !== null && reaches) throw new Error(sender.gap);
}

async function messagesFor(
  register: Register,
  owner: OwnerRecord,
  context: Composing,
): Promise<readonly FinishedMessage[]> {
  const unwritten = await loadUnwrittenNotices(register, owner.ref);
  if (!owner.enrolled) {
    const reason = 'the owner is not enrolled any more';
    await voidNotices(
      register,
      unwritten.map((notice) => ({ notice, reason, introduceAnew: true })),
    );
    return [];
  }
  const preferences = await readOwnerPreferences(register.db, owner.ref);
  const today = dayInZone(context.now(), context.sender.timeZone);
  const { wanted, unwanted } = sortByWishes(unwritten, preferences, today);
  const reason = 'the owner does not want to be told of it';
  await voidNotices(
    register,
    unwanted.map((notice) => ({ notice, reason, introduceAnew: false })),
  );
  const ofSweeps = wanted.filter(({ matter }) => !isOfVisit(matter));
  const current = await currentFences(register, [...new Set(ofSweeps.map((notice) => notice.fenceRef))]);
  const { told: notices, voids } = sift(ofSweeps, { owner, now: context.now }, current);
  const ofVisits = wanted.filter(({ matter }) => isOfVisit(matter));
  const visits = await siftVisits(register, owner, ofVisits, context.now);
  await voidNotices(register, [...voids, ...visits.voids]);
  if (notices.length + visits.told.length > 0) requireOffice(owner, context.sender);
  let freed = 0;
  for (const { visit } of visits.told) {
    const older = { visitUid: visit.uid, ownerRef: owner.ref, boardMatter: BOARD_MATTER };
    freed += await cancelOlderMessages(register.db, older);
  }
  // what a message that was taken back told of other visits goes out with the rest
  if (freed > 0) return messagesFor(register, owner, context);
  return messagesOf(register, owner, { notices, visits: visits.told, current }, context);
}

/**
 * The messages that would be written to an owner if these held notices were released now, with what is due to them anyway; nothing is
 * stored, and what is no longer so is left out as it would be then.
 * @param release numbers of the held notices (null: all of the owner's), and the office's own sentence
 */
export async function previewMessages(
  register: Register,
  owner: OwnerRecord,
  release: { readonly ids: readonly number[] | null; readonly covering: string | null },
  context: { readonly sender: Sender; readonly now: Clock },
): Promise<readonly FinishedMessage[]> {
  const held = await loadUnwrittenNotices(register, owner.ref, 'held');
  const released = held
    .filter(({ id }) => release.ids === null || release.ids.includes(id))
    .map((notice) => ({ ...notice, covering: release.covering }));
  if (!owner.enrolled || released.length === 0) return [];
  const { wanted: notices } = sortByWishes(
    [...released, ...(await loadUnwrittenNotices(register, owner.ref))],
    await readOwnerPreferences(register.db, owner.ref),
    dayInZone(context.now(), context.sender.timeZone),
  );
  const ofSweeps = notices.filter(({ matter }) => !isOfVisit(matter));
  const current = await currentFences(register, [...new Set(ofSweeps.map(({ fenceRef }) => fenceRef))]);
  const ofVisits = notices.filter(({ matter }) => isOfVisit(matter));
  const told: ToTell = {
    notices: sift(ofSweeps, { owner, now: context.now }, current).told,
    visits: (await siftVisits(register, owner, ofVisits, context.now)).told,
    current,
  };
  // no link is made for what is only looked at
  const sender = { ...context.sender, publicUrl: null };
  return messagesOf(register, owner, told, { now: context.now, sender, secret: '' });
}

async function writeToOwner(
  register: Register,
  owner: OwnerRecord,
  context: Composing,
): Promise<readonly FinishedMessage[]> {
  for (let round = 1; ; round += 1) {
    const messages = await messagesFor(register, owner, context);
    try {
      await postMessages(register, messages, isoUtc(context.now()));
      return messages;
    } catch (error) {
      if (!(error instanceof NoticeAlreadyWritten) || round === MOST_ROUNDS) throw error;
    }
  }
}

/** Failures of one cause in one line, however many owners it met. */
function gathered(failures: ComposeReport['failures']): ComposeReport['failures'] {
  const byMessage = new Map<string, string[]>();
  for (const { ownerRef, message } of failures) byMessage.set(message, [...(byMessage.get(message) ?? []), ownerRef]);
  return [...byMessage].map(([message, [first = '', ...others]]) => ({
    ownerRef: others.length === 0 ? first : `${first} and ${others.length} more`,
    message,
  }));
}

/**
 * Writes the messages of every notice that has none yet: up to three fences of an owner get a message each, more become one
 * digest; visits of an owner that are told at the same time share one message. A notice that the stored forecast no longer supports is marked void instead. One transaction an owner; killed half-way it goes on where it stopped, and no notice gets two messages.
 */
export async function composeNotices(
  register: Register,
  options: { readonly now: Clock; readonly sender: Sender; readonly signal?: AbortSignal },
): Promise<ComposeReport> {
  let [mails, letters] = [0, 0];
  const secret = await mailSecret(register, newSecret());
  const failures: { ownerRef: string; message: string }[] = [];
  for (const ownerRef of await listOwnersToWriteTo(register)) {
    if (options.signal?.aborted) break;
    try {
      const owner = await readRecord(register.db, 'owners', ownerRef);
      if (!owner) continue;
      const messages = await writeToOwner(register, owner, { ...options, secret });
      mails += messages.filter((message) => message.channel === 'mail').length;
      letters += messages.filter((message) => message.channel === 'letter').length;
    } catch (error) {
      failures.push({ ownerRef, message: error instanceof Error ? error.message : String(error) });
    }
  }
  return { mails, letters, failures: gathered(failures) };
}
