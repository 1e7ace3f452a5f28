import { HOURS_TOLERANCE, slotOf } from './compiled-problem.ts';
import { type PlanOption, WEEK_BARS } from './plan-problem.ts';
import { type Schedule, VALUE_TOLERANCE } from './schedule.ts';
import type { CrewWeek, LeftOutReason, NearestOption } from './season-plan.ts';

/** The weeks of crews that could do an option, hours aside, with what it needs there and what they have. */
function crewWeeks(schedule: Schedule, job: number, option: PlanOption): readonly CrewWeek[] {
  const { compiled } = schedule;
  const { weeks, crews, siteOfJob, slotCount, travelHours, travelCost } = compiled;
  const site = siteOfJob[job]!;
  const found: CrewWeek[] = [];
  for (const [crewIndex, crew] of crews.entries()) {
    if (option.skill !== null && !crew.skills.includes(option.skill)) continue;
    for (const [week, day] of weeks.entries()) {
      const slot = slotOf(weeks.length, crewIndex, week);
      const way = travelHours[site * slotCount + slot]!;
      if (option.barsByWeek[week]!.length > 0 || Number.isNaN(way)) continue;
      const isThere = schedule.jobsAt(site, slot) > 0;
      found.push({
        week: day,
        crewRef: crew.ref,
        neededHours: option.personHours + (isThere ? 0 : way),
        wayHours: isThere ? 0 : way,
        leftHours: schedule.hoursLeft(slot),
        thereAreHours: crew.personHoursByWeek[week]!,
        worth: option.benefitByWeek[week]! - (isThere ? 0 : travelCost[site * slotCount + slot]!),
      });
    }
  }
  return found;
}

/** How many hours are missing in a week of a crew [h]: of those that are left, or of all it has where even those do not do. */
const missing =
  (reason: LeftOutReason) =>
  ({ neededHours, leftHours, thereAreHours }: CrewWeek): number =>
    neededHours - (reason === 'no-crew-hours' ? leftHours : thereAreHours);

/** The week in which the least is missing, the first of equals; where it is for want of hours, of those that would be used. */
function bestWeek(
  weeks: readonly CrewWeek[],
  { reason, isMust }: { readonly reason: LeftOutReason; readonly isMust: boolean },
): CrewWeek | null {
  const lacks = missing(reason);
  const wanted = weeks.filter(({ worth }) => isMust || worth > VALUE_TOLERANCE);
  const from = (wanted.length > 0 ? wanted : weeks).filter(
    (week) => reason !== 'no-crew-hours' || lacks(week) > HOURS_TOLERANCE,
  );
  return from.reduce<CrewWeek | null>((best, each) => (best === null || lacks(each) < lacks(best) ? each : best), null);
}

/**
 * The numbers behind the reason for which nothing is done at a fence: of its works that ended on that reason those that lack
 * the fewest hours, in how many weeks rules bar them, and the crew's week that came nearest.
 * @param asked the works that would do, each with what it ended on
 */
export function nearestOption(
  schedule: Schedule,
  job: number,
  {
    reason,
    asked,
  }: {
    readonly reason: LeftOutReason;
    readonly asked: readonly { readonly option: PlanOption; readonly reason: LeftOutReason }[];
  },
): NearestOption | null {
  const { jobs, weeks } = schedule.compiled;
  const { mustRank } = jobs[job]!;
  const lacks = missing(reason);
  const ended = asked
    .filter((each) => each.reason === reason)
    .map(({ option }) => {
      const isMust = mustRank > 0 && option.satisfiesMust;
      return { option, best: bestWeek(crewWeeks(schedule, job, option), { reason, isMust }) };
    });
  const order = ({ option, best }: (typeof ended)[number]): number => (best ? lacks(best) : option.personHours);
  const nearest = ended.reduce<(typeof ended)[number] | null>(
    (least, each) => (least === null || order(each) < order(least) ? each : least),
    null,
  );
  if (nearest === null) return null;
  const { option, best } = nearest;
  return {
    optionKey: option.key,
    weeks: weeks.length,
    openWeeks: option.barsByWeek.filter((bars) => bars.length === 0).length,
    bars: WEEK_BARS.flatMap((bar) => {
      const barred = weeks.filter((_, week) => option.barsByWeek[week]!.includes(bar));
      const [firstWeek, lastWeek] = [barred[0], barred.at(-1)];
      return firstWeek && lastWeek ? [{ bar, weeks: barred.length, firstWeek, lastWeek }] : [];
    }),
    best,
    barredOptions: asked.filter(({ option: { barsByWeek } }) => barsByWeek.every((bars) => bars.length > 0)).length,
    options: asked.length,
  };
}
