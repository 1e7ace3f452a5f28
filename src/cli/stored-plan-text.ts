import { riskTable, wholeMoney } from '../drawing/plan-table.ts';
import {
  brokenPromiseText,
  HOURS_NOTE,
  ORDER_NOTE,
  stageText,
  WHY_SERVED,
  WHY_SERVED_NOTE,
} from '../drawing/plan-words.ts';
import { visitItemText } from '../drawing/visit-words.ts';
import type { StoredPlan } from '../register/plan-store.ts';
import type { AcceptedVisits } from '../season/visit/accept-plan.ts';
import { CAUTIONS } from './cautions.ts';
import { leftOutLines } from './left-out-text.ts';
import { moveLines } from './move-lines.ts';
import { plainTable } from './plain-table.ts';
import { hoursLines } from './plan-text.ts';
import { visitTable } from './visit-text.ts';

const stateText = ({ state, acceptedAt, by, because }: StoredPlan): string => {
  if (state === 'made') return 'not accepted';
  const who = by === '' ? '' : ` by ${by}`;
  const why = because === '' ? '' : `: ${because}`;
  return `accepted ${acceptedAt?.slice(0, 10) ?? ''}${who}${why}${state === 'superseded' ? '; another one is in force' : ''}`;
};

/** A plan as it was stored: its visits by week, how good it is, and what it leaves out. */
export function storedPlanText(
  plan: StoredPlan,
  {
    siteNames,
    crewNames,
    currency,
  }: {
    readonly siteNames: ReadonlyMap<string, string>;
    readonly crewNames: ReadonlyMap<string, string>;
    readonly currency: string;
  },
): string {
  const { content } = plan;
  const rows = content.visits.flatMap(({ week, crewRef, siteRef, travelPersonHours, items }) =>
    items.map((item, index) => [
      index === 0 ? week : '',
      index === 0 ? crewRef : '',
      index === 0 ? (siteNames.get(siteRef) ?? siteRef) : '',
      item.fenceRef,
      visitItemText(item),
      item.personHours.toFixed(1),
      index === 0 ? travelPersonHours.toFixed(1) : '',
      wholeMoney(item.price),
      WHY_SERVED[item.mustRank],
    ]),
  );
  const { headings, rows: riskRows, right } = riskTable(content.risk);
  return [
    `Season plan ${plan.number}, made ${plan.asOf} with model ${plan.modelVersion}: ${plan.weeks} weeks from ${plan.firstWeek}, ${stateText(plan)}`,
    '',
    plainTable(headings, riskRows, right),
    plainTable(['Week of', 'Crew', 'Site', 'Fence', 'What is done', 'Hours', 'Way', 'Price', 'Why'], rows, [5, 6, 7]),
    ORDER_NOTE,
    HOURS_NOTE,
    WHY_SERVED_NOTE,
    '',
    ...(content.promised.length > 0
      ? [`On promised dates, with visits of their own: ${content.promised.join(', ')}.`, '']
      : []),
    ...content.stages.map((stage) => stageText(stage, (amount) => `${wholeMoney(amount)} ${currency}`)),
    ...(content.safetyTimeStruck ? ['The search ran out of its time: another run may find another plan.'] : []),
    ...content.brokenPromises.map(
      ({ jobRef, reason }) => `Promise for fence ${jobRef} cannot be kept: ${brokenPromiseText(reason)}.`,
    ),
    '',
    ...leftOutLines(content, { crewNames, today: plan.asOf, currency }),
    ...hoursLines(content.hours),
    CAUTIONS,
  ].join('\n');
}

/** The plans that were made. */
export const planListText = (plans: readonly StoredPlan[]): string =>
  plans.length === 0
    ? 'No season plan has been made yet: stormpale plan\n'
    : plainTable(
        ['Plan', 'Made', 'First week', 'Weeks', 'Visits', 'State'],
        plans.map((plan) => [
          String(plan.number),
          plan.asOf,
          plan.firstWeek,
          String(plan.weeks),
          String(plan.content.visits.length),
          stateText(plan),
        ]),
        [0, 3, 4],
      );

/** What accepting a plan has made of the visits. */
export function acceptedText(number: number, visits: AcceptedVisits): string {
  const { kept, moved, created, cancelled, withoutDays } = visits;
  const part = (heading: string, visits: AcceptedVisits['kept']): readonly string[] =>
    visits.length === 0 ? [] : [`${heading}:`, visitTable(visits)];
  return [
    `Plan ${number} is accepted: ${kept.length} visits kept as they were, ${moved.length} moved, ${created.length} new, ${cancelled.length} cancelled. Confirmed visits are as they were.`,
    '',
    ...part('New', created),
    ...part('Moved or changed', moved),
    ...moveLines(visits),
    ...part('Cancelled', cancelled),
    ...withoutDays.map(
      ({ week, crewRef, siteRef, items }) =>
        `No days in the week of ${week} hold the visit of ${crewRef} to ${siteRef} (${items.map(({ fenceRef }) => fenceRef).join(', ')}): it is not proposed, and its fences come back in the next plan.`,
    ),
    'Promise a day with: stormpale visit confirm UID --day DAY',
    '',
  ].join('\n');
}
