import { type Candidate, HOURS_TOLERANCE } from './compiled-problem.ts';
import { nearestOption } from './nearest-option.ts';
import type { PlanJob, PlanOption, WeekBar } from './plan-problem.ts';
import type { Schedule } from './schedule.ts';
import { VALUE_TOLERANCE } from './schedule.ts';
import type { BrokenPromiseReason, LeftOutReason, UnservedJob } from './season-plan.ts';

const BAR_REASONS: Readonly<Record<WeekBar, LeftOutReason>> = {
  'locate-notice': 'locate-notice-too-late',
  'cure-time': 'cure-time-too-late',
  'frozen-ground': 'ground-frozen',
  closed: 'weeks-closed',
};

/** The bar which, taken away alone, would open a week; else the first one of the first week. Null with a free week. */
function barOf({ barsByWeek }: PlanOption): LeftOutReason | null {
  if (barsByWeek.some((bars) => bars.length === 0)) return null;
  const alone = (Object.keys(BAR_REASONS) as WeekBar[]).find((bar) =>
    barsByWeek.some((bars) => bars.every((each) => each === bar)),
  );
  const bar = alone ?? barsByWeek[0]?.[0];
  return bar === undefined ? 'weeks-closed' : BAR_REASONS[bar];
}

/** Why an option of a job cannot be done by any crew in any week, even with all crews idle and no promise; null where it can. */
function obstacle({ compiled }: Schedule, job: PlanJob, option: PlanOption): LeftOutReason | null {
  const barred = barOf(option);
  if (barred !== null) return barred;
  const skilled = compiled.crews.filter(({ skills }) => option.skill === null || skills.includes(option.skill));
  if (skilled.length === 0) return 'no-crew-with-skill';
  const ways = skilled.flatMap((crew) => {
    const way = crew.travel.find(({ siteRef }) => siteRef === job.siteRef);
    return way === undefined ? [] : [{ crew, way }];
  });
  if (ways.length === 0) return 'no-crew-goes-to-site';
  const fits = (isWayCounted: boolean): boolean =>
    ways.some(({ crew, way }) =>
      compiled.weeks.some((_, week) => {
        const needed = option.personHours + (isWayCounted ? way.personHours : 0);
        return option.barsByWeek[week]!.length === 0 && needed <= crew.personHoursByWeek[week]! + HOURS_TOLERANCE;
      }),
    );
  if (fits(true)) return null;
  return fits(false) ? 'too-far-for-any-crew' : 'longer-than-any-crew-week';
}

/**
 * Why an option is not in the plan, found by asking what would have to be different: first the rules, then the promise,
 * then whether it pays, and only then the hours. The schedule must be settled: nothing that fits and pays is left out.
 */
export function leftOutReason(schedule: Schedule, job: number, option: PlanOption): LeftOutReason {
  const { compiled, chosen } = schedule;
  const asked = compiled.jobs[job]!;
  const stands = obstacle(schedule, asked, option);
  if (stands !== null) return stands;
  const mine = compiled.candidatesOfJob[job]!.filter((each) => each.option === option);
  if (mine.length === 0) return 'promised-otherwise';
  const now = chosen[job] ?? null;
  const best = mine.reduce((most, each) => (isBetter(each, most) ? each : most));
  if (best.importance < (now?.importance ?? 0)) return 'does-not-serve-the-must';
  const mustRise = best.importance > (now?.importance ?? 0);
  if (!mustRise) {
    if (Math.max(...mine.map(({ value }) => value)) <= VALUE_TOLERANCE)
      return option.note ?? 'costs-more-than-it-saves';
    if (now !== null && now.option !== option) {
      // with hours to spare it would take the place of what is done now, in the visit of now or in one of its own
      const own = Math.max(...mine.map((each) => valueWithHours(schedule, each, now)));
      if (own <= now.value + VALUE_TOLERANCE) {
        const repeats = compiled.previousOfJob[job] === now;
        return repeats && own > now.value - compiled.problem.changePenalty + VALUE_TOLERANCE
          ? 'kept-as-planned-before'
          : 'another-option-is-better';
      }
      return 'no-crew-hours';
    }
    if (Math.max(...mine.map((each) => schedule.netValue(each))) <= VALUE_TOLERANCE)
      return 'travel-costs-more-than-it-saves';
  }
  return 'no-crew-hours';
}

