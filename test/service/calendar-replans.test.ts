import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Visit, VisitState } from '../../src/season/visit/visit.ts';
import { calendarFeed } from '../../src/service/calendar-feed.ts';
import { addDays } from '../../src/units/calendar-day.ts';
import { SAMPLE_NOW } from '../web/sample-register.ts';
import { ImportingCalendar } from './calendar-importer.ts';
import { madeUpVisit, storeVisits, visitingRegister } from './visiting-register.ts';

interface Change {
  readonly visit: number;
  readonly state: VisitState;
  readonly day: number;
  readonly days: number;
  readonly crewRef: 'north' | 'south';
  /** True where the calendars look at the feeds after this change. */
  readonly read: boolean;
}

const VISITS = 3;
const changes: fc.Arbitrary<readonly Change[]> = fc.array(
  fc.record({
    visit: fc.nat({ max: VISITS - 1 }),
    state: fc.constantFrom<VisitState>('proposed', 'confirmed', 'missed', 'cancelled'),
    day: fc.nat({ max: 200 }),
    days: fc.nat({ max: 3 }),
    crewRef: fc.constantFrom('north' as const, 'south' as const),
    read: fc.boolean(),
  }),
  { minLength: 1, maxLength: 8 },
);

describe('calendars that import a feed now and then', () => {
  let sample: Awaited<ReturnType<typeof visitingRegister>>;
  beforeAll(async () => {
    sample = await visitingRegister();
  });
  afterAll(() => sample.remove());

  it('show after any changes exactly the visits that stand, each once, whenever they looked', async () => {
    let run = 0;
    await fc.assert(
      fc.asyncProperty(changes, async (made) => {
        run += 1;
        const prefix = `R${run}-`;
        const calendars = {
          north: new ImportingCalendar(),
          south: new ImportingCalendar(),
          site: new ImportingCalendar(),
        };
        const look = async (): Promise<void> => {
          for (const [ref, calendar] of Object.entries(calendars)) {
            const subject =
              ref === 'site' ? ({ kind: 'site', ref: 'PELICAN' } as const) : ({ kind: 'crew', ref } as const);
            calendar.import((await calendarFeed(sample.register, subject, SAMPLE_NOW))!.text);
          }
        };
        const visits = Array.from({ length: VISITS }, (_, index) => madeUpVisit({ uid: `${prefix}${index}` }));
        await storeVisits(sample.register, visits);
        await look();
        for (const { visit, state, day, days, crewRef, read } of made) {
          const firstDay = addDays('2027-01-04', day);
          const before = visits[visit]!;
          const changed: Visit = {
            ...before,
            state,
            crewRef,
            firstDay,
            lastDay: addDays(firstDay, days),
            sequence: before.sequence + 1,
          };
          visits[visit] = changed;
          await storeVisits(sample.register, [changed]);
          if (read) await look();
        }
        await look();
        const standing = visits.filter(({ state }) => state === 'proposed' || state === 'confirmed');
        const wanted = (own: readonly Visit[]) =>
          own.map(({ uid, firstDay, lastDay }) => [`${uid}@stormpale`, firstDay, addDays(lastDay, 1)]);
        const shown = (calendar: ImportingCalendar) =>
          calendar.shown.filter(({ uid }) => uid.startsWith(prefix)).map(({ uid, start, end }) => [uid, start, end]);
        for (const crew of ['north', 'south'] as const) {
          expect(shown(calendars[crew])).toEqual(wanted(standing.filter(({ crewRef }) => crewRef === crew)));
        }
        expect(shown(calendars.site)).toEqual(wanted(standing));
      }),
      { numRuns: 12 },
    );
  });
});
