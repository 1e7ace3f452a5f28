import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CalendarEvent, calendarText } from '../../src/service/calendar-text.ts';
import { addDays } from '../../src/units/calendar-day.ts';
import { readCalendar } from './calendar-importer.ts';

const EVENT: CalendarEvent = {
  uid: 'V-1',
  sequence: 3,
  state: 'confirmed',
  span: { kind: 'days', firstDay: '2027-03-13', dayAfter: '2027-03-15' },
  summary: 'Pelican Reach – post swap, 2 fences',
  description: 'Gate on the left; code 4471.\nDog in the yard.',
  location: 'Pelican Reach, Bayou Vista, Texas',
  place: null,
  changedAt: '2026-11-24T12:00:00.000Z',
};

const read = (event: Partial<CalendarEvent>) =>
  readCalendar(calendarText('Visits', [{ ...EVENT, ...event }])).events[0]!;

describe('a calendar as text', () => {
  it('is read by another parser as it was meant', () => {
    expect(read({ place: { latitude: 30.18, longitude: -91.04 } })).toEqual({
      uid: 'V-1@stormpale',
      sequence: 3,
      status: 'CONFIRMED',
      summary: EVENT.summary,
      description: EVENT.description,
      location: EVENT.location,
      start: '2027-03-13',
      end: '2027-03-15',
      stamp: '2026-11-24T12:00:00.000Z',
      geo: [30.18, -91.04],
    });
    const [start, end] = [new Date('2027-03-14T14:00:00Z'), new Date('2027-03-14T16:00:00Z')];
    expect(read({ span: { kind: 'time', start, end } })).toMatchObject({
      start: '2027-03-14T14:00:00.000Z',
      end: '2027-03-14T16:00:00.000Z',
    });
  });

  it('says how firm each visit is', () => {
    const status = (state: CalendarEvent['state']) => read({ state }).status;
    expect(status('proposed')).toBe('TENTATIVE');
    expect(status('confirmed')).toBe('CONFIRMED');
    expect(status('done')).toBe('CONFIRMED');
    expect(status('missed')).toBe('CANCELLED');
    expect(status('cancelled')).toBe('CANCELLED');
  });

  it('brings any text through: commas, semicolons, line ends, quotation marks, other scripts and pictures', () => {
    const hard = 'a,b;c\\d "e"\nf: 👷🏽‍♀️ Zaun – cerca – 垣根, \\n stays \\n';
    const event = read({ summary: hard, description: hard.repeat(9), location: hard });
    expect(event.summary).toBe(hard);
    expect(event.description).toBe(hard.repeat(9));
    expect(event.location).toBe(hard);
    expect(readCalendar(calendarText(hard, [])).name).toBe(hard);
  });

  it('lets no text end its line and begin a property, an event or a calendar of its own', () => {
    const evil = 'x\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nUID:evil\r\nSTATUS:CANCELLED';
    const text = calendarText(evil, [{ ...EVENT, summary: evil, description: evil, location: evil }]);
    expect(readCalendar(text).events.map(({ uid }) => uid)).toEqual(['V-1@stormpale']);
    expect(text.match(/^BEGIN:VEVENT\r$/gm)).toHaveLength(1);
  });

  it('has lines of at most 75 octets, each ended as the standard says, whatever the texts', () => {
    const text = fc.string({ unit: 'grapheme', maxLength: 400 });
    fc.assert(
      fc.property(text, text, (summary, description) => {
        const written = calendarText(summary, [{ ...EVENT, summary, description }]);
        expect(written.endsWith('END:VCALENDAR\r\n')).toBe(true);
        expect(written.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        for (const line of written.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        const event = readCalendar(written).events[0]!;
        // Control characters are the one thing that is taken out; line ends come back as one character.
        const kept = (each: string) => each.replace(/\r\n?/g, '\n').replace(/(?![\t\n])\p{Cc}/gu, '');
        expect(event.description).toBe(kept(description));
        expect(event.summary).toBe(kept(summary));
      }),
    );
  });

  it('gives any day and its day after back, months, leap days and changes of the clocks included', () => {
    const day = fc.integer({ min: 0, max: 3000 }).map((days) => addDays('2026-01-01', days));
    fc.assert(
      fc.property(day, fc.integer({ min: 1, max: 5 }), (firstDay, days) => {
        const dayAfter = addDays(firstDay, days);
        expect(read({ span: { kind: 'days', firstDay, dayAfter } })).toMatchObject({ start: firstDay, end: dayAfter });
      }),
    );
  });

  it('has the same bytes on a machine in another time zone', () => {
    const [start, end] = [new Date('2027-03-14T14:00:00Z'), new Date('2027-03-14T16:00:00Z')];
    const events = [EVENT, { ...EVENT, uid: 'V-2', span: { kind: 'time', start, end } as const }];
    const program = `import { calendarText } from './src/service/calendar-text.ts';
const events = ${JSON.stringify(events)}.map((event) => event.span.kind === 'days' ? event : { ...event, span: { kind: 'time', start: new Date(event.span.start), end: new Date(event.span.end) } });
process.stdout.write(calendarText('Visits', events));`;
    for (const zone of ['Pacific/Auckland', 'America/Los_Angeles']) {
      const run = spawnSync(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', program], {
        env: { ...process.env, TZ: zone },
        encoding: 'utf8',
      });
      expect(run.stderr).toBe('');
      expect(run.stdout).toBe(calendarText('Visits', events));
    }
  });
});
