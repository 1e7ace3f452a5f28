import { digestMessage } from '../notify/digest-message.ts';
import { fenceMessage } from '../notify/fence-message.ts';
import { BOARD_MATTER, isOfVisit, type Matter } from '../notify/matter-rules.ts';
import type { NoticedFence, OfficeFacts, OwnerMessage, RecipientFacts } from '../notify/message-facts.ts';
import { officeName } from '../notify/office-name.ts';
import type { WorksGain } from '../notify/works-gain.ts';
import type { WorksOffer } from '../notify/works-offer.ts';
import type { Register } from '../register/database.ts';
import type { FinishedMessage, StoredNotice } from '../register/notice-store.ts';
import {
  listOwnersToWriteTo,
  loadUnwrittenNotices,
  NoticeAlreadyWritten,
  postMessages,
} from '../register/notice-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import { readRecord } from '../register/record-store.ts';
import { cancelOlderMessages } from '../register/visit-notices.ts';
import { voidNotices } from '../register/void-notices.ts';
import type { Invitation } from './calendar-text.ts';
import { sha256 } from './canonical-json.ts';
import type { Clock } from './clock.ts';
import { dayInZone, isoUtc } from './clock.ts';
import { currentFences } from './current-fences.ts';
import { isDemoOwner } from './demo-owners.ts';
import { letterBytes, mailBytes } from './mail-bytes.ts';
import { noticedFence } from './noticed-fence.ts';
import type { CurrentFence } from './sift-notices.ts';
import { remindedSeason, sift } from './sift-notices.ts';
import { siftVisits } from './sift-visits.ts';
import { visitMessages } from './visit-messages.ts';
import { worksOffers } from './works-offers.ts';

/** Most fences of one owner that get a mail each; more are told in one digest. */
const MOST_SINGLE_MAILS = 3;
/** How often one owner's messages are begun anew because another process wrote some of them. */
const MOST_ROUNDS = 3;

/** Who writes, and from which address. */
export interface Sender {
  readonly office: OfficeFacts;
  /** Address that mails come from. */
  readonly from: string;
  /** What the office must still say about itself before a message may reach an owner, with the way out; null where nothing. */
  readonly gap: string | null;
  /** False where the service catches its own mail. */
  readonly mailReachesOwners: boolean;
  /** Zone in which letters are dated. */
  readonly timeZone: string;
}

/** How many messages were put into the outbox, and whom none could be written to. */
export interface ComposeReport {
  readonly mails: number;
  readonly letters: number;
  /** Their notices stay without a message and are tried again by the next call. */
  readonly failures: readonly { readonly ownerRef: string; readonly message: string }[];
}

type NoticesByFence = ReadonlyMap<string, readonly StoredNotice[]>;

function byFence(notices: readonly StoredNotice[]): NoticesByFence {
  const groups = new Map<string, StoredNotice[]>();
  for (const notice of notices) groups.set(notice.fenceRef, [...(groups.get(notice.fenceRef) ?? []), notice]);
  return groups;
}

/** What works gained, as it was found when they were told of. */
const gainOf = ({ matter, facts }: StoredNotice): WorksGain | null =>
  matter === 'works done' ? ((JSON.parse(facts) as { readonly gain?: WorksGain }).gain ?? null) : null;

function noticedFences(
  groups: NoticesByFence,
  fences: ReadonlyMap<string, CurrentFence>,
  { offers, now }: { readonly offers: ReadonlyMap<string, WorksOffer>; readonly now: Clock },
): readonly NoticedFence[] {
  return [...groups].flatMap(([ref, notices]) => {
    const fence = fences.get(ref);
    if (!fence) return [];
    const told = {
      matters: notices.map((notice) => notice.matter as Matter),
      first: notices.some((notice) => notice.first),
      remindedSeason: notices.map(remindedSeason).find((season) => season !== null) ?? null,
      gain: notices.map(gainOf).findLast((gain) => gain !== null) ?? null,
      offer: offers.get(ref) ?? null,
    };
    return noticedFence(fence, told, now);
  });
}

/** Throws where a message to this owner would go out from an office that has not said who it is. Caught mail harms nobody. */
function requireOffice(owner: OwnerRecord, sender: Sender): void {
  const reaches = owner.channel === 'mail' ? sender.mailReachesOwners : !isDemoOwner(owner);
  if (sender.gap !== null && reaches) throw new Error(sender.gap);
}

/** The id of a message follows from the notices it carries, so that the same notices never become two messages. */
function messageIdOf(ownerRef: string, notices: readonly StoredNotice[], from: string): string {
  const told = notices.map(({ fenceRef, matter, occasion }) => [fenceRef, matter, occasion]);
  return `<${sha256(JSON.stringify([ownerRef, told])).slice(0, 40)}@${from.split('@')[1] ?? 'localhost'}>`;
}

