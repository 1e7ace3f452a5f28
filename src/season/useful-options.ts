import type { PlanJob, PlanOption } from './plan/plan-problem.ts';

/** True where the first option is at least as good as the second for every plan: no longer, no less use, no stricter, no worse for the must. */
function outdoes(first: PlanOption, second: PlanOption): boolean {
  return (
    first.personHours <= second.personHours &&
    (first.skill === null || first.skill === second.skill) &&
    (first.satisfiesMust || !second.satisfiesMust) &&
    first.benefitByWeek.every((benefit, week) => benefit >= second.benefitByWeek[week]!) &&
    first.barsByWeek.every((bars, week) => bars.length === 0 || second.barsByWeek[week]!.length > 0)
  );
}

/**
 * The options of a job that a plan could want, in their order: those that pay in some week or serve the must, where a date
 * is promised also those that lose, and are not outdone by another one. What a promise or the plan before names stays.
 */
export function usefulOptions({ options, mustRank, promised, previous }: PlanJob): readonly PlanOption[] {
  const named = new Set([promised?.optionKey, previous?.optionKey]);
  const wanted = options.filter(
    (option) =>
      named.has(option.key) ||
      promised !== null ||
      option.benefitByWeek.some((benefit) => benefit > 0) ||
      (mustRank > 0 && option.satisfiesMust),
  );
  return wanted.filter(
    (option, index) =>
      named.has(option.key) ||
      !wanted.some((other, at) => at !== index && outdoes(other, option) && (!outdoes(option, other) || at < index)),
  );
}
