import type { VisitMatter } from '../notify/matter-rules.ts';
import type { OfficeFacts, RecipientFacts } from '../notify/message-facts.ts';
import { officeName } from '../notify/office-name.ts';
import { oneLine } from '../notify/plain-words.ts';
import type { ToldItem, ToldVisitFacts, VisitToTell } from '../notify/visit-facts.ts';
import { itemText } from '../notify/visit-message.ts';
import { visitWordsOf } from '../notify/visit-words-of.ts';
import type { Register } from '../register/database.ts';
import { loadFenceParties } from '../register/fence-parties-store.ts';
import type { StoredNotice } from '../register/notice-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import { readRecord } from '../register/record-store.ts';
import { membersOn } from '../season/crew-hours.ts';
import { budgetRange } from '../season/money/budget-range.ts';
import type { Visit } from '../season/visit/visit.ts';
import { visitReminders } from '../season/visit/visit-reminders.ts';
import { SHIPPED_CATALOGUE, type WorksCatalogue } from '../season/works-catalogue.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import type { CalendarEvent, invitation } from './calendar-text.ts';
import { type Clock, dayInZone } from './clock.ts';
import { forecastFences } from './current-fences.ts';
import type { LinksOfMessage } from './message-links.ts';
import { noticedFence } from './noticed-fence.ts';
import type { CrewInRegister } from './season-register.ts';
import type { VisitNotices } from './sift-visits.ts';
import { keptFacts } from './tell-of-visit.ts';
import { isShared, offeredDays } from './visit-days.ts';
import { visitSpan } from './visit-span.ts';
import { siteWhere } from './visit-surroundings.ts';

/** An answer to a proposed day is of use until so many days before it [d]; judgement. */
const ANSWER_DAYS = 5;

/** A fence that a message explains a visit by, and tells nothing new of. */
export const NOTHING_TOLD = { matters: [], first: false, remindedSeason: null, gain: null, offer: null } as const;

/** What messages about visits to one owner are made with. */
export interface TellingParts {
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
export function itemsAt(visit: Visit, fenceRefs: readonly string[], catalogue: WorksCatalogue): readonly ToldItem[] {
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

/** A visit as its notices tell of it; of one that is told without any, as it is now. */
export function factsOf(
  visit: Visit,
  notices: readonly StoredNotice[],
  site: { name: string; place: string },
  parts: TellingParts,
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

/** A visit as the owner's calendar shows it: the same as in the feeds, with the owner's fences alone. Null where no mail goes out. */
export async function eventFor(
  register: Register,
  visit: Visit,
  told: ToldVisitFacts,
  parts: TellingParts,
): Promise<{ readonly event: CalendarEvent; readonly parties: Parameters<typeof invitation>[1] } | null> {
  const { owner, recipient, office } = parts;
  const site = await readRecord(register.db, 'sites', visit.siteRef);
  if (!site || owner.channel !== 'mail' || owner.email === null) return null;
  const words = visitWordsOf(recipient.language);
  const crew = parts.crews.get(visit.crewRef);
  const refs = told.items.map(({ fenceRef }) => fenceRef);
  const name = officeName(office, recipient.language);
  return {
    event: {
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
    parties: {
      organizer: { name, email: office.email },
      attendee: { name: oneLine(owner.name), email: owner.email },
    },
  };
}

/** One visit as a message tells of it. */
export async function visitToTell(
  register: Register,
  { visit, notices, parties }: VisitNotices,
  parts: TellingParts & { readonly hasPages: boolean },
): Promise<VisitToTell> {
  const { now, catalogue, currency } = parts;
  const [first] = notices;
  const party = first && parties.get(first.fenceRef);
  if (!first || !party) throw new Error(`visit ${visit.uid} has no notice to tell`);
  const today = dayInZone(now(), party.site.timeZone);
  const facts = factsOf(visit, notices, party.site, parts);
  const forecasts = await forecastFences(register, fenceRefsOf(notices));
  const items = visit.items.filter(({ fenceRef }) => facts.items.some((item) => item.fenceRef === fenceRef));
  const isOpen = parts.hasPages && visit.state === 'proposed' && facts.state === 'proposed';
  const ofVisit = await loadFenceParties(
    register,
    visit.items.map(({ fenceRef }) => fenceRef),
  );
  const mayAnswer = isOpen && (await offeredDays(register, visit, today)).length > 0;
  return {
    ...facts,
    matter: first.matter as VisitMatter,
    currency,
    answerBy: answerDay(visit, today),
    // frozen ground is for the crew to see: the plan keeps to the site's days
    reminders: visitReminders({ ...visit, items }, catalogue)
      .map(({ kind }) => kind)
      .filter((kind) => kind !== 'frozen-ground'),
    dayChoice: mayAnswer ? (isShared([...ofVisit.values()]) ? 'mark' : 'choose') : null,
    fences: [...forecasts.values()].map((fence) => noticedFence(fence, NOTHING_TOLD, now)),
  };
}
