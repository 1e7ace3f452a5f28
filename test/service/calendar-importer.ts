import ICAL from 'ical.js';

const textTypes = ICAL.design.icalendar as { readonly value: { readonly text: { fromICAL(text: string): string } } };

/** One event as an independent parser reads it. */
export interface ReadEvent {
  readonly uid: string;
  readonly sequence: number;
  readonly status: string;
  readonly summary: string;
  readonly description: string;
  readonly location: string;
  /** `2027-01-11` for whole days, else a moment in UTC. */
  readonly start: string;
  readonly end: string;
  readonly stamp: string;
  readonly geo: readonly number[] | null;
}

/** Reads a calendar with ical.js, which shares no code with what wrote it. Throws where it is no calendar. */
export function readCalendar(text: string): { readonly name: string; readonly events: readonly ReadEvent[] } {
  const calendar = new ICAL.Component(ICAL.parse(text) as ConstructorParameters<typeof ICAL.Component>[0]);
  const value = (component: InstanceType<typeof ICAL.Component>, property: string): string =>
    String(component.getFirstPropertyValue(property) ?? '');
  const moment = (component: InstanceType<typeof ICAL.Component>, property: string): string => {
    const time = component.getFirstPropertyValue(property) as InstanceType<typeof ICAL.Time>;
    return time.isDate ? time.toString() : time.toJSDate().toISOString();
  };
  return {
    // a property that the standard does not know is handed out as it stands
    name: textTypes.value.text.fromICAL(value(calendar, 'x-wr-calname')),
    events: calendar.getAllSubcomponents('vevent').map((event) => ({
      uid: value(event, 'uid'),
      sequence: Number(value(event, 'sequence')),
      status: value(event, 'status'),
      summary: value(event, 'summary'),
      description: value(event, 'description'),
      location: value(event, 'location'),
      start: moment(event, 'dtstart'),
      end: moment(event, 'dtend'),
      stamp: moment(event, 'dtstamp'),
      geo: event.getFirstPropertyValue('geo') as readonly number[] | null,
    })),
  };
}

/** A calendar that imports files: one event a uid, and of two versions the one of the higher SEQUENCE (RFC 5546, 2.1.5). */
export class ImportingCalendar {
  readonly #events = new Map<string, ReadEvent>();

  import(text: string): void {
    for (const event of readCalendar(text).events) {
      const known = this.#events.get(event.uid);
      if (!known || event.sequence > known.sequence) this.#events.set(event.uid, event);
    }
  }

  /** Every event by its uid, cancelled ones too. */
  get all(): readonly ReadEvent[] {
    return [...this.#events.values()].sort((a, b) => (a.uid < b.uid ? -1 : 1));
  }

  /** What its owner sees. */
  get shown(): readonly ReadEvent[] {
    return this.all.filter(({ status }) => status !== 'CANCELLED');
  }
}
