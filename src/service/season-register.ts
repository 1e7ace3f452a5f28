import { catalogueEntry } from '../register/catalogue-record.ts';
import { languagesOf, skillsOf } from '../register/crew-member-record.ts';
import { catalogueMaterial } from '../register/material-record.ts';
import { listRecords, type RegisterDb } from '../register/record-store.ts';
import type { CatalogueKind, CatalogueMaterial } from '../season/catalogue-entry.ts';
import { type CrewTimes, personHoursOn } from '../season/crew-hours.ts';
import type { Place } from '../season/travel.ts';
import { SHIPPED_CATALOGUE, type WorksCatalogue } from '../season/works-catalogue.ts';
import { type CalendarDay, dayNumber } from '../units/calendar-day.ts';

/** A crew of the register: where it starts, how fast it travels [m/s], and when it goes out. */
export interface CrewInRegister {
  readonly ref: string;
  readonly name: string;
  /** Null where it is not known: its way to a site then counts for nothing. */
  readonly base: Place | null;
  readonly speedMps: number;
  readonly times: CrewTimes;
}

const grouped = <R, K>(records: readonly R[], keyOf: (record: R) => K): ReadonlyMap<K, readonly R[]> => {
  const groups = new Map<K, R[]>();
  for (const record of records) {
    const group = groups.get(keyOf(record));
    if (group) group.push(record);
    else groups.set(keyOf(record), [record]);
  }
  return groups;
};

/**
 * The works catalogue of a register: the one that comes with the program, with each line that is stored in the place of the
 * shipped one, and the materials of each kind that has any stored in the place of all shipped ones.
 */
export async function loadCatalogue(db: RegisterDb): Promise<WorksCatalogue> {
  const materials = grouped(await listRecords(db, 'materials'), ({ kind }): CatalogueKind => kind);
  const materialsOf = (kind: CatalogueKind): readonly CatalogueMaterial[] =>
    materials.get(kind)?.map(catalogueMaterial) ?? SHIPPED_CATALOGUE[kind].materials;
  const catalogue = { ...SHIPPED_CATALOGUE };
  for (const kind of materials.keys()) catalogue[kind] = { ...catalogue[kind], materials: materialsOf(kind) };
  for (const line of await listRecords(db, 'catalogue')) {
    catalogue[line.kind] = catalogueEntry(line, materialsOf(line.kind));
  }
  return catalogue;
}

/** The crews of a register with their people and days off, ordered by ref byte by byte. */
export async function loadCrews(db: RegisterDb): Promise<readonly CrewInRegister[]> {
  const members = grouped(await listRecords(db, 'crew-members'), ({ crewRef }) => crewRef);
  const daysOff = grouped(await listRecords(db, 'days-off'), ({ crewRef }) => crewRef);
  return (await listRecords(db, 'crews')).map(
    ({ ref, name, baseLatitude, baseLongitude, speedMps, weatherReserve }) => ({
      ref,
      name,
      base:
        baseLatitude === null || baseLongitude === null ? null : { latitude: baseLatitude, longitude: baseLongitude },
      speedMps,
      times: {
        members: (members.get(ref) ?? []).map((member) => ({
          ref: member.ref,
          hoursPerWeek: member.hoursPerWeek,
          skills: skillsOf(member),
          languages: languagesOf(member),
          fromDay: member.fromDay,
          toDay: member.toDay,
        })),
        daysOff: (daysOff.get(ref) ?? []).map(({ memberRef, firstDay, lastDay }) => ({ memberRef, firstDay, lastDay })),
        weatherReserve,
      },
    }),
  );
}

/** 1970-01-01 was a Thursday: Sundays lie four days on from the day numbers that a week divides. */
const SUNDAY_SHIFT = 4;
const DAYS_PER_WEEK = 7;
const isWeekend = (day: CalendarDay): boolean => [0, 6].includes((dayNumber(day) + SUNDAY_SHIFT) % DAYS_PER_WEEK);

/** Hours of a crew's people on a day, by its ref; none at the weekend, nor of a crew that nobody knows [h]. */
export function crewHoursOn(crews: readonly CrewInRegister[]): (crewRef: string, day: CalendarDay) => number {
  const known = new Map(crews.map(({ ref, times }) => [ref, { times, hours: new Map<CalendarDay, number>() }]));
  return (crewRef, day) => {
    const crew = known.get(crewRef);
    if (!crew) return 0;
    const before = crew.hours.get(day);
    if (before !== undefined) return before;
    const hours = isWeekend(day) ? 0 : personHoursOn(crew.times, day);
    crew.hours.set(day, hours);
    return hours;
  };
}
