import { addDays, type CalendarDay } from '../../units/calendar-day.ts';
import type { MustRank } from '../plan/plan-problem.ts';
import { greatCircleM, type Place } from '../travel.ts';

/** Hours [h] by which a sum may pass a day's before it counts as passed: rounding, not overtime. */
const TOLERANCE_H = 1e-6;
/** Days of a week on which crews go out: Monday to Friday. */
const WORK_DAYS = 5;

/** First and last day of a visit. */
export interface DaySpan {
  readonly firstDay: CalendarDay;
  readonly lastDay: CalendarDay;
}

/** A visit that wants days in a week. */
export interface DayRequest {
  /** Tells it from the others. */
  readonly key: string;
  readonly siteRef: string;
  /** Null where it is not known: it is then near to nothing. */
  readonly place: Place | null;
  /** Hours of the crew's people at the site [h]. */
  readonly workPersonHours: number;
  /** Hours of the crew's people on the road, there and back [h]. */
  readonly travelPersonHours: number;
  /** The strictest of its fences. */
  readonly mustRank: MustRank;
  /** Days that it has already and keeps where they hold it; null for a new one. */
  readonly standing: DaySpan | null;
}

/** A visit that has its days and keeps them whatever comes. */
export interface TakenDays extends DaySpan {
  readonly siteRef: string;
  readonly place: Place | null;
  /** With the way [h]. */
  readonly personHours: number;
}

/** One week of one crew. */
export interface CrewWeek {
  readonly monday: CalendarDay;
  /** Hours of the crew's people from Monday to Friday [h]; 0 on a day on which it does not go out. */
  readonly personHoursByDay: readonly number[];
  readonly taken: readonly TakenDays[];
}

/** Days of a visit, and its way: none where the crew is at the site that day anyway. */
export interface LaidOut extends DaySpan {
  readonly travelPersonHours: number;
}

interface OnDay {
  readonly siteRef: string;
  readonly place: Place | null;
}

/** The days of a week while they fill. */
interface Days {
  readonly week: CrewWeek;
  readonly free: number[];
  readonly there: OnDay[][];
}

const dayAt = ({ monday }: CrewWeek, index: number): CalendarDay => addDays(monday, index);
const indexOf = ({ week }: Days, day: CalendarDay): number =>
  Array.from({ length: WORK_DAYS }, (_, index) => dayAt(week, index)).indexOf(day);

/** Takes hours from days in a row; what they do not hold goes to the last. */
function take(days: Days, [first, last]: readonly [number, number], hours: number, what: OnDay): void {
  let left = hours;
  for (let index = first; index <= last; index += 1) {
    const part = index === last ? left : Math.min(left, days.free[index]!);
    days.free[index] = Math.max(0, days.free[index]! - part);
    left -= part;
    days.there[index]!.push(what);
  }
}

function emptyDays(week: CrewWeek): Days {
  const days: Days = {
    week,
    free: Array.from({ length: WORK_DAYS }, (_, index) => week.personHoursByDay[index] ?? 0),
    there: Array.from({ length: WORK_DAYS }, () => []),
  };
  for (const taken of week.taken) {
    const inWeek = days.free.flatMap((_, index) => {
      const day = dayAt(week, index);
      return taken.firstDay <= day && day <= taken.lastDay ? [index] : [];
    });
    if (inWeek.length > 0) take(days, [inWeek[0]!, inWeek.at(-1)!], taken.personHours, taken);
  }
  return days;
}

/** Days in a row from one on that hold so many hours, each with some left; null where there are none. */
function runFrom({ free }: Days, first: number, hours: number): readonly [number, number] | null {
  let left = hours;
  for (let index = first; index < WORK_DAYS; index += 1) {
    if (free[index]! <= TOLERANCE_H) return null;
    left -= free[index]!;
    if (left <= TOLERANCE_H) return [first, index];
  }
  return null;
}

/** Metres to the nearest visit of a day; without end where none is there or no place is known. */
const nearestM = (there: readonly OnDay[], place: Place | null): number =>
  Math.min(...there.map((each) => (place && each.place ? greatCircleM(place, each.place) : Number.POSITIVE_INFINITY)));

