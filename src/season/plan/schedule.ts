import { BENEFIT_STAGE, type Candidate, type CompiledProblem, HOURS_TOLERANCE } from './compiled-problem.ts';

/** A plan in the making: which candidate each job has, and what that leaves of every slot. */
export interface Schedule {
  readonly compiled: CompiledProblem;
  readonly chosen: readonly (Candidate | null)[];
  /** Hours left in a slot [h]. */
  hoursLeft(slot: number): number;
  /** Jobs of a site in a slot; a visit exists where there is at least one. */
  jobsAt(site: number, slot: number): number;
  /** True where the candidate's job is not placed and its slot has the hours, the way included where the visit is new. */
  fits(candidate: Candidate): boolean;
  /** Value of placing it: its own, less the cost of the way where the visit is new. */
  netValue(candidate: Candidate): number;
  put(candidate: Candidate): void;
  take(job: number): void;
  copy(): Schedule;
  /** What each stage has reached: counts, and last the value. */
  score(): readonly number[];
}

/** A schedule with the given candidates placed; they must fit together. */
export function makeSchedule(compiled: CompiledProblem, placed: readonly Candidate[] = []): Schedule {
  const { slotCount, travelHours, travelCost, siteOfJob } = compiled;
  const chosen: (Candidate | null)[] = compiled.jobs.map(() => null);
  const left = Float64Array.from(compiled.slotHours);
  const visits = new Int32Array(travelHours.length);
  const visitOf = ({ job, slot }: Candidate): number => siteOfJob[job]! * slotCount + slot;
  const needs = (candidate: Candidate): number =>
    candidate.hours + (visits[visitOf(candidate)] === 0 ? travelHours[visitOf(candidate)]! : 0);
  const put = (candidate: Candidate): void => {
    left[candidate.slot]! -= needs(candidate);
    visits[visitOf(candidate)]! += 1;
    chosen[candidate.job] = candidate;
  };
  for (const candidate of placed) put(candidate);
  return {
    compiled,
    chosen,
    hoursLeft: (slot) => left[slot]!,
    jobsAt: (site, slot) => visits[site * slotCount + slot]!,
    fits: (candidate) => chosen[candidate.job] === null && needs(candidate) <= left[candidate.slot]! + HOURS_TOLERANCE,
    netValue: (candidate) => candidate.value - (visits[visitOf(candidate)] === 0 ? travelCost[visitOf(candidate)]! : 0),
    put,
    take: (job) => {
      const candidate = chosen[job];
      if (!candidate) return;
      visits[visitOf(candidate)]! -= 1;
      left[candidate.slot]! += needs(candidate);
      chosen[job] = null;
    },
    copy: () => makeSchedule(compiled, placedOf(chosen)),
    score: () => {
      const score = new Array<number>(BENEFIT_STAGE + 1).fill(0);
      score[BENEFIT_STAGE] = compiled.baseValue;
      for (const candidate of placedOf(chosen)) {
        for (let stage = 0; stage < BENEFIT_STAGE; stage += 1) score[stage]! += (candidate.counts >> stage) & 1;
        score[BENEFIT_STAGE]! += candidate.value;
      }
      visits.forEach((count, visit) => {
        if (count > 0) score[BENEFIT_STAGE]! -= travelCost[visit]!;
      });
      return score;
    },
  };
}

const placedOf = (chosen: readonly (Candidate | null)[]): Candidate[] =>
  chosen.filter((candidate) => candidate !== null);

/** Value [currency] by which one plan must beat another to count as better: rounding is no reason to change. */
export const VALUE_TOLERANCE = 1e-6;

/** Positive where the left score is the better one, stage by stage. */
export function compareScores(left: readonly number[], right: readonly number[]): number {
  for (const [stage, value] of left.entries()) {
    const more = value - right[stage]!;
    if (Math.abs(more) > VALUE_TOLERANCE) return more;
  }
  return 0;
}
