import type { PlanProblem } from './plan-problem.ts';

/** Throws RangeError, naming the place, the value and the way out, where a problem contradicts itself. */
export function checkProblem({ weeks, crews, jobs, changePenalty }: PlanProblem): void {
  if (new Set(weeks).size !== weeks.length) throw new RangeError('weeks: a Monday is there twice; give each week once');
  const perWeek = (what: string, list: readonly unknown[]): void => {
    if (list.length !== weeks.length)
      throw new RangeError(`${what}: ${list.length} numbers for ${weeks.length} weeks; give one for each week`);
  };
  const notNegative = (what: string, value: number): void => {
    if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
      throw new RangeError(`${what}: ${value} cannot be; give a number that is 0 or more`);
  };
  const once = (what: string, refs: readonly string[]): void => {
    const twice = refs.find((ref, index) => refs.indexOf(ref) !== index);
    if (twice !== undefined) throw new RangeError(`${what}: ${JSON.stringify(twice)} is there twice; give it once`);
  };
  notNegative('change penalty', changePenalty);
  once(
    'crews',
    crews.map(({ ref }) => ref),
  );
  if (new Set(jobs.map(({ ref }) => ref)).size !== jobs.length)
    once(
      'jobs',
      jobs.map(({ ref }) => ref),
    );
  for (const crew of crews) {
    perWeek(`crew ${crew.ref}, hours`, crew.personHoursByWeek);
    for (const hours of crew.personHoursByWeek) notNegative(`crew ${crew.ref}, hours of a week`, hours);
    if (new Set(crew.travel.map(({ siteRef }) => siteRef)).size !== crew.travel.length)
      once(
        `crew ${crew.ref}, ways`,
        crew.travel.map(({ siteRef }) => siteRef),
      );
    for (const { siteRef, personHours, cost } of crew.travel) {
      notNegative(`crew ${crew.ref}, way to ${siteRef}, hours`, personHours);
      notNegative(`crew ${crew.ref}, way to ${siteRef}, cost`, cost);
    }
  }
  for (const { ref, options } of jobs) {
    once(
      `job ${ref}, options`,
      options.map(({ key }) => key),
    );
    for (const { key, personHours, benefitByWeek, barsByWeek } of options) {
      if (!(personHours > 0 && personHours < Number.POSITIVE_INFINITY))
        throw new RangeError(`job ${ref}, ${key}, hours: ${personHours} cannot be; give more than 0`);
      perWeek(`job ${ref}, ${key}, benefit`, benefitByWeek);
      perWeek(`job ${ref}, ${key}, bars`, barsByWeek);
      const bad = benefitByWeek.find((benefit) => !Number.isFinite(benefit));
      if (bad !== undefined) throw new RangeError(`job ${ref}, ${key}, benefit: ${bad} is no amount; give a number`);
    }
  }
}