/** The best days for a visit: one rather than several; for a must the first, else those of the nearest other visits. */
function bestRun(days: Days, request: DayRequest, hours: number): readonly [number, number] | null {
  const runs = days.free.flatMap((_, first) => {
    const run = runFrom(days, first, hours);
    return run ? [run] : [];
  });
  const lengthOf = ([first, last]: readonly [number, number]): number => last - first;
  const shortest = Math.min(...runs.map(lengthOf));
  const near = (run: readonly [number, number]): number =>
    request.mustRank > 0 ? 0 : nearestM(days.there[run[0]]!, request.place);
  return runs
    .filter((run) => lengthOf(run) === shortest)
    .reduce<readonly [number, number] | null>(
      (best, run) => (best === null || near(run) < near(best) ? run : best),
      null,
    );
}

const spanOf = ({ week }: Days, [first, last]: readonly [number, number]): DaySpan => ({
  firstDay: dayAt(week, first),
  lastDay: dayAt(week, last),
});

function layOutOne(days: Days, request: DayRequest): LaidOut | null {
  const { siteRef, place, workPersonHours, travelPersonHours, standing } = request;
  const onSite = days.there.findIndex(
    (there, index) =>
      there.some((each) => each.siteRef === siteRef) && workPersonHours <= days.free[index]! + TOLERANCE_H,
  );
  const hours = workPersonHours + travelPersonHours;
  const kept =
    standing && indexOf(days, standing.firstDay) >= 0 ? runFrom(days, indexOf(days, standing.firstDay), hours) : null;
  if (kept && standing && dayAt(days.week, kept[1]) === standing.lastDay) {
    take(days, kept, hours, { siteRef, place });
    return { ...spanOf(days, kept), travelPersonHours };
  }
  if (onSite >= 0) {
    take(days, [onSite, onSite], workPersonHours, { siteRef, place });
    return { ...spanOf(days, [onSite, onSite]), travelPersonHours: 0 };
  }
  const run = bestRun(days, request, hours);
  if (!run) return null;
  take(days, run, hours, { siteRef, place });
  return { ...spanOf(days, run), travelPersonHours };
}

const hoursOf = ({ workPersonHours, travelPersonHours }: DayRequest): number => workPersonHours + travelPersonHours;
const rankOf = ({ mustRank }: DayRequest): number => (mustRank === 0 ? Number.POSITIVE_INFINITY : mustRank);

/** Those that have days first, then the musts, the strictest first; of equal ones the longest, which fit least. */
const inOrder = (requests: readonly DayRequest[]): readonly DayRequest[] =>
  [...requests].sort(
    (a, b) =>
      Number(a.standing === null) - Number(b.standing === null) ||
      (rankOf(a) === rankOf(b) ? 0 : rankOf(a) - rankOf(b)) ||
      hoursOf(b) - hoursOf(a) ||
      (a.key < b.key ? -1 : 1),
  );

/** One after the other from the first day that has hours left on: parts of days are used up, so that most fits. */
function poured(week: CrewWeek, requests: readonly DayRequest[]): ReadonlyMap<string, LaidOut | null> {
  const days = emptyDays(week);
  return new Map(
    requests.map((request) => {
      const { key, siteRef, place, travelPersonHours } = request;
      const run = days.free.reduce<readonly [number, number] | null>(
        (found, _, first) => found ?? runFrom(days, first, hoursOf(request)),
        null,
      );
      if (!run) return [key, null];
      take(days, run, hoursOf(request), { siteRef, place });
      return [key, { ...spanOf(days, run), travelPersonHours }];
    }),
  );
}

const leftOver = (laid: ReadonlyMap<string, LaidOut | null>): number =>
  [...laid.values()].filter((each) => each === null).length;

/**
 * Gives the visits of a crew's week their days, Monday to Friday: those that have days keep them where these hold them; then
 * the musts get the first days with room, the others the days of their nearest neighbours. A visit longer than what a day has
 * left takes days in a row, never over a day on which nobody goes out. Where parts of days are left that hold none of the
 * rest, the whole week is laid out again without gaps. Null for a visit that no days of the week hold.
 * The way is counted once, as in the plan, however many days a visit takes.
 */
export function layOutDays(week: CrewWeek, requests: readonly DayRequest[]): ReadonlyMap<string, LaidOut | null> {
  const days = emptyDays(week);
  const ordered = inOrder(requests);
  const near = new Map(ordered.map((request) => [request.key, layOutOne(days, request)]));
  if (leftOver(near) === 0) return near;
  const tight = poured(week, ordered);
  return leftOver(tight) < leftOver(near) ? tight : near;
}
