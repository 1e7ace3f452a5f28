import { digestMessage } from '../notify/digest-message.ts';
import { fenceMessage } from '../notify/fence-message.ts';
import type { Matter } from '../notify/matter-rules.ts';
import type { NoticedFence, OfficeFacts, OwnerMessage, RecipientFacts } from '../notify/message-facts.ts';
import { officeName } from '../notify/office-name.ts';
import type { WorksGain } from '../notify/works-gain.ts';
import type { WorksOffer } from '../notify/works-offer.ts';
import type { Register } from '../register/database.ts';
import type { FinishedMessage, StoredNotice } from '../register/notice-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import type { Invitation } from './calendar-text.ts';
import { sha256 } from './canonical-json.ts';
import type { Clock } from './clock.ts';
import { dayInZone } from './clock.ts';
import { letterBytes, mailBytes } from './mail-bytes.ts';
import type { DkimIdentity } from './mail-signature.ts';
import { signedBytes } from './mail-signature.ts';
import { type LinksOfMessage, linksForMessage } from './message-links.ts';
import { messageParts } from './message-parts.ts';
import { noticedFence } from './noticed-fence.ts';
import { returnAddressOf } from './return-address.ts';
import type { CurrentFence } from './sift-notices.ts';
import { remindedSeason } from './sift-notices.ts';
import type { VisitNotices } from './sift-visits.ts';
import { visitMessages } from './visit-messages.ts';
import { worksOffers } from './works-offers.ts';

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
  /** What mails are signed with; not signed where not given. */
  readonly dkim?: DkimIdentity | null;
  /** Pattern of the addresses that delivery reports come back to; `from` where not given. */
  readonly returnPattern?: string | null;
  /** Where owners reach their pages; null where nowhere: then mails hold no links. */
  readonly publicUrl: string | null;
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

/** The id of a message follows from the notices it carries, so that the same notices never become two messages. */
function messageIdOf(ownerRef: string, notices: readonly StoredNotice[], from: string): string {
  const told = notices.map(({ fenceRef, matter, occasion }) => [fenceRef, matter, occasion]);
  return `<${sha256(JSON.stringify([ownerRef, told])).slice(0, 40)}@${from.split('@')[1] ?? 'localhost'}>`;
}

/** What messages are written with. */
export interface Composing {
  readonly sender: Sender;
  readonly now: Clock;
  /** Signs the addresses that delivery reports come back to. */
  readonly secret: string;
}

/** The links of a mail; none in a letter, and none where owners reach no pages. */
async function linksOf(
  register: Register,
  owner: OwnerRecord,
  notices: readonly StoredNotice[],
  { sender, now }: Composing,
): Promise<LinksOfMessage | null> {
  const { publicUrl, from } = sender;
  if (publicUrl === null || owner.channel !== 'mail') return null;
  const message = { owner, messageId: messageIdOf(owner.ref, notices, from) };
  return linksForMessage(register, message, { publicUrl, now });
}

async function finish(
  owner: OwnerRecord,
  message: OwnerMessage,
  notices: readonly StoredNotice[],
  context: Composing & { readonly links: LinksOfMessage | null; readonly invitation?: Invitation | null },
): Promise<FinishedMessage> {
  const { office, from, dkim = null, returnPattern = null } = context.sender;
  const messageId = messageIdOf(owner.ref, notices, from);
  // news of danger is a list of its own: no mail program stops it unasked
  const oneClick = notices.every(({ matter }) => matter !== 'dangerous');
  const to = owner.channel === 'mail' ? owner.email : null;
  const written = to
    ? await mailBytes({
        message,
        messageId,
        at: context.now(),
        from,
        to: { name: owner.name, address: to },
        office: { name: officeName(office, owner.language), email: office.email },
        invitation: context.invitation ?? null,
        ...(context.links ? { list: { unsubscribeUrl: context.links.unsubscribeUrl, oneClick } } : {}),
      })
    : letterBytes(message);
  const raw = to && dkim ? await signedBytes(written, dkim) : written;
  const envelopeFrom = returnPattern ? returnAddressOf(messageId, returnPattern, context.secret) : from;
  return {
    messageId,
    ownerRef: owner.ref,
    channel: to ? 'mail' : 'letter',
    envelopeFrom: to ? envelopeFrom : null,
    envelopeTo: to,
    subject: message.subject,
    raw,
    sha256: sha256(raw),
    noticeIds: notices.map((notice) => notice.id),
    urgent: notices.some(({ matter }) => matter === 'dangerous'),
  };
}

/** What an owner is told of: of fences as they are now, and of visits. */
export interface ToTell {
  readonly notices: readonly StoredNotice[];
  readonly visits: readonly VisitNotices[];
  readonly current: ReadonlyMap<string, CurrentFence>;
}

/** The messages that tell an owner these notices. */
export async function messagesOf(
  register: Register,
  owner: OwnerRecord,
  { notices, visits, current }: ToTell,
  context: Composing,
): Promise<readonly FinishedMessage[]> {
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
    const links = await linksOf(register, owner, told, context);
    const reader = { ...recipient, covering: coveringOf(told), ...(links ? { links: links.pages } : {}) };
    messages.push(await finish(owner, fenceMessage({ fence, recipient: reader, office }), told, { ...context, links }));
  }
  if (many.length > 0) {
    const told = many.flatMap(({ forecast }) => groups.get(forecast.fenceRef) ?? []);
    const links = await linksOf(register, owner, told, context);
    const reader = { ...recipient, ...(links ? { links: links.pages } : {}) };
    const mail = digestMessage({ fences: many, recipient: reader, office });
    messages.push(await finish(owner, mail, told, { ...context, links }));
  }
  const withoutCovering = { ...recipient, covering: null };
  const teller = {
    owner,
    recipient: withoutCovering,
    office,
    now: context.now,
    linksOf: (told: readonly StoredNotice[]) => linksOf(register, owner, told, context),
  };
  for (const each of await visitMessages(register, visits, teller))
    messages.push(
      await finish(owner, each.message, each.notices, { ...context, links: each.links, invitation: each.invitation }),
    );
  return messages;
}

/** Fences that get a message each, and those that are gathered in one. */
function parted(fences: readonly NoticedFence[]): {
  readonly single: readonly NoticedFence[];
  readonly gathered: readonly NoticedFence[];
} {
  const isUrgent = ({ matters }: NoticedFence): boolean => matters.includes('dangerous');
  const urgent = fences.filter(isUrgent);
  switch (messageParts(fences.length, urgent.length)) {
    case 'each':
      return { single: [...urgent, ...fences.filter((fence) => !isUrgent(fence))], gathered: [] };
    case 'dangerous each':
      return { single: urgent, gathered: fences.filter((fence) => !isUrgent(fence)) };
    case 'digest':
      return { single: [], gathered: fences };
  }
}
