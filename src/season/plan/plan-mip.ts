import { BENEFIT_STAGE, type Candidate, gainInStage } from './compiled-problem.ts';
import type { MipModel, MipRow } from './mip-solver.ts';
import type { Schedule } from './schedule.ts';

/** Which part of a schedule is arranged anew, and for which stage. */
export interface PlanPart {
  readonly schedule: Schedule;
  /** The candidates to choose from; jobs that have one here are free, all others stay where they are. */
  readonly offered: readonly Candidate[];
  readonly stage: number;
}

/** The part as yes-or-no problem, and how to read its answer. */
export interface PlanMip {
  readonly model: MipModel;
  /** The candidates of a solution. */
  read(values: readonly number[]): readonly Candidate[];
}

/**
 * The part of a schedule as a problem of yes-or-no columns: one column a candidate, one a visit that may be opened.
 *
 * - at most one candidate a job;
 * - a candidate needs its visit: the sum over a job's options in a slot is at most the visit's column, job by job, which
 *   is much tighter than one row a visit;
 * - hours of a slot: works and ways within what the jobs that stay leave of it;
 * - for each earlier stage, the count of the free jobs does not fall.
 *
 * The present arrangement is the point to begin from; free jobs that sit outside what is offered are not allowed.
 */
export function planMip({ schedule, offered, stage }: PlanPart): PlanMip {
  const { compiled } = schedule;
  const { slotCount, siteOfJob, travelHours, travelCost } = compiled;
  const free = new Set(offered.map(({ job }) => job));
  const rest = schedule.copy();
  for (const job of free) rest.take(job);

  const objective = offered.map((candidate) => gainInStage(candidate, stage));
  const start = offered.map((candidate) => (schedule.chosen[candidate.job] === candidate ? 1 : 0));
  const visitColumns = new Map<number, number>();
  const byJob = new Map<number, number[]>();
  const bySlot = new Map<number, { readonly indices: number[]; readonly values: number[] }>();
  const byLink = new Map<string, number[]>();
  const slotRow = (slot: number): { readonly indices: number[]; readonly values: number[] } =>
    getOrPut(bySlot, slot, () => ({ indices: [], values: [] }));

  offered.forEach(({ job, slot, hours }, column) => {
    getOrPut(byJob, job, () => []).push(column);
    slotRow(slot).indices.push(column);
    slotRow(slot).values.push(hours);
    const site = siteOfJob[job]!;
    if (rest.jobsAt(site, slot) > 0) return;
    getOrPut(byLink, `${job} ${slot}`, () => []).push(column);
    const visit = site * slotCount + slot;
    if (!visitColumns.has(visit)) {
      visitColumns.set(visit, objective.length);
      slotRow(slot).indices.push(objective.length);
      slotRow(slot).values.push(travelHours[visit]!);
      objective.push(stage === BENEFIT_STAGE ? -travelCost[visit]! : 0);
      start.push(schedule.jobsAt(site, slot) > 0 ? 1 : 0);
    }
  });

  const rows: MipRow[] = [];
  for (const indices of byJob.values())
    rows.push(
      atMost(
        1,
        indices,
        indices.map(() => 1),
      ),
    );
  for (const [slot, { indices, values }] of bySlot)
    rows.push(atMost(Math.max(0, rest.hoursLeft(slot)), indices, values));
  for (const indices of byLink.values()) {
    const { job, slot } = offered[indices[0]!]!;
    const visit = visitColumns.get(siteOfJob[job]! * slotCount + slot)!;
    rows.push(atMost(0, [...indices, visit], [...indices.map(() => 1), -1]));
  }
  for (let earlier = 0; earlier < stage; earlier += 1) {
    const indices = offered.flatMap(({ counts }, column) => ((counts >> earlier) & 1 ? [column] : []));
    const reached = indices.filter((column) => start[column] === 1).length;
    if (reached > 0)
      rows.push({ lower: reached, upper: Number.POSITIVE_INFINITY, indices, values: indices.map(() => 1) });
  }
  return {
    model: { objective, rows, start },
    read: (values) => offered.filter((_, column) => values[column]! > 0.5),
  };
}

const atMost = (upper: number, indices: readonly number[], values: readonly number[]): MipRow => ({
  lower: Number.NEGATIVE_INFINITY,
  upper,
  indices,
  values,
});

function getOrPut<Key, Value>(map: Map<Key, Value>, key: Key, make: () => Value): Value {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made = make();
  map.set(key, made);
  return made;
}
