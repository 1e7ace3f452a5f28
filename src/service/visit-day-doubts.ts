import type { Register } from '../register/database.ts';
import { loadFenceFacts } from '../register/fence-facts-store.ts';
import { readRecord } from '../register/record-store.ts';
import { listVisits } from '../register/visit-store.ts';
import { membersOn } from '../season/crew-hours.ts';
import type { WeekBar } from '../season/plan/plan-problem.ts';
import { seasonToPlan } from '../season/planned-season.ts';
import { isCrowded, lastDayWithRoom, weeksOverfilled } from '../season/visit/room-for-visit.ts';
import type { Visit } from '../season/visit/visit.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';
import { barsOn, strictestRules } from '../season/works-window.ts';
import { addDays, type CalendarDay } from '../units/calendar-day.ts';
import { visitHours } from './plan-visits.ts';
import { type CrewInRegister, crewHoursOn, loadCatalogue } from './season-register.ts';

/** Skill that treatment may ask for by law. */
const APPLICATOR = 'licensed-applicator';
/** Days that a visit may be spread over at most. */
const MOST_DAYS = 30;
/** Hours [h] by which a sum may pass a day's before it counts as passed. */
const TOLERANCE_H = 1e-6;

const BAR_WORDS: Readonly<Record<WeekBar, string>> = {
  'locate-notice': 'buried utilities cannot be marked by then',
  'cure-time': 'new footings would not have gained their strength when the season opens',
  'frozen-ground': 'the ground counts as frozen',
  closed: 'the storm season has opened by then',
};

/** A crew, and the day at the site. */
interface DayOfCrew {
  readonly crew: CrewInRegister;
  readonly today: CalendarDay;
}

/** Hours of a crew's people on a day; none at the weekend [h]. */
const hoursOn = (crew: CrewInRegister, day: CalendarDay): number => crewHoursOn([crew])(crew.ref, day);

/** Last day of a visit that begins on a day: the first by which the crew has worked its hours. */
export function lastDayOf(crew: CrewInRegister, firstDay: CalendarDay, personHours: number): CalendarDay {
  let left = personHours;
  for (let days = 0; days < MOST_DAYS; days += 1) {
    const day = addDays(firstDay, days);
    left -= hoursOn(crew, day);
    if (left <= TOLERANCE_H) return day;
  }
  return firstDay;
}

/** What else a crew is to do from the week of a visit on, and its hours. */
async function besideVisit(register: Register, visit: Visit, { crew, today }: DayOfCrew) {
  const from = mondayOf(visit.firstDay);
  const to = addDays(visit.firstDay, MOST_DAYS);
  const open = await listVisits(register.db, { crewRef: crew.ref, from, to, states: ['proposed', 'confirmed'] });
  // proposed days that are past are nothing
  const others = open.filter(({ uid, lastDay }) => uid !== visit.uid && lastDay >= today);
  return { others, hoursOn: crewHoursOn([crew]) };
}

/**
 * Last day of a visit that begins on its first day: the same where a whole day of the crew holds it, else from the hours that
 * other visits leave the crew; where they leave too few, from all of them.
 */
export async function lastDayBeside(register: Register, visit: Visit, day: DayOfCrew): Promise<CalendarDay> {
  const alone = lastDayOf(day.crew, visit.firstDay, visitHours(visit));
  if (alone === visit.firstDay) return alone;
  const beside = await besideVisit(register, visit, day);
  const room = lastDayWithRoom({ visit, ...beside });
  const holds = room !== null && weeksOverfilled({ visit: { ...visit, lastDay: room }, ...beside }).length === 0;
  return holds ? room : alone;
}

/** What rules of works say against the days of a visit, fence by fence. */
async function ruleDoubts(register: Register, visit: Visit, today: CalendarDay): Promise<readonly string[]> {
  const catalogue = await loadCatalogue(register.db);
  const site = await readRecord(register.db, 'sites', visit.siteRef);
  const refs = visit.items.map(({ fenceRef }) => fenceRef);
  const facts = await loadFenceFacts(register, refs);
  const { frozenFrom, frozenTo } = site ?? { frozenFrom: null, frozenTo: null };
  const frozen = frozenFrom === null || frozenTo === null ? null : { opens: frozenFrom, closes: frozenTo };
  return visit.items.flatMap(({ fenceRef, works }) => {
    const known = facts.get(fenceRef);
    if (!known) return [];
    const { season, nextOpening: opensOn } = seasonToPlan(known.site.seasonWindow, today);
    const rules = strictestRules(
      works.map(({ kind }) => kind),
      catalogue,
    );
    const calendar = { today, opensOn, frozen };
    const bars = new Set([visit.firstDay, visit.lastDay].flatMap((day) => barsOn(rules, calendar, day)));
    if (season.allYear) bars.delete('cure-time');
    else if (visit.lastDay >= opensOn) bars.add('closed');
    return [...bars].map((bar) => `fence ${fenceRef}: ${BAR_WORDS[bar]}`);
  });
}

/** What the crew says against them: it does not go out, has no licence, or is promised elsewhere. */
async function crewDoubts(register: Register, visit: Visit, day: DayOfCrew): Promise<readonly string[]> {
  const { crew } = day;
  const { firstDay, lastDay } = visit;
  const doubts: string[] = [];
  if (hoursOn(crew, firstDay) <= 0) doubts.push(`crew ${crew.ref} does not go out on ${firstDay}`);
  const catalogue = await loadCatalogue(register.db);
  const kinds = visit.items.flatMap(({ works }) => works.map(({ kind }) => kind));
  const licensed = membersOn(crew.times, firstDay).some(({ skills }) => skills.includes(APPLICATOR));
  if (strictestRules(kinds, catalogue).licensedApplicator && !licensed)
    doubts.push(`nobody of crew ${crew.ref} has the skill ${APPLICATOR} that day`);
  const { others, hoursOn: hours } = await besideVisit(register, visit, day);
  const promised = others.filter(
    (other) => other.state === 'confirmed' && other.firstDay <= lastDay && other.lastDay >= firstDay,
  );
  const overfull = weeksOverfilled({ visit, others, hoursOn: hours });
  if (promised.length > 0 && isCrowded({ visit, others: promised, hoursOn: hours })) {
    const names = promised.map(({ uid, siteRef }) => `${uid} at ${siteRef}`).join(', ');
    doubts.push(
      `crew ${crew.ref} is promised elsewhere then (${names}) and has no hours for both: ${hoursOn(crew, firstDay).toFixed(1)} person-hours on ${firstDay}`,
    );
  } else if (overfull.length > 0) {
    const weeks = overfull.map(({ monday, tooMany }) => `the week of ${monday} would have ${tooMany.toFixed(1)} h`);
    doubts.push(`crew ${crew.ref} has too few hours from ${firstDay} to ${lastDay}: ${weeks.join(', ')} too many`);
  } else if (hoursOn(crew, firstDay) > 0 && isCrowded({ visit, others, hoursOn: hours })) {
    doubts.push(
      `crew ${crew.ref} has too few hours from ${firstDay} to ${lastDay} beside the other visits of those days`,
    );
  }
  return doubts;
}

/** What speaks against the days and the crew of a visit; nothing where they hold. The office may confirm it all the same. */
export const visitDayDoubts = async (register: Register, visit: Visit, day: DayOfCrew): Promise<readonly string[]> => [
  ...(await crewDoubts(register, visit, day)),
  ...(await ruleDoubts(register, visit, day.today)),
];