const isBetter = (left: Candidate, right: Candidate): boolean =>
  left.importance > right.importance || (left.importance === right.importance && left.value > right.value);

/** What a candidate is worth in the place of another of its job, hours aside; the other's way is saved where it was the visit's only work. */
function valueWithHours(schedule: Schedule, candidate: Candidate, now: Candidate): number {
  schedule.take(now.job);
  const saved = now.value - schedule.netValue(now);
  const own = schedule.netValue(candidate) + saved;
  schedule.put(now);
  return own;
}

// what an option ends on, from "would have been done with more hours" down to "is not worth doing"
const NEAREST_FIRST: readonly LeftOutReason[] = [
  'no-crew-hours',
  'too-far-for-any-crew',
  'longer-than-any-crew-week',
  'no-crew-with-skill',
  'no-crew-goes-to-site',
  'locate-notice-too-late',
  'cure-time-too-late',
  'ground-frozen',
  'weeks-closed',
  'travel-costs-more-than-it-saves',
  'cheaper-to-replace-next-year',
  'costs-more-than-it-saves',
];

/** Why nothing is done at a fence: the reason of the option that came nearest, of those that serve the must where one must be served. */
export function unservedReason(schedule: Schedule, job: number): Pick<UnservedJob, 'reason' | 'nearest'> {
  const { mustRank, options, promised } = schedule.compiled.jobs[job]!;
  if (options.length === 0) return { reason: 'nothing-to-do', nearest: null };
  if (promised !== null) return { reason: 'promised-otherwise', nearest: null };
  const serving = options.filter(({ satisfiesMust }) => mustRank === 0 || satisfiesMust);
  const worth = (option: PlanOption): boolean => mustRank > 0 || Math.max(...option.benefitByWeek) > 0;
  const would = serving.length > 0 ? serving : options;
  const reasons = would.map((option) => ({ option, reason: leftOutReason(schedule, job, option) }));
  const paying = reasons.filter(({ option }) => worth(option));
  const asked = paying.length > 0 ? paying : reasons;
  const reason = NEAREST_FIRST.find((each) => asked.some((one) => one.reason === each)) ?? asked[0]!.reason;
  return { reason, nearest: nearestOption(schedule, job, { reason, asked }) };
}

/** Why a promised date cannot be kept: a rule that refuses it by itself, or else the hours of other promises. */
export function brokenPromiseReason({ compiled }: Schedule, job: PlanJob): BrokenPromiseReason {
  const promised = job.promised!;
  const week = compiled.weeks.indexOf(promised.week);
  if (week < 0) return 'week-outside-plan';
  const crews = compiled.crews.filter(({ ref }) => promised.crewRef === null || promised.crewRef === ref);
  if (crews.length === 0) return 'crew-unknown';
  const options = job.options.filter(({ key }) => promised.optionKey === null || promised.optionKey === key);
  if (options.length === 0) return 'option-unknown';
  const free = options.filter(({ barsByWeek }) => barsByWeek[week]!.length === 0);
  if (free.length === 0) return 'week-barred';
  const pairs = free.flatMap((option) =>
    crews
      .filter(({ skills }) => option.skill === null || skills.includes(option.skill))
      .map((crew) => ({ option, crew })),
  );
  if (pairs.length === 0) return 'no-crew-with-skill';
  const ways = pairs.flatMap(({ option, crew }) =>
    crew.travel
      .filter(({ siteRef }) => siteRef === job.siteRef)
      .map(({ personHours }) => option.personHours + personHours <= crew.personHoursByWeek[week]! + HOURS_TOLERANCE),
  );
  if (ways.length === 0) return 'no-crew-goes-to-site';
  return ways.includes(true) ? 'hours-go-to-other-promises' : 'longer-than-the-crew-week';
}
