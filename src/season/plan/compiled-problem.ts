import type { CalendarDay } from '../../units/calendar-day.ts';
import type { PlanCrew, PlanJob, PlanOption, PlanProblem } from './plan-problem.ts';

/** Hours [h] by which a sum may pass a limit before it counts as passed: rounding, not overtime. */
export const HOURS_TOLERANCE = 1e-6;

/** What is counted one after the other: promises kept, then fences of must rank 1, 2, 3 served, then the money. */
export const STAGES = ['promised', 'must-1', 'must-2', 'must-3', 'benefit'] as const;
export const BENEFIT_STAGE = STAGES.length - 1;

/** One way to do one job: an option in a slot, a slot being a crew in a week. */
export interface Candidate {
  readonly id: number;
  readonly job: number;
  readonly slot: number;
  readonly option: PlanOption;
  /** Hours at the fence [h]. */
  readonly hours: number;
  /** Benefit, and the change penalty it saves where it is what the plan before said. */
  readonly value: number;
  /** Bit `k` is set where it counts in stage `k`. */
  readonly counts: number;
  /** Orders candidates as the stages do: the same bits, the first stage's highest. */
  readonly importance: number;
}

/** What a candidate adds in a stage, before the way. */
export const gainInStage = ({ value, counts }: Candidate, stage: number): number =>
  stage === BENEFIT_STAGE ? value : (counts >> stage) & 1;

/** A problem in canonical order, with every candidate that no rule refuses by itself. */
export interface CompiledProblem {
  readonly problem: PlanProblem;
  readonly weeks: readonly CalendarDay[];
  readonly crews: readonly PlanCrew[];
  readonly jobs: readonly PlanJob[];
  readonly siteRefs: readonly string[];
  readonly slotCount: number;
  /** Person-hours of each slot [h]. */
  readonly slotHours: Float64Array;
  /** Way of a visit by site and slot [h]; NaN where the crew does not go. */
  readonly travelHours: Float64Array;
  readonly travelCost: Float64Array;
  readonly siteOfJob: Int32Array;
  readonly jobsOfSite: readonly (readonly number[])[];
  readonly candidates: readonly Candidate[];
  readonly candidatesOfJob: readonly (readonly Candidate[])[];
  /** The candidate that repeats the plan before, by job. */
  readonly previousOfJob: readonly (Candidate | null)[];
  /** Jobs that can count in each stage but the last. */
  readonly countable: readonly number[];
  /** The change penalty of every job that had an assignment: what a plan pays that keeps none. */
  readonly baseValue: number;
}

const byText = (left: string, right: string): number => (left < right ? -1 : left > right ? 1 : 0);

/** Index of a slot: the weeks of the first crew, then of the second, and so on. */
export const slotOf = (weekCount: number, crew: number, week: number): number => crew * weekCount + week;

/**
 * Brings a problem into an order of its own, so that the plan never depends on the order in which jobs and crews were
 * given, and lists every candidate: allowed week, crew with the skill and a way to the site, hours that fit an empty
 * week, and the promise where there is one.
 */
export function compileProblem(problem: PlanProblem): CompiledProblem {
  const { weeks, changePenalty } = problem;
  const crews = [...problem.crews].sort((left, right) => byText(left.ref, right.ref));
  const jobs = [...problem.jobs]
    .sort((left, right) => byText(left.ref, right.ref))
    .map((job) => ({ ...job, options: [...job.options].sort((left, right) => byText(left.key, right.key)) }));
  const siteRefs = [...new Set(jobs.map(({ siteRef }) => siteRef))].sort(byText);
  const siteIndex = new Map(siteRefs.map((ref, index) => [ref, index]));
  const slotCount = crews.length * weeks.length;
  const slotHours = Float64Array.from(crews.flatMap(({ personHoursByWeek }) => personHoursByWeek));
  const travelHours = new Float64Array(siteRefs.length * slotCount).fill(Number.NaN);
  const travelCost = new Float64Array(siteRefs.length * slotCount);
  crews.forEach((crew, crewIndex) => {
    for (const { siteRef, personHours, cost } of crew.travel) {
      const site = siteIndex.get(siteRef);
      if (site === undefined) continue;
      const first = site * slotCount + slotOf(weeks.length, crewIndex, 0);
      travelHours.fill(personHours, first, first + weeks.length);
      travelCost.fill(cost, first, first + weeks.length);
    }
  });
  const siteOfJob = Int32Array.from(jobs, ({ siteRef }) => siteIndex.get(siteRef)!);
  const jobsOfSite: number[][] = siteRefs.map(() => []);
  siteOfJob.forEach((site, job) => {
    jobsOfSite[site]!.push(job);
  });

  const candidates: Candidate[] = [];
  const previousOfJob: (Candidate | null)[] = jobs.map(() => null);
  const candidatesOfJob = jobs.map((job, jobIndex) => {
    const mine: Candidate[] = [];
    for (const option of job.options) {
      for (const [crewIndex, crew] of crews.entries()) {
        for (const [week, day] of weeks.entries()) {
          const slot = slotOf(weeks.length, crewIndex, week);
          const way = travelHours[siteOfJob[jobIndex]! * slotCount + slot]!;
          const fits = option.personHours + way <= slotHours[slot]! + HOURS_TOLERANCE;
          if (!fits || !isAllowed(job, option, crew, week, day)) continue;
          const { previous } = job;
          const kept =
            previous !== null &&
            previous.crewRef === crew.ref &&
            previous.week === day &&
            previous.optionKey === option.key;
          const counts = (job.promised ? 1 : 0) | (job.mustRank > 0 && option.satisfiesMust ? 1 << job.mustRank : 0);
          const candidate: Candidate = {
            id: candidates.length,
            job: jobIndex,
            slot,
            option,
            hours: option.personHours,
            value: option.benefitByWeek[week]! + (kept ? changePenalty : 0),
            counts,
            importance: importanceOf(counts),
          };
          if (kept) previousOfJob[jobIndex] = candidate;
          candidates.push(candidate);
          mine.push(candidate);
        }
      }
    }
    return mine;
  });
  const countable = STAGES.slice(0, BENEFIT_STAGE).map(
    (_, stage) => candidatesOfJob.filter((mine) => mine.some(({ counts }) => counts & (1 << stage))).length,
  );
  return {
    problem,
    weeks,
    crews,
    jobs,
    siteRefs,
    slotCount,
    slotHours,
    travelHours,
    travelCost,
    siteOfJob,
    jobsOfSite,
    candidates,
    candidatesOfJob,
    previousOfJob,
    countable,
    baseValue: -changePenalty * jobs.filter(({ previous }) => previous !== null).length,
  };
}

const importanceOf = (counts: number): number => {
  let importance = 0;
  for (let stage = 0; stage < BENEFIT_STAGE; stage += 1) importance = 2 * importance + ((counts >> stage) & 1);
  return importance;
};

/** True where week, skill and promise let a crew do an option; hours and the way are asked elsewhere. */
function isAllowed(job: PlanJob, option: PlanOption, crew: PlanCrew, week: number, day: CalendarDay): boolean {
  if (option.barsByWeek[week]!.length > 0) return false;
  if (option.skill !== null && !crew.skills.includes(option.skill)) return false;
  const { promised } = job;
  return (
    promised === null ||
    (promised.week === day &&
      (promised.crewRef === null || promised.crewRef === crew.ref) &&
      (promised.optionKey === null || promised.optionKey === option.key))
  );
}
