import type { PlannedVisit } from '../season/plan/season-plan.ts';
import type { PlannedFence } from '../season/season-problem.ts';
import type { SeasonRisk } from '../season/season-risk.ts';
import { WHY_SERVED } from './plan-words.ts';
import { optionLines, postNumbersText, worksName } from './what-if-words.ts';

/** Rows of a table under headings; columns named in `right` hold numbers. */
export interface PlanTable {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly right: readonly number[];
}

/** Whole money with its thousands parted, in the register's currency. */
export const wholeMoney = (amount: number): string =>
  Math.round(amount)
    .toString()
    .replace(/\B(?=(\d{3})+$)/g, ',');

/** What a planned item does, in words: `post swap, posts 2–4 + groundline treatment`. */
export function itemText(fence: PlannedFence, optionKey: string): string {
  const found = fence.candidates.candidates.find(({ key }) => key === optionKey);
  if (!found) return optionKey;
  if (found.kind === 'inspect')
    return `${worksName('inspect')}, ${found.posts.length === 1 ? 'post' : 'posts'} ${postNumbersText(found.posts)}`;
  return optionLines(found.option).join(' ');
}

/** The plan by week and crew, one row a fence. */
export function planTable(
  visits: readonly PlannedVisit[],
  parts: { readonly fences: ReadonlyMap<string, PlannedFence>; readonly siteNames: ReadonlyMap<string, string> },
): PlanTable {
  const rows = visits.flatMap(({ week, crewRef, siteRef, travelPersonHours, items }, at) => {
    const before = visits[at - 1];
    const sameWeek = before?.week === week;
    const sameCrew = sameWeek && before.crewRef === crewRef;
    return items.map((item, index) => [
      index === 0 && !sameWeek ? week : '',
      index === 0 && !sameCrew ? crewRef : '',
      index === 0 ? (parts.siteNames.get(siteRef) ?? siteRef) : '',
      item.jobRef,
      itemText(parts.fences.get(item.jobRef)!, item.optionKey),
      item.personHours.toFixed(1),
      index === 0 ? travelPersonHours.toFixed(1) : '',
      wholeMoney(item.cost),
      item.promised ? 'promised' : WHY_SERVED[item.mustRank],
      wholeMoney(item.benefit),
    ]);
  });
  return {
    headings: ['Week of', 'Crew', 'Site', 'Fence', 'What is done', 'Hours', 'Way', 'Price', 'Why', 'Worth'],
    rows,
    right: [5, 6, 7, 9],
  };
}

/** Hours of each crew used and free, week by week. */
export function hoursTable(
  visits: readonly PlannedVisit[],
  crews: readonly { readonly ref: string; readonly personHoursByWeek: readonly number[] }[],
  weeks: readonly string[],
): PlanTable {
  const used = (crew: string, week: string): number =>
    visits
      .filter((visit) => visit.crewRef === crew && visit.week === week)
      .reduce(
        (sum, { travelPersonHours, items }) =>
          sum + travelPersonHours + items.reduce((hours, { personHours }) => hours + personHours, 0),
        0,
      );
  return {
    headings: ['Week of', ...crews.map(({ ref }) => ref)],
    rows: weeks.map((week, index) => [
      week,
      ...crews.map((crew) => `${used(crew.ref, week).toFixed(0)} of ${crew.personHoursByWeek[index]!.toFixed(0)}`),
    ]),
    right: crews.map((_, index) => index + 1),
  };
}

/** The risk of the coming season with nothing done and with the plan done. */
export const riskTable = (risk: SeasonRisk): PlanTable => ({
  headings: ['Coming season', 'Nothing done', 'Plan done'],
  rows: [
    [
      'Dangerous fences (broken, leaning or closed-off posts)',
      String(risk.dangerousBefore),
      String(risk.dangerousAfter),
    ],
    ['Fences short of their design gust, line or ends', String(risk.shortBefore), String(risk.shortAfter)],
    ['Fences expected to snap', risk.snapsBefore.toFixed(2), risk.snapsAfter.toFixed(2)],
    ['Expected loss', wholeMoney(risk.lossBefore), wholeMoney(risk.lossAfter)],
  ],
  right: [1, 2],
});
