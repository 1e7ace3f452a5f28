import ical, {
  escape as escapedText,
  ICalAttendeeRole,
  ICalAttendeeStatus,
  type ICalCalendar,
  ICalCalendarMethod,
  ICalEventBusyStatus,
  ICalEventStatus,
  ICalEventTransparency,
} from 'ical-generator';
import type { Place } from '../season/travel.ts';
import type { Visit } from '../season/visit/visit.ts';
import type { VisitSpan } from './visit-span.ts';

/** One visit as a calendar shows it. */
export interface CalendarEvent {
  readonly uid: string;
  readonly sequence: number;
  readonly state: Visit['state'];
  readonly span: VisitSpan;
  readonly summary: string;
  readonly description: string;
  readonly location: string;
  readonly place: Place | null;
  /** When it was last changed (ISO 8601, UTC). */
  readonly changedAt: string;
}

/** How often a calendar is asked to look again [s]. */
const LOOK_AGAIN_SECONDS = 3600;

const STATUS: Readonly<Record<Visit['state'], ICalEventStatus>> = {
  proposed: ICalEventStatus.TENTATIVE,
  confirmed: ICalEventStatus.CONFIRMED,
  done: ICalEventStatus.CONFIRMED,
  missed: ICalEventStatus.CANCELLED,
  cancelled: ICalEventStatus.CANCELLED,
};

const BUSY: Readonly<Record<Visit['state'], ICalEventBusyStatus>> = {
  proposed: ICalEventBusyStatus.TENTATIVE,
  confirmed: ICalEventBusyStatus.BUSY,
  done: ICalEventBusyStatus.BUSY,
  missed: ICalEventBusyStatus.FREE,
  cancelled: ICalEventBusyStatus.FREE,
};

/** What no text of a calendar may hold: control characters other than tab and line end. Source: RFC 5545, 3.3.11 (memory). */
const CONTROL = /(?![\t\n\r])\p{Cc}/gu;
const clean = (text: string): string => text.replace(CONTROL, '');

/** A calendar day as the moment that stands for it, so that no zone of the machine moves it. */
const midnightUtc = (day: string): Date => new Date(`${day}T00:00:00Z`);

/** The uid of a visit in every calendar, through every change. */
const calendarUid = (uid: string): string => `${uid}@stormpale`;

function addEvent(calendar: ICalCalendar, event: CalendarEvent) {
  const { span, place, changedAt, state } = event;
  const when =
    span.kind === 'days'
      ? { start: midnightUtc(span.firstDay), end: midnightUtc(span.dayAfter), allDay: true }
      : { start: span.start, end: span.end };
  return calendar.createEvent({
    id: calendarUid(event.uid),
    sequence: event.sequence,
    stamp: new Date(changedAt),
    lastModified: new Date(changedAt),
    ...when,
    summary: clean(event.summary),
    description: clean(event.description),
    location: {
      title: clean(event.location),
      ...(place ? { geo: { lat: place.latitude, lon: place.longitude } } : {}),
    },
    status: STATUS[state],
    busystatus: BUSY[state],
    transparency:
      state === 'missed' || state === 'cancelled' ? ICalEventTransparency.TRANSPARENT : ICalEventTransparency.OPAQUE,
  });
}

const PRODUCT = { company: 'Stormpale', product: 'Visits', language: 'EN' } as const;

/**
 * A calendar of visits as iCalendar text (RFC 5545): whole days as dates, times in UTC, lines of at most 75 octets. The same
 * events give the same bytes.
 */
export function calendarText(name: string, events: readonly CalendarEvent[]): string {
  const calendar = ical({
    // The library writes the name as it stands.
    name: escapedText(clean(name), false),
    prodId: PRODUCT,
    method: ICalCalendarMethod.PUBLISH,
    ttl: LOOK_AGAIN_SECONDS,
  });
  for (const event of events) addEvent(calendar, event);
  return `${calendar.toString()}\r\n`;
}

/** A person or office in a calendar entry. */
interface CalendarParty {
  readonly name: string;
  readonly email: string;
}

/** What a name may not hold where it stands between quotation marks. Source: RFC 5545, 3.2 (memory). */
const quotable = (name: string): string =>
  name
    .replace(/[\p{Cc}\u2028\u2029]+/gu, ' ')
    .replaceAll('"', "'")
    .trim();

/** An entry that goes to one owner by mail, and what a calendar is to do with it. */
export interface Invitation {
  readonly method: 'REQUEST' | 'CANCEL';
  readonly text: string;
}

/**
 * One visit as an entry that is mailed to an owner (RFC 5546): asked for, or called off where the visit is off. Its uid is that of the feeds,
 * its sequence rises with every change, so that each message changes the same entry.
 */
export function invitation(
  event: CalendarEvent,
  { organizer, attendee }: { readonly organizer: CalendarParty; readonly attendee: CalendarParty },
): Invitation {
  const isOff = event.state === 'cancelled' || event.state === 'missed';
  const method = isOff ? 'CANCEL' : 'REQUEST';
  const calendar = ical({
    prodId: PRODUCT,
    method: isOff ? ICalCalendarMethod.CANCEL : ICalCalendarMethod.REQUEST,
  });
  const entry = addEvent(calendar, event);
  entry.organizer({ name: quotable(organizer.name), email: organizer.email });
  entry.createAttendee({
    name: quotable(attendee.name),
    email: attendee.email,
    role: ICalAttendeeRole.REQ,
    status: ICalAttendeeStatus.NEEDSACTION,
    rsvp: event.state === 'proposed',
  });
  return { method, text: `${calendar.toString()}\r\n` };
}
