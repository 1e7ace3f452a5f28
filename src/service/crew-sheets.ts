import { type CrewMemberRecord, languagesOf } from '../register/crew-member-record.ts';
import { nearestName } from '../register/csv/nearest-name.ts';
import type { Register } from '../register/database.ts';
import { listRecords } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { listVisits } from '../register/visit-store.ts';
import { membersOn } from '../season/crew-hours.ts';
import { type DaySheet, daySheet, STATES_ON_SHEET } from '../season/visit/day-sheet.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { Clock } from './clock.ts';
import { dayInZone } from './clock.ts';
import { loadCatalogue, loadCrews } from './season-register.ts';
import { sheetSurroundings } from './visit-surroundings.ts';

/** The sheets of the days on which a crew has visits, or why there are none. */
export type CrewSheets =
  | {
      readonly kind: 'sheets';
      readonly crewName: string;
      /** The language that everybody of the crew reads; English where that says nothing. */
      readonly language: 'en' | 'es';
      readonly sheets: readonly DaySheet[];
      /** First day of the next visit after the days asked for; null where there is none ahead. */
      readonly nextDay: CalendarDay | null;
    }
  | { readonly kind: 'no crew'; readonly nearest: string | null };

/** Spanish where all who say what they read read it and somebody of them reads no English; English otherwise. */
function crewLanguage(members: readonly Pick<CrewMemberRecord, 'languages'>[]): 'en' | 'es' {
  const read = members.map(languagesOf).filter((languages) => languages.length > 0);
  const all = (language: string): boolean => read.every((languages) => languages.includes(language));
  return read.length > 0 && all('es') && !all('en') ? 'es' : 'en';
}

/** The day it is at the register's office. */
export const officeToday = async ({ db }: Register, now: Clock): Promise<CalendarDay> =>
  dayInZone(now(), (await readSettings(db)).timeZone);

/**
 * Day sheets of a crew, one for each of the days on which it has visits that are proposed, confirmed or done.
 * @param days in order, at least one
 */
export async function crewSheets(
  register: Register,
  crewRef: string,
  days: readonly CalendarDay[],
): Promise<CrewSheets> {
  const { db } = register;
  const crews = await loadCrews(db);
  const crew = crews.find(({ ref }) => ref === crewRef);
  if (!crew) {
    return {
      kind: 'no crew',
      nearest: nearestName(
        crewRef,
        crews.map(({ ref }) => ref),
      ),
    };
  }
  const [first, last] = [days[0]!, days.at(-1)!];
  const visits = await listVisits(db, { crewRef, from: first, to: last, states: STATES_ON_SHEET });
  const surroundings = await sheetSurroundings(register, visits);
  const catalogue = await loadCatalogue(db);
  const members = await listRecords(db, 'crew-members');
  const names = new Map(members.map(({ ref, name }) => [ref, name]));
  const sheets = days.map((day) =>
    daySheet({
      crew: { ref: crew.ref, name: crew.name, base: crew.base },
      day,
      people: membersOn(crew.times, day).map(({ ref }) => names.get(ref) ?? ref),
      visits,
      ...surroundings,
      catalogue,
    }),
  );
  const ahead = await listVisits(db, { crewRef, from: last, states: ['proposed', 'confirmed'] });
  return {
    kind: 'sheets',
    crewName: crew.name,
    language: crewLanguage(members.filter((member) => member.crewRef === crewRef)),
    sheets: sheets.filter(({ stops }) => stops.length > 0),
    nextDay: ahead.find(({ firstDay }) => firstDay > last)?.firstDay ?? null,
  };
}
