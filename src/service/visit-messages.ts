import { boardMessage } from '../notify/board-message.ts';
import { BOARD_MATTER } from '../notify/matter-rules.ts';
import type { OwnerMessage, RecipientFacts } from '../notify/message-facts.ts';
import { officeName } from '../notify/office-name.ts';
import type { ToldVisitFacts, VisitToTell } from '../notify/visit-facts.ts';
import { visitMessage } from '../notify/visit-message.ts';
import { visitsMessage } from '../notify/visits-message.ts';
import type { Register } from '../register/database.ts';
import { loadFenceParties } from '../register/fence-parties-store.ts';
import type { StoredNotice } from '../register/notice-store.ts';
import { listRecords } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { listVisits } from '../register/visit-store.ts';
import { type CalendarEvent, calendarText, type Invitation, invitation } from './calendar-text.ts';
import { dayInZone } from './clock.ts';
import { forecastFences } from './current-fences.ts';
import type { LinksOfMessage } from './message-links.ts';
import { noticedFence } from './noticed-fence.ts';
import { loadCatalogue, loadCrews } from './season-register.ts';
import type { VisitNotices } from './sift-visits.ts';
import { keptFacts } from './tell-of-visit.ts';
import { eventFor, factsOf, itemsAt, NOTHING_TOLD, type TellingParts, visitToTell } from './visit-to-tell.ts';

/** A message about visits, and the notices it carries. */
export interface VisitMessage {
  readonly message: OwnerMessage;
  readonly notices: readonly StoredNotice[];
  readonly invitation: Invitation | null;
  /** The links that it holds; null where it holds none. */
  readonly links: LinksOfMessage | null;
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

async function oneVisit(register: Register, told: VisitNotices, parts: TellingParts): Promise<VisitMessage> {
  const { recipient, office } = parts;
  const { visit, notices } = told;
  const links = await parts.linksOf(notices);
  const facts = await visitToTell(register, told, { ...parts, hasPages: links !== null });
  const message = visitMessage({ visit: facts, recipient: readerOf(recipient, notices, links), office });
  const entry = await eventFor(register, visit, facts, parts);
  return { message, notices, links, invitation: entry && invitation(entry.event, entry.parties) };
}

/** Several visits that are told at the same time, in one message with one calendar file. */
async function severalVisits(
  register: Register,
  told: readonly VisitNotices[],
  parts: TellingParts,
): Promise<VisitMessage> {
  const { recipient, office } = parts;
  const notices = told.flatMap((each) => each.notices);
  const links = await parts.linksOf(notices);
  const visits: VisitToTell[] = [];
  const events: CalendarEvent[] = [];
  const byDay = [...told].sort((a, b) => (a.visit.firstDay < b.visit.firstDay ? -1 : 1));
  for (const each of byDay) {
    const facts = await visitToTell(register, each, { ...parts, hasPages: links !== null });
    visits.push(facts);
    const entry = await eventFor(register, each.visit, facts, parts);
    if (entry) events.push(entry.event);
  }
  const message = visitsMessage({
    visits,
    recipient: readerOf(recipient, notices, links),
    office,
    calendar:
      events.length === 0
        ? null
        : {
            name: 'visits.ics',
            contentType: 'text/calendar; charset=utf-8; method=PUBLISH',
            text: calendarText(officeName(office, recipient.language), events),
          },
  });
  return { message, notices, links, invitation: null };
}

/** The plan of an association: the visits of its notices, and those to its fences that stood before and still do. */
async function boardPlan(
  register: Register,
  told: readonly VisitNotices[],
  parts: TellingParts,
): Promise<VisitMessage> {
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

/** The messages of one owner's notices of visits: one for all of them, with what holds of several once, and one for a season plan. */
export async function visitMessages(
  register: Register,
  told: readonly VisitNotices[],
  who: Pick<TellingParts, 'owner' | 'recipient' | 'office' | 'now' | 'linksOf'>,
): Promise<readonly VisitMessage[]> {
  if (told.length === 0) return [];
  const { currency } = await readSettings(register.db);
  const parts: TellingParts = {
    ...who,
    currency,
    catalogue: await loadCatalogue(register.db),
    crews: new Map((await loadCrews(register.db)).map((crew) => [crew.ref, crew])),
  };
  const isOfPlan = ({ notices }: VisitNotices): boolean => notices.some(({ matter }) => matter === BOARD_MATTER);
  const ofPlan = told.filter(isOfPlan);
  const messages: VisitMessage[] = [];
  const single = told.filter((one) => !isOfPlan(one));
  const [only, ...others] = single;
  if (only && others.length === 0) messages.push(await oneVisit(register, only, parts));
  else if (only) messages.push(await severalVisits(register, single, parts));
  if (ofPlan.length > 0) messages.push(await boardPlan(register, ofPlan, parts));
  return messages;
}
