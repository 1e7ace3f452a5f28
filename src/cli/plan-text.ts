import { hoursTable, itemText, type PlanTable, planTable, riskTable, wholeMoney } from '../drawing/plan-table.ts';
import { brokenPromiseText, HOURS_NOTE, ORDER_NOTE, stageText, WHY_SERVED_NOTE } from '../drawing/plan-words.ts';
import { worksName } from '../drawing/what-if-words.ts';
import type { HoursCorrection } from '../season/visit/corrected-hours.ts';
import type { MadePlan } from '../service/make-season-plan.ts';
import type { KeptPlan } from '../service/store-season-plan.ts';
import { CAUTIONS } from './cautions.ts';
import { leftOutLines } from './left-out-text.ts';
import { moveLines } from './move-lines.ts';
import { plainTable } from './plain-table.ts';

const tableText = ({ headings, rows, right }: PlanTable): string => plainTable(headings, rows, right);

const counted = (count: number, one: string, several: string): string => `${count} ${count === 1 ? one : several}`;
const visits = (count: number): string => counted(count, 'visit', 'visits');

/** How the hours that crews used have corrected those of the catalogue, a line a kind. */
export const hoursLines = (hours: readonly HoursCorrection[]): readonly string[] =>
  hours.length === 0
    ? []
    : [
        'Hours of the catalogue, corrected by what crews used:',
        ...hours.map(
          ({ kind, factor, visits: seen, usedPersonHours, plannedPersonHours }) =>
            `  ${worksName(kind)} ${factor.toFixed(2)} x, from ${visits(seen)} (${usedPersonHours.toFixed(1)} h used, ${plannedPersonHours.toFixed(1)} h planned)`,
        ),
        '',
      ];

/** What a plan keeps of the visits that stand, and what accepting it would change. */
function standingLines({ standing }: MadePlan, { changes }: KeptPlan): readonly string[] {
  const { kept, moved, created, cancelled, withoutDays } = changes;
  const { promised, visitedBefore, overdue } = standing;
  return [
    `Against the visits that stand: ${kept.length} kept as they are, ${moved.length} moved, ${created.length} new, ${cancelled.length} dropped; ${counted(promised.size, 'fence', 'fences')} on promised dates.`,
    ...(visitedBefore.size > 0
      ? [
          `Left out, for they are visited before: ${[...visitedBefore].map(([ref, { uid, firstDay }]) => `${ref} (${uid}, ${firstDay})`).join(', ')}.`,
        ]
      : []),
    ...(withoutDays.length > 0
      ? [
          `${visits(withoutDays.length)} would find no days in their week: ${withoutDays.map(({ week, crewRef, siteRef }) => `${siteRef} by ${crewRef}, week of ${week}`).join('; ')}. Their fences come back in the next plan.`,
        ]
      : []),
    ...overdue.map(
      ({ uid, siteRef, lastDay }) =>
        `Visit ${uid} at ${siteRef} was promised for ${lastDay}: say "stormpale visit done ${uid}" or "stormpale visit miss ${uid}".`,
    ),
  ];
}

/** Where the plan is kept and what to do with it. */
const keptLine = ({ number }: KeptPlan): string =>
  number === null
    ? 'Nothing was stored: this was a dry run.'
    : `Stored as plan ${number}. To propose its visits: stormpale plan accept ${number}`;

const crewNamesOf = ({ crews }: MadePlan): ReadonlyMap<string, string> =>
  new Map(crews.map(({ ref, name }) => [ref, name]));

/** A season plan as text: risk before and after, the weeks of the crews, how good it is, and what is left out. */
export function planText(made: MadePlan, kept: KeptPlan): string {
  const { plan, problem, risk, unseen } = made;
  const { weeks, crews } = problem;
  const price = plan.visits.reduce((sum, { items }) => sum + items.reduce((all, { cost }) => all + cost, 0), 0);
  const lines = [
    `Season plan of ${made.asOf}: ${weeks.length} weeks from ${weeks[0]}, ${crews.length} ${crews.length === 1 ? 'crew' : 'crews'}, ${problem.jobs.length} fences`,
    '',
    tableText(riskTable(risk)),
    ...(risk.withoutCurve > 0
      ? [`${risk.withoutCurve} of the fences have no hazard curve: they are in the first two rows only.`, '']
      : []),
    tableText(planTable(plan.visits, made)),
    ORDER_NOTE,
    HOURS_NOTE,
    WHY_SERVED_NOTE,
    `Price of all of it before tax: ${wholeMoney(price)} ${kept.currency}. Worth: what it takes from the expected loss to the horizon, less its price.`,
    '',
    'Hours used of those there are (days off and weather reserve taken off):',
    tableText(hoursTable(plan.visits, crews, weeks)),
    ...plan.stages.map((stage) => stageText(stage, (amount) => `${wholeMoney(amount)} ${kept.currency}`)),
    ...(plan.safetyTimeStruck ? ['The search ran out of its time: another run may find another plan.'] : []),
    ...(plan.changedJobRefs.length > 0 ? [`Changed from the plan before: ${plan.changedJobRefs.join(', ')}`] : []),
    '',
    ...plan.brokenPromises.map(
      ({ jobRef, reason }) => `Promise for fence ${jobRef} cannot be kept: ${brokenPromiseText(reason)}.`,
    ),
    ...leftOutLines(kept.content, { crewNames: crewNamesOf(made), today: made.asOf, currency: kept.currency }),
    ...unseen.map(({ ref, message }) => `Fence ${ref} could not be looked at: ${message}`),
    ...hoursLines(made.hours),
    ...standingLines(made, kept),
    ...moveLines(kept.changes),
    keptLine(kept),
    '',
    CAUTIONS,
  ];
  return lines.join('\n');
}

/** The same for scripts. */
export const planJson = (made: MadePlan, { number, changes, content }: KeptPlan): unknown => ({
  number,
  asOf: made.asOf,
  weeks: made.problem.weeks,
  risk: made.risk,
  visits: made.plan.visits.map((visit) => ({
    ...visit,
    siteName: made.siteNames.get(visit.siteRef) ?? null,
    items: visit.items.map((item) => ({ ...item, what: itemText(made.fences.get(item.jobRef)!, item.optionKey) })),
  })),
  crews: made.problem.crews.map(({ ref, personHoursByWeek }) => ({ ref, personHoursByWeek })),
  stages: made.plan.stages,
  method: made.plan.method,
  counts: made.plan.counts,
  safetyTimeStruck: made.plan.safetyTimeStruck,
  changed: made.plan.changedJobRefs,
  brokenPromises: made.plan.brokenPromises,
  unserved: made.plan.unserved,
  wornOut: content.wornOut ?? [],
  unseen: made.unseen,
  hours: made.hours,
  promised: [...made.standing.promised.keys()],
  visitedBefore: [...made.standing.visitedBefore].map(([fenceRef, { uid }]) => ({ fenceRef, uid })),
  overdue: made.standing.overdue.map(({ uid }) => uid),
  changes,
});