async function finish(
  owner: OwnerRecord,
  message: OwnerMessage,
  notices: readonly StoredNotice[],
  context: { readonly sender: Sender; readonly now: Clock; readonly invitation?: Invitation | null },
): Promise<FinishedMessage> {
  const { office, from } = context.sender;
  const messageId = messageIdOf(owner.ref, notices, from);
  const to = owner.channel === 'mail' ? owner.email : null;
  const raw = to
    ? await mailBytes({
        message,
        messageId,
        at: context.now(),
        from,
        to: { name: owner.name, address: to },
        office: { name: officeName(office, owner.language), email: office.email },
        invitation: context.invitation ?? null,
      })
    : letterBytes(message);
  return {
    messageId,
    ownerRef: owner.ref,
    channel: to ? 'mail' : 'letter',
    envelopeFrom: to ? from : null,
    envelopeTo: to,
    subject: message.subject,
    raw,
    sha256: sha256(raw),
    noticeIds: notices.map((notice) => notice.id),
  };
}

async function messagesFor(
  register: Register,
  owner: OwnerRecord,
  context: { readonly sender: Sender; readonly now: Clock },
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
  const ofSweeps = unwritten.filter(({ matter }) => !isOfVisit(matter));
  const current = await currentFences(register, [...new Set(ofSweeps.map((notice) => notice.fenceRef))]);
  const { told: notices, voids } = sift(ofSweeps, { owner, now: context.now }, current);
  const ofVisits = unwritten.filter(({ matter }) => isOfVisit(matter));
  const visits = await siftVisits(register, owner, ofVisits, context.now);
  await voidNotices(register, [...voids, ...visits.voids]);
  if (notices.length + visits.told.length > 0) requireOffice(owner, context.sender);
  const groups = byFence(notices);
  const toldOf = new Map([...current].filter(([ref]) => groups.has(ref)));
  const offers = await worksOffers(register, toldOf, context.now);
  const fences = noticedFences(groups, current, { offers, now: context.now });
  const coveringOf = (told: readonly StoredNotice[]): string | null =>
    told.map(({ covering }) => covering).find((covering) => covering !== null) ?? null;
  const recipient: RecipientFacts = {
    name: owner.name,
    language: owner.language,
    letter:
      owner.channel === 'letter'
        ? { postalAddress: owner.postalAddress ?? '', day: dayInZone(context.now(), context.sender.timeZone) }
        : null,
    covering: coveringOf(notices),
  };
  const { office } = context.sender;
  const { single, gathered: many } = parted(fences);
  const messages: FinishedMessage[] = [];
  for (const fence of single) {
    const told = groups.get(fence.forecast.fenceRef) ?? [];
    const mail = fenceMessage({ fence, recipient: { ...recipient, covering: coveringOf(told) }, office });
    messages.push(await finish(owner, mail, told, context));
  }
  if (many.length > 0) {
    const told = many.flatMap(({ forecast }) => groups.get(forecast.fenceRef) ?? []);
    messages.push(await finish(owner, digestMessage({ fences: many, recipient, office }), told, context));
  }
  for (const { visit } of visits.told) {
    const older = { visitUid: visit.uid, ownerRef: owner.ref, boardMatter: BOARD_MATTER };
    await cancelOlderMessages(register.db, older);
  }
  const withoutCovering = { ...recipient, covering: null };
  const teller = { owner, recipient: withoutCovering, office, now: context.now };
  for (const each of await visitMessages(register, visits.told, teller))
    messages.push(await finish(owner, each.message, each.notices, { ...context, invitation: each.invitation }));
  return messages;
}

/** Fences that get a message each: up to three, and up to three that are dangerous now whatever else there is to tell. */
function parted(fences: readonly NoticedFence[]): {
  readonly single: readonly NoticedFence[];
  readonly gathered: readonly NoticedFence[];
} {
  const isUrgent = ({ matters }: NoticedFence): boolean => matters.includes('dangerous');
  const urgent = fences.filter(isUrgent);
  if (fences.length <= MOST_SINGLE_MAILS) return { single: fences, gathered: [] };
  if (urgent.length > MOST_SINGLE_MAILS) return { single: [], gathered: fences };
  const rest = fences.filter((fence) => !isUrgent(fence));
  return rest.length <= MOST_SINGLE_MAILS
    ? { single: [...urgent, ...rest], gathered: [] }
    : { single: urgent, gathered: rest };
}

async function writeToOwner(
  register: Register,
  owner: OwnerRecord,
  context: { readonly sender: Sender; readonly now: Clock },
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
 * digest. A notice that the stored forecast no longer supports is marked void instead. One transaction an owner; killed half-way it goes on where it stopped, and no notice gets two messages.
 */
export async function composeNotices(
  register: Register,
  options: { readonly now: Clock; readonly sender: Sender; readonly signal?: AbortSignal },
): Promise<ComposeReport> {
  let [mails, letters] = [0, 0];
  const failures: { ownerRef: string; message: string }[] = [];
  for (const ownerRef of await listOwnersToWriteTo(register)) {
    if (options.signal?.aborted) break;
    try {
      const owner = await readRecord(register.db, 'owners', ownerRef);
      if (!owner) continue;
      const messages = await writeToOwner(register, owner, options);
      mails += messages.filter((message) => message.channel === 'mail').length;
      letters += messages.filter((message) => message.channel === 'letter').length;
    } catch (error) {
      failures.push({ ownerRef, message: error instanceof Error ? error.message : String(error) });
    }
  }
  return { mails, letters, failures: gathered(failures) };
}
