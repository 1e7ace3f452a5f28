import type { Register } from '../register/database.ts';
import { listRecords } from '../register/record-store.ts';
import { countFencesBySite } from '../register/season-counts.ts';
import { listVisits } from '../register/visit-store.ts';
import { regionSeason } from '../season/region-season.ts';
import { type HoursBefore, hoursBefore } from '../season/visit/hours-before.ts';
import { hoursLedger, type LedgerWeek } from '../season/visit/hours-ledger.ts';
import type { Visit } from '../season/visit/visit.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import { crewHoursOn, loadCrews } from './season-register.ts';

const DAYS_PER_WEEK = 7;
const REST_OF_WEEK = 6;

/** The opening of a storm season, where, and what the crews have until then. */
export interface OpeningAhead {
  readonly opensOn: CalendarDay;
  /** The sites' own labels, else what their season is called; empty where they have neither. */
  readonly regions: readonly string[];
  /** In the order of the crews. */
  readonly crews: readonly HoursBefore[];
}

/** The hours of the crews in the weeks to come. */
export interface HoursAhead {
  readonly crews: readonly { readonly ref: string; readonly name: string }[];
  readonly weeks: readonly LedgerWeek[];
  /** Every opening that comes next where there are fences, the earliest first; sites without a season have none. */
  readonly openings: readonly OpeningAhead[];
  /** Rows of days off that are not past. */
  readonly daysOffAhead: number;
}

/** Days on which storm seasons open next, each with its regions. */
async function openingDays(
  register: Register,
  today: CalendarDay,
): Promise<readonly Pick<OpeningAhead, 'opensOn' | 'regions'>[]> {
  const regionsOf = new Map<CalendarDay, Set<string>>();
  for (const { fences, window, region, seasonName } of await countFencesBySite(register)) {
    const season = regionSeason(window, today);
    if (fences === 0 || season.kind === 'all year') continue;
    const opensOn = season.nextOpening;
    const names = regionsOf.get(opensOn) ?? new Set();
    regionsOf.set(opensOn, names);
    const name = region === '' ? seasonName : region;
    if (name !== null) names.add(name);
  }
  return [...regionsOf]
    .map(([opensOn, regions]) => ({ opensOn, regions: [...regions].sort() }))
    .sort((a, b) => (a.opensOn < b.opensOn ? -1 : 1));
}

/** The hours of every crew, from the week that runs on, and until each storm season opens. @param weeks how many */
export async function hoursAhead(
  register: Register,
  { today, weeks }: { readonly today: CalendarDay; readonly weeks: number },
): Promise<HoursAhead> {
  const { db } = register;
  const crews = await loadCrews(db);
  const first = mondayOf(today);
  const mondays = Array.from({ length: weeks }, (_, week) => addDays(first, week * DAYS_PER_WEEK));
  const hoursOn = crewHoursOn(crews);
  const visits = await listVisits(db, { from: today, states: ['proposed', 'confirmed'] });
  const end = addDays(mondays.at(-1) ?? first, REST_OF_WEEK);
  const shown: readonly Visit[] = visits.filter(({ firstDay }) => firstDay <= end);
  const crewRefs = crews.map(({ ref }) => ref);
  return {
    crews: crews.map(({ ref, name }) => ({ ref, name })),
    weeks: hoursLedger({ crews, weeks: mondays, visits: shown, today, hoursOn }),
    openings: (await openingDays(register, today)).map((opening) => ({
      ...opening,
      crews: hoursBefore({ crewRefs, visits, today, opensOn: opening.opensOn, hoursOn }),
    })),
    daysOffAhead: (await listRecords(db, 'days-off')).filter(({ lastDay }) => lastDay >= today).length,
  };
}
