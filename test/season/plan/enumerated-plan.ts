import type { PlanJob, PlanProblem } from '../../../src/season/plan/plan-problem.ts';

/** What one job could have: an option, a crew and a week, as indices; null for nothing. */
type Pick = { readonly option: number; readonly crew: number; readonly week: number } | null;

/** Counts by stage and the value of a full choice; null where it breaks a rule. Written from the rules, not from the planner. */
function scoreOf(problem: PlanProblem, picks: readonly Pick[]): readonly number[] | null {
  const { crews, jobs, weeks, changePenalty } = problem;
  const score = [0, 0, 0, 0, 0];
  const hours = new Map<string, number>();
  const visited = new Set<string>();
  for (const [index, pick] of picks.entries()) {
    const job = jobs[index]!;
    const { previous } = job;
    if (pick === null) {
      if (previous) score[4]! -= changePenalty;
      continue;
    }
    const crew = crews[pick.crew]!;
    const option = job.options[pick.option]!;
    const week = weeks[pick.week]!;
    const kept = previous?.week === week && previous.crewRef === crew.ref && previous.optionKey === option.key;
    if (previous && !kept) score[4]! -= changePenalty;
    score[4]! += option.benefitByWeek[pick.week]!;
    if (job.promised) score[0]! += 1;
    if (job.mustRank > 0 && option.satisfiesMust) score[job.mustRank]! += 1;
    const slot = `${pick.crew} ${pick.week}`;
    let added = option.personHours;
    if (!visited.has(`${slot} ${job.siteRef}`)) {
      visited.add(`${slot} ${job.siteRef}`);
      const way = crew.travel.find(({ siteRef }) => siteRef === job.siteRef)!;
      added += way.personHours;
      score[4]! -= way.cost;
    }
    hours.set(slot, (hours.get(slot) ?? 0) + added);
    if (hours.get(slot)! > crew.personHoursByWeek[pick.week]! + 1e-9) return null;
  }
  return score;
}

function picksOf({ crews, weeks }: PlanProblem, job: PlanJob): readonly Pick[] {
  const picks: Pick[] = [null];
  for (const [option, { barsByWeek, skill }] of job.options.entries())
    for (const [crew, { ref, skills, travel }] of crews.entries())
      for (const [week, day] of weeks.entries()) {
        const promise = job.promised;
        const refused =
          barsByWeek[week]!.length > 0 ||
          (skill !== null && !skills.includes(skill)) ||
          !travel.some(({ siteRef }) => siteRef === job.siteRef) ||
          (promise !== null &&
            (promise.week !== day ||
              (promise.crewRef !== null && promise.crewRef !== ref) ||
              (promise.optionKey !== null && promise.optionKey !== job.options[option]!.key)));
        if (!refused) picks.push({ option, crew, week });
      }
  return picks;
}

/** The best score, stage by stage, over every choice there is. Only for problems of a few jobs. */
export function enumeratedBest(problem: PlanProblem): readonly number[] {
  const choices = problem.jobs.map((job) => picksOf(problem, job));
  let best: readonly number[] = [-1];
  const isBetter = (score: readonly number[]): boolean => {
    for (const [stage, value] of score.entries()) {
      const known = best[stage] ?? Number.NEGATIVE_INFINITY;
      if (Math.abs(value - known) > 1e-9) return value > known;
    }
    return false;
  };
  const picks: Pick[] = [];
  const walk = (): void => {
    if (picks.length === choices.length) {
      const score = scoreOf(problem, picks);
      if (score !== null && isBetter(score)) best = score;
      return;
    }
    for (const pick of choices[picks.length]!) {
      picks.push(pick);
      walk();
      picks.pop();
    }
  };
  walk();
  return best;
}
