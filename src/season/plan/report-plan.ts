import { brokenPromiseReason, leftOutReason, unservedReason } from './left-out-reason.ts';
import type { Schedule } from './schedule.ts';
import type { PlannedVisit, SeasonPlan, VisitItem } from './season-plan.ts';

/** A settled schedule in the words of its problem: visits, changes, and what is left out and why. */
export function reportPlan(
  schedule: Schedule,
): Pick<SeasonPlan, 'visits' | 'changedJobRefs' | 'brokenPromises' | 'unserved' | 'leftOut'> {
  const { compiled, chosen } = schedule;
  const { jobs, previousOfJob } = compiled;
  const numbered = jobs.map((job, index) => ({ job, index, now: chosen[index] ?? null }));
  return {
    visits: visitsOf(schedule),
    changedJobRefs: numbered
      .filter(({ job, index, now }) => job.previous !== null && (now === null || now !== previousOfJob[index]))
      .map(({ job }) => job.ref),
    brokenPromises: numbered
      .filter(({ job, now }) => job.promised !== null && now === null)
      .map(({ job }) => ({ jobRef: job.ref, reason: brokenPromiseReason(schedule, job) })),
    unserved: numbered
      .filter(({ now }) => now === null)
      .map(({ job, index }) => ({
        jobRef: job.ref,
        mustRank: job.mustRank,
        ...unservedReason(schedule, index),
      })),
    leftOut: numbered.flatMap(({ job, index, now }) =>
      job.options
        .filter((option) => option !== now?.option)
        .map((option) => ({
          jobRef: job.ref,
          optionKey: option.key,
          reason: leftOutReason(schedule, index, option),
        })),
    ),
  };
}

function visitsOf({ compiled, chosen }: Schedule): readonly PlannedVisit[] {
  const { jobs, weeks, crews, siteRefs, siteOfJob, slotCount, travelHours, travelCost } = compiled;
  const bySite = new Map<number, VisitItem[]>();
  for (const [index, candidate] of chosen.entries()) {
    if (candidate === null) continue;
    const job = jobs[index]!;
    const visit = siteOfJob[index]! * slotCount + candidate.slot;
    const items = bySite.get(visit) ?? [];
    if (items.length === 0) bySite.set(visit, items);
    items.push({
      jobRef: job.ref,
      optionKey: candidate.option.key,
      personHours: candidate.hours,
      cost: candidate.option.cost,
      benefit: candidate.option.benefitByWeek[candidate.slot % weeks.length]!,
      mustRank: job.mustRank,
      promised: job.promised !== null,
    });
  }
  const place = (visit: number): readonly [number, number, number] => {
    const slot = visit % slotCount;
    return [slot % weeks.length, Math.floor(slot / weeks.length), Math.floor(visit / slotCount)];
  };
  return [...bySite]
    .map(([visit, items]) => ({ visit, items, place: place(visit) }))
    .sort((l, r) => l.place[0] - r.place[0] || l.place[1] - r.place[1] || l.place[2] - r.place[2])
    .map(({ visit, items, place: [week, crew, site] }) => ({
      week: weeks[week]!,
      crewRef: crews[crew]!.ref,
      siteRef: siteRefs[site]!,
      travelPersonHours: travelHours[visit]!,
      travelCost: travelCost[visit]!,
      items,
    }));
}
