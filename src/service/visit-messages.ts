import { boardMessage } from '../notify/board-message.ts';
import { BOARD_MATTER, type VisitMatter } from '../notify/matter-rules.ts';
import type { OfficeFacts, OwnerMessage, RecipientFacts } from '../notify/message-facts.ts';
import { officeName } from '../notify/office-name.ts';
import { oneLine } from '../notify/plain-words.ts';
import type { ToldItem, ToldVisitFacts } from '../notify/visit-facts.ts';
import { itemText, visitMessage } from '../notify/visit-message.ts';
import { visitWordsOf } from '../notify/visit-words-of.ts';
import type { Register } from '../register/database.ts';
import { loadFenceParties } from '../register/fence-parties-store.ts';
import type { StoredNotice } from '../register/notice-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import { listRecords, readRecord } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { listVisits } from '../register/visit-store.ts';
import { membersOn } from '../season/crew-hours.ts';
import { budgetRange } from '../season/money/budget-range.ts';
import type { Visit } from '../season/visit/visit.ts';
import { visitReminders } from '../season/visit/visit-reminders.ts';
import { SHIPPED_CATALOGUE, type WorksCatalogue } from '../season/works-catalogue.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import { type Invitation, invitation } from './calendar-text.ts';
import { type Clock, dayInZone } from './clock.ts';
import { forecastFences } from './current-fences.ts';
import type { LinksOfMessage } from './message-links.ts';
import { noticedFence } from './noticed-fence.ts';
import { type CrewInRegister, loadCatalogue, loadCrews } from './season-register.ts';
import type { VisitNotices } from './sift-visits.ts';
import { keptFacts } from './tell-of-visit.ts';
import { visitSpan } from './visit-span.ts';
import { siteWhere } from './visit-surroundings.ts';

/** An answer to a proposed day is of use until so many days before it [d]; judgement. */
const ANSWER_DAYS = 5;

/** A fence that a message explains a visit by, and tells nothing new of. */
const NOTHING_TOLD = { matters: [], first: false, remindedSeason: null, gain: null, offer: null } as const;

/** A message about visits, and the notices it carries. */
export interface VisitMessage {
  readonly message: OwnerMessage;
  readonly notices: readonly StoredNotice[];
  readonly invitation: Invitation | null;
  /** The links that it holds; null where it holds none. */
  readonly links: LinksOfMessage | null;
}

interface Parts {
  /** The links of the message that carries these notices; null for a letter. */
  readonly linksOf: (notices: readonly StoredNotice[]) => Promise<LinksOfMessage | null>;
  readonly owner: OwnerRecord;
  readonly recipient: RecipientFacts;
  readonly office: OfficeFacts;
  readonly now: Clock;
  readonly currency: string;
  readonly catalogue: WorksCatalogue;
  readonly crews: ReadonlyMap<string, CrewInRegister>;
}

/** What a visit does at some fences and may cost; a fence that is no longer on it has nothing. */
function itemsAt(visit: Visit, fenceRefs: readonly string[], catalogue: WorksCatalogue): readonly ToldItem[] {
  return fenceRefs.map((fenceRef) => {
    const item = visit.items.find((each) => each.fenceRef === fenceRef);
    if (!item) return { fenceRef, works: [], cost: { low: 0, high: 0 } };
    const isShipped = item.works.some(({ kind }) => catalogue[kind].source === SHIPPED_CATALOGUE[kind].source);
    return { fenceRef, works: item.works, cost: budgetRange(item.price, isShipped ? 'shipped' : 'office') };
  });
}

/** The last day on which an answer helps: some days before the visit, never one that is past. */
function answerDay({ firstDay }: Visit, today: CalendarDay): CalendarDay {
  const wanted = addDays(firstDay, -ANSWER_DAYS);
  if (wanted > today) return wanted;
  const before = addDays(firstDay, -1);
  return before > today ? before : today;
}

const fenceRefsOf = (notices: readonly StoredNotice[]): readonly string[] => [
  ...new Set(notices.map(({ fenceRef }) => fenceRef)),
];

function factsOf(
  visit: Visit,
  notices: readonly StoredNotice[],
  site: { name: string; place: string },
  parts: Parts,
): ToldVisitFacts {
  const [first] = notices;
  const facts = first ? keptFacts(first) : null;
  return {
    uid: visit.uid,
    firstDay: visit.firstDay,
    lastDay: visit.lastDay,
    startsAt: visit.startsAt,
    state: facts?.state ?? visit.state,
    siteName: site.name,
    place: site.place,
    crewName: parts.crews.get(visit.crewRef)?.name ?? visit.crewRef,
    items: itemsAt(visit, fenceRefsOf(notices), parts.catalogue),
    before: facts?.before ?? null,
  };
}

/** The entry for the owner's calendar: the same visit as in the feeds, with the owner's fences alone. */
async function entryFor(
  register: Register,
  visit: Visit,
  told: ToldVisitFacts,
  parts: Parts,
): Promise<Invitation | null> {
  const { owner, recipient, office } = parts;
  const site = await readRecord(register.db, 'sites', visit.siteRef);
  if (!site || owner.channel !== 'mail' || owner.email === null) return null;
  const words = visitWordsOf(recipient.language);
  const crew = parts.crews.get(visit.crewRef);
  const refs = told.items.map(({ fenceRef }) => fenceRef);
  const name = officeName(office, recipient.language);
  return invitation(
    {
      uid: visit.uid,
      sequence: visit.sequence,
      state: told.state,
      span: visitSpan(visit, site.timeZone, crew ? membersOn(crew.times, visit.firstDay).length : 1),
      summary: `${words.calendar.state[told.state]}${words.fences(refs)}, ${site.name}`,
      description: [
        ...told.items.map((item) => [item.fenceRef, itemText(item, words)].filter(Boolean).join(': ')),
        told.crewName,
        [name, office.phone, office.email].filter(Boolean).join(', '),
      ].join('\n'),
      location: `${site.name}, ${site.place}`,
      place: siteWhere(site),
      changedAt: visit.changedAt,
    },
    {
      organizer: { name, email: office.email },
      attendee: { name: oneLine(owner.name), email: owner.email },
    },
  );
}

