import { crewEntryText, siteEntryText } from '../drawing/calendar-words.ts';
import { visitSummary } from '../drawing/visit-words.ts';
import type { Register } from '../register/database.ts';
import { answeringFeedLink, type FeedSubject } from '../register/feed-link-store.ts';
import { readRecord } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { listVisits } from '../register/visit-store.ts';
import { visitsMovedAway } from '../register/visits-moved-away.ts';
import { membersOn } from '../season/crew-hours.ts';
import type { SheetOwner } from '../season/visit/day-sheet.ts';
import type { Visit } from '../season/visit/visit.ts';
import { visitReminders } from '../season/visit/visit-reminders.ts';
import type { WorksCatalogue } from '../season/works-catalogue.ts';
import { addDays } from '../units/calendar-day.ts';
import { type CalendarEvent, calendarText } from './calendar-text.ts';
import { sha256 } from './canonical-json.ts';
import type { Clock } from './clock.ts';
import { dayInZone, isoUtc } from './clock.ts';
import { storedSecret } from './feed-links.ts';
import { type CrewInRegister, loadCatalogue, loadCrews } from './season-register.ts';
import { visitSpan } from './visit-span.ts';
import { siteWhere, type VisitSurroundings, visitSurroundings } from './visit-surroundings.ts';

/** A visit that is over stays in the feed for so long [d]. */
const PAST_DAYS = 366;
/** A visit that will not be stays as cancelled for so long, so that every calendar hears of it [d]. */
const CANCELLED_DAYS = 60;

/** A calendar as it is served. */
export interface CalendarFeed {
  readonly text: string;
  /** Changes with the text. */
  readonly etag: string;
}

interface FeedParts extends VisitSurroundings {
  readonly kind: FeedSubject['kind'];
  readonly crews: ReadonlyMap<string, CrewInRegister>;
  readonly catalogue: WorksCatalogue;
}

const withoutTwins = (owners: readonly SheetOwner[]): readonly SheetOwner[] => [
  ...new Map(owners.map((owner) => [JSON.stringify(owner), owner])).values(),
];

function descriptionOf(visit: Visit, { kind, crews, catalogue, fences }: FeedParts): string {
  if (kind === 'site') return siteEntryText(visit, crews.get(visit.crewRef)?.name ?? visit.crewRef);
  return crewEntryText({
    visit,
    accessNotes: new Map(visit.items.map(({ fenceRef }) => [fenceRef, fences.get(fenceRef)?.accessNote ?? ''])),
    owners: withoutTwins(visit.items.flatMap(({ fenceRef }) => fences.get(fenceRef)?.owners ?? [])),
    reminders: visitReminders(visit, catalogue).filter((reminder) => reminder.kind !== 'frozen-ground'),
  });
}

function eventOf(visit: Visit, parts: FeedParts): CalendarEvent {
  const site = parts.sites.get(visit.siteRef);
  if (!site) throw new Error(`visit ${visit.uid} goes to site ${visit.siteRef}, which is not in the register`);
  const crew = parts.crews.get(visit.crewRef);
  const people = crew ? membersOn(crew.times, visit.firstDay).length : 1;
  return {
    uid: visit.uid,
    sequence: visit.sequence,
    state: visit.state,
    span: visitSpan(visit, site.timeZone, people),
    summary: visitSummary(visit, site.name),
    description: descriptionOf(visit, parts),
    location: `${site.name}, ${site.place}`,
    place: siteWhere(site),
    changedAt: visit.changedAt,
  };
}

async function subjectName({ db }: Register, { kind, ref }: FeedSubject): Promise<string | null> {
  const record = await readRecord(db, kind === 'crew' ? 'crews' : 'sites', ref);
  return record ? record.name : null;
}

async function visitsOf({ db }: Register, { kind, ref }: FeedSubject, now: Clock): Promise<readonly Visit[]> {
  const { timeZone } = await readSettings(db);
  const cancelledSince = isoUtc(now().minus({ days: CANCELLED_DAYS }));
  const from = addDays(dayInZone(now(), timeZone), -PAST_DAYS);
  const own = await listVisits(db, kind === 'crew' ? { crewRef: ref, from } : { siteRef: ref, from });
  const moved = kind === 'crew' ? await visitsMovedAway(db, ref, cancelledSince) : [];
  const isOff = ({ state }: Visit): boolean => state === 'missed' || state === 'cancelled';
  return [
    ...own.filter((visit) => !isOff(visit) || visit.changedAt >= cancelledSince),
    ...moved.map(
      ({ visit, firstDay, lastDay }): Visit => ({ ...visit, firstDay, lastDay, startsAt: null, state: 'cancelled' }),
    ),
  ].sort((a, b) => (a.firstDay < b.firstDay ? -1 : a.firstDay > b.firstDay ? 1 : a.uid < b.uid ? -1 : 1));
}

/** The calendar of a crew's or a site's visits; null where the register has no such crew or site. */
export async function calendarFeed(register: Register, subject: FeedSubject, now: Clock): Promise<CalendarFeed | null> {
  const name = await subjectName(register, subject);
  if (name === null) return null;
  const visits = await visitsOf(register, subject, now);
  const parts: FeedParts = {
    kind: subject.kind,
    ...(await visitSurroundings(register, visits)),
    crews: new Map((await loadCrews(register.db)).map((crew) => [crew.ref, crew])),
    catalogue: await loadCatalogue(register.db),
  };
  const text = calendarText(
    `Visits: ${name}`,
    visits.map((visit) => eventOf(visit, parts)),
  );
  return { text, etag: `"${sha256(text)}"` };
}

/** The calendar behind a secret; null where no link that answers has it. */
export async function calendarFeedBehind(register: Register, secret: string, now: Clock): Promise<CalendarFeed | null> {
  const stored = storedSecret(secret);
  const link = stored === null ? null : await answeringFeedLink(register.db, stored);
  return link ? calendarFeed(register, link, now) : null;
}
