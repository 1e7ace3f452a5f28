import { addDays, type CalendarDay } from '../units/calendar-day.ts';

/** Somebody of a crew. */
export interface CrewMember {
  readonly ref: string;
  readonly hoursPerWeek: number;
  readonly skills: readonly string[];
  readonly languages: readonly string[];
  /** First and last day in the crew; null: no limit. */
  readonly fromDay: CalendarDay | null;
  readonly toDay: CalendarDay | null;
}

/** Days on which a crew, or one of it, does not go out, both days included. */
interface DaysOff {
  /** Null: the whole crew. */
  readonly memberRef: string | null;
  readonly firstDay: CalendarDay;
  readonly lastDay: CalendarDay;
}

/** A crew with its people and what keeps them from going out. */
export interface CrewTimes {
  readonly members: readonly CrewMember[];
  readonly daysOff: readonly DaysOff[];
  /** Share of the hours kept free for weather, 0 to 0.9 [-]. */
  readonly weatherReserve: number;
}

/** Days of a week on which crews go out: Monday to Friday. */
const WORK_DAYS = 5;

const works = (member: CrewMember, day: CalendarDay, daysOff: readonly DaysOff[]): boolean =>
  (member.fromDay === null || day >= member.fromDay) &&
  (member.toDay === null || day <= member.toDay) &&
  !daysOff.some(
    ({ memberRef, firstDay, lastDay }) =>
      (memberRef === null || memberRef === member.ref) && firstDay <= day && day <= lastDay,
  );

/** Members of a crew who go out on a day. */
export const membersOn = ({ members, daysOff }: CrewTimes, day: CalendarDay): readonly CrewMember[] =>
  members.filter((member) => works(member, day, daysOff));

/** Hours of all who go out on a day, a fifth of their week each, less what is kept for weather [h]. */
export const personHoursOn = (crew: CrewTimes, day: CalendarDay): number =>
  membersOn(crew, day).reduce((sum, { hoursPerWeek }) => sum + hoursPerWeek / WORK_DAYS, 0) * (1 - crew.weatherReserve);

/** The days of a week on which crews go out. */
const workDays = (monday: CalendarDay): readonly CalendarDay[] =>
  Array.from({ length: WORK_DAYS }, (_, index) => addDays(monday, index));

/**
 * Hours of one person that a crew has in a week, its people, their days off and the weather reserve counted [h].
 * @param monday first day of the week
 * @param from earlier days of the week are gone already
 */
export const personHoursInWeek = (crew: CrewTimes, monday: CalendarDay, from: CalendarDay = monday): number =>
  workDays(monday)
    .filter((day) => day >= from)
    .reduce((sum, day) => sum + personHoursOn(crew, day), 0);
