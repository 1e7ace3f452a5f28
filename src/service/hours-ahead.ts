import type { Register } from '../register/database.ts';
import { listRecords } from '../register/record-store.ts';
import { countFencesByRegion, type RegionCounts } from '../register/season-counts.ts';
import { listVisitSpans } from '../register/visit-spans.ts';
import { newestVisitChange } from '../register/visit-store.ts';
import { regionSeason } from '../season/region-season.ts';
import { type HoursBefore, hoursBefore, hoursTaken } from '../season/visit/hours-before.ts';
import { hoursLedger, type LedgerCell, type LedgerWeek } from '../season/visit/hours-ledger.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import { canonicalJson } from './canonical-json.ts';
import { keptAnswers } from './kept-answers.ts';
import { type CrewInRegister, crewHoursOn, loadCrews } from './season-register.ts';

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

/** Who has the hours: a crew, or all of them together, whose ref is empty. */
interface HoursOf {
  readonly ref: string;
  readonly name: string;
}

/** The hours of the crews in the weeks to come. */
export interface HoursAhead {
  readonly crews: readonly HoursOf[];
  readonly weeks: readonly LedgerWeek[];
  /** Every opening that comes next where there are fences, the earliest first; sites without a season have none. */
  readonly openings: readonly OpeningAhead[];
  /** Rows of days off that are not past. */
  readonly daysOffAhead: number;
}

/** Days on which storm seasons open next, each with its regions. */
function openingDays(
  regions: readonly RegionCounts[],
  today: CalendarDay,
): readonly Pick<OpeningAhead, 'opensOn' | 'regions'>[] {
  const regionsOf = new Map<CalendarDay, Set<string>>();
  for (const { window, region, seasonName } of regions) {
    const season = regionSeason(window, today);
    if (season.kind === 'all year') continue;
    const opensOn = season.nextOpening;
    const names = regionsOf.get(opensOn) ?? new Set();
    regionsOf.set(opensOn, names);
    const name = region === '' ? seasonName : region;
    if (name !== null) names.add(name);
  }
  return [...regionsOf]
    .map(([opensOn, named]) => ({ opensOn, regions: [...named].sort() }))
    .sort((a, b) => (a.opensOn < b.opensOn ? -1 : 1));
}

/** A day after every visit. */
const LAST_DAY = '9999-12-31';
/** Answers that are kept at a time. */
const MOST_KEPT = 20;

const kept = keptAnswers<Omit<HoursAhead, 'daysOffAhead'>>(MOST_KEPT);

/** What the hours are reckoned from, apart from the visits. */
interface HoursAsked {
  readonly today: CalendarDay;
  /** How many. */
  readonly weeks: number;
  readonly crews: readonly CrewInRegister[];
  readonly openings: readonly Pick<OpeningAhead, 'opensOn' | 'regions'>[];
}

async function reckoned(
  { db }: Register,
  { today, weeks, crews, openings }: HoursAsked,
): Promise<Omit<HoursAhead, 'daysOffAhead'>> {
  const first = mondayOf(today);
  const mondays = Array.from({ length: weeks }, (_, week) => addDays(first, week * DAYS_PER_WEEK));
  const hoursOn = crewHoursOn(crews);
  const visits = await listVisitSpans(db, { from: today, to: LAST_DAY, states: ['proposed', 'confirmed'] });
  const end = addDays(mondays.at(-1) ?? first, REST_OF_WEEK);
  const shown = visits.filter(({ firstDay }) => firstDay <= end);
  const taken = hoursTaken(visits, today, hoursOn);
  const crewRefs = crews.map(({ ref }) => ref);
  return {
    crews: crews.map(({ ref, name }) => ({ ref, name })),
    weeks: hoursLedger({ crews, weeks: mondays, visits: shown, today, hoursOn }),
    openings: openings.map((opening) => ({
      ...opening,
      crews: hoursBefore({ crewRefs, taken, today, opensOn: opening.opensOn, hoursOn }),
    })),
  };
}

/**
 * The hours of every crew, from the week that runs on, and until each storm season opens; reckoned once until a visit, a crew or a
 * season changes.
 * @param weeks how many
 * @param crewRef of this crew alone; of all where left out or null
 * @param regions as the register counts them, where somebody has them already
 */
export async function hoursAhead(
  register: Register,
  {
    today,
    weeks,
    crewRef = null,
    regions,
  }: {
    readonly today: CalendarDay;
    readonly weeks: number;
    readonly crewRef?: string | null;
    readonly regions?: readonly RegionCounts[];
  },
): Promise<HoursAhead> {
  const { db } = register;
  const crews = (await loadCrews(db)).filter(({ ref }) => crewRef === null || ref === crewRef);
  const openings = openingDays(regions ?? (await countFencesByRegion(register, null)), today);
  const asked = { today, weeks, crews, openings };
  const key = canonicalJson({ ...asked, visits: await newestVisitChange(db) });
  return {
    ...(await kept(register, key, () => reckoned(register, asked))),
    daysOffAhead: (await listRecords(db, 'days-off')).filter(({ lastDay }) => lastDay >= today).length,
  };
}

/** Crews whose hours stand side by side; of more, those of all are added up. */
const CREWS_SIDE_BY_SIDE = 6;

const addedUp = <R>(rows: readonly R[], of: (row: R) => number): number => rows.reduce((sum, row) => sum + of(row), 0);

/** The hours of all crews in one, where they are too many to stand side by side; else as they are. */
export function inFewColumns(hours: HoursAhead): HoursAhead {
  if (hours.crews.length <= CREWS_SIDE_BY_SIDE) return hours;
  return {
    ...hours,
    crews: [{ ref: '', name: `All ${hours.crews.length} crews` }],
    weeks: hours.weeks.map(({ monday, cells }) => ({ monday, cells: [together(cells)] })),
    openings: hours.openings.map((opening) => ({
      ...opening,
      crews: [
        {
          crewRef: '',
          thereAre: addedUp(opening.crews, ({ thereAre }) => thereAre),
          left: addedUp(opening.crews, ({ left }) => left),
        },
      ],
    })),
  };
}

/** One cell for those of all crews. A crew with more work than hours takes none of the others. */
const together = (cells: readonly LedgerCell[]): LedgerCell => ({
  crewRef: '',
  thereAre: addedUp(cells, ({ thereAre }) => thereAre),
  confirmed: addedUp(cells, ({ confirmed }) => confirmed),
  proposed: addedUp(cells, ({ proposed }) => proposed),
  left: addedUp(cells, ({ left }) => Math.max(0, left)),
});