/** Whom the message of some notices is written to, with the office's own sentence and the links. */
const readerOf = (
  recipient: RecipientFacts,
  notices: readonly StoredNotice[],
  links: LinksOfMessage | null,
): RecipientFacts => ({
  ...recipient,
  covering: notices.find(({ covering }) => covering !== null)?.covering ?? null,
  ...(links ? { links: links.pages } : {}),
});

async function oneVisit(
  register: Register,
  { visit, notices, parties }: VisitNotices,
  parts: Parts,
): Promise<VisitMessage> {
  const { recipient, office, now, catalogue, currency } = parts;
  const [first] = notices;
  const party = first && parties.get(first.fenceRef);
  if (!first || !party) throw new Error(`visit ${visit.uid} has no notice to tell`);
  const today = dayInZone(now(), party.site.timeZone);
  const facts = factsOf(visit, notices, party.site, parts);
  const forecasts = await forecastFences(register, fenceRefsOf(notices));
  const items = visit.items.filter(({ fenceRef }) => facts.items.some((item) => item.fenceRef === fenceRef));
  const links = await parts.linksOf(notices);
  const message = visitMessage({
    visit: {
      ...facts,
      matter: first.matter as VisitMatter,
      currency,
      answerBy: answerDay(visit, today),
      // frozen ground is for the crew to see: the plan keeps to the site's days
      reminders: visitReminders({ ...visit, items }, catalogue)
        .map(({ kind }) => kind)
        .filter((kind) => kind !== 'frozen-ground'),
      fences: [...forecasts.values()].map((fence) => noticedFence(fence, NOTHING_TOLD, now)),
    },
    recipient: readerOf(recipient, notices, links),
    office,
  });
  return { message, notices, links, invitation: await entryFor(register, visit, facts, parts) };
}

/** The plan of an association: the visits of its notices, and those to its fences that stood before and still do. */
async function boardPlan(register: Register, told: readonly VisitNotices[], parts: Parts): Promise<VisitMessage> {
  const { owner, recipient, office, now, catalogue, currency } = parts;
  const notices = told.flatMap((each) => each.notices);
  const noLonger = told.filter((each) => each.notices.some((notice) => keptFacts(notice).state === 'cancelled'));
  const siteRefs = new Map((await listRecords(register.db, 'sites')).map((site) => [site.ref, site]));
  const standing = await listVisits(register.db, { states: ['proposed', 'confirmed'] });
  const parties = await loadFenceParties(
    register,
    standing.flatMap(({ items }) => items.map(({ fenceRef }) => fenceRef)),
  );
  const isOwn = (ref: string): boolean => parties.get(ref)?.owners.some((each) => each.ref === owner.ref) ?? false;
  const planned = standing.flatMap((visit): readonly ToldVisitFacts[] => {
    const site = siteRefs.get(visit.siteRef);
    const refs = visit.items.map(({ fenceRef }) => fenceRef).filter(isOwn);
    if (!site || refs.length === 0 || visit.lastDay < dayInZone(now(), site.timeZone)) return [];
    return [{ ...factsOf(visit, [], site, parts), items: itemsAt(visit, refs, catalogue) }];
  });
  const refs = planned.flatMap(({ items }) => items.map(({ fenceRef }) => fenceRef));
  const forecasts = await forecastFences(register, [...new Set(refs)]);
  const links = await parts.linksOf(notices);
  const message = boardMessage({
    plan: {
      planned,
      noLonger: noLonger.flatMap((each) => {
        const site = siteRefs.get(each.visit.siteRef);
        return site ? [factsOf(each.visit, each.notices, site, parts)] : [];
      }),
      currency,
      fences: [...forecasts.values()].map((fence) => noticedFence(fence, NOTHING_TOLD, now)),
    },
    recipient: readerOf(recipient, notices, links),
    office,
  });
  return { message, notices, links, invitation: null };
}

/** The messages of one owner's notices of visits: one a visit, and one for a season plan. */
export async function visitMessages(
  register: Register,
  told: readonly VisitNotices[],
  who: Pick<Parts, 'owner' | 'recipient' | 'office' | 'now' | 'linksOf'>,
): Promise<readonly VisitMessage[]> {
  if (told.length === 0) return [];
  const { currency } = await readSettings(register.db);
  const parts: Parts = {
    ...who,
    currency,
    catalogue: await loadCatalogue(register.db),
    crews: new Map((await loadCrews(register.db)).map((crew) => [crew.ref, crew])),
  };
  const isOfPlan = ({ notices }: VisitNotices): boolean => notices.some(({ matter }) => matter === BOARD_MATTER);
  const ofPlan = told.filter(isOfPlan);
  const messages: VisitMessage[] = [];
  for (const each of told.filter((one) => !isOfPlan(one))) messages.push(await oneVisit(register, each, parts));
  if (ofPlan.length > 0) messages.push(await boardPlan(register, ofPlan, parts));
  return messages;
}
