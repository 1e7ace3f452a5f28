import fc from 'fast-check';
import ICAL from 'ical.js';
import { simpleParser } from 'mailparser';
import { describe, expect, it } from 'vitest';
import { type CalendarEvent, calendarText, invitation } from '../../src/service/calendar-text.ts';
import { mailBytes } from '../../src/service/mail-bytes.ts';
import { ImportingCalendar, readCalendar } from './calendar-importer.ts';
import { at } from './fence-register.ts';

const EVENT: CalendarEvent = {
  uid: 'V-1',
  sequence: 3,
  state: 'confirmed',
  span: { kind: 'days', firstDay: '2027-03-13', dayAfter: '2027-03-15' },
  summary: 'Fences PR-01 and PR-02, Pelican Reach',
  description: 'PR-01: new posts\nNorth crew; wells, posts',
  location: 'Pelican Reach, Bayou Vista, Texas',
  place: null,
  changedAt: '2026-11-24T12:00:00.000Z',
};
const OFFICE = { name: 'Gale & Rail', email: 'office@example.org' };
const ANN = { name: 'Ann Tidewell', email: 'ann@example.net' };
const invite = (event: Partial<CalendarEvent> = {}, name = ANN.name) =>
  invitation({ ...EVENT, ...event }, { organizer: OFFICE, attendee: { ...ANN, name } });

/** A party of an entry as an independent parser reads it: address, name and what it is asked. */
function party(text: string, property: 'organizer' | 'attendee') {
  const calendar = new ICAL.Component(ICAL.parse(text) as ConstructorParameters<typeof ICAL.Component>[0]);
  const found = calendar.getFirstSubcomponent('vevent')?.getAllProperties(property) ?? [];
  return found.map((each) => ({
    address: String(each.getFirstValue()).toLowerCase(),
    name: each.getFirstParameter('cn'),
    partstat: each.getFirstParameter('partstat'),
    rsvp: each.getFirstParameter('rsvp'),
  }));
}
const methodOf = (text: string): string | undefined => /^METHOD:(.*)\r$/m.exec(text)?.[1];

describe('an entry for an owner’s calendar', () => {
  it('asks for the day, from the office to the owner, and is called off by the same uid', () => {
    const asked = invite({ state: 'proposed', sequence: 0 });
    expect(asked.method).toBe('REQUEST');
    expect(methodOf(asked.text)).toBe('REQUEST');
    expect(party(asked.text, 'organizer')).toMatchObject([
      { address: 'mailto:office@example.org', name: 'Gale & Rail' },
    ]);
    expect(party(asked.text, 'attendee')).toMatchObject([
      { address: 'mailto:ann@example.net', name: 'Ann Tidewell', partstat: 'NEEDS-ACTION', rsvp: 'TRUE' },
    ]);
    const off = invite({ state: 'cancelled', sequence: 4 });
    expect(methodOf(off.text)).toBe('CANCEL');
    expect(readCalendar(off.text).events).toMatchObject([{ uid: 'V-1@stormpale', sequence: 4, status: 'CANCELLED' }]);
    expect(methodOf(invite({ state: 'missed' }).text)).toBe('CANCEL');
  });

  it('is the same event as in the feed, so that a calendar that has both shows one', () => {
    const calendar = new ImportingCalendar();
    calendar.import(calendarText('Visits', [{ ...EVENT, sequence: 2 }]));
    calendar.import(invite({ sequence: 3 }).text);
    expect(calendar.shown.map(({ uid, sequence }) => [uid, sequence])).toEqual([['V-1@stormpale', 3]]);
    calendar.import(invite({ sequence: 4, state: 'cancelled' }).text);
    expect(calendar.shown).toEqual([]);
  });

  it('brings any name through, in lines of at most 75 octets, and lets none begin a line of its own', () => {
    const name = fc.oneof(
      fc.string({ unit: 'grapheme', minLength: 1, maxLength: 120 }),
      fc.constantFrom(
        'O"Hara; Sons, Ltd: "x"',
        'Ann\r\nATTENDEE:mailto:evil@example.net',
        '\\n\\,',
        '垣根 👷🏽‍♀️',
        'a:b;c=d,e',
      ),
    );
    fc.assert(
      fc.property(name, name, (owner, site) => {
        const { text } = invite({ summary: site, location: site }, owner);
        for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        expect(party(text, 'attendee').map(({ address }) => address)).toEqual(['mailto:ann@example.net']);
        expect(party(text, 'organizer')).toHaveLength(1);
        expect(readCalendar(text).events).toHaveLength(1);
      }),
    );
  });

  it('stands in a mail beside the text, with its method, and as a file', async () => {
    const raw = await mailBytes({
      message: { subject: 'A day', text: 'On a day.', html: '<p>On a day.</p>', pictures: [], files: [] },
      messageId: '<a@example.org>',
      at: at('2027-01-15T12:00:00Z'),
      from: 'notices@example.org',
      to: { name: ANN.name, address: ANN.email },
      office: OFFICE,
      invitation: invite(),
    });
    const source = raw.toString('utf8');
    const alternative = /Content-Type: multipart\/alternative;\s*boundary="([^"]+)"/.exec(source)?.[1] ?? '-';
    const [, ...parts] = source.split(`--${alternative}`);
    const types = parts.map((part) => /Content-Type: ([^;\r]+(?:; ?charset=utf-8)?(?:; ?method=\w+)?)/.exec(part)?.[1]);
    const wanted = [
      'text/plain; charset=utf-8',
      'text/calendar; charset=utf-8; method=REQUEST',
      'text/html; charset=utf-8',
    ];
    expect(types).toEqual(expect.arrayContaining(wanted));
    const mail = await simpleParser(raw);
    const file = mail.attachments.find(({ filename }) => filename === 'invite.ics');
    expect(file?.content.toString('utf8')).toBe(invite().text);
  });
});
